package strictyaml

import (
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"
)

// Mapping is a YAML mapping that is being read. Each key is taken at most once;
// [Mapping.Done] reports the keys that nobody took.
// The zero value and the mapping of a wrong node are empty.
type Mapping struct {
	Node *yaml.Node // the mapping, for messages about the whole of it

	doc    *Document
	what   string // such as "an animal", for messages
	keys   []*yaml.Node
	values []*yaml.Node
	taken  []bool
	known  []string
}

// Mapping reads n as a mapping; what names it in messages, such as "an animal".
// It reports a node of another kind and keys that stand twice.
func (doc *Document) Mapping(n *yaml.Node, what string) *Mapping {
	m := &Mapping{Node: n, doc: doc, what: what}
	if n.Kind != yaml.MappingNode {
		doc.Errorf(n, "write it as {key: value, …} or as indented lines", "%s is a set of keys and values, not %s", what, kindName(n))
		return m
	}
	lines := make(map[string]int, len(n.Content)/2)
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		if key.Kind != yaml.ScalarNode {
			doc.Errorf(key, "write a plain word before the colon", "%s has a key that is %s", what, kindName(key))
			continue
		}
		if line, twice := lines[key.Value]; twice {
			doc.Errorf(key, "keep one of them", "key %q stands twice in %s, first in line %d", shorten(key.Value), what, line)
			continue
		}
		lines[key.Value] = key.Line
		m.keys = append(m.keys, key)
		m.values = append(m.values, value)
		m.taken = append(m.taken, false)
	}
	return m
}

// Doc is the document that m belongs to.
func (m *Mapping) Doc() *Document { return m.doc }

// What is the name of m in messages.
func (m *Mapping) What() string { return m.what }

// Take gives the value of key, and nil when it is missing or empty.
func (m *Mapping) Take(key string) *yaml.Node {
	m.known = append(m.known, key)
	for i, k := range m.keys {
		if k.Value == key {
			m.taken[i] = true
			if isNull(m.values[i]) {
				return nil
			}
			return m.values[i]
		}
	}
	return nil
}

// Key gives the node of a key itself, and nil when m does not have it.
func (m *Mapping) Key(key string) *yaml.Node {
	for _, k := range m.keys {
		if k.Value == key {
			return k
		}
	}
	return nil
}

// Has reports whether m has a value for key, without taking it.
func (m *Mapping) Has(key string) bool {
	for i, k := range m.keys {
		if k.Value == key {
			return !isNull(m.values[i])
		}
	}
	return false
}

// Rest takes all keys that were not taken yet, in the order of the file, for
// mappings whose keys are names of the keeper's.
func (m *Mapping) Rest() (keys, values []*yaml.Node) {
	for i, k := range m.keys {
		if !m.taken[i] {
			m.taken[i] = true
			keys = append(keys, k)
			values = append(values, m.values[i])
		}
	}
	return keys, values
}

// Done reports the keys that were not taken, each with the nearest known one.
func (m *Mapping) Done() {
	for i, k := range m.keys {
		if m.taken[i] {
			continue
		}
		m.doc.Errorf(k, cureForName(k.Value, m.known, "known here: "), "unknown key %q in %s", shorten(k.Value), m.what)
	}
}

// Text takes a scalar as the text that stands in the file. It is empty when
// the key is missing or reported. Control characters are reported.
func (m *Mapping) Text(key string) string {
	n := m.Take(key)
	if n == nil {
		return ""
	}
	return m.doc.Text(n, key)
}

// Text gives the text of a scalar; name is for messages. It reports another
// kind of node, control characters, and an entry of a list with nothing in it.
func (doc *Document) Text(n *yaml.Node, name string) string {
	text, _ := doc.scalar(n, name)
	return text
}

// scalar is Text; the second result is false when n was reported.
func (doc *Document) scalar(n *yaml.Node, name string) (string, bool) {
	switch {
	case n.Kind != yaml.ScalarNode:
		doc.Errorf(n, "write one value", "%s is one value, not %s", name, kindName(n))
		return "", false
	case isNull(n):
		doc.Errorf(n, "write a value or remove it", "%s has nothing in it", name)
		return "", false
	case strings.ContainsFunc(n.Value, isControl):
		doc.Errorf(n, "remove it", "%s has a control character", name)
		return "", false
	}
	return n.Value, true
}

// List takes a sequence, and nothing when the key is missing. It reports a
// node of another kind.
func (m *Mapping) List(key string) []*yaml.Node {
	n := m.Take(key)
	if n == nil {
		return nil
	}
	if n.Kind != yaml.SequenceNode {
		m.doc.Errorf(n, "write - before each entry, or put the entries in [ ]", "%s is a list, not %s", key, kindName(n))
		return nil
	}
	return n.Content
}

// OneOrMore takes a value that may be one or a list of several.
func (m *Mapping) OneOrMore(key string) []*yaml.Node {
	n := m.Take(key)
	switch {
	case n == nil:
		return nil
	case n.Kind == yaml.SequenceNode:
		return n.Content
	default:
		return []*yaml.Node{n}
	}
}

// Sub takes a mapping, and nil when the key is missing.
func (m *Mapping) Sub(key, what string) *Mapping {
	n := m.Take(key)
	if n == nil {
		return nil
	}
	return m.doc.Mapping(n, what)
}

// Choice takes one of the given words; it is empty when the key is missing or
// another word was reported.
func (m *Mapping) Choice(key string, words ...string) string {
	n := m.Take(key)
	if n == nil {
		return ""
	}
	return m.doc.Choice(n, key, words...)
}

// Choice reads one of the given words; name is for messages. It is empty when
// another word was reported.
func (doc *Document) Choice(n *yaml.Node, name string, words ...string) string {
	text, ok := doc.scalar(n, name)
	if !ok || slices.Contains(words, text) {
		return text
	}
	doc.Errorf(n, cureForName(text, words, "write one of "), "%s cannot be %q", name, shorten(text))
	return ""
}

func kindName(n *yaml.Node) string {
	switch n.Kind {
	case yaml.MappingNode:
		return "a set of keys and values"
	case yaml.SequenceNode:
		return "a list"
	case yaml.ScalarNode:
		if isNull(n) {
			return "nothing"
		}
		return fmt.Sprintf("%q", shorten(n.Value))
	}
	return "something else"
}

func shorten(s string) string {
	runes := []rune(s)
	if len(runes) <= 30 {
		return s
	}
	return string(runes[:29]) + "…"
}
