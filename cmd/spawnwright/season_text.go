package main

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
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

// seasonText is the plan for the wall.
func seasonText(b *bytes.Buffer, room *frogroom.Room, s frogroom.Season) error {
	title := "Season"
	if room.Collection.Keeper != "" {
		title = room.Collection.Keeper + ", season"
	}
	fmt.Fprintf(b, "%s as planned on %s\n", title, s.On)
	for _, t := range s.Targets {
		fmt.Fprintf(b, "\n%s, %s: %d froglets of %s wanted\n", t.Name, weekday(t.On), t.Wanted, t.Species)
		if t.FromEach > 0 && t.Clutches > 0 {
			verdict := "enough if every one succeeds"
			if t.Outlook < t.Wanted {
				verdict = "too few even if every one succeeds"
			}
			fmt.Fprintf(b, "  %s from %s: a usual clutch brings about %d, together about %d, %s\n",
				clutches(t.Clutches), strings.Join(t.Pairings, ", "), t.FromEach, t.Outlook, verdict)
		}
		if len(t.LeftOut) > 0 {
			fmt.Fprintf(b, "  not counted, for it cannot be ready in time or should not be made: %s\n", strings.Join(t.LeftOut, ", "))
		}
		if t.LastShipping.Known() {
			fmt.Fprintf(b, "  last day to hand over a parcel: %s; the plan is for %s itself, so name the earlier day if they travel\n", weekday(t.LastShipping), t.On)
		}
	}
	if len(s.Over) > 0 {
		fmt.Fprintf(b, "\nOver by their dates, and so not planned: %s.\n", strings.Join(s.Over, ", "))
	}
	if len(s.Pairings) == 0 && len(s.Over) == 0 {
		b.WriteString("\nNo pairing stands in the file: write one under pairings, or try one with --dam and --sire.\n")
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
	if s.Proof != nil {
		b.WriteString("\n" + proofText(*s.Proof))
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

// proofText says how good a plan is.
func proofText(p frogroom.Proof) string {
	text := "Proven best: no other days in this room come nearer to the wishes.\n"
	if !p.Best {
		text = fmt.Sprintf("Not proven best: it is within %.2g %% of the best possible.\n", 100*float64(p.Cost-p.Bound)/float64(p.Cost))
	}
	if len(p.Moved) > 0 {
		text += "Not on the days that they would have alone, so that all fit: " + strings.Join(p.Moved, ", ") + ".\n"
	}
	if len(p.Kept) > 0 {
		text += "Not moved, for they have begun, are overdue or cannot be as wished: " + strings.Join(p.Kept, ", ") + ".\n"
	}
	return text
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
