package calendar

import (
	"bufio"
	"io"
	"strings"
	"unicode/utf8"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// textWidth is the width of an agenda in characters.
const textWidth = 76

// WriteText writes the agenda of c from days.First to days.Last for people: a
// heading for each day that has an entry, below it the titles with the end of
// what lasts longer than a day, and below these the descriptions. Lines are
// broken between words at 76 characters. What it lists where, and its errors,
// are those of [Calendar.Days]; any other error comes from w.
func WriteText(w io.Writer, c Calendar, days civil.Span) error {
	agenda, err := c.Days(days)
	if err != nil {
		return err
	}
	out := bufio.NewWriter(w)
	put := func(indent, hanging, text string) {
		for _, line := range wrap(indent, hanging, text) {
			out.WriteString(line + "\n") // a failure stays in out, and Flush reports it
		}
	}
	put("", "", c.Name)
	put("", "", spanInWords(days))
	if len(agenda) == 0 {
		put("", "", "")
		put("", "", "Nothing on these days.")
	}
	for _, day := range agenda {
		put("", "", "")
		put("", "", withWeekday(day.Date))
		for _, e := range day.Events {
			put("  ", "    ", title(e, day.Date))
			for line := range strings.Lines(strings.TrimSpace(clean(e.Description))) {
				put("      ", "      ", line)
			}
		}
	}
	return out.Flush()
}

// title gives the line of e on the day on which it is listed.
func title(e Event, on civil.Date) string {
	text := e.Summary
	if e.Cancelled {
		text = "Cancelled: " + text
	}
	if e.Span.First < on {
		text += ", since " + withWeekday(e.Span.First)
	}
	if e.Span.Last > on {
		text += ", until " + withWeekday(e.Span.Last)
	}
	return text
}

func spanInWords(s civil.Span) string {
	if s.First == s.Last {
		return withWeekday(s.First)
	}
	return withWeekday(s.First) + " to " + withWeekday(s.Last)
}

// wrap breaks text between words into lines of textWidth characters: the first
// begins with indent, the others with hanging. A word that is too long stays
// whole.
func wrap(indent, hanging, text string) []string {
	words := strings.Fields(clean(text))
	if len(words) == 0 {
		return []string{""}
	}
	lines := []string{indent + words[0]}
	for _, word := range words[1:] {
		last := &lines[len(lines)-1]
		if utf8.RuneCountInString(*last)+1+utf8.RuneCountInString(word) > textWidth {
			lines = append(lines, hanging+word)
			continue
		}
		*last += " " + word
	}
	return lines
}
