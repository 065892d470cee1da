// Package spreadsheet makes a collection file from a table of animals that was
// kept in a spreadsheet and saved as CSV.
//
// [Convert] never guesses what could be meant in two ways: what is not understood
// is left out and reported with its line and column. What it writes was read back
// by the reader of collection files and has no error.
package spreadsheet

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Options say how a table is to be read. The zero value is usual.
type Options struct {
	File      string            // only shown in messages
	Columns   map[string]string // key of the collection file to the header, or the letter, of its column
	Delimiter rune              // between cells; 0 when it is to be found
	Dates     DateOrder         // how days that could be two are meant
	Species   string            // of animals whose row says none: id, scientific or common name
}

// Result is the collection file, and all that was not understood.
type Result struct {
	YAML     []byte // empty when the table cannot be used
	Animals  int    // that it has
	Rows     int    // that are not empty, the header apart
	Problems strictyaml.Diagnostics
}

// maxBytes is the size above which a table is refused.
const maxBytes = strictyaml.MaxBytes

// Convert makes a collection file from data. A table without an id for its
// animals, or that is not text, cannot be used: then a problem is an error.
// All others are warnings about single cells, columns or rows. Time grows in
// proportion to the table.
func Convert(data []byte, o Options) Result {
	c := &converter{Options: o, own: make(map[string]string), builtin: builtin()}
	if c.open(data) && c.header() && c.usual() {
		c.rows()
		c.link()
		c.settle()
	}
	c.result.Problems.Sort()
	return c.result
}

type converter struct {
	Options
	lines   []string
	table   []row
	columns []column
	animals []*animal
	builtin map[string]string // species by id, scientific and common name, in small letters
	own     map[string]string // species that are not built in: id to name
	result  Result
}

// row is a record of the table.
type row struct {
	cells  []cell
	line   int
	column int
}

// cell is a value and where it begins.
type cell struct {
	text         string
	line, column int
}

// animal is one row that is taken.
type animal struct {
	row    row
	values map[string]string // as YAML, by key
	id     string
	name   string
	sex    string
	sire   cell
	dam    cell
	alien  bool // its species was not understood
	strips int  // how much was taken away to settle a contradiction
	gone   bool
}

func (c *converter) fail(line, column int, message, cure string) {
	c.report(strictyaml.Error, line, column, message, cure)
}

func (c *converter) warn(at cell, message, cure string) {
	c.report(strictyaml.Warning, at.line, at.column, message, cure)
}

func (c *converter) report(severity strictyaml.Severity, line, column int, message, cure string) {
	d := strictyaml.Diagnostic{File: c.File, Line: line, Column: column, Severity: severity, Message: message, Cure: cure}
	if line > 0 && line <= len(c.lines) && len(c.lines[line-1]) <= 4096 {
		d.Excerpt = c.lines[line-1]
	}
	c.result.Problems = append(c.result.Problems, d)
}

// open takes the table apart. It is false when that cannot be done.
func (c *converter) open(data []byte) bool {
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	switch {
	case len(data) > maxBytes:
		c.fail(0, 0, fmt.Sprintf("the table has more than the %d bytes that are read", maxBytes), "split it")
	case !utf8.Valid(data):
		c.fail(0, 0, "this is not valid UTF-8 text", "save the table as CSV in UTF-8")
	case bytes.IndexByte(data, 0) >= 0:
		c.fail(0, 0, "this is not a table in text", "save it as CSV in UTF-8")
	case len(bytes.TrimSpace(data)) == 0:
		c.fail(0, 0, "the table is empty", "it begins with a line of headers, such as id,species,sex")
	default:
		text := strings.ReplaceAll(strings.ReplaceAll(string(data), "\r\n", "\n"), "\r", "\n")
		c.lines = strings.Split(text, "\n")
		return c.split(text)
	}
	return false
}
