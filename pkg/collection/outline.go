package collection

import (
	"go.yaml.in/yaml/v3"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Outline is where the lists of a file stand, for a program that adds lines to
// it and leaves all others as they are.
type Outline struct {
	At       strictyaml.Position // the first key
	Flow     bool                // the whole file stands in { }
	Sections []Section           // in the order of the file
}

// Section is a key at the top of the file with its value.
type Section struct {
	Key   string
	At    strictyaml.Position // the key
	Value strictyaml.Position // its value: of a list with dashes, the first dash
	Form  Form
	Items []strictyaml.Position // of a list, where each entry begins, behind its dash; read only
	Last  Leaf                  // of a list with entries, the end of the last one
}

// Form is how the value of a [Section] is written.
type Form int

// The forms.
const (
	Other     Form = iota // no list
	Missing               // nothing stands behind the key
	Dashed                // a list with dashes
	Bracketed             // a list in [ ]
)

// Leaf is the last value inside an entry of a list.
type Leaf struct {
	At      strictyaml.Position // where it begins
	Quoted  bool                // it is in quotes
	Literal bool                // it begins with | or >
	Empty   bool                // it is [] or {}
	Braces  int                 // the brackets of the entry that are open around it
	Flow    bool                // the entry itself is in { } or [ ]
}

// Outline gives where the lists of the file stand.
func (c *Collection) Outline() Outline { return c.outline }

// Section gives the section of that key, and false when the file has none.
func (o Outline) Section(key string) (Section, bool) {
	for _, s := range o.Sections {
		if s.Key == key {
			return s, true
		}
	}
	return Section{}, false
}

func outlineOf(doc *strictyaml.Document) Outline {
	root := doc.Root
	o := Outline{At: strictyaml.PositionOf(root), Flow: root.Style&yaml.FlowStyle != 0}
	for i := 0; i+1 < len(root.Content); i += 2 {
		key, value := root.Content[i], root.Content[i+1]
		s := Section{Key: key.Value, At: strictyaml.PositionOf(key), Value: strictyaml.PositionOf(value)}
		switch {
		case value.Kind == yaml.ScalarNode && value.Tag == "!!null" && value.Value == "":
			s.Form = Missing
		case value.Kind == yaml.SequenceNode:
			s.list(doc, value)
		}
		o.Sections = append(o.Sections, s)
	}
	return o
}

func (s *Section) list(doc *strictyaml.Document, n *yaml.Node) {
	s.Form = Dashed
	if n.Style&yaml.FlowStyle != 0 {
		s.Form = Bracketed
	}
	items := doc.Items(n)
	s.Items = make([]strictyaml.Position, len(items))
	for i, item := range items {
		s.Items[i] = item.At
	}
	if len(items) > 0 {
		s.Last = leafOf(doc.Node(items[len(items)-1]))
	}
}

// leafOf gives the last value inside n.
func leafOf(n *yaml.Node) Leaf {
	l := Leaf{Flow: n.Style&yaml.FlowStyle != 0}
	for len(n.Content) > 0 {
		if n.Style&yaml.FlowStyle != 0 {
			l.Braces++
		}
		n = n.Content[len(n.Content)-1]
	}
	l.At = strictyaml.PositionOf(n)
	l.Empty = n.Kind != yaml.ScalarNode
	l.Quoted = n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) != 0
	l.Literal = n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0
	return l
}
