package collection_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

var update = flag.Bool("update", false, "write docs/collection.schema.json anew")

func TestSchemaIsTheCommittedOne(t *testing.T) {
	text, err := collection.Schema().Text()
	require.NoError(t, err)
	path := filepath.Join("..", "..", "docs", "collection.schema.json")
	if *update {
		require.NoError(t, os.WriteFile(path, text, 0o600))
	}
	committed, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.True(t, string(committed) == string(text), "the reader has changed; `go test ./pkg/collection -update` writes the schema anew")
}

func TestSchemaTakesWhatTheReaderTakes(t *testing.T) {
	for _, path := range []string{"testdata/full.yaml", "../../examples/working/collection.yaml", "../../examples/small/collection.yaml", "../../cmd/spawnwright/starter.yaml"} {
		data, err := os.ReadFile(path)
		require.NoError(t, err)
		c, problems := collection.Read(path, data)
		require.NotNil(t, c, "%v", problems)
		assert.Empty(t, against(t, string(data)), path)
	}
}

// What is wrong with a single value is wrong for both.
func TestSchemaRefusesWhatTheReaderRefuses(t *testing.T) {
	for _, row := range []struct{ text, says string }{
		{"animal: []", "/animal is no key"},
		{"keeper: [a]", "/keeper is no string"},
		{"animals: {}", "/animals is no array"},
		{"animals: [{species: hyla-cinerea}]", "/animals/0 lacks id"},
		{"animals: [{id: A, species: hyla-cinerea, sex: m}]", "/animals/0/sex is none of the words"},
		{"animals: [{id: 'A,B', species: hyla-cinerea}]", "/animals/0/id is not as the pattern"},
		{"animals: [{id: A, species: hyla-cinerea, hatched: 1.2.2025}]", "/animals/0/hatched is not as the pattern"},
		{"animals: [{id: A, species: hyla-cinerea, weight_g: 9999}]", "/animals/0/weight_g is out of range"},
		{"animals: [{id: A, species: hyla-cinerea, weight: 9 stone}]", "/animals/0/weight is not as the pattern"},
		{"animals: [{id: A, species: hyla-cinerea, holds: [{from: 2027-01-01}]}]", "/animals/0/holds/0 lacks kind"},
		{"clutches: [{id: K, species: hyla-cinerea, laid: 2027-01-01, eggs: 1.5}]", "/clutches/0/eggs is no integer"},
		{"clutches: [{id: K, species: hyla-cinerea, laid: 2027-01-01, sire: []}]", "/clutches/0/sire fits nothing"},
		{"diary: [{on: 2027-01-01, place: tub, animal: A, note: x}]", "/diary/0 fits 2 of its forms"},
		{"diary: [{on: 2027-01-01, note: x}]", "/diary/0 fits 0 of its forms"},
		{"rules: {space_pct: [10]}", "/rules/space_pct has the wrong length"},
		{"species: [{use: hyla-cinerea, cycle: {rain: {days: [1, 2]}}}]", "/species/0/cycle/rain fits nothing"},
		{"species: [{use: hyla-cinerea, safe_c: [20]}]", "/species/0/safe_c fits nothing"},
		{"species: [{use: hyla-cinerea, id: mine}]", "/species/0 fits 2 of its forms"},
	} {
		c, _ := collection.Read("f", []byte(row.text))
		assert.Nil(t, c, "the reader takes %s", row.text)
		assert.Equal(t, []string{row.says}, against(t, row.text), row.text)
	}
	for _, text := range []string{"species: [{use: hyla-cinerea, cycle: {cooling: none}, development: {egg: {law: none}}}]", "animals:", "rules: {relax: }"} {
		c, problems := collection.Read("f", []byte(text))
		assert.NotNil(t, c, "%v", problems)
		assert.Empty(t, against(t, text), text)
	}
}

// Every key that the reader takes stands in the first column of a table of the
// reference, and nothing else does.
func TestReferenceNamesEveryKey(t *testing.T) {
	page, err := os.ReadFile("../../docs/file.md")
	require.NoError(t, err)
	known := map[string]bool{}
	schema := collection.Schema()
	for _, p := range schema.Properties {
		known[p.Key] = true
		if p.Key != "species" { // has a page of its own
			gather(p.Schema, known)
		}
	}
	code := regexp.MustCompile("`[^`\n]+`").FindAllString(string(page), -1)
	named := strings.FieldsFunc(strings.Join(code, " "), func(r rune) bool { return r != '_' && (r < 'a' || r > 'z') })
	for key := range known {
		if known[key+"_g"] || known[key+"_mm"] || known[key+"_c"] {
			continue // weight beside weight_g, as the rules for the whole file say
		}
		assert.True(t, slices.Contains(named, key), "docs/file.md does not name %s", key)
	}
	word := regexp.MustCompile("`([a-z_]+)`")
	for line := range strings.Lines(string(page)) {
		if !strings.HasPrefix(line, "| `") {
			continue
		}
		for _, m := range word.FindAllStringSubmatch(strings.Split(line, "|")[1], -1) {
			assert.True(t, known[m[1]], "docs/file.md has the key %s, which nobody reads", m[1])
		}
	}
}

func gather(s *strictyaml.Schema, known map[string]bool) {
	for _, p := range s.Properties {
		known[p.Key] = true
		gather(p.Schema, known)
	}
	if s.Items != nil {
		gather(s.Items, known)
	}
	for _, one := range s.AnyOf {
		gather(one, known)
	}
}

// against gives what a YAML text has against the schema: an obvious reader of
// the part of JSON Schema that is used.
func against(t *testing.T, text string) []string {
	t.Helper()
	var node yaml.Node
	require.NoError(t, yaml.Unmarshal([]byte(text), &node))
	return faults(node.Content[0], collection.Schema(), "")
}

func faults(n *yaml.Node, s *strictyaml.Schema, at string) []string {
	fault := func(format string, args ...any) []string { return []string{at + " " + fmt.Sprintf(format, args...)} }
	kind := typeOf(n)
	switch {
	case s.AnyOf != nil:
		for _, one := range s.AnyOf {
			if len(faults(n, one, at)) == 0 {
				return nil
			}
		}
		return fault("fits nothing")
	case s.Enum != nil:
		if kind == "null" && slices.Contains(s.Enum, nil) || slices.ContainsFunc(s.Enum, func(v any) bool { return v != nil && fmt.Sprint(v) == n.Value }) {
			return nil
		}
		return fault("is none of the words")
	case s.Type != nil && !slices.Contains(s.Type, kind) && !(kind == "integer" && slices.Contains(s.Type, "number")):
		return fault("is no %s", s.Type[0])
	}
	switch kind {
	case "object":
		return objectFaults(n, s, at)
	case "array":
		if len(n.Content) < s.MinItems || s.MaxItems > 0 && len(n.Content) > s.MaxItems {
			return fault("has the wrong length")
		}
		var found []string
		for i, item := range n.Content {
			found = append(found, faults(item, s.Items, fmt.Sprintf("%s/%d", at, i))...)
		}
		return found
	case "string":
		if s.Pattern != "" && !regexp.MustCompile(s.Pattern).MatchString(n.Value) || s.MaxLength > 0 && utf8.RuneCountInString(n.Value) > s.MaxLength {
			return fault("is not as the pattern")
		}
	case "integer", "number":
		v, err := strconv.ParseFloat(n.Value, 64)
		if s.Minimum != nil && err == nil && (v < *s.Minimum || v > *s.Maximum) {
			return fault("is out of range")
		}
	}
	return nil
}

func objectFaults(n *yaml.Node, s *strictyaml.Schema, at string) []string {
	var found []string
	for i := 0; i < len(n.Content); i += 2 {
		key := n.Content[i].Value
		p := slices.IndexFunc(s.Properties, func(p strictyaml.Property) bool { return p.Key == key })
		switch others, free := s.Others.(*strictyaml.Schema); {
		case p >= 0:
			found = append(found, faults(n.Content[i+1], s.Properties[p].Schema, at+"/"+key)...)
		case free:
			found = append(found, faults(n.Content[i+1], others, at+"/"+key)...)
		case s.Others == false:
			found = append(found, at+"/"+key+" is no key")
		}
	}
	for _, key := range s.Required {
		if strictyaml.Value(n, key) == nil {
			found = append(found, at+" lacks "+key)
		}
	}
	if s.OneOf != nil {
		fits := 0
		for _, one := range s.OneOf {
			if len(faults(n, one, at)) == 0 {
				fits++
			}
		}
		if fits != 1 {
			found = append(found, fmt.Sprintf("%s fits %d of its forms", at, fits))
		}
	}
	return found
}

func typeOf(n *yaml.Node) string {
	switch {
	case n.Kind == yaml.MappingNode:
		return "object"
	case n.Kind == yaml.SequenceNode:
		return "array"
	}
	switch n.Tag {
	case "!!int":
		return "integer"
	case "!!float":
		return "number"
	case "!!bool":
		return "boolean"
	case "!!null":
		return "null"
	}
	return "string"
}
