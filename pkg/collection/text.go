package collection

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

const (
	maxID     = 64  // characters of an id
	maxPhrase = 200 // characters of a name, a line, a place

	maxParents = 1000 // ids in a list of possible parents
)

// The years in which a date is taken for meant; all others are slips.
const (
	firstYear = 1900
	lastYear  = 2199
)

// phrase takes a text of one line.
func (r *reader) phrase(m *strictyaml.Mapping, key string) string {
	n := m.Take(key)
	if n == nil {
		return ""
	}
	r.doc.Describe(n, phraseSchema)
	return r.oneLine(n, key, maxPhrase)
}

// oneLine gives a text of one line without blanks at its ends, and nothing
// when it was reported.
func (r *reader) oneLine(n *yaml.Node, name string, longest int) string {
	text := r.doc.Text(n, name)
	switch {
	case strings.Contains(text, "\n"):
		r.doc.Errorf(n, "write it in one line", "%s has more than one line", name)
		return ""
	case strings.TrimSpace(text) != text:
		r.doc.Errorf(n, "remove them", "%s %q has blanks at its ends", name, text)
		return ""
	case utf8.RuneCountInString(text) > longest:
		r.doc.Errorf(n, "shorten it", "%s has %d characters, more than %d", name, utf8.RuneCountInString(text), longest)
		return ""
	}
	return text
}

// id takes the id of a record, which must be there.
func (r *reader) id(m *strictyaml.Mapping) (string, *yaml.Node) {
	n := r.required(m, "id")
	if n == nil {
		return "", m.Node
	}
	r.doc.Describe(n, idSchema)
	text := r.oneLine(n, "id", maxID)
	switch {
	case isEmpty(n):
		r.doc.Errorf(n, "write a short text that is not used elsewhere", "the id of %s is empty", m.What())
	case strings.Contains(text, ","):
		r.doc.Errorf(n, "write another sign", "id %q has a comma", text)
		return "", n
	}
	return text, n
}

// isEmpty reports whether n is an empty text in quotes.
func isEmpty(n *yaml.Node) bool {
	return n.Kind == yaml.ScalarNode && n.Value == "" && n.Tag == "!!str"
}

// required takes a value that must be there.
func (r *reader) required(m *strictyaml.Mapping, key string) *yaml.Node {
	m.Require(key)
	n := m.Take(key)
	if n == nil && m.Node.Kind == yaml.MappingNode {
		r.doc.Errorf(m.Node, "add "+key+":", "%s has no value for %s", m.What(), key)
	}
	return n
}

// needed takes a text of one line that must be there.
func (r *reader) needed(m *strictyaml.Mapping, key string) string {
	n := r.required(m, key)
	if n == nil {
		return ""
	}
	r.doc.Describe(n, phraseSchema)
	text := r.oneLine(n, key, maxPhrase)
	if isEmpty(n) {
		r.doc.Errorf(n, "write it, or remove the entry", "%s of %s is empty", key, m.What())
	}
	return text
}

// refs takes one id or a list of ids, none of them twice.
func (r *reader) refs(m *strictyaml.Mapping, key string) []string {
	n := m.Take(key)
	if n == nil {
		return nil
	}
	r.doc.Describe(n, refsSchema)
	if n.Kind != yaml.SequenceNode {
		return r.ref(nil, n, key)
	}
	if len(n.Content) == 0 {
		r.doc.Errorf(n, "remove "+key+": when it is not known", "the list %s is empty", key)
	}
	if len(n.Content) > maxParents {
		r.doc.Errorf(n, "leave it out when so little is known", "the list %s has %d ids, more than %d", key, len(n.Content), maxParents)
		return nil
	}
	ids := make([]string, 0, len(n.Content))
	for _, item := range n.Content {
		ids = r.ref(ids, item, key)
	}
	r.twice(n.Content, key)
	return ids
}

// ref adds the id that n names to ids.
func (r *reader) ref(ids []string, n *yaml.Node, key string) []string {
	if text := r.doc.Text(n, key); text != "" {
		return append(ids, text)
	}
	if isEmpty(n) {
		r.doc.Errorf(n, "write an id, or remove "+key+":", "%s is empty", key)
	}
	return ids
}

// twice reports the values of a list that stand in it before.
func (r *reader) twice(list []*yaml.Node, key string) {
	seen := make(map[string]bool, len(list))
	for _, n := range list {
		if n.Kind == yaml.ScalarNode && seen[n.Value] {
			r.doc.Errorf(n, "keep one of them", "%q stands twice in the list %s", n.Value, key)
		}
		seen[n.Value] = true
	}
}

// date takes a date.
func (r *reader) date(m *strictyaml.Mapping, key string) civil.Date {
	n := m.Take(key)
	if n == nil {
		return 0
	}
	return r.day(n, key)
}

// neededDate takes a date that must be there.
func (r *reader) neededDate(m *strictyaml.Mapping, key string) civil.Date {
	n := r.required(m, key)
	if n == nil {
		return 0
	}
	return r.day(n, key)
}

// day reads a date.
func (r *reader) day(n *yaml.Node, name string) civil.Date {
	r.doc.Describe(n, dateSchema)
	return r.span(n, name, civilDay).First
}

// civilDay reads a single date as a span.
func civilDay(text string) (civil.Span, error) {
	d, err := civil.Parse(text)
	return civil.Span{First: d, Last: d}, err
}

// span reads a date or a span with the given parser. It is empty when it was
// reported.
func (r *reader) span(n *yaml.Node, name string, parse func(string) (civil.Span, error)) civil.Span {
	text := r.doc.Text(n, name)
	if text == "" && !isEmpty(n) {
		return civil.Span{} // reported
	}
	s, err := parse(text)
	var bad *civil.ParseError
	if errors.As(err, &bad) {
		r.doc.Errorf(n, bad.Cure, "%s: %q %s", name, bad.Text, bad.Reason)
		return civil.Span{}
	}
	for _, d := range [...]civil.Date{s.First, s.Last} {
		if year, _, _ := d.YMD(); year < firstYear || year > lastYear {
			r.doc.Errorf(n, fmt.Sprintf("write a year from %d to %d", firstYear, lastYear), "%s is in the year %04d", name, year)
			return civil.Span{}
		}
	}
	return s
}
