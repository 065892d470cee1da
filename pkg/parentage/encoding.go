package parentage

import (
	"bytes"
	"unicode/utf8"
)

// withoutMark takes off the byte order mark that some programs write before UTF-8.
func withoutMark(text []byte) []byte { return bytes.TrimPrefix(text, []byte("\uFEFF")) }

// encoded reports whether the text can be read at all, and notes each line that
// is not UTF-8.
func (r *reader) encoded() bool {
	text := r.scan.text
	if bytes.HasPrefix(text, []byte("\xff\xfe")) || bytes.HasPrefix(text, []byte("\xfe\xff")) {
		r.errs.add(0, saveAsUTF8, "this is UTF-16 text, not UTF-8")
		return false
	}
	for at := 0; !utf8.Valid(text[at:]); {
		at += invalid(text[at:])
		r.badText.add(at, saveAsUTF8, "the byte %#02x is not UTF-8 text", text[at])
		next := bytes.IndexAny(text[at:], "\r\n")
		if next < 0 {
			break
		}
		at += next
	}
	return true
}

const saveAsUTF8 = "save the table as CSV in UTF-8"

// invalid gives the place of the first byte that is not UTF-8, which there must be.
func invalid(text []byte) int {
	for at := 0; ; {
		c, size := utf8.DecodeRune(text[at:])
		if c == utf8.RuneError && size <= 1 {
			return at
		}
		at += size
	}
}
