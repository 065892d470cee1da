package record

import (
	"bytes"
	"unicode/utf8"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// text is the bytes of a file with its lines. A line ends with LF, CR LF or CR,
// as for the parser.
type text struct {
	data   []byte
	starts []int // of each line; one more at the end when the last line has no end
}

var byteOrderMark = []byte("\ufeff")

func newText(data []byte) text {
	t := text{data: data, starts: make([]int, 1, bytes.Count(data, []byte("\n"))+2)}
	for i, c := range data {
		if c == '\n' || c == '\r' && (i+1 == len(data) || data[i+1] != '\n') {
			t.starts = append(t.starts, i+1)
		}
	}
	return t
}

// offset gives the byte that a position of the parser stands for.
func (t text) offset(at strictyaml.Position) int {
	i := t.start(at.Line)
	if i == 0 && bytes.HasPrefix(t.data, byteOrderMark) {
		i = len(byteOrderMark) // it is no character of the line
	}
	for range at.Column - 1 {
		_, size := utf8.DecodeRune(t.data[i:])
		i += size
	}
	return i
}

// start gives where a line begins, counted from 1; after the last one, the end.
func (t text) start(line int) int {
	if line > len(t.starts) {
		return len(t.data)
	}
	return t.starts[line-1]
}

// line gives a line without its end, counted from 1.
func (t text) line(number int) []byte {
	return bytes.TrimRight(t.data[t.start(number):t.start(number+1)], "\r\n")
}

// number gives the line in which a byte stands.
func (t text) number(offset int) int {
	low, high := 0, len(t.starts) // starts[low] <= offset < starts[high]
	for low+1 < high {
		if middle := (low + high) / 2; t.starts[middle] <= offset {
			low = middle
		} else {
			high = middle
		}
	}
	return low + 1
}

// breakOf gives the line end of a line, or of the first that has one.
func (t text) breakOf(line int) string {
	for _, l := range [...]int{line, 1} {
		from, to := t.start(l), t.start(l+1)
		if end := string(t.data[from+len(t.line(l)) : to]); end != "" {
			return end[:min(len(end), 2)]
		}
	}
	return "\n"
}

// change replaces the bytes between two offsets.
type change struct {
	from, to int
	text     string
}

// apply makes changes that are in order and do not overlap.
func apply(data []byte, changes []change) []byte {
	size := len(data)
	for _, c := range changes {
		size += len(c.text) - (c.to - c.from)
	}
	out := make([]byte, 0, size)
	done := 0
	for _, c := range changes {
		out = append(append(out, data[done:c.from]...), c.text...)
		done = c.to
	}
	return append(out, data[done:]...)
}
