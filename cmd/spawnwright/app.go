package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/terminal"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
	"github.com/spawnwright/spawnwright/pkg/wholefile"
)

// defaultFile is the keeper's file when -f is not given.
const defaultFile = "collection.yaml"

// app is the streams and the flags that commands share.
type app struct {
	stdin          io.Reader
	stdout, stderr io.Writer

	file, onText string
	quiet        bool
	out, format  string
	inputs       []string // files that were read
}

// on gives the day that counts as today. Only here does the program read a clock.
func (a *app) on() (civil.Date, error) {
	if a.onText == "" {
		return civil.Of(time.Now().Date()), nil
	}
	d, err := civil.Parse(a.onText)
	if err != nil {
		return 0, usagef("--on: %w", err)
	}
	return d, nil
}

// today opens the keeper's file, with the day that counts as today.
func (a *app) today() (*frogroom.Room, civil.Date, error) {
	on, err := a.on()
	if err != nil {
		return nil, 0, err
	}
	room, err := a.open()
	return room, on, err
}

// open reads the keeper's file. Its warnings go to standard error; errors end
// the command.
func (a *app) open() (*frogroom.Room, error) {
	room, problems, err := a.read()
	if err != nil {
		return nil, err
	}
	if room == nil || !a.quiet {
		a.print(problems)
	}
	if room == nil {
		return nil, &exitError{code: exitInput}
	}
	return room, nil
}

func (a *app) read() (*frogroom.Room, strictyaml.Diagnostics, error) {
	if a.file == "-" {
		data, err := io.ReadAll(io.LimitReader(a.stdin, strictyaml.MaxBytes+1))
		if err != nil {
			return nil, nil, fileError(err)
		}
		room, problems := frogroom.Read("standard input", data)
		return room, problems, nil
	}
	room, problems, err := frogroom.Open(a.file)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, nil, missingFile(err)
	case err != nil:
		return nil, nil, fileError(err)
	}
	a.inputs = append(a.inputs, a.file)
	return room, problems, nil
}

func missingFile(err error) error {
	return fileError(fmt.Errorf("%w; name the keeper's file with -f, or write one with `spawnwright init -o collection.yaml`", err))
}

// print shows diagnostics on standard error.
func (a *app) print(ds strictyaml.Diagnostics) {
	for _, d := range ds {
		fmt.Fprint(a.stderr, a.diagnosticText(d, a.stderr))
	}
}

// diagnosticText is a problem with its line, for the stream w.
func (a *app) diagnosticText(d strictyaml.Diagnostic, w io.Writer) string {
	paint := terminal.For(w)
	text := d.String()
	switch d.Severity {
	case strictyaml.Error:
		text = paint.Bad(text)
	case strictyaml.Warning:
		text = paint.Doubt(text)
	}
	return text + "\n" + paint.Dim(d.Picture())
}

// warn shows doubts that are part of a result.
func (a *app) warn(texts []string) {
	if a.quiet {
		return
	}
	paint := terminal.For(a.stderr)
	for _, t := range texts {
		fmt.Fprintln(a.stderr, paint.Doubt("warning: "+t))
	}
}

// toFile reports whether -o names a file.
func (a *app) toFile() bool { return a.out != "" && a.out != "-" }

// draws reports whether -o asks for a picture.
func (a *app) draws() bool { return strings.EqualFold(filepath.Ext(a.out), ".svg") }

// write puts the product where -o says, but never over a keeper's file.
func (a *app) write(data []byte) error {
	if a.toFile() {
		if err := a.spare(); err != nil {
			return err
		}
	}
	return a.put(data)
}

// spare refuses a -o that would replace a file that was read, the keeper's file
// whether it was read or not, or any other YAML file, for no product is one.
func (a *app) spare() error {
	for _, in := range a.inputs {
		if sameFile(in, a.out) {
			return usagef("-o %s would replace the file that was read; write to another one", a.out)
		}
	}
	if sameFile(a.file, a.out) {
		return usagef("-o %s would replace the keeper's file; write to another one", a.out)
	}
	switch strings.ToLower(filepath.Ext(a.out)) {
	case ".yaml", ".yml":
		if _, err := os.Lstat(a.out); err == nil {
			return usagef("-o %s would replace a YAML file, which may be a collection; write to another one", a.out)
		}
	}
	return nil
}

// put writes without looking at what is there.
func (a *app) put(data []byte) error {
	if !a.toFile() {
		if _, err := a.stdout.Write(data); err != nil {
			return fileError(err)
		}
		return nil
	}
	if err := wholefile.Write(a.out, data); err != nil {
		return fileError(err)
	}
	a.wrote()
	return nil
}

func sameFile(x, y string) bool {
	one, err := os.Stat(x)
	if err != nil {
		return false
	}
	other, err := os.Stat(y)
	return err == nil && os.SameFile(one, other)
}

func (a *app) wrote() {
	if !a.quiet {
		fmt.Fprintf(a.stderr, "wrote %s\n", a.out)
	}
}

// show writes a result as --format says: tables for people, the first of them
// as CSV, for a spreadsheet reads one, or the result itself as JSON under its
// name, beside the schema number.
func (a *app) show(name string, result any, tables ...*table.Table) error {
	var b bytes.Buffer
	switch a.format {
	case "json":
		e := json.NewEncoder(&b)
		e.SetEscapeHTML(false)
		e.SetIndent("", "  ")
		if err := e.Encode(document{name, result}); err != nil {
			return err
		}
	case "csv":
		if err := tables[0].CSV(&b); err != nil {
			return err
		}
	case "table":
		for i, t := range tables {
			if i > 0 {
				b.WriteString("\n")
			}
			if err := t.Text(&b); err != nil {
				return err
			}
		}
	}
	return a.write(b.Bytes())
}

// document is a JSON result: {"schema": 1, name: result}; without a name the
// members of the result, which must have some, stand beside the number.
type document struct {
	name   string
	result any
}

// MarshalJSON writes the two members in a fixed order.
func (d document) MarshalJSON() ([]byte, error) {
	name, err := json.Marshal(d.name)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(d.result); err != nil {
		return nil, err
	}
	if d.name == "" {
		return fmt.Appendf(nil, `{"schema":1,%s`, bytes.TrimPrefix(b.Bytes(), []byte("{"))), nil
	}
	return fmt.Appendf(nil, `{"schema":1,%s:%s}`, name, bytes.TrimSpace(b.Bytes())), nil
}
