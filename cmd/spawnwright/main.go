// Spawnwright plans a frog-breeding season from one YAML file.
//
// It reads collection.yaml in the working folder (or -f FILE) and prints
// tables, a calendar or a graph. Everything it knows how to compute is in the
// packages below pkg; this command only reads flags and prints.
//
// Exit codes: 0 done; 1 the input has problems; 2 wrong use; 3 the input is
// right but there is no plan; 4 a file could not be read or written.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/terminal"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// run is the whole program without the process around it.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	root := newRoot(&app{stdin: stdin, stdout: stdout, stderr: stderr})
	root.SetArgs(args)
	root.SetIn(stdin)
	root.SetOut(stdout)
	root.SetErr(stderr)
	err := root.Execute()
	if err == nil {
		return exitDone
	}
	var e *exitError
	if !errors.As(err, &e) {
		e = usage(err) // what cobra finds is wrong use
	}
	if e.err != nil {
		fmt.Fprintf(stderr, "%s %s\n", terminal.For(stderr).Bad("spawnwright:"), strings.TrimSpace(e.err.Error()))
		if e.hint != "" {
			fmt.Fprintln(stderr, e.hint)
		}
	}
	return e.code
}
