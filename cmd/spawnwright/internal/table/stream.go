package table

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"
)

// Stream writes CSV a cell at a time, as [Table.CSV] does, for tables that are too
// long to hold.
type Stream struct {
	out   []byte
	cells int      // in the row so far
	last  []number // by column: the values of many rows repeat the one above
}

type number struct {
	value float64
	text  []byte
}

// NewStream begins a table with its header. Room is made for about so many bytes.
func NewStream(room int, columns ...string) *Stream {
	s := &Stream{out: make([]byte, 0, room), last: make([]number, len(columns))}
	for _, c := range columns {
		s.Text(strings.ReplaceAll(c, " ", "_"))
	}
	s.End()
	return s
}

// Text writes cells.
func (s *Stream) Text(cells ...string) {
	for _, cell := range cells {
		s.text(cell)
	}
}

func (s *Stream) text(cell string) {
	s.next()
	for i := range len(cell) {
		if !unquoted[cell[i]] || i == 0 && !harmlessFirst[cell[i]] {
			s.out = appendQuoted(s.out, harmless(cell))
			return
		}
	}
	s.out = append(s.out, cell...)
}

// Number writes numbers with all their digits.
func (s *Stream) Number(xs ...float64) {
	for _, x := range xs {
		s.number(x)
	}
}

func (s *Stream) number(x float64) {
	s.next()
	last := &s.last[s.cells-1]
	if last.text == nil || last.value != x {
		last.value, last.text = x, strconv.AppendFloat(last.text[:0], x, 'g', -1, 64)
	}
	s.out = append(s.out, last.text...)
}

func (s *Stream) next() {
	if s.cells > 0 {
		s.out = append(s.out, ',')
	}
	s.cells++
}

// End ends the row.
func (s *Stream) End() {
	s.out = append(s.out, '\r', '\n')
	s.cells = 0
}

// Bytes gives what was written.
func (s *Stream) Bytes() []byte { return s.out }

// unquoted has the bytes that never need quotes, and harmlessFirst those of them
// that may begin a cell: not a formula, nor one that needs quotes.
var unquoted, harmlessFirst = func() (inside, first [256]bool) {
	for c := byte('!'); c < 0x7f; c++ {
		inside[c] = c != '"' && c != ',' && c != '\\'
		first[c] = inside[c] && !strings.ContainsRune("=+-@", rune(c))
	}
	inside[' '] = true
	return inside, first
}()

// appendQuoted leaves to encoding/csv how a cell is quoted.
func appendQuoted(out []byte, cell string) []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	_ = w.Write([]string{cell}) // a buffer takes everything
	w.Flush()
	line := bytes.TrimSuffix(b.Bytes(), []byte("\r\n"))
	return append(out, line...)
}
