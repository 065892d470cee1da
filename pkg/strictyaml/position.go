package strictyaml

import "go.yaml.in/yaml/v3"

// Position is a place in a file. The zero value means the whole file.
type Position struct {
	Line   int `json:"line,omitempty"`   // from 1
	Column int `json:"column,omitempty"` // in characters, from 1
}

// PositionOf gives the place where n begins; the zero value for nil.
func PositionOf(n *yaml.Node) Position {
	if n == nil {
		return Position{}
	}
	return Position{Line: n.Line, Column: n.Column}
}

// Diagnostic gives a problem at a place, with the line of the file as excerpt.
// It is not added to [Document.Problems]: it is for checks that come after the
// reading.
func (doc *Document) Diagnostic(severity Severity, at Position, message, cure string) Diagnostic {
	return Diagnostic{
		File: doc.File, Line: at.Line, Column: at.Column,
		Severity: severity, Message: message, Cure: cure, Excerpt: doc.line(at.Line),
	}
}

// Report adds d to the problems of doc.
func (doc *Document) Report(d Diagnostic) { doc.problems = append(doc.problems, d) }

// Value gives the value of key in the mapping n, and nil when n is no mapping,
// or the key is missing or empty.
func Value(n *yaml.Node, key string) *yaml.Node {
	if n.Kind != yaml.MappingNode {
		return nil
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == key && !isNull(n.Content[i+1]) {
			return n.Content[i+1]
		}
	}
	return nil
}
