package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/record"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// recorder is the flags that all forms of record share.
type recorder struct {
	*app
	dry  bool
	note string
}

// form turns the arguments of a command into what happened on a day.
type form = func(b *record.Book, on civil.Date) (record.Edit, error)

func recordCommand(a *app) *cobra.Command {
	r := &recorder{app: a}
	c := &cobra.Command{
		Use:   "record",
		Short: "write down what happened: laid, hatched, seen, weight, died, sold, …",
		Long: `record adds to the keeper's file what happened today, or on the day of --on: an
entry of the diary, and the clutch or the animals that came into being. All else
in the file stays as it is, to the byte, comments and blanks included. The file
is replaced whole after the new text was read back, so that nothing is lost, and
not at all when it would not be right afterwards.

Where a clutch may be left out, it is the one that is running, when there is only
one. Measures need their unit: 12.4g, 0.44oz, 69mm, 23.5C, 74F.`,
		Example: `  spawnwright record laid --dam AC-02 --sire AC-01,AC-04 --eggs 43
  spawnwright record hatched C-27-03 --count 38
  spawnwright record weight AC-02 12.4g
  spawnwright record temperature tub-3 23.5C
  spawnwright record undo                  take the last entry back`,
		Args: subcommand,
		RunE: func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	c.PersistentFlags().BoolVarP(&r.dry, "dry-run", "n", false, "show the lines and write nothing")
	c.AddCommand(
		recordLaid(r), recordHatched(r), recordSeen(r), recordCount(r), recordHeldBack(r),
		recordWeight(r), recordLength(r), recordAte(r), recordMoved(r), recordHold(r), recordDied(r), recordSold(r),
		recordTemperature(r), recordNote(r), recordBegan(r), recordUndo(r),
	)
	return c
}

// noteFlag gives c the flag for a remark on the entry.
func (r *recorder) noteFlag(c *cobra.Command) {
	c.Flags().StringVar(&r.note, "note", "", "free `TEXT` beside it")
}

// entry is a command that records what its arguments say, with a remark.
func (r *recorder) entry(c *cobra.Command, says func(b *record.Book, on civil.Date, args []string) (record.Edit, error)) *cobra.Command {
	c.RunE = func(_ *cobra.Command, args []string) error {
		return r.add(func(b *record.Book, on civil.Date) (record.Edit, error) { return says(b, on, args) })
	}
	r.noteFlag(c)
	return c
}

// add records what a form says.
func (r *recorder) add(f form) error {
	on, err := r.on()
	if err != nil {
		return err
	}
	return r.change(func(b *record.Book) (*record.Plan, error) {
		e, err := f(b, on)
		if err != nil {
			return nil, err
		}
		e.Remark(r.note)
		return b.Plan(e)
	})
}

// change makes a plan, carries it out and says so.
func (r *recorder) change(plan func(*record.Book) (*record.Plan, error)) error {
	if r.file == "-" {
		return usagef("record changes a file, and standard input is none; name the file with -f")
	}
	do := record.Change
	if r.dry {
		do = onlyPlan
	}
	p, err := do(r.file, plan)
	if err != nil {
		return r.refused(err)
	}
	if !r.quiet {
		r.print(p.Warnings)
	}
	if _, err := r.stdout.Write([]byte(r.said(p))); err != nil {
		return fileError(err)
	}
	return nil
}

// onlyPlan reads a file and makes a plan for it.
func onlyPlan(path string, plan func(*record.Book) (*record.Plan, error)) (*record.Plan, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	b, problems := record.Read(path, data)
	if b == nil {
		return nil, problems.Err()
	}
	return plan(b)
}

// said gives what was done, with the lines when nothing was written or lines
// were taken away.
func (r *recorder) said(p *record.Plan) string {
	if r.quiet && !r.dry {
		return ""
	}
	verb, sign := "recorded", "+"
	switch {
	case p.Undone && r.dry:
		verb, sign = "would take back", "-"
	case p.Undone:
		verb, sign = "took back", "-"
	case r.dry:
		verb = "would record"
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%s %s\n", verb, p.Edit.String())
	if r.dry || p.Undone {
		for _, l := range p.Lines {
			fmt.Fprintf(&b, "%5d %s %s\n", l.Number, sign, l.Text)
		}
	}
	return b.String()
}

// refused turns an error of a change into messages and an exit code.
func (r *recorder) refused(err error) error {
	var (
		file    *strictyaml.FileError
		invalid *record.InvalidError
		unsafe  *record.UnsafeError
		refusal *record.Refusal
	)
	switch {
	case errors.As(err, &file):
		r.print(file.Diagnostics)
		return inputError(errors.New("the file has errors; nothing was written"))
	case errors.As(err, &invalid):
		r.print(invalid.Diagnostics)
		return inputError(errors.New("the file would not be right afterwards; nothing was written"))
	case errors.As(err, &unsafe):
		return &exitError{exitInput, err, strings.TrimSuffix("add by hand:\n"+unsafe.Hand, "\n")}
	case errors.As(err, &refusal):
		return &exitError{exitUsage, err, ""}
	case errors.Is(err, fs.ErrNotExist):
		return missingFile(err)
	}
	return fileError(err)
}
