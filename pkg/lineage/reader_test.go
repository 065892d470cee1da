package lineage

import (
	"html"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// picture is a DOT text read back as Graphviz reads it, by a reader that shares
// nothing with the writer.
type picture struct {
	graph map[string]string
	nodes map[string]map[string]string // attributes by the id attribute
	rows  [][]string                   // ids of the nodes of each subgraph
	edges map[string]map[string]string // attributes by "from -> to"
}

const quotedText = `"(?:[^"\\]|\\.)*"`

var (
	nodeLine  = regexp.MustCompile(`^(n\d+)\[((?:[a-z]+=` + quotedText + `,?)+)\];$`)
	edgeLine  = regexp.MustCompile(`^(n\d+)->(n\d+)(?:\[((?:[a-z]+=` + quotedText + `,?)+)\])?;$`)
	graphLine = regexp.MustCompile(`^((?:[a-z]+=` + quotedText + `;)+)$`)
	attribute = regexp.MustCompile(`([a-z]+)=(` + quotedText + `)[,;]?`)
)

func read(t testing.TB, text string) picture {
	t.Helper()
	p := picture{nodes: map[string]map[string]string{}, edges: map[string]map[string]string{}}
	ids := map[string]string{}
	depth := 0
	for line := range strings.Lines(text) {
		line = strings.TrimSpace(line)
		switch {
		case line == "":
		case line == "digraph  {":
			depth++
		case strings.HasPrefix(line, "subgraph "):
			require.Regexp(t, `^subgraph s\d+ \{$`, line)
			depth++
			p.rows = append(p.rows, nil)
		case line == "}":
			depth--
		case nodeLine.MatchString(line):
			m := nodeLine.FindStringSubmatch(line)
			attrs := attributes(m[2])
			ids[m[1]] = attrs["id"]
			require.NotContains(t, p.nodes, attrs["id"], "an id stands twice")
			p.nodes[attrs["id"]] = attrs
			if depth == 2 {
				p.rows[len(p.rows)-1] = append(p.rows[len(p.rows)-1], attrs["id"])
			}
		case edgeLine.MatchString(line):
			m := edgeLine.FindStringSubmatch(line)
			require.Contains(t, ids, m[1])
			require.Contains(t, ids, m[2])
			p.edges[ids[m[1]]+" -> "+ids[m[2]]] = attributes(m[3])
		default:
			require.Regexp(t, graphLine, line, "not a line that is ever written")
			if depth == 1 {
				p.graph = attributes(line)
			}
		}
	}
	require.Zero(t, depth)
	return p
}

func attributes(list string) map[string]string {
	attrs := map[string]string{}
	for _, m := range attribute.FindAllStringSubmatch(list, -1) {
		if m[1] == "tooltip" { // is read once more
			m[2] = strings.ReplaceAll(m[2], `\\\\`, `\\`)
		}
		attrs[m[1]] = drawn(m[2])
	}
	return attrs
}

// drawn gives the text that Graphviz draws for a quoted string: the lexer takes
// \" for a quote and leaves other backslashes, then entities are resolved, then
// backslashes (Graphviz, "The DOT Language" and "escString").
func drawn(literal string) string {
	s := strings.ReplaceAll(literal[1:len(literal)-1], `\\`, "\x00")
	s = strings.ReplaceAll(s, `\"`, `"`)
	s = html.UnescapeString(s)
	s = strings.ReplaceAll(s, `\n`, "\n")
	s = regexp.MustCompile(`\\(.)`).ReplaceAllString(s, "<replaced:$1>")
	return strings.ReplaceAll(s, "\x00", `\`)
}

// boxes gives the ids of the animals in a picture.
func (p picture) boxes() []string {
	var out []string
	for _, id := range slices.Sorted(maps.Keys(p.nodes)) {
		if animal, ok := strings.CutPrefix(id, "animal-"); ok {
			out = append(out, animal)
		}
	}
	return out
}
