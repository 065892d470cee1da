package strictyaml

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"
	"pgregory.net/rapid"
)

// alike compares trees by what readers look at. Of a tag only that matters which
// tells nothing, and an empty text, from others.
var alike = cmp.Options{
	cmpopts.IgnoreFields(yaml.Node{}, "Tag", "HeadComment", "LineComment", "FootComment"),
	cmpopts.EquateEmpty(),
}

func sameTags(a, b *yaml.Node) bool {
	empty := func(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.Value == "" && n.Tag == "!!str" }
	if isNull(a) != isNull(b) || empty(a) != empty(b) || len(a.Content) != len(b.Content) {
		return false
	}
	for i := range a.Content {
		if !sameTags(a.Content[i], b.Content[i]) {
			return false
		}
	}
	return true
}

// agree holds that reading by line gives nothing or what the YAML parser gives,
// and reports which.
func agree(t interface {
	Fatalf(string, ...any)
}, text string,
) bool {
	doc := &Document{lines: splitLines([]byte(text))}
	if doc.checkBytes([]byte(text)); len(doc.problems) > 0 {
		return false
	}
	got, byLine := decodeByLine(doc.lines)
	if got == nil {
		return false
	}
	doc.byLine = byLine
	for list, items := range byLine {
		list.Content = doc.nodesOf(list)
		sameOneByOne(t, doc, items, list.Content)
	}
	want, second, err := decode([]byte(text))
	if err != nil || second != nil {
		t.Fatalf("the parser: %v\n%s", err, text)
	}
	if diff := cmp.Diff(want, got, alike); diff != "" || !sameTags(want, got) {
		t.Fatalf("(-parser +by line):\n%s\n%s", diff, text)
	}
	return true
}

// sameOneByOne holds that entries that are read one by one, in the same memory,
// are those that are read at once.
func sameOneByOne(t interface {
	Fatalf(string, ...any)
}, doc *Document, items []Item, want []*yaml.Node,
) {
	doc.EachMapping(items, "an entry", func(i int, m *Mapping) {
		if diff := cmp.Diff(want[i], m.Node); diff != "" || items[i].At != PositionOf(m.Node) {
			t.Fatalf("entry %d (-at once +one by one):\n%s", i, diff)
		}
	})
	doc.problems = nil
}

// many repeats a line, as often as it takes to be read by line.
func many(line string) string { return strings.Repeat(line, fewEntries) }

func TestByLineIsAsTheParser(t *testing.T) {
	for _, row := range []struct{ name, text string }{
		{"an entry of every kind", "diary:\n" + many("  - {on: 2027-01-01, count: -3, note: \"a, b: c\", other: 'x # y', sire: [a, \"b\"], name: Jörg zu Wald, n: null}\n")},
		{"columns behind letters of several bytes", "diary:\n" + many("  - {a: \"ä蛙\", b: 'ö', c: ü x, d: [é, f]}\n")},
		{"dashes without blanks before them", "diary:\n" + many("- {a: b}\n")},
		{"comments and blank lines between", "diary:\n# first\n\n" + many("- {a: b}\n  # more\n\n")},
		{"keys before and after", "keeper: x\ndiary:\n" + many("  - {a: b}\n") + "rules: {a: 1}\nnote: |\n  text\n"},
		{"two lists", "animals:\n" + many("  - {a: b}\n") + "diary:\n" + many("- {c: d}\n")},
		{"what is unusual in a line is left to the parser", "diary:\n" + many("  - {a: b}\n") + "  - {a: {b: [c, {d: e}]}, 'f': ~, g: \"\\n\", h: , i}   # why\n  - {x: it's, y: 'it''s', z: 12:30, ü: [], 3: 4}\n"},
		{"entries that leave nothing to the next in the same memory", "diary:\n" + many("  - {a: \"q\", b: [c, 'd'], e: null}\n  - {a: b, b: c, e: d}\n  - {a: [b], b: 'c'}\n")},
		{"a byte order mark and CRLF", "\ufeffdiary:\r\n" + many("  - {a: b}\r\n")},
		{"the same key twice", "diary:\n" + many("  - {a: b, a: c}\n") + "diary: {}\n"},
		{"no line end at the end", "diary:\n" + many("  - {a: b}\n") + "  - {a: c}"},
	} {
		t.Run(row.name, func(t *testing.T) { assert.True(t, agree(t, row.text), "it is read by line") })
	}
}

func TestByLineLeavesToTheParser(t *testing.T) {
	list := "diary:\n" + many("  - {a: b}\n")
	for _, row := range []struct{ name, text string }{
		{"few entries", "diary:\n  - {a: b}\n"},
		{"an entry over several lines", list + "  - a: c\n    b: d\n"},
		{"an entry that is not closed", list + "  - {a: c,\n     b: d}\n"},
		{"an entry that is indented otherwise", list + "   - {a: b}\n"},
		{"something behind the brace", list + "  - {a: b} x\n"},
		{"a list inside a quote", "keeper: \"\n" + list + "\"\n"},
		{"a list inside another list", "keeper: [\n" + list + "]\n"},
		{"a list below a text", "note: |\n  text\n" + list + " more\n"},
		{"two documents", list + "---\na: b\n"},
		{"a directive", "%YAML 1.2\n---\n" + list},
		{"an alias", list + "  - {a: *b}\n"},
		{"no YAML", list + "x\n"},
	} {
		t.Run(row.name, func(t *testing.T) { assert.False(t, agree(t, row.text)) })
	}
}

// Random files of pieces that are odd together.
func TestByLineOnRandomFiles(t *testing.T) {
	pieces := rapid.SampledFrom([]string{
		"a", "b c", "2027-01-01", "-3", "- x", "'q'", "\"q\"", "''", "\"\"", "'it''s'", "\"\\t\"", "[a, b]", "[]", "[a, [b]]", "{k: v}", "null", "~", "",
		"a:b", "a: b", "a #b", "#b", "&a", "*a", "!t", "é", "蛙 x", "x°C", "a,", "]", "}", "{", "  ", "yes", "?", "%", "|", "0x1f", "\u00a0x", "-", "--", ".5",
	})
	read := 0
	rapid.Check(t, func(t *rapid.T) {
		var b strings.Builder
		b.WriteString(rapid.SampledFrom([]string{"", "keeper: x\n", "keeper: \"x\n", "# c\n"}).Draw(t, "head") + "diary:\n" + many("  - {a: b}\n"))
		for range rapid.IntRange(0, 4).Draw(t, "lines") {
			b.WriteString("  - {")
			for i := range rapid.IntRange(0, 4).Draw(t, "pairs") {
				if i > 0 {
					b.WriteString(rapid.SampledFrom([]string{", ", ",", " , "}).Draw(t, "comma"))
				}
				fmt.Fprintf(&b, "%s:%s%s", rapid.SampledFrom([]string{"k", "key_b", "K", "null", "é", "'q'", ""}).Draw(t, "key"),
					rapid.SampledFrom([]string{" ", "", "  "}).Draw(t, "gap"), pieces.Draw(t, "value"))
			}
			b.WriteString(rapid.SampledFrom([]string{"}\n", "} \n", "} # c\n", "}x\n", "\n"}).Draw(t, "end"))
		}
		b.WriteString(rapid.SampledFrom([]string{"", "\n# c\n", "rules: {}\n", "\"\n", "x\n"}).Draw(t, "tail"))
		if agree(t, b.String()) {
			read++
		}
	})
	assert.Positive(t, read, "some were read by line")
}

// A reader that asks for nodes gets them, each time new ones.
func TestNodesOfAListThatWasReadByLine(t *testing.T) {
	doc := Parse("f", []byte("diary:\n"+many("  - {a: b}\n")+"  - {a: {c: d}}\n"))
	list := doc.Mapping(doc.Root, "x").List("diary")
	items := doc.Mapping(doc.Root, "x").Items("diary")
	require.Len(t, list, fewEntries+1)
	require.Len(t, items, fewEntries+1)
	for i, n := range list {
		assert.Equal(t, n, doc.Node(items[i]))
		assert.Equal(t, Position{Line: i + 2, Column: 5}, items[i].At)
	}
	assert.NotSame(t, doc.Node(items[0]), doc.Node(items[0]))
	assert.Nil(t, items[0].node, "it is not kept")
	assert.NotNil(t, items[fewEntries].node, "it is unusual")
	doc.Release()
	assert.Nil(t, doc.Root)
}

// What is wrong in a large file is said as in a small one.
func TestByLineProblemsAreTheSame(t *testing.T) {
	text := "diary:\n" + many("  - {on: 1}\n") + "  - {on: 2, on: 3}\n  - {on: &a 3}\n"
	doc := Parse("f", []byte(text))
	require.Len(t, doc.Problems(), 1)
	assert.Equal(t, "f:67:10: anchors (&a) are not used in this file; remove it and write the values out", doc.Problems()[0].String())
	doc = Parse("f", []byte(strings.Replace(text, "&a ", "", 1)+"  - {on: 4\n"))
	require.Len(t, doc.Problems(), 1)
	assert.Equal(t, 68, doc.Problems()[0].Line)
}

// FuzzByLine asks for the same tree as that of the parser, whatever the lines.
func FuzzByLine(f *testing.F) {
	for _, seed := range []string{"  - {a: b}\n", "keeper: \"\n", "- {a: [b, 'c']}", "  - {a: b} # c\n  - {a: 'it''s'}\nrules: {}"} {
		f.Add(seed, seed)
	}
	f.Fuzz(func(t *testing.T, before, after string) {
		agree(t, before+"\ndiary:\n"+many("  - {a: b}\n")+after)
	})
}
