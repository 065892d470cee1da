package svg

import "strings"

// Escape makes text safe between tags and in attributes of XML and HTML. What
// XML does not allow (control characters, halves of pairs, text that is no
// UTF-8) becomes the replacement character; line ends and tabs become blanks.
func Escape(text string) string {
	var b strings.Builder
	for _, r := range text { // a byte that is no UTF-8 comes as the replacement character
		switch {
		case r == '<':
			b.WriteString("&lt;")
		case r == '>':
			b.WriteString("&gt;")
		case r == '&':
			b.WriteString("&amp;")
		case r == '"':
			b.WriteString("&quot;")
		case r == '\'':
			b.WriteString("&#39;")
		case r == '\n' || r == '\r' || r == '\t':
			b.WriteByte(' ')
		case r < 0x20 || r >= 0x7f && r < 0xa0 || r&0xffff >= 0xfffe || r >= 0xfdd0 && r <= 0xfdef:
			b.WriteRune('\ufffd')
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
