package development

import (
	"math"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Clutch is what is known of one clutch.
type Clutch struct {
	// Laid is the date of laying. Where it is not known the clutch is dated by
	// what was seen of it.
	Laid  civil.Date
	Looks []Look // in any order
	// Water and Air are the temperatures of the place where it stands: eggs to
	// metamorphs go by the water, froglets by the air.
	Water, Air Temperatures
}

// Outlook is when a clutch reaches each event, in the light of all that is known.
type Outlook struct {
	// Forecast has the events. A date is that by which half of the clutch is
	// there; see [Outlook.Siblings] for the first and the last.
	Forecast
	// From is day 0 of the distributions of the events: the date of laying, or
	// a day before it where that is not known.
	From civil.Date
	// Laid is the date of laying; not known when nothing tells of it.
	Laid civil.Window
	// Pace is how slow this clutch is, in standard deviations among clutches,
	// 0 being the usual: the mean of what is still possible, and PaceSD its
	// standard deviation, which is 1 as long as nothing was seen.
	Pace, PaceSD float64
	// Stall is the chance that the clutch has stopped, or will stop, in a step
	// and never gets through it. The events are those of a clutch that goes on.
	Stall float64

	model *Model
}

// Outlook gives the dates of a clutch. Unlike [Model.Forecast] it counts the
// days by their temperature, lets the clutch keep its own pace through all
// steps, and takes from r what the keeper's own clutches have taught; r is nil
// when there are none.
//
// Standardised, ln days of a step are those of the profile moved by the room, and
// spread by the pace of the clutch and by chance (see docs/methods.md). The
// pace is integrated over a grid, and for each pace the days are worked out
// exactly on a day grid, so that everything seen tells of what comes after it
// and before. There are no random numbers.
//
// Where development ran at temperatures that the source of a law does not cover,
// the window is wider and a warning says so; where they are not safe a
// warning says that too. What is nearly impossible is treated as by Forecast.
//
// It panics for a stage or kind of look that there is not, a look without a date,
// and a room of another model. A clutch costs about a millisecond.
func (m *Model) Outlook(c Clutch, r *Room) Outlook {
	for _, look := range c.Looks {
		look.mustBeValid()
	}
	if r != nil && r.model != m {
		panic("development: an outlook with the room of another model")
	}
	laid, begin, ok := m.laying(c)
	if !ok {
		f := Forecast{Events: make([]Event, len(links))}
		for i, l := range links {
			f.Events[i].Stage = l.end
		}
		f.warn("neither the date of laying nor anything seen is known: no dates are given")
		return Outlook{Forecast: f, model: m, PaceSD: 1}
	}
	ev := sift(laid, m.halves(laid, c.Looks))
	ev.looks = len(inOrder(c.Looks))
	o := Outlook{Forecast: ev.forecast(laid), From: laid, model: m}
	if c.Laid.Known() {
		o.Laid = civil.Exactly(c.Laid)
	}
	s := &solver{model: m, ev: &ev, room: r, tempos: m.tempos(c, laid, &ev, r), out: &o, begin: begin}
	for i, p := range paces {
		s.weights[i] = p.weight
	}
	s.run()
	m.warmthWarnings(&o, c, s.tempos)
	return o
}

// laying gives day 0, and the chances of the day of laying; ok is false when
// nothing tells of it.
func (m *Model) laying(c Clutch) (day0 civil.Date, begin masses, ok bool) {
	if c.Laid.Known() {
		return c.Laid, masses{0, []float64{1}}, true
	}
	if len(c.Looks) == 0 {
		return 0, masses{}, false
	}
	first, stage := c.Looks[0].On, Laid
	for _, l := range c.Looks {
		first = min(first, l.On)
		if l.Kind != NotYet {
			stage = max(stage, l.Stage)
		}
	}
	// Any day is as good as another, as far back as it may have been laid.
	back := 1.0
	for i, l := range links {
		if m.steps[i].Known() && (i == 0 || links[i-1].end < stage || l.end <= stage) {
			back += m.shapes[i].days(3)
		}
	}
	days := int(min(math.Ceil(back), longest/2))
	begin = masses{0, make([]float64, days+1)}
	for i := range begin.p {
		begin.p[i] = 1 / float64(days+1)
	}
	return first.Add(-days), begin, true
}

// tempos gives those of all known steps.
func (m *Model) tempos(c Clutch, laid civil.Date, ev *evidence, r *Room) [len(links)]tempo {
	var all [len(links)]tempo
	begin := 0
	for i := range links {
		if m.steps[i].Known() {
			t := tempo{shape: m.shapes[i], clock: m.clock(i, c, laid), rooms: book}
			if r != nil {
				t.rooms = r.steps[i].rooms
			}
			end := t.usual(begin)
			if ev.recorded[i] {
				end = max(ev.day[i], begin)
			}
			extra := m.warmths[i].spread(t.clock.outside(begin, end)) / t.shape.spread()
			t.extra = extra * extra
			all[i] = t
			begin = end
		}
		if ev.recorded[i] {
			begin = ev.day[i]
		}
	}
	return all
}

// clock gives the clock of a step.
func (m *Model) clock(step int, c Clutch, laid civil.Date) clock {
	if links[step].end == SaleReady {
		return newClock(m.warmths[step], c.Air, laid)
	}
	return newClock(m.warmths[step], c.Water, laid)
}
