package record

import (
	"strings"

	"github.com/spawnwright/spawnwright/pkg/collection"
)

// style is how the entries of a list with dashes are written.
type style struct {
	flow   bool   // {key: value, …} in one line
	padded bool   // { key: value }
	gap    string // between the dash and the entry
}

// styleOf gives the style of the last entry of a list.
func (b *Book) styleOf(s collection.Section) style {
	last := s.Items[len(s.Items)-1]
	at := b.text.offset(last)
	lead := b.text.data[b.text.start(last.Line):at]
	st := style{flow: s.Last.Flow, gap: " "}
	if dash := strings.LastIndexByte(string(lead), '-'); dash == s.Value.Column-1 {
		st.gap = string(lead[dash+1:])
	}
	st.padded = st.flow && at+1 < len(b.text.data) && b.text.data[at+1] == ' '
	return st
}

// write writes an entry with its dash and line ends.
func (s style) write(it item, indent, eol string) string {
	gap := s.gap
	if gap == "" {
		gap = " "
	}
	if s.flow {
		return indent + "-" + gap + braces(it, s.padded) + eol
	}
	var b strings.Builder
	lead := indent + "-" + gap
	for _, p := range it {
		b.WriteString(lead + p.key + ": " + p.value + eol)
		lead = indent + " " + gap
	}
	return b.String()
}

func braces(it item, padded bool) string {
	pairs := make([]string, len(it))
	for i, p := range it {
		pairs[i] = p.key + ": " + p.value
	}
	text := strings.Join(pairs, ", ")
	if padded {
		return "{ " + text + " }"
	}
	return "{" + text + "}"
}

// inline writes entries one behind the other, for a list in brackets.
func inline(items []item) string {
	texts := make([]string, len(items))
	for i, it := range items {
		texts[i] = braces(it, false)
	}
	return strings.Join(texts, ", ")
}
