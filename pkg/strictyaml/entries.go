package strictyaml

import (
	"strings"

	"go.yaml.in/yaml/v3"
)

// fewEntries is how many entries a list must have to be read line by line. A
// shorter one is read fast enough with the rest.
const fewEntries = 64

// entries is a list at the top of a file each entry of which is one line that
// begins with "- {". That is how large files are written, and such a line can be
// read by itself, several times as fast as by the YAML parser.
type entries struct {
	key         int // the line of the key, from 0
	first, last int // the lines of the first and the last entry
	count       int // of the entries
	indent      int // blanks before the dash
}

// entriesOf finds such lists. It looks at the form of lines only: whether a key
// is a key is seen when the rest of the file has been parsed.
func entriesOf(lines []string) []entries {
	var found []entries
	for i := 0; i < len(lines); i++ {
		line := lines[i]
		if strings.HasPrefix(line, "---") || strings.HasPrefix(line, "...") || strings.HasPrefix(line, "%") {
			return nil // more than one document, or a directive
		}
		if line == "" || line[0] < 'a' || line[0] > 'z' || !strings.HasSuffix(line, ":") {
			continue
		}
		list, next := entriesFrom(lines, i)
		if list.count >= fewEntries {
			found = append(found, list)
			i = next - 1
		}
	}
	return found
}

// entriesFrom gives the list under the key in line key, without entries when
// there is another line among them, and the line after it.
func entriesFrom(lines []string, key int) (list entries, next int) {
	list.key = key
	for i := key + 1; i < len(lines); i++ {
		text := strings.TrimLeft(lines[i], " ")
		indent := len(lines[i]) - len(text)
		switch {
		case text == "" || text[0] == '#':
		case strings.HasPrefix(text, "- {") && (list.count == 0 || indent == list.indent):
			if list.count == 0 {
				list.first, list.indent = i, indent
			}
			list.last = i
			list.count++
		case indent == 0 && text[0] != '-':
			return list, i
		default:
			return entries{}, i
		}
	}
	return list, len(lines)
}

// without gives the text of lines with all entries of the lists left out. Every
// other line keeps its number.
func without(lines []string, lists []entries) []byte {
	var b strings.Builder
	next := 0
	for _, l := range lists {
		for _, line := range lines[next:l.first] {
			b.WriteString(line)
			b.WriteByte('\n')
		}
		b.WriteString(strings.Repeat("\n", l.last+1-l.first))
		next = l.last + 1
	}
	for _, line := range lines[next:] {
		b.WriteString(line)
		b.WriteByte('\n')
	}
	return []byte(b.String())
}

// decodeByLine gives the top node as decode does, but for large lists that are
// read line by line: their nodes have no content, and their entries are given
// apart. It gives nil where it is not certain that decode would give the same.
func decodeByLine(lines []string) (top *yaml.Node, byLine map[*yaml.Node][]Item) {
	lists := entriesOf(lines)
	if lists == nil {
		return nil, nil
	}
	top, second, err := decode(without(lines, lists))
	if err != nil || second != nil || top.Kind != yaml.MappingNode {
		return nil, nil
	}
	byLine = make(map[*yaml.Node][]Item, len(lists))
	for _, l := range lists {
		value := emptyValue(top, l.key+1)
		if value == nil {
			return nil, nil // the key stands inside something else, such as a quote
		}
		items := l.items(lines)
		if items == nil {
			return nil, nil
		}
		*value = yaml.Node{Kind: yaml.SequenceNode, Tag: "!!seq", Line: l.first + 1, Column: l.indent + 1}
		byLine[value] = items
	}
	return top, byLine
}

// items gives the entries of the list, and nil when one of them is not a set in
// braces. Only the unusual ones keep their nodes.
func (l entries) items(lines []string) []Item {
	var room nodes
	items := make([]Item, 0, l.count)
	for i := l.first; i <= l.last; i++ {
		text := lines[i][min(l.indent, len(lines[i])):]
		if !strings.HasPrefix(text, "- {") {
			continue
		}
		room.reuse()
		item := Item{At: Position{Line: i + 1, Column: l.indent + 3}}
		if room.entry(text[2:], i+1, l.indent+3) == nil {
			if item.node = parsedEntry(text[2:], i+1, l.indent+3); item.node == nil {
				return nil
			}
		}
		items = append(items, item)
	}
	return items
}

// emptyValue gives the value of the key at the top in a line, and nil when none begins
// there or something stands behind it.
func emptyValue(top *yaml.Node, line int) *yaml.Node {
	for i := 0; i+1 < len(top.Content); i += 2 {
		if k, v := top.Content[i], top.Content[i+1]; k.Line == line && isNull(v) && v.Value == "" && v.Anchor == "" && v.Style == 0 {
			return v
		}
	}
	return nil
}
