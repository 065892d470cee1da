package record

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Refusal says why a form does not take what it was given.
type Refusal struct {
	Reason string // one sentence without a full stop
	Cure   string // what to do about it, without a full stop; may be empty
}

func (e *Refusal) Error() string {
	if e.Cure == "" {
		return e.Reason
	}
	return e.Reason + "; " + e.Cure
}

func refuse(cure, format string, args ...any) error {
	return &Refusal{fmt.Sprintf(format, args...), cure}
}

// UnsafeError says why a file is not changed, though nothing is wrong with it or
// with the entry: it cannot be made sure that all else would stay as it is.
type UnsafeError struct {
	File   string
	At     strictyaml.Position // where the reason stands
	Reason string
	Hand   string // the lines to add by hand, each under its key; empty when nothing is added
}

func (e *UnsafeError) Error() string {
	return fmt.Sprintf("%s:%d: %s; nothing was written", e.File, e.At.Line, e.Reason)
}

// InvalidError says that a file would have errors with the new lines in it, that a
// part of these would be left out as it cannot be meant, or that it would have errors
// without the lines that were to be taken away. The places are those in the new text.
type InvalidError struct {
	Diagnostics strictyaml.Diagnostics // the problems that would be new
	Lines       []Line                 // the lines that would be added or taken away
}

func (e *InvalidError) Error() string {
	return "the file would not be right afterwards: " + e.Diagnostics[0].Message
}
