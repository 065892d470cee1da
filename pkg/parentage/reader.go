package parentage

import (
	"bytes"
	"fmt"
	"unicode"
)

// nobody is the number of an unknown parent.
const nobody = ^uint32(0)

// animal is a row by the numbers of the ids in it.
type animal struct {
	id, sire, dam uint32
	line          int32
}

// reader turns a text into a table.
type reader struct {
	options     Options
	columnNames [3][]string

	scan      *scanner
	width     int    // number of columns
	columns   [3]int // where id, sire and dam stand
	headWords [3]string

	names   *names
	animals []animal
	rows    []uint32 // row + 1 of each id; 0 for none
	kinds   byte     // of characters in ids
	last    [3]seen  // the last sire and dam
	spare   [3][]byte

	badText, errs, roleErrs findings
	doubts, alike, founders findings
}

// seen is a value and its number, for rows that repeat the parents of the last.
type seen struct {
	value  []byte
	number uint32
}

func newReader(text []byte, options Options) *reader {
	r := &reader{options: options, columnNames: options.Columns.names(), scan: newScanner(text, ',', 0)}
	for _, f := range []*findings{&r.badText, &r.errs, &r.roleErrs, &r.doubts, &r.alike, &r.founders} {
		f.text = text
	}
	expected := min(lineEnds(text), len(text)/6, 1<<20)
	r.names = newNames(expected, len(text)/4)
	r.animals = make([]animal, 0, expected)
	r.rows = make([]uint32, 0, expected)
	return r
}

// read reads the rows behind the header.
func (r *reader) read() {
	for r.scan.next() {
		r.row()
	}
	if !r.scan.ended && r.scan.problem.message == "" && r.scan.count == r.width {
		r.doubts.add(r.scan.from, "end it with a line break if the table is complete", "the last line has no line end, so the table may be cut off in the middle of it")
	}
}

// row takes an animal from a row.
func (r *reader) row() {
	s := r.scan
	if !r.whole() {
		return
	}
	var numbers [3]uint32
	for column, at := range r.columns {
		f := s.fields[at]
		value := s.value(f, &r.spare[column])
		switch {
		case unknown(value) && column == id:
			r.errs.add(f.from, "give the animal a name or a number", "%s is not an id: it means unknown", quoted(value))
			return
		case unknown(value):
			numbers[column] = nobody
		case bytes.Equal(value, r.last[column].value):
			numbers[column] = r.last[column].number
		default:
			number, ok := r.number(value, column, f)
			if !ok {
				return
			}
			numbers[column] = number
		}
	}
	a := animal{numbers[id], numbers[sire], numbers[dam], int32(s.rowLine)}
	if r.rows[a.id] > 0 {
		r.again(a)
		return
	}
	r.animals = append(r.animals, a)
	r.rows[a.id] = uint32(len(r.animals))
}

// whole reports whether the last row is one of values under the columns, and not
// a blank one; it notes what else it is.
func (r *reader) whole() bool {
	s := r.scan
	switch {
	case s.at-s.from > longest:
		r.errs.add(s.from, "a line end or a quote must be missing", "this row has %d bytes; at most %d can be read", s.at-s.from, longest)
	case s.problem.message != "":
		r.errs.add(s.problem.at, s.problem.cure, "%s", s.problem.message)
	case s.blank():
	case s.count < r.width && !s.ended:
		r.errs.add(s.from, "get the whole table again, or complete the row", "the table is cut off: its last row has %d of %d values and no line end", s.count, r.width)
	case s.count < r.width || s.count > r.width && !r.onlyBlanksBehind():
		r.errs.add(s.from, fmt.Sprintf("complete the row, and put values that hold %q in quotes", s.comma), "this row has %d values and the first line %d", s.count, r.width)
	default:
		r.lookBehindQuotes()
		return true
	}
	return false
}

// onlyBlanksBehind reports whether the values for which there is no column are
// all empty, as some spreadsheets leave them.
func (r *reader) onlyBlanksBehind() bool {
	s := r.scan
	end := s.fields[len(s.fields)-1].to
	return len(bytes.Trim(s.text[end:s.at], `" `+string(s.comma)+"\r\n\t")) == 0
}

// lookBehindQuotes notes a value that is not read and that swallows whole rows.
func (r *reader) lookBehindQuotes() {
	s := r.scan
	if s.line-s.rowLine <= 1 {
		return
	}
	for _, f := range s.fields {
		value := s.text[f.from:f.to]
		if bytes.Count(value, []byte{s.comma}) >= r.width-1 && lineEnds(value) > 0 {
			r.doubts.add(f.from, "look whether a quote is missing", "this value runs over %d lines, which are not read as rows", lineEnds(value)+1)
		}
	}
}

// number gives the number of an id that stands in a field, and whether it can be
// one.
func (r *reader) number(value []byte, column int, f field) (uint32, bool) {
	number, fresh := r.names.number(value)
	if fresh {
		r.rows = append(r.rows, 0)
		of := kindsOf(value)
		r.kinds |= of
		if of&special > 0 && bytes.IndexFunc(value, unicode.IsControl) >= 0 {
			r.errs.add(f.from, "remove it, and look whether a quote is missing", "the %s %s has a line break or another control character in it", columnWords[column], quoted(value))
			return 0, false
		}
		if column == id && bytes.EqualFold(value, []byte(r.headWords[id])) && r.headAgain() {
			r.errs.add(f.from, "remove the line", "the names of the columns stand here once more, as where two tables were joined")
			return 0, false
		}
	}
	if column != id {
		r.last[column] = seen{append(r.last[column].value[:0], value...), number}
	}
	return number, true
}

// Kinds of characters, as bits.
const (
	small   = 1 << iota // a to z
	capital             // A to Z
	special             // blanks, controls, and all beyond ASCII
)

var kinds = func() (of [256]byte) {
	for c := range of {
		switch {
		case 'a' <= c && c <= 'z':
			of[c] = small
		case 'A' <= c && c <= 'Z':
			of[c] = capital
		case !plainByte(byte(c)):
			of[c] = special
		}
	}
	return of
}()

// kindsOf gives the kinds of the characters in an id.
func kindsOf(id []byte) (all byte) {
	for _, c := range id {
		all |= kinds[c]
	}
	return all
}

// headAgain reports whether the row repeats the first line.
func (r *reader) headAgain() bool {
	var spare []byte
	for column, at := range r.columns {
		if !bytes.EqualFold(r.scan.value(r.scan.fields[at], &spare), []byte(r.headWords[column])) {
			return false
		}
	}
	return true
}

// again notes a second row for an animal.
func (r *reader) again(a animal) {
	before := r.rows[a.id] - 1
	one := r.animals[before]
	if one.sire == a.sire && one.dam == a.dam {
		r.doubts.add(r.scan.from, "remove one of them", "%s already has this row on line %d; it is taken once", quoted(r.names.id(a.id)), one.line)
		return
	}
	r.errs.add(r.scan.from, "keep the right one", "%s has %s here, and %s on line %d",
		quoted(r.names.id(a.id)), r.parents(a), r.parents(one), one.line)
}

// parents gives the parents of a row in words.
func (r *reader) parents(a animal) string {
	word := func(number uint32) string {
		if number == nobody {
			return "unknown"
		}
		return quoted(r.names.id(number))
	}
	return fmt.Sprintf("sire %s and dam %s", word(a.sire), word(a.dam))
}

// unknown reports whether a value stands for an unknown parent.
func unknown(value []byte) bool {
	switch len(value) {
	case 0:
		return true
	case 1:
		return value[0] == '0' || value[0] == '.'
	case 2:
		return bytes.EqualFold(value, []byte("na"))
	case 3:
		return bytes.EqualFold(value, []byte("unk"))
	case 7:
		return bytes.EqualFold(value, []byte("unknown"))
	}
	return false
}
