package spreadsheet

import (
	"fmt"
	"regexp"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// builtin gives the built-in species by id, scientific and common name.
func builtin() map[string]string {
	ids := make(map[string]string)
	for _, p := range species.Builtin() {
		ids[strings.ToLower(p.Name)], ids[strings.ToLower(p.CommonName)], ids[p.ID] = p.ID, p.ID, p.ID
	}
	return ids
}

// speciesOf finds the built-in species of an id, a scientific or a common name.
func (c *converter) speciesOf(name string) (string, bool) {
	id, ok := c.builtin[strings.ToLower(name)]
	return id, ok
}

// usual reports whether the species of rows without one is known.
func (c *converter) usual() bool {
	_, ok := c.speciesOf(c.Species)
	if c.Species != "" && !ok {
		cure := strictyaml.DidYouMean(c.Species, speciesNames())
		if cure == "" {
			cure = "`spawnwright species list` shows those that are built in"
		}
		c.fail(0, 0, fmt.Sprintf("the species %q, meant for rows without one, is not built in", c.Species), cure)
	}
	return ok || c.Species == ""
}

func speciesNames() []string {
	var names []string
	for _, p := range species.Builtin() {
		names = append(names, p.ID, p.Name, p.CommonName)
	}
	return names
}

var scientific = regexp.MustCompile(`^[A-Z][a-z]+ ([a-z]+( [a-z]+)?|sp\.)$`)

// idOf makes the id of a species from its scientific name; empty for a text
// that is none.
func idOf(name string) string {
	if !scientific.MatchString(name) {
		return ""
	}
	return strings.ReplaceAll(strings.ToLower(strings.TrimSuffix(name, ".")), " ", "-")
}
