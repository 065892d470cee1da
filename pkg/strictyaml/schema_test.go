package strictyaml_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// schemaOf gives the schema of one mapping on one line.
func schemaOf(t *testing.T, read func(*strictyaml.Mapping)) string {
	t.Helper()
	s := strictyaml.SchemaOf(func(doc *strictyaml.Document) {
		m := doc.Mapping(doc.Root, "x")
		read(m)
		m.Done()
		assert.Empty(t, doc.Problems(), "nothing stands there that could be wrong")
	})
	text, err := s.Text()
	require.NoError(t, err)
	line := strings.NewReplacer("\n", "", "\t", "", `": `, `":`).Replace(string(text))
	line = strings.TrimPrefix(line, `{"title":"x","type":"object"`)
	return strings.TrimSuffix(line, `,"additionalProperties":false}`)
}

func TestSchemaOf(t *testing.T) {
	for _, row := range []struct {
		name string
		read func(*strictyaml.Mapping)
		want string
	}{
		{"nothing", func(*strictyaml.Mapping) {}, ``},
		{
			"text", func(m *strictyaml.Mapping) { m.Text("a") },
			`,"properties":{"a":{"type":["string","number","boolean","null"]}}`,
		},
		{
			"whole number that must be there", func(m *strictyaml.Mapping) { m.Require("a"); m.Int("a", 1, 9) },
			`,"properties":{"a":{"type":"integer","minimum":1,"maximum":9}},"required":["a"]`,
		},
		{
			"number", func(m *strictyaml.Mapping) { m.Float("a", 0, 0.5) },
			`,"properties":{"a":{"type":["number","null"],"minimum":0,"maximum":0.5}}`,
		},
		{
			"words", func(m *strictyaml.Mapping) { m.Choice("a", "x", "true") },
			`,"properties":{"a":{"enum":["x",true,null]}}`,
		},
		{
			"quantity", func(m *strictyaml.Mapping) { m.Quantity("a", strictyaml.Grams(), 1, 2) },
			`,"properties":{"a_g":{"type":["number","null"],"minimum":1,"maximum":2},` +
				`"a":{"type":["string","null"],"pattern":"^-?[0-9]{1,15}(\\.[0-9]{1,15})? ?(g|kg|mg|oz)$"}}`,
		},
		{
			"the order of reading, and a key that is asked for twice", func(m *strictyaml.Mapping) { m.Take("z"); m.Int("a", 1, 2); m.Int("z", 3, 4) },
			`,"properties":{"z":{"type":["integer","null"],"minimum":3,"maximum":4},"a":{"type":["integer","null"],"minimum":1,"maximum":2}}`,
		},
		{
			"list of mappings", func(m *strictyaml.Mapping) {
				for _, n := range m.List("a") {
					m.Doc().Mapping(n, "an item").Text("b")
				}
			},
			`,"properties":{"a":{"type":["array","null"],"items":{"title":"an item","type":"object",` +
				`"properties":{"b":{"type":["string","number","boolean","null"]}},"additionalProperties":false}}}`,
		},
		{
			"one of two keys", func(m *strictyaml.Mapping) { m.OneOf("a", "b") },
			`,"additionalProperties":false,"oneOf":[{"properties":{"a":{"type":["string","number","boolean","array","object"]}},"required":["a"]},` +
				`{"properties":{"b":{"type":["string","number","boolean","array","object"]}},"required":["b"]}]}`,
		},
		{
			"the first description holds, and a word beside it", func(m *strictyaml.Mapping) {
				n := m.Take("a")
				m.Doc().Describe(n, strictyaml.WholeFrom(1, 2))
				m.Doc().Text(n, "a")
				m.Doc().Or(n, strictyaml.OneOfWords("none"))
			},
			`,"properties":{"a":{"anyOf":[{"type":"integer","minimum":1,"maximum":2},{"enum":["none"]},{"type":"null"}]}}`,
		},
		{
			"keys of the keeper's", func(m *strictyaml.Mapping) { m.Sub("a", "names").Rest() },
			`,"properties":{"a":{"title":"names","type":["object","null"],"additionalProperties":{"type":["string","number","boolean"]}}}`,
		},
	} {
		t.Run(row.name, func(t *testing.T) { assert.Equal(t, row.want, schemaOf(t, row.read)) })
	}
}

// What tells a schema something does nothing to a file.
func TestDescribingAFileDoesNothing(t *testing.T) {
	doc, m := mapping(t, "a: 1")
	m.Require("b")
	m.OneOf("b", "c")
	n := m.Take("a")
	doc.Describe(n, strictyaml.OneOfWords("x"))
	doc.Or(n, strictyaml.OneOfWords("none"))
	m.Done()
	assert.False(t, doc.Sketching())
	assert.Empty(t, doc.Problems())
}
