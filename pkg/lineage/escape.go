package lineage

import (
	"strings"
	"unicode"

	"github.com/emicklei/dot"
)

// quoted makes a DOT string of lines from outside, for a label or an id, such that
// Graphviz draws just that text. DOT knows only \" inside quotes; labels are then
// read a second time, for \n, \N and the like and for entities such as &lt;, so
// backslashes and ampersands are written as what comes out as one. Go's %q is not
// used: its \u and \x mean nothing to Graphviz.
//
// Line breaks are kept and tabs become blanks. Other control characters are
// dropped. Bytes that are not UTF-8, and what XML has no place for, would make
// an SVG unreadable and are shown as U+FFFD.
func quoted(lines ...string) dot.Literal { return literal(`\\`, lines) }

// hover makes a DOT string for a tooltip, whose backslashes Graphviz reads once
// more than those of a label (seen with 2.43 and 12.1).
func hover(line string) dot.Literal { return literal(`\\\\`, []string{line}) }

func literal(backslash string, lines []string) dot.Literal {
	var b strings.Builder
	b.WriteByte('"')
	for i, line := range lines {
		if i > 0 {
			b.WriteString(`\n`)
		}
		escape(&b, line, backslash)
	}
	b.WriteByte('"')
	return dot.Literal(b.String())
}

func escape(b *strings.Builder, text, backslash string) {
	text = strings.ReplaceAll(text, "\r\n", "\n")
	for _, r := range text { // a byte that is not UTF-8 comes as U+FFFD
		switch {
		case r == '"':
			b.WriteString(`\"`)
		case r == '\\':
			b.WriteString(backslash)
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
