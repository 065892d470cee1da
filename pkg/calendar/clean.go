package calendar

import (
	"strings"
	"unicode"
)

// clean gives text that every reader takes: valid UTF-8, lines ended by \n
// alone, and no other control character but the tab. All that Unicode calls a
// line end becomes \n, since some readers would cut a property there.
func clean(text string) string {
	text = strings.ReplaceAll(text, "\r\n", "\n")
	return strings.Map(func(r rune) rune { // which also makes U+FFFD of what is no UTF-8
		switch {
		case r == '\n' || r == '\t':
			return r
		case r == '\r' || r == '\u0085' || r == '\u2028' || r == '\u2029':
			return '\n'
		case unicode.IsControl(r):
			return -1
		}
		return r
	}, text)
}

// oneLine gives clean text with every run of white space as a single blank.
func oneLine(text string) string { return strings.Join(strings.Fields(clean(text)), " ") }
