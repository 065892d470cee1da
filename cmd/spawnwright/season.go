package main

import (
	"bytes"
	"errors"
	"fmt"
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
		RunE: func(_ *cobra.Command, args []string) error {
			on, err := a.on()
			if err != nil {
				return err
			}
			wish, given, err := w.wish()
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
	c.Flags().StringSliceVar(&w.dams, "dam", nil, "dam, or several in one chamber, of a pairing that is not in the file")
	c.Flags().StringSliceVar(&w.sires, "sire", nil, "sire, or several in one chamber")
	c.Flags().StringVar(&w.start, "start", "", "day on which conditioning begins")
	c.Flags().StringVar(&w.readyBy, "ready-by", "", "day by which young are to be sale-ready")
	c.Flags().IntVar(&w.certainty, "certainty", 80, "how sure the date has to be, 50 to 95 %")
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

func (w *wishFlags) wish() (_ frogroom.Wish, given bool, err error) {
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
		err = a.show("season", s, seasonCSV(s))
	}
	if err == nil && len(s.Conflicts) > 0 {
		return &exitError{code: exitNoPlan}
	}
	return err
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

// named gives animals with their names.
func named(room *frogroom.Room, ids []string) string {
	out := make([]string, len(ids))
	for i, id := range ids {
		out[i] = id
		if a, ok := room.Collection.Animal(id); ok && a.Name != "" {
			out[i] = id + " " + a.Name
		}
	}
	return strings.Join(out, " + ")
}

// seasonText is the plan for the wall.
func seasonText(b *bytes.Buffer, room *frogroom.Room, s frogroom.Season) error {
	title := "Season"
	if room.Collection.Keeper != "" {
		title = room.Collection.Keeper + ", season"
	}
	fmt.Fprintf(b, "%s as planned on %s\n", title, s.On)
	for _, t := range s.Targets {
		fmt.Fprintf(b, "\n%s, %s: %d froglets of %s wanted\n", t.Name, weekday(t.On), t.Wanted, t.Species)
		if t.FromEach > 0 {
			verdict := "enough"
			if t.Outlook < t.Wanted {
				verdict = "too few"
			}
			fmt.Fprintf(b, "  %s from %s: a usual clutch brings about %d, together about %d, %s if every one succeeds\n",
				clutches(t.Clutches), strings.Join(t.Pairings, ", "), t.FromEach, t.Outlook, verdict)
		}
		if t.LastShipping.Known() {
			fmt.Fprintf(b, "  last day to hand over a parcel: %s\n", weekday(t.LastShipping))
		}
	}
	for _, p := range s.Pairings {
		fmt.Fprintf(b, "\n%s\n", pairingTitle(room, p))
		if err := pairingTable(p).Text(b); err != nil {
			return err
		}
		for _, st := range p.Stages {
			fmt.Fprintf(b, "  %-13s  %s\n", stageName(st.Stage), windowText(st.Window))
		}
		for _, f := range p.Findings {
			fmt.Fprintf(b, "  ! %s\n", f)
		}
		for _, w := range p.Warnings {
			fmt.Fprintf(b, "  ! %s\n", w)
		}
	}
	if len(s.Conflicts) > 0 {
		b.WriteString("\nIn the way:\n")
		for _, c := range s.Conflicts {
			fmt.Fprintf(b, "  - %s\n", c.Message)
		}
	}
	b.WriteString("\nWindows are early / likely / late: the days by which 10, 50 and 90 of 100 clutches are there.\n")
	if len(s.Unchecked) > 0 {
		b.WriteString("Not checked: " + strings.Join(s.Unchecked, "; ") + ".\n")
	}
	return nil
}

func pairingTitle(room *frogroom.Room, p frogroom.PlannedPairing) string {
	title := fmt.Sprintf("%s  %s × %s, %s", p.ID, named(room, p.Dams), named(room, p.Sires), p.Species)
	switch {
	case p.Target != "":
		title += ", for " + p.Target
	case p.ReadyBy.Known():
		title += ", ready by " + p.ReadyBy.String()
	}
	if p.Young.Known {
		title += ", inbreeding of the young " + coefficient(p.Young.Inbreeding, p.Young.Expected)
	}
	if p.Refused {
		title += "  (should not be made)"
	}
	return title
}

func pairingTable(p frogroom.PlannedPairing) *table.Table {
	t := &table.Table{Indent: "  ", Columns: []table.Column{
		{Name: "phase"}, {Name: "from"}, {Name: "to"}, {Name: "days", Right: true}, {Name: "begin no later than"}, {Name: "place"},
	}}
	for _, ph := range p.Phases {
		name := ph.Name
		if ph.Recorded {
			name += " (began)"
		}
		t.Add(name, weekday(ph.Span.First), weekday(ph.Span.Last), fmt.Sprint(ph.Span.Days()), dateOrBlank(ph.LatestStart), ph.Place)
	}
	return t
}

func weekday(d civil.Date) string { return d.Weekday().String()[:3] + " " + d.String() }

func windowText(w civil.Window) string {
	return fmt.Sprintf("%s / %s / %s", w.Early, w.Likely, w.Late)
}

// stageName is a stage as a heading.
func stageName(stage string) string {
	if stage == "laid" {
		return "eggs"
	}
	return stage
}

func clutches(n int) string {
	if n == 1 {
		return "1 clutch"
	}
	return fmt.Sprintf("%d clutches", n)
}
