package main

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/timetable"
)

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

// targetText says what a target wants, and what its pairings may bring.
func targetText(b *bytes.Buffer, t frogroom.TargetOutlook) {
	fmt.Fprintf(b, "\n%s, %s: %d froglets of %s wanted\n", t.Name, weekday(t.On), t.Wanted, t.Species)
	if t.FromEach > 0 && t.Clutches > 0 {
		verdict := "enough if every one succeeds"
		if t.Outlook < t.Wanted {
			verdict = "too few even if every one succeeds"
		}
		raised := ""
		if t.Outlook != t.FromEach*t.Clutches {
			raised = "those raised of it "
		}
		fmt.Fprintf(b, "  %s from %s: a usual clutch brings about %d, %stogether about %d, %s\n",
			clutches(t.Clutches), strings.Join(t.Pairings, ", "), t.FromEach, raised, t.Outlook, verdict)
	}
	if t.ChancePct != nil {
		fmt.Fprintf(b, "  chance that %d are ready by then, if each of them lays: %d %%; wanted: %d %%", t.Wanted, *t.ChancePct, t.CertaintyPct)
		if t.OneMorePct != nil && *t.ChancePct < t.CertaintyPct {
			fmt.Fprintf(b, "; with one more clutch %d %%", *t.OneMorePct)
		}
		b.WriteString("\n")
	}
	if len(t.LeftOut) > 0 {
		fmt.Fprintf(b, "  not counted, for it cannot be ready in time, has lost its clutch or should not be made: %s\n", strings.Join(t.LeftOut, ", "))
	}
	if t.LastShipping.Known() {
		fmt.Fprintf(b, "  last day to hand over a parcel: %s; the plan is for %s itself, so name the earlier day if they travel\n", weekday(t.LastShipping), t.On)
	}
}

// seasonText is the plan for the wall.
func seasonText(b *bytes.Buffer, room *frogroom.Room, s frogroom.Season, weeks bool) error {
	title := "Season"
	if room.Collection.Keeper != "" {
		title = room.Collection.Keeper + ", season"
	}
	fmt.Fprintf(b, "%s as planned on %s\n", title, s.On)
	for _, t := range s.Targets {
		targetText(b, t)
	}
	if len(s.Over) > 0 {
		fmt.Fprintf(b, "\nOver by their dates, and so not planned: %s.\n", strings.Join(s.Over, ", "))
	}
	if len(s.Pairings) == 0 && len(s.Over) == 0 && len(s.LeftOut) == 0 && len(s.Conflicts) == 0 {
		b.WriteString("\nNo pairing stands in the file: write one under pairings, or try one with --dam and --sire.\n")
	}
	if len(s.LeftOut) > 0 {
		fmt.Fprintf(b, "\nLeft out, at their cost: %s.\n", strings.Join(s.LeftOut, ", "))
		for _, why := range s.WhyLeftOut {
			fmt.Fprintf(b, "  - %s\n", why)
		}
	}
	if weeks {
		weeksText(b, s)
	} else if err := pairingsText(b, room, s); err != nil {
		return err
	}
	roomText(b, s)
	if len(s.Conflicts) > 0 {
		b.WriteString("\nIn the way:\n")
		for _, c := range s.Conflicts {
			fmt.Fprintf(b, "  - %s\n", c.Message)
		}
	}
	if s.Proof != nil {
		b.WriteString("\n" + proofText(s))
	}
	b.WriteString("\nWindows are early / likely / late: the days by which 10, 50 and 90 of 100 clutches are there.\n")
	if slices.ContainsFunc(s.Pairings, func(p frogroom.PlannedPairing) bool { return marked(p.Young.Inbreeding, p.Young.Expected) }) {
		b.WriteString("Values marked ~ are expectations: a parent or ancestor is one of several.\n")
	}
	if len(s.Unchecked) > 0 {
		b.WriteString("Not checked: " + strings.Join(s.Unchecked, "; ") + ".\n")
	}
	return nil
}

// pairingsText is the plan by pairing.
func pairingsText(b *bytes.Buffer, room *frogroom.Room, s frogroom.Season) error {
	for _, p := range s.Pairings {
		fmt.Fprintf(b, "\n%s\n", pairingTitle(room, p))
		if err := pairingTable(p).Text(b); err != nil {
			return err
		}
		for _, st := range p.Stages {
			fmt.Fprintf(b, "  %-13s  %s\n", stageName(st.Stage), windowText(st.Window))
		}
		if n := len(p.Stages); n > 1 {
			fmt.Fprintf(b, "  these rest on %s\n", p.Stages[n-1].RestsOn.Words)
		}
		for _, text := range slices.Concat(p.Findings, p.Warnings) {
			fmt.Fprintf(b, "  ! %s\n", text)
		}
	}
	return nil
}

// roomText tells what the room holds and how likely it runs out of something.
func roomText(b *bytes.Buffer, s frogroom.Season) {
	if text := loadsText(s.Peaks, true); text != "" {
		fmt.Fprintf(b, "\nMost in use or kept free: %s.\n", text)
	}
	if len(s.Food) > 0 {
		b.WriteString("Most food in a week, by who is likely to be there:\n")
		for _, f := range s.Food {
			fmt.Fprintf(b, "  - %s, week of %s: %s\n", f.Species, f.Week, foodText(f))
		}
	}
	for i, r := range s.Risks {
		if i == 0 {
			b.WriteString("Played with clutches that come as large, as early and as late as they may, if every pairing lays:\n")
		}
		fmt.Fprintf(b, "  - %s\n", r.Text)
	}
}

// proofText says how good a plan is.
func proofText(s frogroom.Season) string {
	p := *s.Proof
	text := s.HowGood()
	if !p.Best && !p.Stopped {
		text += "; with more --effort it may be proven, or better"
	}
	text += ".\n"
	if len(p.Moved) > 0 {
		text += "Not on the days that they would have alone, so that all fit: " + strings.Join(p.Moved, ", ") + ".\n"
	}
	if h := p.Help; h != nil {
		text += helpText(p, *h)
	}
	if len(p.Started) > 0 {
		text += "Conditioning begins on the start that is given, which is never moved: " + strings.Join(p.Started, ", ") + ".\n"
	}
	if len(p.Kept) > 0 {
		text += "Not moved, for their rain has begun, they are overdue or cannot be as wished: " + strings.Join(p.Kept, ", ") + ".\n"
	}
	for i, c := range p.Changed {
		if i == 0 {
			text += "Announced days that are others now:\n"
		}
		text += "  - " + changedText(c) + "\n"
	}
	return text
}

// helpText tells what one more of a place would do.
func helpText(p frogroom.Proof, h timetable.Help) string {
	one := "One more " + h.Resource
	if h.Resource == planner.Minutes {
		one = "One more minute a day"
	}
	switch {
	case len(h.Moved) == 0:
		return one + " would help most: then none has to give way.\n"
	case len(h.Moved) < len(p.Moved):
		return one + " would help most: then only " + strings.Join(h.Moved, ", ") + " would have to give way.\n"
	}
	return one + " would help most: then they would have to give way less.\n"
}

// changedText tells of an announced day that was moved.
func changedText(c timetable.Changed) string {
	what := c.Phase + " begins"
	if c.Phase == planner.End {
		what = "the cycle is over"
	}
	if !c.To.Known() {
		return fmt.Sprintf("%s: %s: was %s, and is left out", c.Pairing, what, weekday(c.From))
	}
	return fmt.Sprintf("%s: %s: was %s, now %s", c.Pairing, what, weekday(c.From), weekday(c.To))
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
