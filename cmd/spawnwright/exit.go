package main

import "fmt"

// The exit codes are part of the interface.
const (
	exitDone   = 0
	exitInput  = 1 // the input has problems
	exitUsage  = 2 // wrong use
	exitNoPlan = 3 // valid input, but no plan exists
	exitFile   = 4 // a file could not be read or written
)

// exitError ends the program with a code. A nil err means that all was said already.
type exitError struct {
	code int
	err  error
	hint string // where to look next; may be empty
}

func (e *exitError) Error() string {
	if e.err == nil {
		return fmt.Sprintf("exit code %d", e.code)
	}
	return e.err.Error()
}

func (e *exitError) Unwrap() error { return e.err }

func usage(err error) *exitError {
	return &exitError{exitUsage, err, "`spawnwright help` lists the commands, `spawnwright COMMAND --help` the flags of one"}
}

func usagef(format string, args ...any) error { return usage(fmt.Errorf(format, args...)) }

func fileError(err error) error { return &exitError{code: exitFile, err: err} }

func inputError(err error) error { return &exitError{code: exitInput, err: err} }
