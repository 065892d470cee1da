package strictyaml

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// checkBytes reports what the parser would refuse without a usable place, or
// take for something that the eye does not see.
func (doc *Document) checkBytes(data []byte) {
	if !utf8.Valid(data) {
		line, column := place(data, firstInvalid(data))
		doc.unseen(line, column, "this is not valid UTF-8 text", "save the file as UTF-8")
		return
	}
	for i, line := range doc.lines {
		indent := len(line) - len(strings.TrimLeft(line, " \t"))
		if tab := strings.IndexByte(line[:indent], '\t'); tab >= 0 {
			doc.unseen(i+1, tab+1, "a tab is used to indent", "indent with blanks")
		}
		column := 0
		for _, r := range line {
			column++
			if r != '\t' && isControl(r) {
				doc.unseen(i+1, column, fmt.Sprintf("control character U+%04X", r), "remove it")
				break
			}
		}
	}
}

// unseen reports an error in a line that should not be shown as it is.
func (doc *Document) unseen(line, column int, message, cure string) {
	doc.at(Error, line, column, message, cure)
	last := &doc.problems[len(doc.problems)-1]
	last.Excerpt = strings.Map(visible, strings.ToValidUTF8(last.Excerpt, "�"))
}

func visible(r rune) rune {
	if r != '\t' && isControl(r) {
		return '�'
	}
	return r
}

// isControl is true of characters that are not seen but do something: control
// characters but for the line feed, separators of lines (which end a line for
// the parser), turns of the writing direction, marks of the byte order, and
// characters without width, which make two ids look the same. Joiners stay: they
// hold emoji and some scripts together.
func isControl(r rune) bool {
	switch {
	case r == '\n':
		return false
	case r < ' ', r >= 0x7f && r < 0xa0, r == '\u00ad', r == '\u200b', r == '\u2060', r == '\u2028', r == '\u2029', r == '\ufeff', r == '\ufffe', r == '\uffff':
		return true
	}
	return r >= '\u202a' && r <= '\u202e' || r >= '\u2066' && r <= '\u2069'
}

func splitLines(data []byte) []string {
	return strings.Split(plainBreaks(strings.TrimPrefix(string(data), "\ufeff")), "\n")
}

func plainBreaks(text string) string {
	return strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n")
}

func firstInvalid(data []byte) int {
	for i := 0; i < len(data); {
		r, size := utf8.DecodeRune(data[i:])
		if r == utf8.RuneError && size <= 1 {
			return i
		}
		i += size
	}
	return len(data)
}

// place gives line and column, in characters, of a byte offset.
func place(data []byte, offset int) (line, column int) {
	before := plainBreaks(strings.TrimPrefix(string(data[:offset]), "\ufeff"))
	line = strings.Count(before, "\n") + 1
	column = utf8.RuneCountInString(before[strings.LastIndexByte(before, '\n')+1:]) + 1
	return line, column
}
