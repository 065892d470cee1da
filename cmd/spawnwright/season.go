package main

import (
	"bytes"
	"errors"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

func seasonCommand(a *app) *cobra.Command {
	w := &wishFlags{}
	c := &cobra.Command{
		Use:   "season [PAIRING…]",
		Short: "the dates of every phase of the pairings, and where they clash",
		Long: `season plans the pairings of the file, or those that are named: forward from a
start, or backward from the date by which young are to be ready. With --dam and
--sire it plans a pairing that does not stand in the file.

It ends with exit code 3 when the pairings cannot run as they are wished, and
says what is in the way; the dates are printed all the same.`,
		Example: `  spawnwright season
  spawnwright season P-27-01 P-27-04
  spawnwright season --dam AC-14 --sire AC-08,AC-21 --ready-by 2027-09-18
  spawnwright season --dam AC-14 --sire AC-08 --start 2027-02-20`,
		ValidArgsFunction: a.completePairings(),
		RunE: func(c *cobra.Command, args []string) error {
			on, err := a.on()
			if err != nil {
				return err
			}
			wish, given, err := w.wish(c.Flags().Changed("certainty"))
			if err != nil {
				return err
			}
			if given && len(args) > 0 {
				return usagef("name pairings of the file, or give --dam and --sire, not both")
			}
			room, err := a.open()
			if err != nil {
				return err
			}
			var plan frogroom.Season
			if given {
				plan, err = room.SeasonOf(on, wish)
			} else {
				plan, err = room.Season(on, args...)
			}
			if err != nil {
				return wishError(err)
			}
			return a.showSeason(room, plan)
		},
	}
	c.Flags().StringSliceVar(&w.dams, "dam", nil, "dam of a pairing that is not in the file, an `ANIMAL`, or several in one chamber: A,B")
	c.Flags().StringSliceVar(&w.sires, "sire", nil, "sire, an `ANIMAL`, or several in one chamber: A,B")
	c.Flags().StringVar(&w.start, "start", "", "`DATE` on which conditioning begins")
	c.Flags().StringVar(&w.readyBy, "ready-by", "", "`DATE` by which young are to be sale-ready")
	c.Flags().IntVar(&w.certainty, "certainty", 80, "how sure the date of --ready-by has to be, 50 to 95 `PERCENT`")
	for _, name := range []string{"dam", "sire"} {
		_ = c.RegisterFlagCompletionFunc(name, a.completeAnimals(0))
	}
	a.formatFlag(c, "table", "json", "csv")
	a.outFlag(c)
	return c
}

// wishFlags are the flags of a pairing that is not in the file.
type wishFlags struct {
	dams, sires    []string
	start, readyBy string
	certainty      int
}

func (w *wishFlags) wish(certain bool) (_ frogroom.Wish, given bool, err error) {
	if certain && w.readyBy == "" {
		return frogroom.Wish{}, false, usagef("--certainty goes with --ready-by; in the file it is certainty_pct")
	}
	if len(w.dams) == 0 && len(w.sires) == 0 {
		if w.start != "" || w.readyBy != "" {
			return frogroom.Wish{}, false, usagef("--start and --ready-by go with --dam and --sire")
		}
		return frogroom.Wish{}, false, nil
	}
	out := frogroom.Wish{Dams: w.dams, Sires: w.sires, CertaintyPct: w.certainty}
	for _, f := range []struct {
		name, text string
		to         *civil.Date
	}{{"--start", w.start, &out.Start}, {"--ready-by", w.readyBy, &out.ReadyBy}} {
		if f.text == "" {
			continue
		}
		if *f.to, err = civil.Parse(f.text); err != nil {
			return out, true, usagef("%s: %w", f.name, err)
		}
	}
	return out, true, nil
}

// wishError says whether the command was wrong or the file.
func wishError(err error) error {
	var wish *frogroom.WishError
	if errors.As(err, &wish) {
		return usage(err)
	}
	return unknownID(err)
}

func (a *app) showSeason(room *frogroom.Room, s frogroom.Season) error {
	var err error
	if a.format == "table" {
		var b bytes.Buffer
		if err = seasonText(&b, room, s); err == nil {
			err = a.write(b.Bytes())
		}
	} else {
		if a.format == "csv" {
			a.warn(seasonDoubts(s))
		}
		err = a.show("season", s, seasonCSV(s))
	}
	if err == nil && len(s.Conflicts) > 0 {
		return a.noPlan(s)
	}
	return err
}

// noPlan ends the command for a plan that does not work. What is in the way
// stands in the plan already, unless that went to a file or has no place for it.
func (a *app) noPlan(s frogroom.Season) error {
	if a.format != "csv" && !a.toFile() {
		return &exitError{code: exitNoPlan}
	}
	return &exitError{code: exitNoPlan, err: errors.New("in the way: " + strings.Join(conflicts(s), "; "))}
}

func conflicts(s frogroom.Season) []string {
	out := make([]string, len(s.Conflicts))
	for i, c := range s.Conflicts {
		out[i] = c.Message
	}
	return out
}

// warnOfConflicts says on standard error why the season cannot run as planned,
// for commands that show parts of it.
func (a *app) warnOfConflicts(room *frogroom.Room, on civil.Date) error {
	s, err := room.Season(on)
	if err != nil {
		return inputError(err)
	}
	a.warn(conflicts(s))
	return nil
}

// seasonDoubts is what a plan says beside its dates.
func seasonDoubts(s frogroom.Season) []string {
	var out []string
	for _, p := range s.Pairings {
		if p.Refused {
			out = append(out, p.ID+" should not be made")
		}
		for _, text := range slices.Concat(p.Findings, p.Warnings) {
			out = append(out, p.ID+": "+text)
		}
	}
	for _, text := range s.Unchecked {
		out = append(out, "not checked: "+text)
	}
	return out
}

// seasonCSV has one row for each phase and each stage.
func seasonCSV(s frogroom.Season) *table.Table {
	t := &table.Table{Columns: []table.Column{
		{Name: "pairing"}, {Name: "what"}, {Name: "name"}, {Name: "first"}, {Name: "last"}, {Name: "likely"}, {Name: "latest start"},
	}}
	for _, p := range s.Pairings {
		for _, ph := range p.Phases {
			t.Add(p.ID, "phase", ph.Name, ph.Span.First.String(), ph.Span.Last.String(), "", dateOrBlank(ph.LatestStart))
		}
		for _, st := range p.Stages {
			t.Add(p.ID, "stage", st.Stage, st.Window.Early.String(), st.Window.Late.String(), st.Window.Likely.String(), "")
		}
	}
	return t
}

func dateOrBlank(d civil.Date) string {
	if !d.Known() {
		return ""
	}
	return d.String()
}
