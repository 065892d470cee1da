package lineage

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestQuoted(t *testing.T) {
	for _, tc := range []struct {
		why, text, want string
	}{
		{"nothing", "", `""`},
		{"plain", "Bram", `"Bram"`},
		{"a quote would end the string", `the "big" one`, `"the \"big\" one"`},
		{"a backslash would take the next letter", `C:\new`, `"C:\\new"`},
		{"a backslash at the end would take the quote", `end\`, `"end\\"`},
		{"a backslash before a quote", `\"`, `"\\\""`},
		{"Graphviz puts the name of the node for this", `\N \G \L`, `"\\N \\G \\L"`},
		{"an entity would become a bracket", "&lt; &#60; & co", `"&amp;lt; &amp;#60; &amp; co"`},
		{"markup is text", "<b>bold</b>", `"<b>bold</b>"`},
		{"line breaks of all kinds", "a\nb\r\nc\rd\u2028e", `"a\nb\nc\nd\ne"`},
		{"a tab is a blank", "a\tb", `"a b"`},
		{"control characters have no look", "a\x00b\x01c\x7fd\u0085e", `"abcde"`},
		{"accents", "Señor Größe", `"Señor Größe"`},
		{"other scripts", "蛙 さん", `"蛙 さん"`},
		{"joined emoji keep their joiner", "👩‍🔬", `"👩‍🔬"`},
		{"hard blanks and soft hyphens stay", "a\u00a0b\u00adc", "\"a\u00a0b\u00adc\""},
		{"verbs of fmt mean nothing", "100%d %s%", `"100%d %s%"`},
		{"not UTF-8", "a\xffb", `"a�b"`},
		{"XML has no place for these", "a\ufffeb\uffff", `"a�b�"`},
	} {
		t.Run(tc.why, func(t *testing.T) {
			assert.Equal(t, tc.want, string(quoted(tc.text)))
		})
	}
	assert.Equal(t, `"a\nb"`, string(quoted("a", "b")), "lines")
	assert.Equal(t, `"a\\\\N \"\n"`, string(hover("a\\N \"\n")), "tooltips are read twice")
}

// visible gives what is to be seen of a text, by rules written down apart from
// those of the writer.
func visible(text string) string {
	text = strings.ToValidUTF8(text, "\x02") // a run of bad bytes counts as one
	text = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\u2028", "\n", "\u2029", "\n", "\t", " ").Replace(text)
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n':
			return r
		case r == '\ufffe' || r == '\uffff':
			return '\ufffd'
		case unicode.Is(unicode.Cc, r):
			return -1
		}
		return r
	}, text)
}

func FuzzQuoted(f *testing.F) {
	for _, s := range []string{`a"b\`, "\\N\r\n\t", "&amp;&lt;<b>", "\x00\x1f\u0085", "👩‍🔬\u00a0", "%s%!"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		got := string(quoted(text))
		require.True(t, utf8.ValidString(got))
		require.Regexp(t, `^`+quotedText+`$`, got, "the string ends where it should")
		require.NotContains(t, got, "\n")
		if utf8.ValidString(text) {
			require.Equal(t, visible(text), drawn(got))
		}
	})
}
