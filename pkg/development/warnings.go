package development

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// warmthWarnings says where the temperatures are outside what is known, all of
// it in one line, and where they are outside what is safe.
func (m *Model) warmthWarnings(o *Outlook, c Clutch, tempos [len(links)]tempo) {
	m.uncovered(o, c, tempos)
	m.safety(o, "water", c.Water, civil.Span{First: o.From, Last: o.until(OutOfWater)})
	m.safety(o, "air", c.Air, civil.Span{First: o.until(FrontLegs), Last: o.until(SaleReady)})
}

// beyond is steps that run at a temperature outside what is known of them.
type beyond struct {
	spell
	what  string // that is so warm: the water or the air
	known string // of the steps
	steps []string
}

func (b beyond) String() string { return listed(b.steps) + " (" + b.known + ")" }

// uncovered names the steps ahead whose windows are wider for their temperature.
func (m *Model) uncovered(o *Outlook, c Clutch, tempos [len(links)]tempo) {
	var all []beyond
	for i, l := range links {
		if o.Events[i].Recorded || tempos[i].extra == 0 {
			continue
		}
		what, readings := "water", c.Water
		if l.end == SaleReady {
			what, readings = "air", c.Air
		}
		worst, ok := m.warmths[i].farthest(readings, m.span(o, i))
		if !ok {
			continue
		}
		known := "law over " + degrees(m.warmths[i].covers)
		if !m.warmths[i].law.Known() {
			known = "known at " + degrees(m.warmths[i].covers) + " only, so not moved"
		}
		next := beyond{worst, what, known, []string{string(l.step)}}
		if n := len(all); n > 0 && all[n-1].Reading == worst.Reading && all[n-1].what == what && all[n-1].known == known {
			all[n-1].steps = append(all[n-1].steps, string(l.step))
			continue
		}
		all = append(all, next)
	}
	if len(all) == 0 {
		return
	}
	var parts []string
	for i := 0; i < len(all); {
		first, steps := all[i], []string{}
		for ; i < len(all) && all[i].Reading == first.Reading && all[i].what == first.what; i++ {
			steps = append(steps, all[i].String())
		}
		parts = append(parts, fmt.Sprintf("%s with the %s at %s", listed(steps), first.what, first.on()))
	}
	o.warn(nil, "temperatures outside what is known, so these windows are wider and rough: %s", strings.Join(parts, "; "))
	o.Warnings[len(o.Warnings)-1].Reading = all[0].Reading
}

// listed gives "a, b and c".
func listed(words []string) string {
	n := len(words)
	if n == 1 {
		return words[0]
	}
	return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
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

// farthest gives the temperature that is farthest outside what is covered within a
// span; ok is false when there is none outside.
func (w warmth) farthest(t Temperatures, span civil.Span) (worst spell, ok bool) {
	most := 0.0
	for _, s := range t.within(span) {
		if d := w.outside(s.C); d > most {
			most, worst, ok = d, s, true
		}
	}
	return worst, ok
}

// safety warns of temperatures within a span that are not safe for the young.
func (m *Model) safety(o *Outlook, what string, t Temperatures, span civil.Span) {
	if !m.safe.Known() {
		return
	}
	safe := warmth{known: true, covers: m.safe}
	if worst, ok := safe.farthest(t, span); ok {
		o.warn(nil, "the %s is at %s, outside the safe range of %s: bring it back slowly, and ask a veterinarian when animals look unwell",
			what, worst.on(), degrees(m.safe))
		o.Warnings[len(o.Warnings)-1].Reading = worst.Reading
	}
}

// A spell is the time of a reading within a span.
type spell struct {
	Reading
	from  civil.Date
	alone bool // there is no other reading
}

// on gives its temperature, and since when where that is not always.
func (s spell) on() string {
	if s.alone {
		return celsius(s.C)
	}
	return celsius(s.C) + " on " + s.from.String()
}

// within gives the readings that hold in a span.
func (t Temperatures) within(span civil.Span) []spell {
	var out []spell
	all := t.byDay()
	for i, r := range all {
		if r.From > span.Last && len(out)+i > 0 {
			break
		}
		if i+1 < len(all) && all[i+1].From <= span.First {
			continue
		}
		out = append(out, spell{r, max(r.From, span.First), len(all) == 1})
		if i == 0 {
			out[0].from = span.First // the first holds before its day too
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

// celsius rounds to what a thermometer shows.
func celsius(c float64) string {
	return strconv.FormatFloat(math.Round(c*10)/10, 'f', -1, 64) + " °C"
}
