package spreadsheet

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
)

// safe texts need no quotes in YAML, unless they are among words.
var safe = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9_-]*$`)

// words are those that some readers of YAML take for something else than a text.
var words = []string{"null", "true", "false", "yes", "no", "on", "off", "y", "n"}

// quoted writes a text so that YAML reads it as it is.
func quoted(text string) string {
	if safe.MatchString(text) && !slices.Contains(words, strings.ToLower(text)) {
		return text
	}
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\n", `\n`, "\t", `\t`).Replace(text) + `"`
}

// write gives the file, and the line of each animal.
func (c *converter) write() (yaml string, lines map[int]*animal) {
	var b strings.Builder
	line := 1
	put := func(format string, args ...any) {
		fmt.Fprintf(&b, format+"\n", args...)
		line++
	}
	put("# Made from a table by spawnwright init; see docs/file.md for all that can stand here.")
	if used := c.used(); len(used) > 0 {
		put("species:")
		for _, id := range used {
			put("  - {id: %s, name: %s}", id, quoted(c.own[id]))
		}
	}
	put("animals:")
	lines = make(map[int]*animal)
	for _, a := range c.animals {
		lines[line] = a
		put("  - {%s}", a.pairs())
	}
	return b.String(), lines
}

// used gives the species of the keeper's own that an animal has.
func (c *converter) used() []string {
	var ids []string
	for _, id := range slices.Sorted(maps.Keys(c.own)) {
		if slices.ContainsFunc(c.animals, func(a *animal) bool { return a.values["species"] == id }) {
			ids = append(ids, id)
		}
	}
	return ids
}

func (a *animal) pairs() string {
	var pairs []string
	for _, h := range headers {
		if v := a.values[h.key]; v != "" {
			pairs = append(pairs, h.key+": "+v)
		}
	}
	return strings.Join(pairs, ", ")
}
