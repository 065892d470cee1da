package main

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

func seasonCommand(a *app) *cobra.Command {
	f := &seasonFlags{}
	c := &cobra.Command{
		Use:   "season [PAIRING…]",
		Short: "the dates of every phase of the pairings, and where they clash",
		Long: `season plans the pairings of the file, or those that are named: forward from a
start, or backward from the date by which young are to be ready. With --dam and
--sire it plans a pairing that does not stand in the file.

The pairings share chambers, cooling places, tubs, bins and minutes a day, and are
moved against each other where the wishes leave a choice; the plan says how good it
is. --weeks shows it week by week. --announced keeps to the days of a calendar that
others have already.

With -o and a name that ends in .svg the plan is drawn, with what the room needs by
day; one that ends in .html is a sheet for the wall, with boxes to tick, that opens
in every browser and prints on A4.

It ends with exit code 3 when the pairings cannot run as they are wished, and
says what is in the way; the dates are printed all the same. Ctrl-C ends the search
with the best plan so far.`,
		Example: `  spawnwright season
  spawnwright season --weeks
  spawnwright season -o season.html
  spawnwright season P-27-01 P-27-04
  spawnwright season --announced season.ics
  spawnwright season --dam AC-14 --sire AC-08,AC-21 --ready-by 2027-09-18
  spawnwright season --dam AC-14 --sire AC-08 --start 2027-02-20
  spawnwright season --problem plan.json && spawnwright season --check-plan plan.json`,
		ValidArgsFunction: a.completePairings(),
		RunE: func(c *cobra.Command, args []string) error {
			if f.check != "" {
				return a.checkPlan(f.check, c, args)
			}
			return a.season(f, args, c.Flags().Changed("certainty"))
		},
	}
	f.define(c)
	for _, name := range []string{"dam", "sire"} {
		_ = c.RegisterFlagCompletionFunc(name, a.completeAnimals(0))
	}
	a.formatFlag(c, "table", "json", "csv")
	a.outFlag(c, ".svg", ".html")
	return c
}

// seasonFlags are the flags of the command.
type seasonFlags struct {
	wish      wishFlags
	weeks     bool
	effort    int
	announced string
	problem   string
	check     string
}

func (f *seasonFlags) define(c *cobra.Command) {
	flags, w := c.Flags(), &f.wish
	flags.StringSliceVar(&w.dams, "dam", nil, "dam of a pairing that is not in the file, an `ANIMAL`, or several in one chamber: A,B")
	flags.StringSliceVar(&w.sires, "sire", nil, "sire, an `ANIMAL`, or several in one chamber: A,B")
	flags.StringVar(&w.start, "start", "", "`DATE` on which conditioning begins")
	flags.StringVar(&w.readyBy, "ready-by", "", "`DATE` by which young are to be sale-ready")
	flags.IntVar(&w.certainty, "certainty", 80, "how sure the date of --ready-by has to be, 50 to 95 `PERCENT`")
	flags.BoolVar(&f.weeks, "weeks", false, "week by week: what to do, what is in the room, what is in use")
	flags.IntVar(&f.effort, "effort", 1, "how many `TIMES` the usual work to search for a better plan and its proof, 1 to 1000")
	flags.StringVar(&f.announced, "announced", "", "keep to the days of this earlier calendar `FILE` where that costs less than moving them")
	flags.StringVar(&f.problem, "problem", "", "also write what was solved, with the plan, to `FILE`, for another solver or --check-plan")
	flags.StringVar(&f.check, "check-plan", "", "only verify the plan in this `FILE` of --problem, day by day")
}

func (a *app) season(f *seasonFlags, args []string, certain bool) error {
	on, err := a.on()
	if err != nil {
		return err
	}
	if f.weeks && (a.draws() || a.writesPage()) {
		return usagef("-o %s is drawn, and --weeks is a text; leave one out", a.out)
	}
	o, err := f.planning(args, certain)
	if err != nil {
		return err
	}
	room, err := a.open()
	if err != nil {
		return err
	}
	if o.Announced, err = a.announced(f.announced, room); err != nil {
		return err
	}
	ctx, stop := a.interruptible("planning")
	defer stop()
	if a.draws() || a.writesPage() {
		return a.drawSeason(ctx, room, on, o, f.problem)
	}
	plan, err := room.PlanSeason(ctx, on, o)
	if err != nil {
		return wishError(err)
	}
	if err := a.writeProblem(f.problem, plan); err != nil {
		return err
	}
	return a.showSeason(room, plan, f.weeks)
}

// planning gives what the flags ask for.
func (f *seasonFlags) planning(args []string, certain bool) (frogroom.Planning, error) {
	o := frogroom.Planning{Pairings: args, Effort: f.effort}
	if f.effort < 1 || f.effort > 1000 {
		return o, usagef("--effort %d is not from 1 to 1000", f.effort)
	}
	wish, given, err := f.wish.wish(certain)
	switch {
	case err != nil:
		return o, err
	case given && len(args) > 0:
		return o, usagef("name pairings of the file, or give --dam and --sire, not both")
	case given:
		o.Wish = &wish
	}
	return o, nil
}

// announced reads the days of an earlier calendar.
func (a *app) announced(path string, room *frogroom.Room) (calendar.Announced, error) {
	if path == "" {
		return calendar.Announced{}, nil
	}
	earlier, err := earlierCalendar(path, room.Calendar())
	if err != nil {
		return calendar.Announced{}, cause(err, func(err error) error { return inputError(fmt.Errorf("--announced %s: %w", path, err)) })
	}
	a.inputs = append(a.inputs, path)
	return earlier.Announced(), nil
}

func (a *app) showSeason(room *frogroom.Room, s frogroom.Season, weeks bool) error {
	var err error
	if a.format == "table" {
		var b bytes.Buffer
		if err = seasonText(&b, room, s, weeks); err == nil {
			err = a.write(b.Bytes())
		}
	} else {
		rows := seasonCSV(s)
		if weeks {
			rows = weeksCSV(s)
		}
		if a.format == "csv" {
			a.warn(seasonDoubts(s))
		}
		err = a.show("season", s, rows)
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
	return &exitError{code: exitNoPlan, err: errors.New("in the way: " + strings.Join(conflictTexts(s.Conflicts), "; "))}
}

// mostConflicts is how many conflicts are told where the plan itself is not.
const mostConflicts = 10

// conflictTexts says why the season cannot run as planned, the first few of many.
func conflictTexts(list []frogroom.Conflict) []string {
	var out []string
	for i, c := range list {
		if i == mostConflicts && len(list) > mostConflicts+1 {
			return append(out, fmt.Sprintf("%d more are in the way; `spawnwright season` lists them", len(list)-i))
		}
		out = append(out, c.Message)
	}
	return out
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
