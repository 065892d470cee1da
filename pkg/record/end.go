package record

import (
	"bytes"

	"github.com/spawnwright/spawnwright/pkg/collection"
)

// endOfList gives the end of the last entry of a list, behind its last bracket.
// The second result is false when it cannot be told.
func (b *Book) endOfList(s collection.Section) (int, bool) {
	t, leaf := b.text, s.Last
	from := t.offset(leaf.At)
	limit := b.limit(s)
	open := leaf.Braces
	if s.Form == collection.Bracketed || b.outline.Flow {
		limit = len(t.data)
	}
	switch {
	case leaf.Empty && from < limit:
		open++
		from++
	case leaf.Quoted:
		end, ok := endOfQuotes(t.data[:limit], from)
		if !ok {
			return 0, false
		}
		from = end
	case open > 0 || s.Form == collection.Bracketed:
		from = endOfWord(t.data[:limit], from)
	case leaf.Literal:
		return endOfLiteral(t, from, limit), true
	default:
		return endOfPlain(t, from, limit), true
	}
	return closeBrackets(t.data[:limit], from, open)
}

// limit gives where the next key at the top of the file begins its line, or
// where the document ends.
func (b *Book) limit(s collection.Section) int {
	next := len(b.text.starts) + 1
	for _, other := range b.outline.Sections {
		if other.At.Line > s.At.Line {
			next = min(next, other.At.Line)
		}
	}
	return min(b.text.start(next), b.endOfDocument())
}

// endOfDocument gives where the line ... begins, or the end of the file.
func (b *Book) endOfDocument() int {
	for l := len(b.text.starts); l > 0; l-- {
		line := b.text.line(l)
		if rest, marked := bytes.CutPrefix(line, []byte("...")); marked && (len(rest) == 0 || blank(rest[0])) {
			return b.text.start(l)
		}
		if !idle(line) {
			break
		}
	}
	return len(b.text.data)
}

// idle reports whether a line has nothing but a comment in it.
func idle(line []byte) bool {
	line = bytes.TrimSpace(line)
	return len(line) == 0 || line[0] == '#'
}

func endOfQuotes(data []byte, from int) (int, bool) {
	if from >= len(data) {
		return 0, false
	}
	quote := data[from]
	for i := from + 1; i < len(data); i++ {
		switch {
		case data[i] == '\\' && quote == '"':
			i++
		case data[i] != quote:
		case quote == '\'' && i+1 < len(data) && data[i+1] == quote:
			i++
		default:
			return i + 1, true
		}
	}
	return 0, false
}

// endOfWord gives the end of a plain value inside brackets, which ends with a
// comma, a bracket or a comment.
func endOfWord(data []byte, from int) int {
	end := from
	for i := from; i < len(data); i++ {
		switch c := data[i]; {
		case c == ',' || c == ']' || c == '}' || c == '#' && i > 0 && blank(data[i-1]):
			return end
		case !blank(c):
			end = i + 1
		}
	}
	return end
}

func blank(c byte) bool { return c == ' ' || c == '\t' || c == '\n' || c == '\r' }

// endOfPlain gives the end of a plain value outside of brackets, which may go on
// over several lines and ends with a comment.
func endOfPlain(t text, from, limit int) int {
	end := from
	for i := from; i < limit; i++ {
		switch c := t.data[i]; {
		case c == '#' && (i == 0 || blank(t.data[i-1])):
			return end
		case !blank(c):
			end = i + 1
		}
	}
	return end
}

// endOfLiteral gives the end of a text that begins with | or >: behind its last
// line, or, where the mark has a +, behind the empty lines that belong to it.
func endOfLiteral(t text, from, limit int) int {
	first := t.number(from)
	mark := t.data[from:t.start(first+1)]
	mark, _, _ = bytes.Cut(mark, []byte("#"))
	keep := bytes.IndexByte(mark, '+') >= 0
	end, indent := from+len(bytes.TrimRight(mark, " \t\r\n")), -1
	for l := first + 1; t.start(l) < limit; l++ {
		line := t.line(l)
		inner := bytes.TrimLeft(line, " ")
		deep := len(line) - len(inner)
		switch {
		case len(inner) == 0:
			if keep {
				end = t.start(l + 1)
			}
			continue
		case indent < 0:
			indent = deep
		case inner[0] == '#' && deep < indent:
			return end
		}
		end = t.start(l) + len(line)
	}
	return end
}

// closeBrackets passes over what stands behind the last value until so many
// brackets are closed.
func closeBrackets(data []byte, from, open int) (int, bool) {
	for i := from; open > 0; i++ {
		if i >= len(data) {
			return 0, false
		}
		switch c := data[i]; {
		case c == ']' || c == '}':
			open--
			from = i + 1
		case c == '#':
			for i+1 < len(data) && data[i+1] != '\n' && data[i+1] != '\r' {
				i++
			}
		case c != ',' && c != ':' && !blank(c):
			return 0, false
		}
	}
	return from, true
}
