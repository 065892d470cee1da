package strictyaml

import (
	"bytes"
	"encoding/json"
	"slices"
)

// Schema is what a reader takes for a value, as the part of JSON Schema (draft
// 2020-12) that is needed to say so.
type Schema struct {
	Draft string `json:"$schema,omitempty"`
	Title string `json:"title,omitempty"`

	Type      Types    `json:"type,omitempty"`
	Enum      []any    `json:"enum,omitempty"`
	Format    string   `json:"format,omitempty"`
	Pattern   string   `json:"pattern,omitempty"`
	MaxLength int      `json:"maxLength,omitempty"`
	Minimum   *float64 `json:"minimum,omitempty"`
	Maximum   *float64 `json:"maximum,omitempty"`

	Items    *Schema `json:"items,omitempty"`
	MinItems int     `json:"minItems,omitempty"`
	MaxItems int     `json:"maxItems,omitempty"`

	Properties Properties `json:"properties,omitempty"`
	Required   []string   `json:"required,omitempty"`
	// Others is what other keys hold; false for none.
	Others any `json:"additionalProperties,omitempty"`

	OneOf []*Schema `json:"oneOf,omitempty"`
	AnyOf []*Schema `json:"anyOf,omitempty"`
}

// Types are the types that a value may have.
type Types []string

// MarshalJSON writes one type as a text and several as a list.
func (t Types) MarshalJSON() ([]byte, error) {
	if len(t) == 1 {
		return json.Marshal(t[0])
	}
	return json.Marshal([]string(t))
}

// Properties are the keys of a mapping, in the order in which they are read.
type Properties []Property

// Property is a key and what it holds.
type Property struct {
	Key    string
	Schema *Schema
}

// MarshalJSON writes an object whose keys keep their order.
func (p Properties) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, property := range p {
		if i > 0 {
			b.WriteByte(',')
		}
		key, err := json.Marshal(property.Key)
		if err != nil {
			return nil, err
		}
		value, err := json.Marshal(property.Schema)
		if err != nil {
			return nil, err
		}
		b.Write(key)
		b.WriteByte(':')
		b.Write(value)
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// Text gives s as indented JSON with a line feed at its end.
func (s *Schema) Text() ([]byte, error) {
	var b bytes.Buffer
	encoder := json.NewEncoder(&b)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "\t")
	err := encoder.Encode(s)
	return b.Bytes(), err
}

// of gives what a key holds; it is entered when it is new.
func (s *Schema) of(key string) *Schema {
	for _, p := range s.Properties {
		if p.Key == key {
			return p.Schema
		}
	}
	v := &Schema{}
	s.Properties = append(s.Properties, Property{key, v})
	return v
}

// described reports whether s says anything yet.
func (s *Schema) described() bool { return s.Type != nil || s.Enum != nil || s.AnyOf != nil }

// AnyText is a text. Whatever stands behind a key is the text of it, so that
// 007 is one too.
func AnyText() *Schema { return &Schema{Type: []string{"string", "number", "boolean"}} }

// NumberFrom is a number from low to high.
func NumberFrom(low, high float64) *Schema {
	return &Schema{Type: []string{"number"}, Minimum: &low, Maximum: &high}
}

// WholeFrom is a whole number from low to high.
func WholeFrom(low, high int) *Schema {
	s := NumberFrom(float64(low), float64(high))
	s.Type = []string{"integer"}
	return s
}

// OneOfWords is one of the given words.
func OneOfWords(words ...string) *Schema {
	s := &Schema{}
	for _, w := range words {
		s.Enum = append(s.Enum, asWritten(w))
	}
	return s
}

// asWritten gives a word as a reader of YAML takes it.
func asWritten(word string) any {
	switch word {
	case "true", "false":
		return word == "true"
	}
	return word
}

// ListOf is a list of at least and at most so many items; most is 0 for any
// number.
func ListOf(item *Schema, least, most int) *Schema {
	return &Schema{Type: []string{"array"}, Items: item, MinItems: least, MaxItems: most}
}

// Either is one of several.
func Either(of ...*Schema) *Schema { return &Schema{AnyOf: of} }

// finish lets every key be empty that is not required, for an empty one counts
// as left out.
func (s *Schema) finish() {
	for _, p := range s.Properties {
		p.Schema.finish()
		if !slices.Contains(s.Required, p.Key) {
			p.Schema.orNothing()
		}
	}
	if s.Items != nil {
		s.Items.finish()
	}
	for _, one := range s.AnyOf {
		one.finish()
	}
}

func (s *Schema) orNothing() {
	switch {
	case s.AnyOf != nil:
		s.AnyOf = append(slices.Clone(s.AnyOf), &Schema{Type: []string{"null"}})
	case s.Enum != nil:
		s.Enum = append(slices.Clone(s.Enum), nil)
	case s.Type != nil:
		s.Type = append(slices.Clone(s.Type), "null")
	}
}
