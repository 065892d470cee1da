package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/parentage"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// tableFlags are the flags of a plain table of parents.
type tableFlags struct {
	file    string
	columns []string
	anySex  bool
}

func (t *tableFlags) register(c *cobra.Command) {
	c.Flags().StringVar(&t.file, "pedigree", "", "read parents from this table, a CSV `FILE`, instead of the keeper's file; - reads standard input")
	c.Flags().StringSliceVar(&t.columns, "columns", nil, "what the columns of --pedigree are called, as `NAMES`: id=Individual,sire=Father,dam=Mother")
	c.Flags().BoolVar(&t.anySex, "any-sex", false, "in the table of --pedigree an animal may be both sire and dam")
}

// given reports whether a plain table stands in for the keeper's file.
func (t *tableFlags) given() bool { return t.file != "" }

func (t *tableFlags) options() (parentage.Options, error) {
	o := parentage.Options{AnySex: t.anySex}
	names := map[string]*string{"id": &o.Columns.ID, "sire": &o.Columns.Sire, "dam": &o.Columns.Dam}
	for _, c := range t.columns {
		key, name, found := strings.Cut(c, "=")
		at := names[strings.ToLower(strings.TrimSpace(key))]
		if !found || at == nil || strings.TrimSpace(name) == "" {
			return o, usagef("--columns: %q is not understood; write it as id=Individual,sire=Father,dam=Mother, or those of the three that are called otherwise", c)
		}
		*at = name
	}
	if !t.given() && (t.anySex || len(t.columns) > 0) {
		return o, usagef("--columns and --any-sex are for the table that --pedigree names")
	}
	return o, nil
}

// ancestry opens the keeper's file or a plain table of parents.
func (a *app) ancestry(t *tableFlags) (*kin.Ancestry, error) {
	options, err := t.options()
	if err != nil {
		return nil, err
	}
	if !t.given() {
		room, err := a.open()
		if err != nil {
			return nil, err
		}
		return room.Ancestry, nil
	}
	var ancestry *kin.Ancestry
	err = a.input(t.file, func(name string, r io.Reader) error {
		if ancestry, err = kin.ReadTable(r, options); err != nil {
			return a.badTable(name, err)
		}
		a.printTable(name, strictyaml.Warning, ancestry.Table.Warnings, ancestry.Table.MoreWarnings)
		return nil
	})
	return ancestry, err
}

// input opens a file that is named on the command line; - is standard input.
func (a *app) input(file string, read func(name string, r io.Reader) error) error {
	if file == "-" {
		return read("standard input", a.stdin)
	}
	f, err := os.Open(file)
	if err != nil {
		return fileError(err)
	}
	defer f.Close()
	a.inputs = append(a.inputs, file)
	return read(file, f)
}

// badTable shows all that is wrong with a table of parents, each with its place.
func (a *app) badTable(name string, err error) error {
	var bad *parentage.Error
	if !errors.As(err, &bad) {
		return unread(err)
	}
	a.printTable(name, strictyaml.Error, bad.Problems, bad.More)
	a.printTable(name, strictyaml.Warning, bad.Warnings, 0)
	return &exitError{code: exitInput}
}

// unread ends a command for a file that could not be read to its end.
func unread(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		return fileError(path)
	}
	return fileError(err)
}

// printTable shows problems of a table and how many there are besides.
func (a *app) printTable(name string, severity strictyaml.Severity, problems []parentage.Problem, more int) {
	if a.quiet && severity != strictyaml.Error {
		return
	}
	var ds strictyaml.Diagnostics
	for _, p := range problems {
		d := strictyaml.Diagnostic{File: name, Line: p.Line, Column: p.Column, Severity: severity, Message: p.Message, Cure: p.Cure}
		if p.Option != "" {
			d.Cure += " (--" + asArgument(p.Option) + ")"
		}
		ds = append(ds, d)
	}
	if more > 0 {
		ds = append(ds, strictyaml.Diagnostic{File: name, Severity: severity, Message: fmt.Sprintf("and %d more like these", more)})
	}
	a.print(ds)
}

// asArgument puts what is set by an option in quotes when the shell needs them.
func asArgument(option string) string {
	flag, value, _ := strings.Cut(option, " ")
	if strings.ContainsAny(value, " ;()&|<>*?'`$\\") {
		return flag + ` "` + value + `"`
	}
	return option
}
