package lineage

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// hostile are names that have broken something somewhere.
var hostile = []string{
	`the "big" one`, `back\slash`, `end\`, `\N`, `\G`, `\L \E \T \H`, `\"`, `\\`,
	"two\nlines", "crlf\r\nhere", "tab\there", "nbsp\u00a0here", "soft\u00adhyphen",
	"bell\x07", "nul\x00", "del\x7f", "nel\u0085",
	"Señor Größe", "蛙さん", "👩‍🔬", "bad\xffbyte", "edge\uffff",
	"<b>bold</b>", "<", "&lt;", "&", "&#60;", "a & b;", "--", "->", "{rank=same;}", "]; n1[label=x",
	"100%", "%s%d%!", "$(id)", "`id`", "//", "/* */", "# x", "strict", " blank ",
}

// TestGraphvizDrawsTheText hands hostile texts in every place to Graphviz and
// looks for them in the picture.
func TestGraphvizDrawsTheText(t *testing.T) {
	dot, err := exec.LookPath("dot")
	if err != nil {
		t.Skip("Graphviz is not installed: no dot on the PATH")
	}
	var records []pedigree.Record
	var animals []Animal
	var groups []pedigree.Group
	for _, s := range hostile {
		dam, clutch := "dam of "+s, "clutch "+s
		groups = append(groups, pedigree.Group{ID: "sire of " + s, Candidates: []pedigree.Candidate{{ID: "id " + s}, {ID: dam + "!"}}})
		records = append(records, pedigree.Record{ID: "id " + s}, pedigree.Record{ID: dam}, pedigree.Record{ID: dam + "!"},
			pedigree.Record{ID: "young of " + s, Sire: "sire of " + s, Dam: dam})
		animals = append(animals, Animal{Name: "name " + s, Line: "line " + s}, Animal{}, Animal{}, Animal{Clutch: clutch})
	}
	p, err := pedigree.New(records, groups...)
	require.NoError(t, err)
	text := Draw(p, animals, Everything()).DOT()
	read(t, text)

	texts, ids, titles := draw(t, dot, text)
	for _, s := range hostile {
		for _, line := range strings.Split(visible(s), "\n")[1:] {
			assert.True(t, texts[squeeze(line)], "further line %q of %q", line, s)
		}
		first, _, more := strings.Cut(visible(strings.ToValidUTF8(s, "\ufffd")), "\n")
		for _, before := range []string{"name ", "line ", "clutch ", "dam of ", "young of "} {
			assert.True(t, texts[squeeze(before+first)], "%s with %q", before, s)
		}
		if more {
			continue // Graphviz writes a line break in these as \n
		}
		assert.True(t, ids[squeeze("animal-id "+first)], "id of %q", s)
		assert.True(t, ids[squeeze("young-young of "+first)], "id of the young of %q", s)
		title := "id " + first + ", name " + first + ", sex unknown, line line " + first + ", F 0"
		assert.True(t, titles[squeeze(title)], "tooltip of %q", s)
	}
}

// draw gives the texts, the ids and the tooltips in the SVG that Graphviz makes.
func draw(t *testing.T, dot, text string) (texts, ids, titles map[string]bool) {
	t.Helper()
	var svg, complaints bytes.Buffer
	cmd := exec.Command(dot, "-Tsvg")
	cmd.Stdin, cmd.Stdout, cmd.Stderr = strings.NewReader(text), &svg, &complaints
	require.NoError(t, cmd.Run(), complaints.String())
	for line := range strings.Lines(complaints.String()) { // fonts are a matter of the machine
		assert.NotContains(t, line, "syntax")
		assert.NotContains(t, line, "Error")
	}
	texts, ids, titles = map[string]bool{}, map[string]bool{}, map[string]bool{}
	d := xml.NewDecoder(&svg)
	in := ""
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return texts, ids, titles
		}
		require.NoError(t, err)
		switch token := token.(type) {
		case xml.StartElement:
			in = token.Name.Local
			for _, a := range token.Attr {
				switch a.Name.Local {
				case "id":
					ids[squeeze(a.Value)] = true
				case "title":
					titles[squeeze(a.Value)] = true
				}
			}
		case xml.CharData:
			if in == "text" {
				texts[squeeze(string(token))] = true
			}
		case xml.EndElement:
			in = ""
		}
	}
}

// squeeze makes blanks alike: Graphviz writes some of them as hard ones.
func squeeze(s string) string {
	return strings.TrimSpace(strings.ReplaceAll(s, "\u00a0", " "))
}
