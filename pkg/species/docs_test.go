package species

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every key that the decoder knows stands in the reference, and every key in
// the first column of its tables is known.
func TestReferenceNamesEveryKey(t *testing.T) {
	page, err := os.ReadFile("../../docs/species.md")
	require.NoError(t, err)
	known := knownKeys()
	for key := range known {
		assert.True(t, strings.Contains(string(page), "`"+key+"`"), "docs/species.md does not name %s", key)
	}
	word := regexp.MustCompile("`([a-z_]+)`")
	for line := range strings.Lines(string(page)) {
		cells := strings.Split(line, "|")
		if len(cells) < 4 {
			continue
		}
		for _, m := range word.FindAllStringSubmatch(cells[1], -1) {
			assert.True(t, known[m[1]], "docs/species.md has the key %s, which nobody reads", m[1])
		}
	}
	for _, place := range places {
		assert.True(t, strings.Contains(string(page), "`"+place+"`"), "docs/species.md does not name the %s", place)
	}
}

func knownKeys() map[string]bool {
	known := map[string]bool{}
	for _, key := range []string{
		"id", "use", "like", "name", "common_name", "source", "sources", "cycle", "breeding",
		"development", "maturity", "male", "female", "sale", "adult", "food", "tadpole", "froglet", "cautions",
	} {
		known[key] = true
	}
	p := &Profile{}
	for _, name := range phaseNames {
		known[name.key()] = true
		p.Cycle = append(p.Cycle, Phase{Name: name})
	}
	for _, name := range stepNames {
		known[name.key()] = true
		p.Development = append(p.Development, Step{Name: name})
	}
	p.each(func(_ string, fields []field) {
		for _, f := range fields {
			known[f.key] = true
		}
	})
	return known
}

// The example of the reference is read without a problem.
func TestReferenceExample(t *testing.T) {
	page, err := os.ReadFile("../../docs/species.md")
	require.NoError(t, err)
	_, rest, ok := strings.Cut(string(page), "```yaml\n")
	require.True(t, ok)
	example, _, _ := strings.Cut(rest, "```")
	p, problems := apply(t, example)
	assert.Empty(t, problems)
	tadpole, _ := p.Step(Tadpole)
	assert.Equal(t, Number{0.8, "from memory"}, tadpole.Survival)
	assert.Equal(t, "own notes 2021 to 2026", tadpole.Days.Source)
}
