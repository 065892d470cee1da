package strictyaml_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

const (
	initCure  = "`spawnwright init` writes one to start from"
	aliasCure = "write the values out"
	tagCure   = "remove the tag; put quotes around a text"
)

// TestParseRefuses shows every refusal as the keeper sees it.
func TestParseRefuses(t *testing.T) {
	for _, row := range []struct{ name, text, want string }{
		{"empty", "", "f: the file is empty; " + initCure},
		{"only blanks", " \n\t\r\n ", "f: the file is empty; " + initCure},
		{"only a byte order mark", "\ufeff", "f: there is nothing in the file; " + initCure},
		{"only comments", "# one\n# two\n", "f: there is nothing in the file; " + initCure},
		{"only a document mark", "---\n", "f: there is nothing in the file; " + initCure},
		{"null", "~\n", "f: there is nothing in the file; " + initCure},

		{"invalid UTF-8", "a: 1\nb: é\xe9 2\n", "f:2:5: this is not valid UTF-8 text; save the file as UTF-8"},
		{"invalid UTF-8 behind a byte order mark", "\ufeffa: \xff", "f:1:4: this is not valid UTF-8 text; save the file as UTF-8"},
		{"UTF-16 with its mark", "\xff\xfea\x00:\x00", "f:1:1: this is not valid UTF-8 text; save the file as UTF-8"},
		{"UTF-16 without a mark", "a\x00:\x00 \x001\x00", "f:1:2: control character U+0000; remove it"},
		{"escape", "a: \x1b[2J", "f:1:4: control character U+001B; remove it"},
		{"delete", "a: 1\nb: x\x7f", "f:2:5: control character U+007F; remove it"},
		{"next line, which ends a line unseen", "a: 1\u0085b: 2", "f:1:5: control character U+0085; remove it"},
		{"line separator, which does too", "a: 1\u2028b: 2", "f:1:5: control character U+2028; remove it"},
		{"blank without width", "a: x\u200by", "f:1:5: control character U+200B; remove it"},
		{"soft hyphen", "a: x\u00ady", "f:1:5: control character U+00AD; remove it"},
		{"writing direction turned", "a: x\u202ey", "f:1:5: control character U+202E; remove it"},
		{"byte order mark inside", "a: x\ufeff", "f:1:5: control character U+FEFF; remove it"},
		{"no character", "a: \uffff", "f:1:4: control character U+FFFF; remove it"},

		{"tab to indent", "a:\n\t- x\n", "f:2:1: a tab is used to indent; indent with blanks"},
		{"tab behind blanks", "a:\n  \t- x\n", "f:2:3: a tab is used to indent; indent with blanks"},
		{"tab with line ends of Windows", "a:\r\n\t- x\r\n", "f:2:1: a tab is used to indent; indent with blanks"},
		{"tab in an empty line", "a: 1\n \t\n", "f:2:2: a tab is used to indent; indent with blanks"},
		{"tab with bare carriage returns", "a:\r\t- x\r", "f:2:1: a tab is used to indent; indent with blanks"},

		{"alias", "a: &x 1\nb: *x\n", "f:1:4: anchors (&x) are not used in this file; remove it and write the values out\n" +
			"f:2:4: aliases (*x) are not used in this file; " + aliasCure},
		{"alias without an anchor", "a: 1\nb: [*x]\n", "f:2: aliases (*x) are not used in this file; " + aliasCure},
		{"alias of itself", "a: &a [*a]", "f:1:4: anchors (&a) are not used in this file; remove it and write the values out\n" +
			"f:1:8: aliases (*a) are not used in this file; " + aliasCure},
		{"anchor on a key", "&k a: 1", "f:1:1: anchors (&k) are not used in this file; remove it and write the values out"},
		{"tag", "a: !!str 007", "f:1:4: tags (!!str) are not used in this file; " + tagCure},
		{"tag of one's own", "a:\n  - !frog {b: 1}", "f:2:5: tags (!frog) are not used in this file; " + tagCure},
		{"tag with an escape in it", "a: !%1b[2J 1", "f:1:4: tags (!�[2J) are not used in this file; " + tagCure},
		{"column counts characters", "日本: [ä, &x 1]", "f:1:9: anchors (&x) are not used in this file; remove it and write the values out"},

		{"no blank behind a dash", "a:\n  - x\n  -{b: 1}\n", "f:3: there is no blank behind the -; put one there"},
		{"no blank behind the first dash", "a:\n  -{b: 1, c: 2}\n", "f:2: there is no blank behind the -; put one there"},
		{"no blank behind a colon, which is seen a line later", "keeper:x\na: []\n", "f:1: there is no blank behind the colon of keeper; put one there"},
		{"no blank behind a colon in an entry", "a:\n  - b:1\n    c: 2\n", "f:2: there is no blank behind the colon of b; put one there"},
		{"a colon too many, with its blanks", "a: b: c\n", "f:1: a colon stands where none can be; put quotes around a text that has a colon; look how the line is indented"},
		{"an address is no key", "a: [\nhttp://x\n", "f:2: a list that begins with [ is not closed, or a comma is missing; look from here on for a missing ] or comma"},

		{"second document", "a: 1\n---\nb: 2\n", "f:2:1: a second YAML document begins here; keep one document in a file: remove the line --- and what follows it"},
		{"second document that is empty", "a: 1\n---\n", "f:2:1: a second YAML document begins here; keep one document in a file: remove the line --- and what follows it"},
		{"second document with a mistake", "a: 1\n--- [\n", "f:2: a value is missing, or a bracket or comma is too many; look here and at the lines just above"},
		{"other version of YAML", "%YAML 1.2\n---\na: 1\n", "f:1: this file is marked for another version of YAML; remove the line"},
	} {
		t.Run(row.name, func(t *testing.T) {
			doc := strictyaml.Parse("f", []byte(row.text))
			assert.Nil(t, doc.Root)
			assert.Equal(t, row.want, shown(doc.Problems()))
		})
	}
}

// TestParseFindsTheLine has the mistakes far below the place that the YAML
// parser names, which is the beginning of the list, set or quote.
func TestParseFindsTheLine(t *testing.T) {
	list := "keeper: x\nanimals:\n" + strings.Repeat("  - {id: a, sex: male}\n", 50)
	const closing = "a list that begins with [ is not closed, or a comma is missing; look from here on for a missing ] or comma"
	for _, row := range []struct {
		name, text string
		line       int
		want       string
	}{
		{"entry indented too little", list + " - {id: b}\n" + list[10:], 53, "this line does not fit the lines above it; indent it like the key that it belongs beside"},
		{"entry without its dash", list + "  id: b\n  - {id: c}\n", 53, "this line does not belong to the list above it; indent it like the - lines above, or begin it with -"},
		{"key between two levels", "a:\n    b: 1\n    c: 1\n  d: 1\n", 4, "this line does not fit the lines above it; indent it like the key that it belongs beside"},
		{"quote not closed", list + "note: \"x\n" + list, 53, "a quote that is opened here is not closed; close it"},
		{"quote not closed in the first line", "note: 'x\n" + list, 1, "a quote that is opened here is not closed; close it"},
		{"bracket not closed", list + "sire: [a, b\n\n\ndam: x\n", 53, closing},
		{"bracket not closed, after one of several lines", "a: [x,\n  y]\nb: [x\nc: 1\n", 3, closing},
		{"colon in a text", list + "note: red: eyed\n", 53, "a colon stands where none can be; put quotes around a text that has a colon; look how the line is indented"},
		{"colon missing", list + "note\nplace: x\n", 53, "a colon is missing after a key; write key: value"},
		{"tab behind a dash", list + "  -\tid\n", 53, "a text cannot begin with this character; put quotes around the text; a tab has to be a blank"},
		{"list in the line of its key", list + "sire: - a\n", 53, "a list cannot begin in the line of its key; put each - on a line of its own"},
		{"comma too many", list + "sire: [a,, b]\n", 53, "a value is missing, or a bracket or comma is too many; look here and at the lines just above"},
		{"at sign", list + "note: @home\n", 53, "a text cannot begin with this character; put quotes around the text; a tab has to be a blank"},
		{"backslash", list + "note: \"C:\\q\"\n", 53, "a backslash in double quotes is followed by an unknown letter; use single quotes, or write the backslash twice"},
		{"line ends of Windows", strings.ReplaceAll(list+"note: @home\n", "\n", "\r\n"), 53, "a text cannot begin with this character; put quotes around the text; a tab has to be a blank"},
		{"byte order mark", "\ufeff" + list + "note: @home\n", 53, "a text cannot begin with this character; put quotes around the text; a tab has to be a blank"},
		{"more lines than are searched", strings.Repeat("#\n", 10_001) + "a: 'x\nb: 1\nc: 1\n", 10_002, "a quote that is opened here is not closed; close it"},
	} {
		t.Run(row.name, func(t *testing.T) {
			doc := strictyaml.Parse("f", []byte(row.text))
			assert.Nil(t, doc.Root)
			assert.Equal(t, fmt.Sprintf("f:%d: %s", row.line, row.want), shown(doc.Problems()))
		})
	}
}

func TestParseTakes(t *testing.T) {
	for _, row := range []struct{ name, text string }{
		{"line ends of Unix", "a: 1\nb: 007\n"},
		{"line ends of Windows", "a: 1\r\nb: 007\r\n"},
		{"bare carriage returns", "a: 1\rb: 007\r"},
		{"byte order mark", "\ufeffa: 1\nb: 007\n"},
		{"no line end", "a: 1\nb: 007"},
		{"document marks", "---\na: 1\nb: 007\n...\n"},
		{"one line", "{a: 1, b: 007}"},
		{"comments", "# x\na: 1 # y\nb: 007\n# z"},
		{"tab before a comment", "a: 1\t# y\nb: 007\n"},
	} {
		t.Run(row.name, func(t *testing.T) {
			doc := strictyaml.Parse("f", []byte(row.text))
			require.NotNil(t, doc.Root, shown(doc.Problems()))
			m := doc.Mapping(doc.Root, "the file")
			assert.Equal(t, "1", m.Text("a"))
			assert.Equal(t, "007", m.Text("b"), "the text of the file, not a number")
			m.Done()
			assert.Empty(t, doc.Problems())
		})
	}
}

// TestParseKeepsTexts has what other readers of YAML turn into something else.
func TestParseKeepsTexts(t *testing.T) {
	for _, text := range []string{"007", "0x1F", "0o12", "1_000", "1.50", "+1", "no", "yes", "off", "2027-03-19", "12:30", "1e3", ".inf", "<<", "="} {
		doc := strictyaml.Parse("f", []byte("id: "+text))
		require.NotNil(t, doc.Root, text)
		assert.Equal(t, text, doc.Mapping(doc.Root, "an animal").Text("id"))
		assert.Empty(t, doc.Problems())
	}
}

func TestParseTooLarge(t *testing.T) {
	data := make([]byte, strictyaml.MaxBytes+1)
	doc := strictyaml.Parse("f", data)
	assert.Nil(t, doc.Root)
	assert.Equal(t, "f: the file has 67108865 bytes, more than the 67108864 that are read; split it, or move old diary lines to another file", shown(doc.Problems()))
}

// TestParseHostile has texts that made readers of YAML hang or run out of
// memory. The limit is wide: it only tells straight from quadratic.
func TestParseHostile(t *testing.T) {
	bomb := "a0: &a0 [x, x, x, x, x, x, x, x, x]\n"
	for i := 1; i < 10; i++ {
		bomb += fmt.Sprintf("a%d: &a%d [%s*a%d]\n", i, i, strings.Repeat(fmt.Sprintf("*a%d, ", i-1), 8), i-1)
	}
	const deep = "lists and sets stand in one another too deep; look for brackets that are not closed"
	for _, row := range []struct{ name, text, want string }{
		{"100,000 brackets", strings.Repeat("[", 100_000), "f:1: " + deep},
		{"100,000 braces", strings.Repeat("{", 100_000), "f:1: " + deep},
		{"100,000 brackets in as many lines", strings.Repeat("[\n", 100_000), deep},
		{"100,000 dashes", strings.Repeat("- ", 100_000), "f:1: " + deep},
		{"100,000 keys in one another", strings.Repeat("{a: ", 100_000), "f:1: " + deep},
		{"alias bomb", bomb, "anchors (&a0) are not used in this file"},
		{"many comments", strings.Repeat("#\n", 200_000) + "a: [", "f:200001: a value is missing"},
		{"quote of many lines", "a: '" + strings.Repeat("\n", 200_000), "a quote that is opened here is not closed"},
		{"many keys with a mistake at the end", strings.Repeat("- {a: 1, b: 2}\n", 9_998) + "x: @", "this line does not belong to the list above it"},
	} {
		t.Run(row.name, func(t *testing.T) {
			begin := time.Now()
			doc := strictyaml.Parse("f", []byte(row.text))
			assert.Less(t, time.Since(begin), 10*time.Second)
			assert.Nil(t, doc.Root)
			assert.Contains(t, shown(doc.Problems()), row.want)
		})
	}
}

// TestParseDeepest walks the deepest document that is let through, so that no
// recursion over nodes is deeper than this.
func TestParseDeepest(t *testing.T) {
	const depth = 10_000
	doc := strictyaml.Parse("f", []byte(strings.Repeat("[", depth)+strings.Repeat("]", depth)))
	require.NotNil(t, doc.Root, shown(doc.Problems()))
	found := 0
	for n := doc.Root; ; n = n.Content[0] {
		found++
		if len(n.Content) == 0 {
			break
		}
	}
	assert.Equal(t, depth, found)
	assert.Nil(t, strictyaml.Parse("f", []byte(strings.Repeat("[", depth+1)+strings.Repeat("]", depth+1))).Root)
}

func TestParseExcerpts(t *testing.T) {
	for _, row := range []struct{ name, text, want, reason string }{
		{"plain", "a: 1\nb: &x 1\n", "b: &x 1", "the line as it stands"},
		{"escape", "a: \x1b[2J", "a: �[2J", "nothing reaches the terminal that does something"},
		{"invalid UTF-8 and an escape", "a: \xff\x1b[2J", "a: ��[2J", "the same"},
		{"long line", "a: &x " + strings.Repeat("y", 5000), "", "it would stand in each of the many problems of the line"},
	} {
		t.Run(row.name, func(t *testing.T) {
			problems := strictyaml.Parse("f", []byte(row.text)).Problems()
			require.Len(t, problems, 1)
			assert.Equal(t, row.want, problems[0].Excerpt, row.reason)
		})
	}
}

func shown(problems strictyaml.Diagnostics) string {
	lines := make([]string, len(problems))
	for i, p := range problems {
		lines[i] = p.String()
	}
	return strings.Join(lines, "\n")
}
