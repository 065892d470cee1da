package lineage

import (
	"html"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// The lines of a flowchart as the grammar of Mermaid has them, as far as they are
// used here.
var (
	mermaidNode  = regexp.MustCompile(`^\tn(\d+)(\(|\[\[|\(\()"([^"]+)"(\)|\]\]|\)\));$`)
	mermaidStyle = regexp.MustCompile(`^\tstyle n\d+ [a-z0-9#:, -]+$`)
	mermaidEdge  = regexp.MustCompile(`^\tn(\d+)-->(\|"maybe, \d+ %"\|)?n(\d+);$`)
)

// mermaidTexts reads a flowchart and gives the texts of its boxes, and its edges.
func mermaidTexts(t require.TestingT, text string) (texts map[string]string, edges []string) {
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	require.Equal(t, "flowchart TD;", lines[0])
	texts = map[string]string{}
	for _, line := range lines[1:] {
		if m := mermaidNode.FindStringSubmatch(line); m != nil {
			texts[m[1]] = html.UnescapeString(m[3])
			continue
		}
		if m := mermaidEdge.FindStringSubmatch(line); m != nil {
			edges = append(edges, texts[m[1]]+" -> "+texts[m[3]])
			continue
		}
		require.Regexp(t, mermaidStyle, line)
	}
	return texts, edges
}

func TestMermaid(t *testing.T) {
	p, animals := lindenhof(t)
	d := Draw(p, animals, Everything().Families())
	texts, edges := mermaidTexts(t, d.Mermaid())
	var all []string
	for _, text := range texts {
		all = append(all, text)
	}
	assert.Contains(t, all, "Bram, AC-04, male, Tarcoles 2021, F 0")
	assert.Contains(t, all, "2 young, 1 kept, F 0.0833 expected")
	assert.Contains(t, edges, "C-26-03 -> 2 young, 1 kept, F 0.0833 expected")
	assert.Contains(t, edges, "Bram, AC-04, male, Tarcoles 2021, F 0 -> C-26-03")
	assert.Contains(t, d.Mermaid(), `-->|"maybe, 67 %"|`)
	for range 20 {
		require.Equal(t, d.Mermaid(), Draw(p, animals, Everything().Families()).Mermaid())
	}
}

// Whatever the texts, every line is one of the grammar, and nothing is left of
// the signs that Mermaid reads.
func TestMermaidTakesAnyText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.SampledFrom(hostile)).Draw(t, "text")
		p, err := pedigree.New([]pedigree.Record{{ID: "sire"}, {ID: "dam"}, {ID: "young", Sire: "sire", Dam: "dam"}})
		require.NoError(t, err)
		d := Draw(p, []Animal{{Name: text}, {Line: text}, {Clutch: text}}, Everything())
		texts, edges := mermaidTexts(t, d.Mermaid())
		require.Len(t, texts, 4)
		require.Len(t, edges, 3)
		for _, text := range texts {
			require.NotRegexp(t, "[\"'`#<>&\\\\;\\n\\r]", text)
		}
	})
}
