// Package parentage reads plain tables of parents: a row an animal, with its id,
// its sire and its dam, as spreadsheets and registries write them. It gives
// records for [pedigree.New] and says what is wrong with a table, everything in
// one run, each with its line, its column and a cure.
//
//	table, err := parentage.Read(file, parentage.Options{})
//	// errors.As(err, *parentage.Error): the table cannot be used
//	p, err := pedigree.New(table.Records)
//	err = table.Locate(err) // a loop, with the lines of its animals
//
// # What a table looks like
//
// Text in UTF-8, a line an animal, values between commas, semicolons or tabs: the
// first line, which names the columns, shows which. Quotes are as in RFC 4180. A
// byte order mark, the line ends of any system and blank lines are accepted, and
// so are rows in any order. Columns may stand in any order and are called id
// (individual, animal), sire (father) and dam (mother), in any case; other names
// are told with [Columns]. Further columns are passed over. Blanks around a value
// do not count.
//
// A parent that is empty, 0, a dot, NA, unk or unknown, in any case, is unknown. A
// parent that has no row becomes a founder.
package parentage

import (
	"bytes"
	"fmt"
	"io"
	"io/fs"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Options say how a table is to be read. The zero value is right for most.
type Options struct {
	Columns Columns
	// AnySex accepts an animal that is sire in one row and dam in another, as
	// with plants that bear both and animals that change.
	AnySex bool
}

// Columns names the columns that are not called as usual, in any case. An empty
// name stands for the usual ones.
type Columns struct {
	ID, Sire, Dam string
}

// Table is the animals of a table.
type Table struct {
	// Records has the animals in the order of their rows, and after them, in
	// the order in which they are first named, the parents without a row.
	Records []pedigree.Record
	Rows    int // number of animals that have a row
	// Warnings are doubts, in the order of the table: at most [Most].
	Warnings     []Problem
	MoreWarnings int // number of the others

	lines []int32 // of the animals that have a row
}

// Line gives the line of record i, counted from 1, or 0 for a parent without a
// row. It panics when there is no such record.
func (t *Table) Line(i int) int {
	if i < 0 || i >= len(t.Records) {
		panic(fmt.Sprintf("parentage: no record %d among %d", i, len(t.Records)))
	}
	if i >= t.Rows {
		return 0
	}
	return int(t.lines[i])
}

// maxBytes is the longest table, about 80 million animals. Places in the text fit
// 32 bits.
const maxBytes = 1<<31 - 1

// Read reads a table of parents. The error is an *[Error] when the table cannot
// be used as it is, with all that is wrong; or that of r. Loops are left to
// [pedigree.New]: see [Table.Locate].
//
// An error is: a table without text or without the three columns; a row with too
// few or too many values; a quote out of place or without its partner; text that
// is not UTF-8; a line of more than 1 MiB; a control character in an id; an animal
// without an id; an animal with two rows that disagree; an animal that is sire in
// one row and dam in another, unless [Options.AnySex] allows it.
//
// A warning is: parents without a row, once, with their number; a row that stands
// twice; ids that differ only in case or blanks; a last line without a line end,
// for the table may be cut off; a value of a column that is not read which runs
// over whole rows, for a quote may be missing.
//
// The text is held once while it is read; what is kept afterwards is the ids, each
// once, and 52 bytes an animal. Time is proportional to the length of the text.
func Read(r io.Reader, options Options) (*Table, error) {
	var text bytes.Buffer
	text.Grow(sizeOf(r) + bytes.MinRead)
	if _, err := text.ReadFrom(io.LimitReader(r, maxBytes+1)); err != nil {
		return nil, fmt.Errorf("parentage: the table could not be read: %w", err)
	}
	return Parse(text.Bytes(), options)
}

// sizeOf gives the number of bytes that r is likely to hold, so that room is made
// once; 0 when it does not say.
func sizeOf(r io.Reader) int {
	const most = 1 << 28
	switch r := r.(type) {
	case interface{ Len() int }:
		return min(max(r.Len(), 0), most)
	case fs.File:
		if info, err := r.Stat(); err == nil {
			return int(min(max(info.Size(), 0), most))
		}
	}
	return 0
}

// Parse is [Read] for a table that is in memory. It keeps no part of text.
func Parse(text []byte, options Options) (*Table, error) {
	return parse(text, options, maxBytes)
}

func parse(text []byte, options Options, most int) (*Table, error) {
	t := newReader(withoutMark(text), options)
	if len(text) > most {
		t.errs.add(0, "split the table", "the table has more than %d bytes", most)
	} else if t.encoded() && t.header() {
		t.read()
	}
	return t.table()
}
