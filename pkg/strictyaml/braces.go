package strictyaml

import (
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"
)

// nodes makes many nodes with few allocations.
type nodes struct {
	chunk []yaml.Node
	slots []*yaml.Node
	made  int // nodes of the chunk that are in use
	taken int // slots that are
}

func (s *nodes) node() *yaml.Node {
	if s.made == len(s.chunk) {
		s.chunk, s.made = make([]yaml.Node, 64), 0
	}
	n := &s.chunk[s.made]
	s.made++
	*n = yaml.Node{}
	return n
}

// content keeps a list of nodes.
func (s *nodes) content(list []*yaml.Node) []*yaml.Node {
	if len(s.slots)-s.taken < len(list) {
		s.slots, s.taken = make([]*yaml.Node, 64+len(list)), 0
	}
	kept := s.slots[s.taken : s.taken+len(list) : s.taken+len(list)]
	s.taken += copy(kept, list)
	return kept
}

// reuse takes back all nodes that were made.
func (s *nodes) reuse() { s.made, s.taken = 0, 0 }

// entry reads a line from its brace on; line and column say where that is. It
// gives nil for what it leaves to parsedEntry.
func (s *nodes) entry(text string, line, column int) *yaml.Node {
	b := braces{nodes: s, text: text, line: line, column: column}
	if n, ok := b.set(); ok && b.at == len(text) {
		return n
	}
	return nil
}

// parsedEntry is entry by the YAML parser, and gives nil for what is not one set
// in braces.
func parsedEntry(text string, line, column int) *yaml.Node {
	n, second, err := decode([]byte(text))
	if err != nil || second != nil || n.Kind != yaml.MappingNode {
		return nil
	}
	shift(n, line-1, column-1)
	return n
}

func shift(n *yaml.Node, lines, columns int) {
	n.Line += lines
	n.Column += columns
	for _, child := range n.Content {
		shift(child, lines, columns)
	}
}

// braces reads {key: value, key: [value, value]} where nothing is unusual: keys
// of small letters, values that are plain or quoted without escapes. It leaves
// all else to the YAML parser.
type braces struct {
	*nodes
	text         string
	at           int // bytes that were read
	wide         int // bytes among them that are no character of their own
	line, column int // where text begins
}

func (b *braces) place(n *yaml.Node) *yaml.Node {
	n.Line, n.Column = b.line, b.column+b.at-b.wide
	return n
}

// next gives the next byte, and 0 at the end; no text has that one.
func (b *braces) next() byte {
	if b.at < len(b.text) {
		return b.text[b.at]
	}
	return 0
}

func (b *braces) blanks() {
	for b.next() == ' ' {
		b.at++
	}
}

func (b *braces) set() (*yaml.Node, bool) {
	n := b.place(b.node())
	n.Kind, n.Style, n.Tag = yaml.MappingNode, yaml.FlowStyle, "!!map"
	var room [32]*yaml.Node
	content := room[:0]
	for end := byte('{'); end != '}'; end = b.next() {
		if end != '{' && end != ',' {
			return nil, false
		}
		b.at++
		b.blanks()
		key, ok := b.key()
		if !ok {
			return nil, false
		}
		value, ok := b.value()
		if !ok {
			return nil, false
		}
		content = append(content, key, value)
	}
	b.at++
	n.Content = b.content(content)
	return n, true
}

// key reads a key with its colon and the blanks behind it.
func (b *braces) key() (*yaml.Node, bool) {
	n := b.place(b.node())
	start := b.at
	for c := b.next(); c >= 'a' && c <= 'z' || c == '_'; c = b.next() {
		b.at++
	}
	n.Kind, n.Tag, n.Value = yaml.ScalarNode, "!!str", b.text[start:b.at]
	if b.at == start || !strings.HasPrefix(b.text[b.at:], ": ") || n.Value == "null" {
		return nil, false
	}
	b.at++
	b.blanks()
	return n, true
}

func (b *braces) value() (*yaml.Node, bool) {
	if b.next() != '[' {
		return b.scalar()
	}
	n := b.place(b.node())
	n.Kind, n.Style, n.Tag = yaml.SequenceNode, yaml.FlowStyle, "!!seq"
	var room [16]*yaml.Node
	content := room[:0]
	for end := byte('['); end != ']'; end = b.next() {
		if end != '[' && end != ',' {
			return nil, false
		}
		b.at++
		b.blanks()
		item, ok := b.scalar()
		if !ok {
			return nil, false
		}
		content = append(content, item)
	}
	b.at++
	b.blanks()
	n.Content = b.content(content)
	return n, true
}

// scalar reads one value and the blanks behind it.
func (b *braces) scalar() (*yaml.Node, bool) {
	n := b.place(b.node())
	n.Kind = yaml.ScalarNode
	switch c := b.next(); {
	case c == '"':
		n.Style = yaml.DoubleQuotedStyle
	case c == '\'':
		n.Style = yaml.SingleQuotedStyle
	case plainSign(c) || c == '-' && b.at+1 < len(b.text) && isDigit(b.text[b.at+1]):
		return n, b.plain(n)
	default:
		return nil, false
	}
	return n, b.quoted(n, b.next())
}

func (b *braces) quoted(n *yaml.Node, quote byte) bool {
	b.at++
	length := strings.IndexByte(b.text[b.at:], quote)
	if length < 0 {
		return false
	}
	n.Tag, n.Value = "!!str", b.text[b.at:b.at+length]
	b.at += length + 1
	if b.next() == quote || strings.IndexByte(n.Value, '\\') >= 0 || strings.IndexByte(n.Value, '\t') >= 0 {
		return false
	}
	b.wide += length - utf8.RuneCountInString(n.Value)
	b.blanks()
	return true
}

// plain reads a value without quotes, up to the comma or bracket behind it.
func (b *braces) plain(n *yaml.Node) bool {
	start, end := b.at, b.at
	for {
		switch c := b.next(); {
		case c == ' ':
			b.at++
			continue
		case c == ',' || c == '}' || c == ']':
			n.Value = b.text[start:end]
			if n.Tag = "!!str"; n.Value == "null" || n.Value == "Null" || n.Value == "NULL" {
				n.Tag = "!!null"
			}
			return true
		case c >= 0x80 && !utf8.RuneStart(c):
			b.wide++
		case !plainSign(c) && strings.IndexByte("-_./+()", c) < 0:
			return false
		}
		b.at++
		end = b.at
	}
}

// plainSign reports whether a plain value may begin with c.
func plainSign(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || isDigit(c) || c >= 0x80
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }
