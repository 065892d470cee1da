package calendar

import (
	"encoding/csv"
	"io"
	"strings"
	"unicode/utf8"
)

// WriteCSV writes c as a table (RFC 4180, UTF-8, lines ended by CRLF) under the
// heading date_first,date_last,what,category,details,status,uid: one line for
// each event, by first day, last day and key. Both dates are included, status
// is confirmed or cancelled, and uid is that of the iCalendar file. A calendar
// without events gives the heading alone.
//
// A cell that a spreadsheet could take for a formula (it begins with = + - @,
// narrow or full-width, or with a tab or line end, blanks before it aside) gets
// an apostrophe in front.
//
// Errors are those of [WriteICS], except that an event needs no Changed.
func WriteCSV(w io.Writer, c Calendar) error {
	if err := c.check(); err != nil {
		return err
	}
	table := csv.NewWriter(w)
	table.UseCRLF = true
	lines := [][]string{{"date_first", "date_last", "what", "category", "details", "status", "uid"}}
	for _, e := range inOrder(c.Events) {
		lines = append(lines, []string{
			e.Span.First.String(),
			e.Span.Last.String(),
			cell(oneLine(e.Summary)),
			cell(categoryOf(e)),
			cell(clean(e.Description)),
			strings.ToLower(string(statusOf(e))),
			cell(e.uid(c.ID)),
		})
	}
	return table.WriteAll(lines)
}

func cell(text string) string {
	first, _ := utf8.DecodeRuneInString(strings.TrimLeft(text, " "))
	if strings.ContainsRune("=+-@＝＋－＠\t\n", first) {
		return "'" + text
	}
	return text
}
