package spreadsheet

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

var delimiters = []rune{',', ';', '\t'}

// mostColumns is the greatest number of cells in a row: each is looked for in its line.
const mostColumns = 4096

// split takes the cells apart.
func (c *converter) split(text string) bool {
	delimiter := c.Delimiter
	if delimiter == 0 {
		var ok bool
		if delimiter, ok = delimiterOf(text); !ok {
			c.fail(1, 0, "it is not plain which sign stands between the cells of the headers", "say it with --delimiter comma, semicolon or tab")
			return false
		}
	}
	r := csv.NewReader(strings.NewReader(text))
	r.Comma, r.FieldsPerRecord = delimiter, -1
	for {
		record, err := r.Read()
		if errors.Is(err, io.EOF) {
			return true
		}
		var wrong *csv.ParseError
		if errors.As(err, &wrong) {
			c.fail(wrong.Line, c.characters(wrong.Line, wrong.Column), "the quotes of this line do not match", "write \" inside a cell twice, and put the cell in quotes")
			return false
		}
		if err != nil {
			c.fail(0, 0, fmt.Sprintf("the table cannot be read: %v", err), "save it as CSV in UTF-8")
			return false
		}
		if len(record) > mostColumns {
			line, _ := r.FieldPos(0)
			c.fail(line, 0, fmt.Sprintf("the row has %d cells, more than the %d that are read", len(record), mostColumns), "leave some out, or say which sign stands between the cells with --delimiter")
			return false
		}
		c.table = append(c.table, c.rowOf(r, record))
	}
}

func (c *converter) rowOf(r *csv.Reader, record []string) row {
	var out row
	for i, text := range record {
		line, column := r.FieldPos(i)
		out.cells = append(out.cells, cell{strings.TrimSpace(text), line, c.characters(line, column)})
	}
	out.line, out.column = out.cells[0].line, out.cells[0].column
	return out
}

// characters turns a column in bytes into one in characters.
func (c *converter) characters(line, column int) int {
	if line < 1 || line > len(c.lines) {
		return column
	}
	return utf8.RuneCountInString(c.lines[line-1][:min(max(column-1, 0), len(c.lines[line-1]))]) + 1
}

// delimiterOf finds the sign between the headers: the most frequent outside
// quotes. It is false when two are as frequent. One column needs none.
func delimiterOf(text string) (rune, bool) {
	header, _, _ := strings.Cut(text, "\n")
	var counts [3]int
	quoted := false
	for _, r := range header {
		if r == '"' {
			quoted = !quoted
		}
		for i, d := range delimiters {
			if r == d && !quoted {
				counts[i]++
			}
		}
	}
	best, twice := 0, false
	for i := 1; i < len(counts); i++ {
		if twice = twice && counts[i] <= counts[best] || counts[i] == counts[best]; counts[i] > counts[best] {
			best, twice = i, false
		}
	}
	return delimiters[best], !twice || counts[best] == 0
}
