package picture

import (
	"bytes"
	"fmt"
	"html/template"
	"slices"
	"strings"
	"sync"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/svg"
)

// Sheet writes a season as one page of HTML for the wall: the chart, what to do in
// the next eight weeks with boxes to tick, the pairings with their reasons, what
// the room holds, and what to be careful of. It has no script, fetches nothing and
// prints on A4.
func Sheet(s frogroom.Sheet) []byte {
	data := wall{Sheet: s, Weeks: weeksOf(s.Agenda)}
	data.Notes = notesOf(data.Weeks)
	charts, broad := seasonParts(s)
	data.Broad = broad
	for _, part := range charts {
		data.Charts = append(data.Charts, template.HTML(bytes.TrimSpace(part)))
	}
	for _, k := range s.Clutches {
		data.Cautions = append(data.Cautions, k.Warnings...)
	}
	data.Cautions = append(data.Cautions, s.Agenda.Warnings...)
	slices.Sort(data.Cautions)
	data.Cautions = slices.Compact(data.Cautions)
	var b bytes.Buffer
	if err := sheetPage().Execute(&b, data); err != nil {
		panic("picture: " + err.Error()) // it is executed on values of one type
	}
	return b.Bytes()
}

// wall is what the page shows.
type wall struct {
	frogroom.Sheet
	Charts   []template.HTML // written by package svg
	Broad    bool            // it is one broad chart
	Notes    []string        // what is said of several tasks, by number
	Weeks    []wallWeek
	Cautions []string
}

// wallWeek is what there is to do in a week.
type wallWeek struct {
	First civil.Date // a Monday, or the day of the sheet
	Tasks []frogroom.Task
	Watch []frogroom.Watch // by the likely day
	Away  []civil.Span
	Free  []frogroom.Holiday
}

// weeksOf puts an agenda into weeks.
func weeksOf(a frogroom.Agenda) []wallWeek {
	var out []wallWeek
	for d := a.Days.First; d <= a.Days.Last; d++ {
		if len(out) == 0 || d.Weekday() == 1 {
			out = append(out, wallWeek{First: d})
		}
	}
	for i := range out {
		w := &out[i]
		days := civil.Span{First: w.First, Last: a.Days.Last}
		if i+1 < len(out) {
			days.Last = out[i+1].First.Add(-1)
		}
		for _, t := range a.Tasks {
			if days.Contains(t.On) {
				w.Tasks = append(w.Tasks, t)
			}
		}
		for _, x := range a.Watch {
			if on := max(x.Window.Likely, a.Days.First); days.Contains(on) { // what is late is looked for now
				w.Watch = append(w.Watch, x)
			}
		}
		for _, s := range a.Away {
			if s.Overlaps(days) {
				w.Away = append(w.Away, s)
			}
		}
		for _, h := range a.NoParcels {
			if days.Contains(h.On) {
				w.Free = append(w.Free, h)
			}
		}
	}
	return out
}

// Parents names the parents of a pairing, with their ids.
func (w wall) Parents(p frogroom.PlannedPairing) string {
	named := func(ids []string) string {
		texts := make([]string, len(ids))
		for i, id := range ids {
			texts[i] = strings.TrimSpace(id + " " + svg.Apart(w.Names[id]))
		}
		return strings.Join(texts, " + ")
	}
	return named(p.Dams) + " × " + named(p.Sires)
}

// For says what the young of a pairing are for.
func (w wall) For(p frogroom.PlannedPairing) string {
	switch {
	case p.Target != "":
		return "for " + svg.Apart(p.Target) + ", " + longDate(p.ReadyBy)
	case p.ReadyBy.Known():
		return "ready by " + longDate(p.ReadyBy)
	}
	return ""
}

// Young says how inbred the young of a pairing are to be.
func (w wall) Young(p frogroom.PlannedPairing) string {
	if !p.Young.Known {
		return "The inbreeding of the young is not known, for a parent is not."
	}
	text := fmt.Sprintf("Inbreeding of the young %.4f", p.Young.Inbreeding)
	if p.Young.Expected && p.Young.Inbreeding > 0 {
		text += ", a mean over the parents that may be"
	}
	return text + "."
}

// Share says how much of something is in use at most.
func (w wall) Share(l frogroom.PlaceLoad) string { return fmt.Sprintf("%d of %d", l.Most, l.Of) }

// longDate writes "Sat 2027-09-18".
func longDate(d civil.Date) string { return d.Weekday().String()[:3] + " " + d.String() }

// stageHeading gives a stage as it heads a row.
func stageHeading(stage string) string {
	switch stage {
	case "laid":
		return "eggs"
	case "sale-ready":
		return stage
	}
	return strings.ReplaceAll(stage, "-", " ")
}

// sheetPage is read when it is first asked for: only one command needs it.
var sheetPage = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("sheet").Funcs(template.FuncMap{
		"apart": svg.Apart,
		"day":   longDate,
		"place": placeWords,
		"short": shortDate,
		"stage": stageHeading,
	}).Parse(sheetHTML))
})
