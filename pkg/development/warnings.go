package development

import (
	"fmt"
	"strconv"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// warmthWarnings says where the temperatures are outside what is known, and
// where they are outside what is safe.
func (m *Model) warmthWarnings(o *Outlook, c Clutch, tempos [len(links)]tempo) {
	for i, l := range links {
		e := o.Events[i]
		if e.Recorded || tempos[i].extra == 0 {
			continue
		}
		what, readings := "water", c.Water
		if l.end == SaleReady {
			what, readings = "air", c.Air
		}
		worst, on := m.warmths[i].farthest(readings, m.span(o, i))
		if !on.Known() {
			continue
		}
		text := "the step %s is followed by its law over %s, and the %s is at %s on %s: its window is wider, and the middle of it rough"
		if !m.warmths[i].law.Known() {
			text = "the days of the step %s are known at %s only, and the %s is at %s on %s: its window is wider, and not moved"
		}
		o.warn(text, l.step, degrees(m.warmths[i].covers), what, celsius(worst), on)
	}
	ready := o.until(SaleReady)
	m.safety(o, "water", c.Water, civil.Span{First: o.From, Last: o.until(OutOfWater)})
	m.safety(o, "air", c.Air, civil.Span{First: o.until(FrontLegs), Last: ready})
}

// until gives the likely date of the last event up to stage that has one.
func (o *Outlook) until(stage Stage) civil.Date {
	on := o.From
	for _, e := range o.Events {
		if e.Stage <= stage && e.Window.Known() {
			on = max(on, e.Window.Likely)
		}
	}
	return on
}

// span gives the likely days of a step.
func (m *Model) span(o *Outlook, step int) civil.Span {
	first := o.From
	if step > 0 {
		first = o.until(links[step-1].end)
	}
	return civil.Span{First: first, Last: o.until(links[step].end)}
}

// farthest gives the temperature that is farthest outside what is covered
// within a span, and the first day of it there; the day is not known when there
// is none outside.
func (w warmth) farthest(t Temperatures, span civil.Span) (c float64, on civil.Date) {
	worst := 0.0
	for _, r := range t.within(span) {
		if d := w.outside(r.C); d > worst {
			worst, c, on = d, r.C, r.From
		}
	}
	return c, on
}

// safety warns of temperatures within a span that are not safe for the young.
func (m *Model) safety(o *Outlook, what string, t Temperatures, span civil.Span) {
	if !m.safe.Known() {
		return
	}
	safe := warmth{known: true, covers: m.safe}
	if c, on := safe.farthest(t, span); on.Known() {
		o.warn("the %s is at %s on %s, outside the safe range of %s: bring it back slowly, and ask a veterinarian when animals look unwell",
			what, celsius(c), on, degrees(m.safe))
	}
}

// within gives the readings that hold in a span, none from before its first day.
func (t Temperatures) within(span civil.Span) Temperatures {
	var out Temperatures
	all := t.byDay()
	for i, r := range all {
		if r.From > span.Last && len(out)+i > 0 {
			break
		}
		if i+1 < len(all) && all[i+1].From <= span.First {
			continue
		}
		out = append(out, Reading{max(r.From, span.First), r.C})
		if i == 0 {
			out[0].From = span.First // the first holds before its day too
		}
	}
	return out
}

func degrees(r species.Range) string {
	if r.Low == r.High {
		return celsius(r.Low)
	}
	return fmt.Sprintf("%s to %s", strconv.FormatFloat(r.Low, 'f', -1, 64), celsius(r.High))
}

func celsius(c float64) string { return strconv.FormatFloat(c, 'f', -1, 64) + " °C" }
