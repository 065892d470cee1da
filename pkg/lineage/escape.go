package lineage

import (
	"strings"
	"unicode"

	"github.com/emicklei/dot"
)

// quoted makes a DOT string of text from outside, such that Graphviz draws just
// that text. DOT knows only \" inside quotes; labels and ids are read a second
// time, for \n, \N and the like and for entities such as &lt;, so backslashes
// and ampersands are written twice over. Go's %q is not used: its \u and \x mean
// nothing to Graphviz.
//
// Line breaks are kept and tabs become blanks. Other control characters and
// what XML has no place for, and bytes that are not UTF-8, would make the
// picture unreadable: the former are dropped, the latter shown as U+FFFD.
func quoted(lines ...string) dot.Literal {
	var b strings.Builder
	b.WriteByte('"')
	for i, line := range lines {
		if i > 0 {
			b.WriteString(`\n`)
		}
		escape(&b, line)
	}
	b.WriteByte('"')
	return dot.Literal(b.String())
}

func escape(b *strings.Builder, text string) {
	text = strings.ReplaceAll(text, "\r\n", "\n")
	for _, r := range text { // a byte that is not UTF-8 comes as U+FFFD
		switch {
		case r == '"':
			b.WriteString(`\"`)
		case r == '\\':
			b.WriteString(`\\`)
		case r == '&':
			b.WriteString(`&amp;`)
		case r == '\n', r == '\r', r == '\u2028', r == '\u2029':
			b.WriteString(`\n`)
		case r == '\t':
			b.WriteByte(' ')
		case unicode.IsControl(r):
		case r == '\ufffe', r == '\uffff':
			b.WriteRune(unicode.ReplacementChar)
		default:
			b.WriteRune(r)
		}
	}
}
