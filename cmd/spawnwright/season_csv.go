package main

import (
	"fmt"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

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

// weeksCSV has one row for each thing to do, for each that is in the room, for what is
// eaten, and for each kind of place, by week.
func weeksCSV(s frogroom.Season) *table.Table {
	t := &table.Table{Columns: []table.Column{
		{Name: "week"}, {Name: "what"}, {Name: "on"}, {Name: "name"}, {Name: "most"}, {Name: "of"},
	}}
	for _, w := range s.Weeks {
		week := w.First.String()
		for _, task := range w.Tasks {
			what := "to do"
			if task.Likely {
				what = "likely"
			}
			t.Add(week, what, task.On.String(), task.What, "", "")
		}
		for _, p := range w.Present {
			for _, who := range p.Who {
				t.Add(week, p.What, "", who, "", "")
			}
		}
		for _, l := range w.Loads {
			t.Add(week, "in use", l.On.String(), l.What, fmt.Sprint(l.Most), fmt.Sprint(l.Of))
		}
		for _, f := range w.Food {
			t.Add(week, "food", "", f.Species+": "+foodText(f), "", "")
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
