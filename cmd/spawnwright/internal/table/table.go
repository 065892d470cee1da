// Package table prints the rows that a command has to show: as an aligned table
// for people and as CSV for spreadsheets. It computes nothing.
package table

import (
	"encoding/csv"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	pretty "github.com/jedib0t/go-pretty/v6/table"
	"github.com/jedib0t/go-pretty/v6/text"
)

// Column is the head of a column.
type Column struct {
	Name  string // for people, such as "mean kinship"; in CSV blanks become _
	Right bool   // numbers stand right
	Width int    // most characters in a line before the text is wrapped; 0 is no limit
}

// Table is rows under columns. Each row has as many cells as there are columns.
type Table struct {
	Title   string // a line above, set off by a blank line; may be empty
	Indent  string // before each line
	Columns []Column
	Rows    [][]string
	Empty   string // a line in place of the heads when there are no rows; not in CSV
}

// Add appends a row.
func (t *Table) Add(cells ...string) { t.Rows = append(t.Rows, cells) }

// Drop takes away the columns with these names.
func (t *Table) Drop(names ...string) {
	for i := len(t.Columns) - 1; i >= 0; i-- {
		if !slices.Contains(names, t.Columns[i].Name) {
			continue
		}
		t.Columns = slices.Delete(t.Columns, i, i+1)
		for r := range t.Rows {
			t.Rows[r] = slices.Delete(t.Rows[r], i, i+1)
		}
	}
}

// Text writes t for people: a title, a line of heads, the rows.
// Characters that would steer a terminal become blanks.
func (t *Table) Text(w io.Writer) error {
	var b strings.Builder
	if t.Title != "" {
		b.WriteString(t.Title + "\n\n")
	}
	body := t.Empty
	if len(t.Rows) > 0 || body == "" {
		body = t.aligned()
	}
	for line := range strings.Lines(body) {
		b.WriteString(t.Indent + strings.TrimRight(line, " \n") + "\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func (t *Table) aligned() string {
	p := pretty.NewWriter()
	p.SetStyle(plain())
	configs := make([]pretty.ColumnConfig, len(t.Columns))
	header := make(pretty.Row, len(t.Columns))
	for i, c := range t.Columns {
		header[i] = c.Name
		configs[i] = pretty.ColumnConfig{Number: i + 1, WidthMax: c.Width, WidthMaxEnforcer: text.WrapSoft}
		if c.Right {
			configs[i].Align, configs[i].AlignHeader = text.AlignRight, text.AlignRight
		}
	}
	p.SetColumnConfigs(configs)
	p.AppendHeader(header)
	for _, cells := range t.Rows {
		row := make(pretty.Row, len(cells))
		for i, cell := range cells {
			row[i] = strings.Map(onTerminal, cell)
		}
		p.AppendRow(row)
	}
	return p.Render()
}

// onTerminal keeps a text from steering the terminal.
func onTerminal(r rune) rune {
	if r < ' ' || r >= 0x7f && r < 0xa0 {
		return ' '
	}
	return r
}

// plain is a table without a frame: heads, a rule below them, two blanks between columns.
func plain() pretty.Style {
	s := pretty.StyleDefault
	s.Name = "plain"
	s.Box = pretty.BoxStyle{MiddleHorizontal: "-", MiddleVertical: "  ", MiddleSeparator: "  ", PaddingLeft: "", PaddingRight: "", UnfinishedRow: ""}
	s.Format.Header = text.FormatDefault
	s.Options = pretty.Options{SeparateColumns: true, SeparateHeader: true}
	return s
}

// CSV writes t with a header line (RFC 4180, lines ended by CRLF), and so that
// no cell becomes a formula: a cell that begins with one of = + - @, narrow or
// full-width, with a tab or a line end, and is not a plain number, gets an
// apostrophe before it.
func (t *Table) CSV(w io.Writer) error {
	c := csv.NewWriter(w)
	c.UseCRLF = true
	header := make([]string, len(t.Columns))
	for i, column := range t.Columns {
		header[i] = strings.ReplaceAll(column.Name, " ", "_")
	}
	if err := c.Write(header); err != nil {
		return err
	}
	for _, cells := range t.Rows {
		safe := make([]string, len(cells))
		for i, cell := range cells {
			safe[i] = harmless(cell)
		}
		if err := c.Write(safe); err != nil {
			return err
		}
	}
	c.Flush()
	return c.Error()
}

func harmless(cell string) string {
	first, _ := utf8.DecodeRuneInString(strings.TrimLeft(cell, " "))
	number := cell != "-" && strings.Trim(strings.TrimPrefix(cell, "-"), "0123456789.") == ""
	if number || !strings.ContainsRune("=+-@＝＋－＠\t\r\n", first) {
		return cell
	}
	return "'" + cell
}
