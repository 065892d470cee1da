package strictyaml

import (
	"cmp"
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

	doc   *Document
	what  string       // such as "an animal", for messages
	pairs []*yaml.Node // key, value, key, value, …
	taken []bool       // of each pair; reported ones count as taken
	known []string     // the keys that were asked for

	sketch *Schema // of [SchemaOf]; nil otherwise
}

// Mapping reads n as a mapping; what names it in messages, such as "an animal".
// It reports a node of another kind and keys that stand twice.
func (doc *Document) Mapping(n *yaml.Node, what string) *Mapping {
	m := &Mapping{Node: n, doc: doc, what: what, known: doc.spare[:0]}
	doc.spare = nil
	if doc.sketch != nil {
		doc.Describe(n, &Schema{Title: what, Type: []string{"object"}, Others: false})
		m.sketch = doc.sketch.of[n]
		return m
	}
	if n.Kind != yaml.MappingNode {
		doc.Errorf(n, "write it as {key: value, …} or as indented lines", "%s is a set of keys and values, not %s", what, kindName(n))
		return m
	}
	m.pairs, m.taken = n.Content, make([]bool, len(n.Content)/2)
	first := firsts(n.Content)
	for i := range m.taken {
		key := m.pairs[2*i]
		if key.Kind != yaml.ScalarNode {
			doc.Errorf(key, "write a plain word before the colon", "%s has a key that is %s", what, kindName(key))
			m.taken[i] = true
		} else if f := first(i); f < i {
			doc.Errorf(key, "keep one of them", "key %q stands twice in %s, first in line %d", shorten(key.Value), what, m.pairs[2*f].Line)
			m.taken[i] = true
		}
	}
	return m
}

// firsts gives a function that tells for each pair which one has the same key
// first. Most mappings have few keys, and need no table.
func firsts(pairs []*yaml.Node) func(i int) int {
	const few = 32
	if len(pairs) <= 2*few {
		return func(i int) int {
			for f := range i {
				if sameKey(pairs[2*f], pairs[2*i]) {
					return f
				}
			}
			return i
		}
	}
	first := make(map[string]int, len(pairs)/2)
	for i := len(pairs)/2 - 1; i >= 0; i-- {
		if pairs[2*i].Kind == yaml.ScalarNode {
			first[pairs[2*i].Value] = i
		}
	}
	return func(i int) int { return first[pairs[2*i].Value] }
}

func sameKey(a, b *yaml.Node) bool {
	return a.Value == b.Value && a.Kind == yaml.ScalarNode && b.Kind == yaml.ScalarNode
}

// find gives the number of the pair of key, and -1 when there is none.
func (m *Mapping) find(key string) int {
	for i := range m.taken {
		if k := m.pairs[2*i]; k.Value == key && k.Kind == yaml.ScalarNode {
			return i
		}
	}
	return -1
}

// Doc is the document that m belongs to.
func (m *Mapping) Doc() *Document { return m.doc }

// What is the name of m in messages.
func (m *Mapping) What() string { return m.what }

// Take gives the value of key, and nil when it is missing or empty.
func (m *Mapping) Take(key string) *yaml.Node {
	if m.sketch != nil {
		return m.sketched(key)
	}
	m.known = append(m.known, key)
	i := m.find(key)
	if i < 0 {
		return nil
	}
	m.taken[i] = true
	if value := m.pairs[2*i+1]; !isNull(value) {
		return value
	}
	return nil
}

// Key gives the node of a key itself, and nil when m does not have it.
func (m *Mapping) Key(key string) *yaml.Node {
	if i := m.find(key); i >= 0 {
		return m.pairs[2*i]
	}
	return nil
}

// Has reports whether m has a value for key, without taking it.
func (m *Mapping) Has(key string) bool {
	i := m.find(key)
	return i >= 0 && !isNull(m.pairs[2*i+1])
}

// Rest takes all keys that were not taken yet, in the order of the file, for
// mappings whose keys are names of the keeper's.
func (m *Mapping) Rest() (keys, values []*yaml.Node) {
	if m.sketch != nil {
		m.sketch.Others = AnyText()
	}
	for i, taken := range m.taken {
		if !taken {
			m.taken[i] = true
			keys = append(keys, m.pairs[2*i])
			values = append(values, m.pairs[2*i+1])
		}
	}
	return keys, values
}

// Done reports the keys that were not taken, each with the nearest known one.
// It is called once, after all others.
func (m *Mapping) Done() {
	for i, taken := range m.taken {
		if taken {
			continue
		}
		k := m.pairs[2*i]
		if number, ok := m.commaNumber(i); ok {
			m.doc.Errorf(k, "write a point: "+number, "%s is not a key: inside { } a comma ends the value before it", k.Value)
			continue
		}
		cure := cmp.Or(m.unitOfKey(i), m.blankInKey(k.Value))
		if cure == "" {
			cure = cureForName(k.Value, m.known, "known here: ")
		}
		m.doc.Errorf(k, cure, "unknown key %q in %s", shorten(k.Value), m.what)
	}
	if m.doc != nil {
		m.doc.spare = m.known
	}
}

// commaNumber reports whether pair i is what comes after the comma of a number
// such as 7,5 inside braces, and gives the pair before it with a point.
func (m *Mapping) commaNumber(i int) (corrected string, ok bool) {
	k := m.pairs[2*i]
	if i == 0 || !isNull(m.pairs[2*i+1]) || m.Node.Style&yaml.FlowStyle == 0 || !plainInt(k.Value) {
		return "", false
	}
	name, before := m.pairs[2*i-2], m.pairs[2*i-1]
	if !plainInt(before.Value) {
		return "", false
	}
	return name.Value + ": " + before.Value + "." + k.Value, true
}

// blankInKey is the cure for a key that has its value in it, such as sex:male inside braces.
func (m *Mapping) blankInKey(key string) string {
	name, value, found := strings.Cut(key, ":")
	if !found || !slices.Contains(m.known, name) {
		return ""
	}
	return fmt.Sprintf("put a blank behind the colon: %s: %s", name, shorten(value))
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
	case doc.sketch != nil:
		doc.Describe(n, AnyText())
		return "", false
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
// node of another kind. See [Mapping.Items] for large ones.
func (m *Mapping) List(key string) []*yaml.Node {
	n := m.list(key)
	switch {
	case n == nil:
		return nil
	case m.sketch != nil:
		return m.doc.sketchedList(n)
	}
	return m.doc.nodesOf(n)
}

// list takes the node of a sequence.
func (m *Mapping) list(key string) *yaml.Node {
	n := m.Take(key)
	if n != nil && m.sketch == nil && n.Kind != yaml.SequenceNode {
		m.doc.Errorf(n, "write - before each entry, or put the entries in [ ]", "%s is a list, not %s", key, kindName(n))
		return nil
	}
	return n
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
	if doc.sketch != nil {
		doc.Describe(n, OneOfWords(words...))
		return ""
	}
	text, ok := doc.scalar(n, name)
	if !ok || slices.Contains(words, text) {
		return text
	}
	list := "write one of "
	if len(words) == 1 {
		list = "write "
	}
	doc.Errorf(n, cureForName(text, words, list), "%s cannot be %q", name, shorten(text))
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
