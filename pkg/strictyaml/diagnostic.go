package strictyaml

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Severity says how bad a [Diagnostic] is. The zero value is not valid.
type Severity int

// The severities, worst first.
const (
	Error   Severity = iota + 1 // the file cannot be used as it is
	Warning                     // it can be used, and something needs a look
	Note                        // worth knowing
)

func (s Severity) String() string {
	switch s {
	case Error:
		return "error"
	case Warning:
		return "warning"
	case Note:
		return "note"
	}
	return fmt.Sprintf("Severity(%d)", int(s))
}

// MarshalText writes the word of [Severity.String].
func (s Severity) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// Diagnostic is one problem of a file: the place, what is wrong, and the cure.
type Diagnostic struct {
	File     string   `json:"file"`
	Line     int      `json:"line,omitempty"`   // from 1; 0 when the whole file is meant
	Column   int      `json:"column,omitempty"` // in characters, from 1; 0 when the whole line is meant
	Severity Severity `json:"severity"`
	Message  string   `json:"message"`           // what is wrong, one sentence without a full stop
	Cure     string   `json:"cure,omitempty"`    // what to do about it, without a full stop
	Excerpt  string   `json:"excerpt,omitempty"` // the line of the file; empty for one of more than 4096 bytes
}

// String gives file:line:column: message; cure.
func (d Diagnostic) String() string {
	var b strings.Builder
	b.WriteString(d.File)
	if d.Line > 0 {
		fmt.Fprintf(&b, ":%d", d.Line)
		if d.Column > 0 {
			fmt.Fprintf(&b, ":%d", d.Column)
		}
	}
	b.WriteString(": ")
	if d.Severity != Error {
		b.WriteString(d.Severity.String() + ": ")
	}
	b.WriteString(d.Message)
	if d.Cure != "" {
		b.WriteString("; " + d.Cure)
	}
	return b.String()
}

// Diagnostics is a list of problems. It is not an error itself; see [Diagnostics.Err].
type Diagnostics []Diagnostic

// HasErrors reports whether one of ds is an [Error].
func (ds Diagnostics) HasErrors() bool {
	return slices.ContainsFunc(ds, func(d Diagnostic) bool { return d.Severity == Error })
}

// Err gives the errors among ds as a *[FileError], and nil when there are none.
func (ds Diagnostics) Err() error {
	var bad Diagnostics
	for _, d := range ds {
		if d.Severity == Error {
			bad = append(bad, d)
		}
	}
	if len(bad) == 0 {
		return nil
	}
	return &FileError{Diagnostics: bad}
}

// Sort orders ds worst first, then by file and place. Equal places keep their order.
func (ds Diagnostics) Sort() {
	slices.SortStableFunc(ds, func(a, b Diagnostic) int {
		return cmp.Or(
			cmp.Compare(a.Severity, b.Severity),
			cmp.Compare(a.File, b.File),
			cmp.Compare(a.Line, b.Line),
			cmp.Compare(a.Column, b.Column),
		)
	})
}

// FileError is a file that cannot be used, with all that is wrong with it.
type FileError struct{ Diagnostics Diagnostics }

// Error gives the first problem and the number of the others.
func (e *FileError) Error() string {
	first := e.Diagnostics[0].String()
	if n := len(e.Diagnostics) - 1; n > 0 {
		return fmt.Sprintf("%s (and %d more)", first, n)
	}
	return first
}
