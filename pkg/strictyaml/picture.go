package strictyaml

import (
	"fmt"
	"strings"
	"unicode"
)

// Picture gives the line of the file with a caret below the place, as two
// indented lines, or nothing when there is no line to show. A long line is cut
// around the place. The caret stands right where the terminal draws Chinese,
// Japanese and Korean letters two columns wide.
func (d Diagnostic) Picture() string {
	if d.Excerpt == "" {
		return ""
	}
	const width = 100
	runes := []rune(d.Excerpt)
	at := min(max(d.Column-1, 0), len(runes))
	from := 0
	if len(runes) > width && at > width/2 {
		from = min(at-width/2, len(runes)-width)
	}
	to := min(from+width, len(runes))
	text, indent := string(runes[from:to]), blank(runes[from:at])
	if from > 0 {
		text, indent = "…"+text, " "+indent
	}
	if to < len(runes) {
		text += "…"
	}
	number := fmt.Sprintf("%5d | ", d.Line)
	picture := number + text + "\n"
	if d.Column > 0 {
		picture += strings.Repeat(" ", len(number)-2) + "| " + indent + "^\n"
	}
	return picture
}

// blank gives white space that is as wide as text.
func blank(text []rune) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t':
			return '\t'
		case unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf):
			return -1
		case wide(r):
			return '\u3000' // the blank of those scripts is as wide as their letters
		}
		return ' '
	}, string(text))
}

func wide(r rune) bool {
	switch {
	case r >= '\uff61' && r <= '\uffdc': // half-width forms
		return false
	case r >= '\u3000' && r <= '\u303e', r >= '\uff01' && r <= '\uff60', r >= '\U0001f300' && r <= '\U0001faff':
		return true
	}
	return unicode.In(r, unicode.Han, unicode.Hiragana, unicode.Katakana, unicode.Hangul)
}
