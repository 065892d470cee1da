package strictyaml_test

import (
	"testing"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// FuzzParse reads anything at all: a document or a complaint with a place in
// the text comes out, and the nodes of a document can be read as every kind.
func FuzzParse(f *testing.F) {
	for _, s := range []string{
		"keeper: x\nanimals:\n  - {id: AC-01, weight: 12 g}\n",
		"a: &x [*x]\n<<: *x\n",
		"a: |\n  b\n   c\n# d\n---\n- e",
		"\ufeff? [a, {b: 'c'}]\n: \"\\u0041\"\r\n",
		"a: !!str 1\r\tb: @",
		"[[[{{{",
		"",
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		doc := strictyaml.Parse("f", data)
		problems := doc.Problems()
		if (doc.Root == nil) != problems.HasErrors() {
			t.Fatalf("root %v with %d problems", doc.Root, len(problems))
		}
		if doc.Root != nil {
			walk(t, doc, doc.Root)
			problems = doc.Problems()
		}
		for _, p := range problems {
			if p.Message == "" || p.Cure == "" || p.Line < 0 || p.Column < 0 || p.Column > 0 && p.Line == 0 {
				t.Fatalf("%#v", p)
			}
			if !utf8.ValidString(p.String()) || !utf8.ValidString(p.Picture()) {
				t.Fatalf("not UTF-8: %q %q", p, p.Picture())
			}
		}
	})
}

func walk(t *testing.T, doc *strictyaml.Document, n *yaml.Node) {
	if n.Kind == yaml.AliasNode || n.Anchor != "" {
		t.Fatalf("an alias or anchor came through: %#v", n)
	}
	doc.Text(n, "a text")
	doc.Int(n, "a number", 1, 10)
	doc.Float(n, "a number", 1, 10)
	m := doc.Mapping(n, "a set")
	m.Quantity("weight", strictyaml.Grams(), 1, 10)
	m.List("animals")
	m.Choice("sex", "male", "female")
	m.Done()
	for _, item := range doc.Items(n) {
		walk(t, doc, doc.Node(item))
	}
}
