package record

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// scalar writes a text as a YAML value that is read as that very text, within
// brackets and without: plain where nothing in it can be taken for something
// else, or else in double quotes.
func scalar(s string) string {
	if plain(s) {
		return s
	}
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r == '\n':
			b.WriteString(`\n`)
		case r > 0xffff || unicode.IsPrint(r):
			b.WriteRune(r)
		case r < 0x100:
			fmt.Fprintf(&b, `\x%02x`, r)
		default:
			fmt.Fprintf(&b, `\u%04x`, r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// nothing has the plain words that YAML takes for no value at all.
var nothing = []string{"null", "Null", "NULL"}

func plain(s string) bool {
	if s == "" || strings.HasSuffix(s, " ") || slices.Contains(nothing, s) {
		return false
	}
	for i, r := range s {
		letter := unicode.IsLetter(r) || unicode.IsDigit(r)
		if !letter && (i == 0 || !unicode.IsMark(r) && !strings.ContainsRune(" -_./()+;'°", r)) {
			return false
		}
	}
	return true
}
