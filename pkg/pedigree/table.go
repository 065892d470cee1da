package pedigree

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// TableError is what is wrong at one place of a table of parents.
type TableError struct {
	Line, Column int    // counted from 1; the column in bytes
	Message      string // what is wrong and what to do, without a full stop
}

func (e *TableError) Error() string {
	return fmt.Sprintf("%d:%d: %s", e.Line, e.Column, e.Message)
}

// ReadCSV reads a table of animals and their parents as comma-separated values in
// UTF-8 (RFC 4180; a byte order mark and any line ends of the two usual kinds
// are accepted).
//
// The first row names the columns, in any order, any case: "id" (or
// "individual", "animal"), "sire" (or "father") and "dam" (or "mother"). Other
// columns are ignored, and so are blank rows and blanks around a value. A parent
// that is empty, 0, unknown, unk or NA, in any case, is unknown. Rows may be in
// any order.
//
// A parent that is named but has no row of its own becomes an animal without
// parents, after those of the table and in the order in which they are first
// named: most tables leave the oldest animals out. A misspelt parent therefore
// makes a new animal.
//
// Problems of the content are *[TableError]s, joined ([errors.Join]) in the order
// of the table. Loops are left to [New], which has the same view of parents.
func ReadCSV(r io.Reader) ([]Record, error) {
	data, err := io.ReadAll(r)
	if err != nil {
		return nil, fmt.Errorf("pedigree: the table could not be read: %w", err)
	}
	t := table{data: bytes.TrimPrefix(data, []byte("\uFEFF")), lines: map[string]int{}}
	t.read()
	if len(t.errs) > 0 {
		return nil, errors.Join(t.errs...)
	}
	return t.withFounders(), nil
}

// table is a table of parents being read.
type table struct {
	data    []byte
	rows    *csv.Reader
	columns [3]int // where id, sire and dam are
	width   int
	records []Record
	lines   map[string]int // line by id
	errs    []error
}

// columnNames are the names that each column may have.
var columnNames = [3][]string{
	{"id", "individual", "animal"},
	{"sire", "father"},
	{"dam", "mother"},
}

// unknownWords stand for an unknown parent.
var unknownWords = []string{"", "0", "unknown", "unk", "na"}

func unknown(value string) bool { return slices.Contains(unknownWords, strings.ToLower(value)) }

func (t *table) fail(line, column int, format string, values ...any) {
	t.errs = append(t.errs, &TableError{Line: line, Column: column, Message: fmt.Sprintf(format, values...)})
}

// failAt reports a problem of a field of the current row.
func (t *table) failAt(field int, format string, values ...any) {
	line, column := t.rows.FieldPos(field)
	t.fail(line, column, format, values...)
}

func (t *table) read() {
	if !t.encoded() {
		return
	}
	t.rows = csv.NewReader(bytes.NewReader(t.data))
	t.rows.FieldsPerRecord = -1 // counted here, to say what to do about it
	t.rows.ReuseRecord = true
	t.rows.TrimLeadingSpace = true
	header := t.next()
	if header == nil {
		if len(t.errs) == 0 {
			t.fail(1, 1, "the table is empty; begin with a row such as id,sire,dam")
		}
		return
	}
	if !t.header(header) {
		return
	}
	for row := t.next(); row != nil; row = t.next() {
		t.row(row)
	}
}

// encoded reports whether the table is UTF-8 text, and where it is not.
func (t *table) encoded() bool {
	if utf8.Valid(t.data) {
		return true
	}
	line, column := 1, 1
	for rest := t.data; ; {
		r, size := utf8.DecodeRune(rest)
		if r == utf8.RuneError && size <= 1 {
			break
		}
		column += size
		if r == '\n' {
			line, column = line+1, 1
		}
		rest = rest[size:]
	}
	t.fail(line, column, "this is not UTF-8 text; save the table as CSV in UTF-8")
	return false
}

// next gives the next row that is not blank, its values without blanks around
// them, or nil at the end or where the table cannot be read any further.
func (t *table) next() []string {
	for {
		row, err := t.rows.Read()
		if err != nil {
			t.broken(err)
			return nil
		}
		blank := true
		for i := range row {
			row[i] = strings.TrimSpace(row[i])
			blank = blank && row[i] == ""
		}
		if !blank {
			return row
		}
	}
}

// broken reports a row that is not comma-separated values. Reading from memory
// gives no other errors.
func (t *table) broken(err error) {
	var syntax *csv.ParseError
	if !errors.As(err, &syntax) {
		return // the end
	}
	message := `a quote is out of place; put the whole value in quotes, and write a quote inside it twice`
	t.fail(syntax.Line, syntax.Column, "%s", message)
}

// header finds the columns, and reports whether there is one of each.
func (t *table) header(row []string) bool {
	t.width = len(row)
	for wanted, names := range columnNames {
		t.columns[wanted] = -1
		for field, name := range row {
			if !slices.Contains(names, strings.ToLower(name)) {
				continue
			}
			if before := t.columns[wanted]; before >= 0 {
				t.failAt(field, "columns %q and %q both mean %s; rename one", row[before], name, names[0])
				continue
			}
			t.columns[wanted] = field
		}
		if t.columns[wanted] < 0 {
			cure := "name a column so"
			if t.width == 1 && strings.ContainsAny(row[0], ";\t") {
				cure = "save the table with commas between the values"
			}
			t.failAt(0, "no column is called %s; %s", strings.Join(names, " or "), cure)
		}
	}
	return len(t.errs) == 0
}

// row takes an animal from a row.
func (t *table) row(row []string) {
	if len(row) != t.width {
		t.failAt(0, "this row has %d values and the header %d; put values that contain a comma in quotes", len(row), t.width)
		return
	}
	var values [3]string
	for i, field := range t.columns {
		values[i] = row[field]
		if at := strings.IndexFunc(values[i], unicode.IsControl); at >= 0 {
			t.failAt(field, "the %s has a control character or a line break in it; remove it", columnNames[i][0])
			return
		}
	}
	id := values[0]
	if unknown(id) {
		t.failAt(t.columns[0], "%q is not an id: it means unknown; give the animal a name or a number", id)
		return
	}
	line, _ := t.rows.FieldPos(t.columns[0])
	if first, taken := t.lines[id]; taken {
		t.failAt(t.columns[0], "%q already has a row on line %d; remove one of them", id, first)
		return
	}
	t.lines[id] = line
	for i, value := range values {
		if unknown(value) {
			values[i] = ""
		}
	}
	t.records = append(t.records, Record{ID: strings.Clone(id), Sire: strings.Clone(values[1]), Dam: strings.Clone(values[2])})
}

// withFounders gives the records, and after them one for each parent that has
// none.
func (t *table) withFounders() []Record {
	records := t.records
	for _, r := range t.records {
		for _, parent := range [2]string{r.Sire, r.Dam} {
			if _, has := t.lines[parent]; parent == "" || has {
				continue
			}
			t.lines[parent] = 0
			records = append(records, Record{ID: parent})
		}
	}
	return records
}
