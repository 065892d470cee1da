// Package terminal decides whether a stream may be coloured, and colours it.
package terminal

import (
	"io"
	"os"
)

// Is reports whether w is a terminal.
func Is(w any) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// Paint colours texts for one stream, or leaves them alone.
type Paint struct{ on bool }

// For gives the paint for w: colour on a terminal, unless NO_COLOR is set to
// something (no-color.org) or TERM is "dumb".
func For(w io.Writer) Paint {
	return Paint{on: Is(w) && os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb"}
}

// Bad, Doubt and Dim are the looks in use: an error, a warning, something less important.
func (p Paint) Bad(s string) string   { return p.wrap("\x1b[31m", s) }
func (p Paint) Doubt(s string) string { return p.wrap("\x1b[33m", s) }
func (p Paint) Dim(s string) string   { return p.wrap("\x1b[2m", s) }

func (p Paint) wrap(code, s string) string {
	if !p.on || s == "" {
		return s
	}
	return code + s + "\x1b[0m"
}
