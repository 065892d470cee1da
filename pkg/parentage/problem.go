package parentage

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"
)

// Most is the largest number of problems, and of warnings, that are told one by
// one.
const Most = 20

// Problem is what is wrong or doubtful at one place of a table.
type Problem struct {
	Line, Column int    // counted from 1, columns in characters
	Message      string // what is wrong, without a full stop
	Cure         string // what to do about it, without a full stop
	// Option is what would help when the table is right as it is: "any-sex", or
	// "columns" and a blank and what to set, such as "columns dam=Mutter"; else
	// empty.
	Option string
}

// String gives line:column: message; cure (option).
func (p Problem) String() string {
	text := fmt.Sprintf("%d:%d: %s; %s", p.Line, p.Column, p.Message, p.Cure)
	if p.Option != "" {
		text += " (" + p.Option + ")"
	}
	return text
}

// Error is a table that cannot be used, with all that is wrong with it.
type Error struct {
	Problems []Problem // in the order of the table: at least one, at most [Most]
	More     int       // number of the others
	Warnings []Problem // doubts found on the way, at most [Most]

	cause error
}

// Unwrap gives the error that [Table.Locate] found the places of; else nil.
func (e *Error) Unwrap() error { return e.cause }

// Error gives a line for each problem, and the number of those left out.
func (e *Error) Error() string {
	var lines []string
	for _, p := range e.Problems {
		lines = append(lines, p.String())
	}
	if e.More > 0 {
		lines = append(lines, fmt.Sprintf("and %d more", e.More))
	}
	return "parentage: " + strings.Join(lines, "\n")
}

// findings collects problems of a text. All are counted, the first are kept.
type findings struct {
	text  []byte
	kept  []Problem
	total int
}

// add notes a problem at an offset of the text.
func (f *findings) add(offset int, cure, format string, values ...any) {
	f.total++
	if f.total <= Most {
		line, column := f.place(offset)
		f.kept = append(f.kept, Problem{Line: line, Column: column, Message: fmt.Sprintf(format, values...), Cure: cure})
	}
}

// addLine notes a problem of the row that begins on a line.
func (f *findings) addLine(line int32, cure, format string, values ...any) {
	f.total++
	if f.total <= Most {
		f.kept = append(f.kept, Problem{Line: int(line), Column: 1, Message: fmt.Sprintf(format, values...), Cure: cure})
	}
}

// option says which option would help with the problem that was added last.
func (f *findings) option(option string) {
	if f.total == len(f.kept) {
		f.kept[f.total-1].Option = option
	}
}

// place gives line and column of an offset. It goes through the text, which only
// the few problems that are told are worth.
func (f *findings) place(offset int) (line, column int) {
	before := f.text[:offset]
	start := bytes.LastIndexAny(before, "\r\n") + 1
	return 1 + lineEnds(before), 1 + utf8.RuneCount(before[start:])
}

// first puts findings of several passes in the order of the table, and gives
// those that are told and the number of the others. Each pass must have found its
// own in that order.
func first(passes ...findings) (told []Problem, more int) {
	for _, f := range passes {
		told = append(told, f.kept...)
		more += f.total
	}
	slices.SortStableFunc(told, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	told = told[:min(len(told), Most)]
	return told, more - len(told)
}

// quoted gives a value for a message, cut when it is long.
func quoted(value []byte) string {
	const longest = 60
	if len(value) <= longest {
		return fmt.Sprintf("%q", value)
	}
	cut := longest
	for cut > 0 && !utf8.RuneStart(value[cut]) {
		cut--
	}
	return fmt.Sprintf("%q...", value[:cut])
}
