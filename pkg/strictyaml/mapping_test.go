package strictyaml_test

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

func TestMappingReports(t *testing.T) {
	for _, row := range []struct {
		name, text string
		read       func(m *strictyaml.Mapping)
		want       string
	}{
		{"all taken", "id: x", func(m *strictyaml.Mapping) { m.Text("id") }, ""},
		{"unknown key", "idd: x", func(m *strictyaml.Mapping) { m.Text("id") }, `f:1:1: unknown key "idd" in an animal; did you mean "id"?`},
		{"unknown key with swapped letters", "sier: x", func(m *strictyaml.Mapping) { m.Text("dam"); m.Text("sire") }, `f:1:1: unknown key "sier" in an animal; did you mean "sire"?`},
		{"unknown key like none", "colour: x", func(m *strictyaml.Mapping) { m.Text("id"); m.Text("sex") }, `f:1:1: unknown key "colour" in an animal; known here: id, sex`},
		{"unknown key in place", "id: x\nsex: male\n  \n# c\nwieght_g: 3", func(m *strictyaml.Mapping) { m.Text("id"); m.Text("sex"); m.Text("weight_g") }, `f:5:1: unknown key "wieght_g" in an animal; did you mean "weight_g"?`},
		{"key of another case", "ID: x", func(m *strictyaml.Mapping) { m.Text("id") }, `f:1:1: unknown key "ID" in an animal; did you mean "id"?`},
		{"no blank behind a colon", "{id: x, sex:male}", func(m *strictyaml.Mapping) { m.Text("id"); m.Text("sex") }, `f:1:9: unknown key "sex:male" in an animal; put a blank behind the colon: sex: male`},
		{"colon in a key that is none", "{id: x, web:male}", func(m *strictyaml.Mapping) { m.Text("id"); m.Text("sex") }, `f:1:9: unknown key "web:male" in an animal; known here: id, sex`},
		{"keys that were taken twice", "foo: x", func(m *strictyaml.Mapping) { m.Text("id"); m.Text("sex"); m.Text("id") }, `f:1:1: unknown key "foo" in an animal; known here: id, sex`},
		{"merge key", "<<: {id: x}", func(m *strictyaml.Mapping) { m.Text("id") }, `f:1:1: unknown key "<<" in an animal; known here: id`},
		{"long unknown key", "abcdefghijklmnopqrstuvwxyz0123456789: x", func(m *strictyaml.Mapping) { m.Text("id") }, `f:1:1: unknown key "abcdefghijklmnopqrstuvwxyz012…" in an animal; known here: id`},
		{"decimal comma inside braces", "{id: 7,5, sex: x}", func(m *strictyaml.Mapping) { m.Text("id"); m.Text("sex") }, `f:1:8: 5 is not a key: inside { } a comma ends the value before it; write a point: id: 7.5`},
		{"number as a key, not inside braces", "id: 7\n5:", func(m *strictyaml.Mapping) { m.Text("id") }, `f:2:1: unknown key "5" in an animal; known here: id`},
		{"number as a key, after a word", "{id: x,5, sex: y}", func(m *strictyaml.Mapping) { m.Text("id"); m.Text("sex") }, `f:1:8: unknown key "5" in an animal; known here: id, sex`},
		{"duplicate key", "id: x\nsex: male\nid: y", func(m *strictyaml.Mapping) { m.Text("id"); m.Text("sex") }, `f:3:1: key "id" stands twice in an animal, first in line 1; keep one of them`},
		{"duplicate key, three times", "{id: x, id: y, id: z}", func(m *strictyaml.Mapping) { m.Text("id") }, `f:1:9: key "id" stands twice in an animal, first in line 1; keep one of them` + "\n" + `f:1:16: key "id" stands twice in an animal, first in line 1; keep one of them`},
		{"duplicate key, in quotes", "id: x\n\"id\": y", func(m *strictyaml.Mapping) { m.Text("id") }, `f:2:1: key "id" stands twice in an animal, first in line 1; keep one of them`},
		{"key that is a list", "? [a]\n: x\nid: y", func(m *strictyaml.Mapping) { m.Text("id") }, `f:1:3: an animal has a key that is a list; write a plain word before the colon`},
		{"list instead of a mapping", "- id: x", func(*strictyaml.Mapping) {}, `f:1:1: an animal is a set of keys and values, not a list; write it as {key: value, …} or as indented lines`},
		{"word instead of a mapping", "Bram", func(*strictyaml.Mapping) {}, `f:1:1: an animal is a set of keys and values, not "Bram"; write it as {key: value, …} or as indented lines`},
		{"list instead of a text", "id: [x]", func(m *strictyaml.Mapping) { m.Text("id") }, `f:1:5: id is one value, not a list; write one value`},
		{"mapping instead of a text", "id: {x: y}", func(m *strictyaml.Mapping) { m.Text("id") }, `f:1:5: id is one value, not a set of keys and values; write one value`},
		{"control character by escape", `id: "a\u0007b"`, func(m *strictyaml.Mapping) { m.Text("id") }, `f:1:5: id has a control character; remove it`},
		{"writing direction by escape", `id: "a\u202eb"`, func(m *strictyaml.Mapping) { m.Text("id") }, `f:1:5: id has a control character; remove it`},
		{"tab by escape", `id: "a\tb"`, func(m *strictyaml.Mapping) { m.Text("id") }, `f:1:5: id has a control character; remove it`},
		{"text instead of a list", "sire: x", func(m *strictyaml.Mapping) { m.List("sire") }, `f:1:7: sire is a list, not "x"; write - before each entry, or put the entries in [ ]`},
		{"word instead of a sub-mapping", "rules: x", func(m *strictyaml.Mapping) { m.Sub("rules", "rules") }, `f:1:8: rules is a set of keys and values, not "x"; write it as {key: value, …} or as indented lines`},
		{"wrong word", "sex: mal", func(m *strictyaml.Mapping) { m.Choice("sex", "male", "female") }, `f:1:6: sex cannot be "mal"; did you mean "male"?`},
		{"wrong word like none", "sex: hermaphrodite", func(m *strictyaml.Mapping) { m.Choice("sex", "male", "female") }, `f:1:6: sex cannot be "hermaphrodite"; write one of male, female`},
		{"word of another case", "sex: Male", func(m *strictyaml.Mapping) { m.Choice("sex", "male", "female") }, `f:1:6: sex cannot be "Male"; did you mean "male"?`},
		{"empty word", `sex: ""`, func(m *strictyaml.Mapping) { m.Choice("sex", "male", "female") }, `f:1:6: sex cannot be ""; write one of male, female`},
		{"list instead of a word", "sex: [male]", func(m *strictyaml.Mapping) { m.Choice("sex", "male") }, `f:1:6: sex is one value, not a list; write one value`},
		{"several at once", "idd: x\nsex: mal\nfoo: 1", func(m *strictyaml.Mapping) { m.Text("id"); m.Choice("sex", "male") }, `f:1:1: unknown key "idd" in an animal; did you mean "id"?` + "\n" + `f:2:6: sex cannot be "mal"; did you mean "male"?` + "\n" + `f:3:1: unknown key "foo" in an animal; known here: id, sex`},
	} {
		t.Run(row.name, func(t *testing.T) {
			doc := strictyaml.Parse("f", []byte(row.text))
			require.NotNil(t, doc.Root, shown(doc.Problems()))
			m := doc.Mapping(doc.Root, "an animal")
			row.read(m)
			m.Done()
			assert.Equal(t, row.want, shown(doc.Problems()))
		})
	}
}

// TestManyKeys has more keys than are compared one by one.
func TestManyKeys(t *testing.T) {
	var text strings.Builder
	for i := range 100 {
		fmt.Fprintf(&text, "k%d: %d\n", i, i)
	}
	text.WriteString("? [k0]\n: x\nk7: again\nk99: again\n")
	doc, m := mapping(t, text.String())
	for i := range 100 {
		assert.Equal(t, strconv.Itoa(i), m.Text(fmt.Sprintf("k%d", i)), "the first one counts")
	}
	m.Done()
	assert.Equal(t, "f:101:3: an animal has a key that is a list; write a plain word before the colon\n"+
		`f:103:1: key "k7" stands twice in an animal, first in line 8; keep one of them`+"\n"+
		`f:104:1: key "k99" stands twice in an animal, first in line 100; keep one of them`, shown(doc.Problems()))
}

// TestMappingsInOneAnother has a mapping that is read in the middle of another.
func TestMappingsInOneAnother(t *testing.T) {
	doc, outer := mapping(t, "id: x\nsub: {idd: y}\nnaem: z")
	outer.Text("id")
	inner := outer.Sub("sub", "a part")
	inner.Text("id")
	inner.Done()
	outer.Text("name")
	outer.Done()
	assert.Equal(t, `f:2:7: unknown key "idd" in a part; did you mean "id"?`+"\n"+
		`f:3:1: unknown key "naem" in an animal; did you mean "name"?`, shown(doc.Problems()))
}

// TestNothingBehindAKey has the ways of leaving a value out.
func TestNothingBehindAKey(t *testing.T) {
	for _, text := range []string{"a:", "a: ~", "a: null", "{a: }", "{a}", "b: 1"} {
		doc, m := mapping(t, text)
		assert.Nil(t, m.Take("a"), text)
		assert.False(t, m.Has("a"), text)
		assert.Empty(t, m.Text("a"), text)
		assert.Empty(t, m.Choice("a", "x"), text)
		assert.Nil(t, m.List("a"), text)
		assert.Nil(t, m.Sub("a", "a"), text)
		_, ok := m.Int("a", 1, 2)
		assert.False(t, ok, text)
		_, ok = m.Float("a", 1, 2)
		assert.False(t, ok, text)
		_, ok = m.Quantity("a", strictyaml.Grams(), 1, 2)
		assert.False(t, ok, text)
		assert.Empty(t, doc.Problems(), text)
	}
}

func TestNothingInAList(t *testing.T) {
	for _, text := range []string{"a: [x, ]", "a:\n  - x\n  -\n", "a: [x, ~]"} {
		doc, m := mapping(t, text)
		nodes := m.List("a")
		for _, n := range nodes {
			doc.Text(n, "sire")
		}
		if len(nodes) == 2 {
			require.Len(t, doc.Problems(), 1, text)
			assert.Contains(t, doc.Problems()[0].String(), "sire has nothing in it; write a value or remove it")
		}
	}
	doc, m := mapping(t, `a: [""]`)
	assert.Empty(t, doc.Text(m.List("a")[0], "sire"))
	assert.Empty(t, doc.Problems(), "quotes say that a text is meant")
}

func TestMappingLists(t *testing.T) {
	_, m := mapping(t, "a: [1, 2]\nb: 3\nc: []")
	assert.Equal(t, []string{"1", "2"}, values(m.List("a")))
	assert.Empty(t, m.List("c"))
}

func TestMappingRest(t *testing.T) {
	doc, m := mapping(t, "z: 1\nid: x\na: 2")
	m.Text("id")
	keys, vals := m.Rest()
	assert.Equal(t, []string{"z", "a"}, values(keys), "in the order of the file")
	assert.Equal(t, []string{"1", "2"}, values(vals))
	keys, _ = m.Rest()
	assert.Empty(t, keys)
	m.Done()
	assert.Empty(t, doc.Problems(), "what Rest took is known")
}

func TestMappingLooksWithoutTaking(t *testing.T) {
	doc, m := mapping(t, "id: x")
	assert.True(t, m.Has("id"))
	assert.Equal(t, 1, m.Key("id").Column)
	assert.Nil(t, m.Key("name"))
	assert.Equal(t, "x", strictyaml.Value(m.Node, "id").Value)
	assert.Nil(t, strictyaml.Value(m.Node, "name"))
	assert.Nil(t, strictyaml.Value(m.Key("id"), "name"), "not a mapping")
	assert.Equal(t, "an animal", m.What())
	assert.Same(t, doc, m.Doc())
	m.Done()
	assert.Len(t, doc.Problems(), 1, "id was looked at and not taken")
}

func TestMappingOfAWrongNodeIsEmpty(t *testing.T) {
	doc, m := mapping(t, "[a, b]")
	assert.Len(t, doc.Problems(), 1)
	assert.Nil(t, m.Take("a"))
	keys, _ := m.Rest()
	assert.Empty(t, keys)
	m.Done()
	assert.Len(t, doc.Problems(), 1, "one report is enough")

	var zero strictyaml.Mapping
	assert.Nil(t, zero.Take("a"))
	zero.Done()
}

func mapping(t *testing.T, text string) (*strictyaml.Document, *strictyaml.Mapping) {
	t.Helper()
	doc := strictyaml.Parse("f", []byte(text))
	require.NotNil(t, doc.Root, shown(doc.Problems()))
	return doc, doc.Mapping(doc.Root, "an animal")
}

func values(nodes []*yaml.Node) []string {
	var list []string
	for _, n := range nodes {
		list = append(list, n.Value)
	}
	return list
}
