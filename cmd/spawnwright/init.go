package main

import (
	_ "embed"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/pkg/spreadsheet"
)

//go:embed starter.yaml
var starter []byte

func initCommand(a *app) *cobra.Command {
	var (
		force bool
		from  importFlags
	)
	c := &cobra.Command{
		Use:   "init",
		Short: "write a collection file to start from, commented or from a spreadsheet",
		Long: `init writes a small, commented collection file that "spawnwright check" accepts.
Without -o it goes to standard output. A file that exists is left alone unless
--force is given.

With --from it makes the file from a table of animals saved as CSV. Columns are
found by their headers, in any case: id, name, species, sex, line, locality,
hatched, out of water, acquired, sire, dam, weight (g), length (mm), note and
others; --columns says what another one is. What is not understood is left out
and said on standard error with its line and column. Days that could be two,
such as 03/04/2025, are not guessed: --dates says how they are meant.`,
		Example: `  spawnwright init -o collection.yaml
  spawnwright init --from animals.csv -o collection.yaml
  spawnwright init --from animals.csv --columns id=Tag,sire=Vater --dates day-first -o collection.yaml`,
		Args: noArguments,
		RunE: func(*cobra.Command, []string) error {
			if a.toFile() && !force {
				if _, err := os.Lstat(a.out); err == nil {
					return fileError(&fs.PathError{Op: "write", Path: a.out, Err: errors.New("the file exists; --force replaces it")})
				}
			}
			if from.file == "" {
				return a.put(starter)
			}
			return a.convert(from)
		},
	}
	c.Flags().BoolVar(&force, "force", false, "replace a file that exists")
	from.add(c)
	a.outFlag(c)
	return c
}

// importFlags say how a table is to be read.
type importFlags struct {
	file, dates, delimiter, species string
	columns                         map[string]string
}

func (f *importFlags) add(c *cobra.Command) {
	flags := c.Flags()
	flags.StringVar(&f.file, "from", "", "make the file from this CSV `FILE`; - reads standard input")
	flags.StringToStringVar(&f.columns, "columns", nil, "which column is what: `KEY=HEADER`,…; a letter counts from A")
	flags.StringVar(&f.dates, "dates", "", "how dates are written, a `WORD`: 2006-01-02, day-first or month-first")
	flags.StringVar(&f.delimiter, "delimiter", "", "the sign between cells, a `WORD`: comma, semicolon or tab (default: found)")
	flags.StringVar(&f.species, "species", "", "the species of animals whose row says none, a `NAME`")
}

var (
	dateOrders = map[string]spreadsheet.DateOrder{
		"": spreadsheet.Unstated, "2006-01-02": spreadsheet.OnlyISO, "day-first": spreadsheet.DayFirst, "month-first": spreadsheet.MonthFirst,
	}
	delimiters = map[string]rune{"": 0, "comma": ',', "semicolon": ';', "tab": '\t'}
)

func (f *importFlags) options() (spreadsheet.Options, error) {
	o := spreadsheet.Options{File: f.file, Columns: f.columns, Species: f.species}
	var ok bool
	if o.Dates, ok = dateOrders[f.dates]; !ok {
		return o, usagef("--dates %q is not known; write 2006-01-02, day-first or month-first", f.dates)
	}
	if o.Delimiter, ok = delimiters[f.delimiter]; !ok {
		return o, usagef("--delimiter %q is not known; write comma, semicolon or tab", f.delimiter)
	}
	for key := range f.columns {
		if !slices.Contains(spreadsheet.Keys(), key) {
			return o, usagef("--columns: %q is no key here; there are %s", key, strings.Join(spreadsheet.Keys(), ", "))
		}
	}
	if o.File == "-" {
		o.File = "standard input"
	}
	return o, nil
}

// convert writes the collection file of a table.
func (a *app) convert(f importFlags) error {
	o, err := f.options()
	if err != nil {
		return err
	}
	var data []byte
	if f.file == "-" {
		data, err = io.ReadAll(a.stdin)
	} else {
		data, err = os.ReadFile(f.file)
		a.inputs = append(a.inputs, f.file)
	}
	if err != nil {
		return fileError(err)
	}
	result := spreadsheet.Convert(data, o)
	a.print(result.Problems)
	if result.YAML == nil {
		return &exitError{code: exitInput}
	}
	if !a.quiet {
		fmt.Fprintf(a.stderr, "%s of %s\n", plural(result.Animals, "animal"), plural(result.Rows, "row"))
	}
	return a.put(result.YAML)
}
