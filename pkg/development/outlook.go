package development

import (
	"cmp"
	"math"
	"slices"

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
// A date is that by which half of the clutch is there; see [Outlook.Siblings] for
// the first and the last.
type Outlook struct {
	Events   []Event   // Hatched, Feeding, FrontLegs, OutOfWater, SaleReady, in this order
	Within   []Event   // HindLegs, Toes and Eating, which lie within a step
	Warnings []Warning // to be shown with the dates
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

// Event gives the event of stage s; ok is false for Laid.
func (o Outlook) Event(s Stage) (_ Event, ok bool) {
	for _, all := range [...][]Event{o.Events, o.Within} {
		for _, e := range all {
			if e.Stage == s {
				return e, true
			}
		}
	}
	return Event{}, false
}

// All gives all events, in the order of their stages.
func (o Outlook) All() []Event {
	all := slices.Concat(o.Events, o.Within)
	slices.SortFunc(all, func(a, b Event) int { return cmp.Compare(a.Stage, b.Stage) })
	return all
}

func (o *Outlook) warn(looks []int, format string, args ...any) {
	(*warnings)(&o.Warnings).warn(looks, format, args...)
}

// Outlook gives the dates of a clutch in the light of the looks at it, in whatever
// order they come. It counts the days by their temperature, lets the clutch keep its
// own pace through all steps, and takes from r what the keeper's own clutches have
// taught; r is nil when there are none.
//
// Standardised, ln days of a step are those of the profile moved by the room, and
// spread by the pace of the clutch and by chance (see docs/methods.md). The
// pace is integrated over a grid, and for each pace the days are worked out
// exactly on a day grid, so that everything seen tells of what comes after it
// and before. There are no random numbers. Hind legs and toes come at a share of the
// tadpole step, the first food days after leaving the water; these have a spread
// of their own, and looks at them count as exactly as any.
//
// An event that a look records as [Reached] has that day and no other, and what
// comes after it is counted from there. Looks that contradict each other are
// named in a warning; recorded events stand and the other look is left out.
// Where what was seen has a chance of less than 3 in 100 under the model, a
// warning says so; below 1 in a million every step gets a small chance of any
// length, so that the dates widen and go on from what was seen. An event is left
// unknown after a step that the profile lacks, and between recorded events whose
// dates run backward or lie more than ten years apart.
//
// Where development ran at temperatures that the source of a law does not cover,
// the window is wider and a warning says so; where they are not safe a
// warning says that too.
//
// It panics for a stage or kind of look that there is not, a look without a date,
// and a room of another model. A clutch costs a few milliseconds at most.
func (m *Model) Outlook(c Clutch, r *Room) Outlook { return m.solve(c, r, midways[:]) }

// Ends is [Model.Outlook] for whoever asks for the ends of steps only: the same, but
// that Within is not known where nothing was recorded. It spares a third of the time.
func (m *Model) Ends(c Clutch, r *Room) Outlook { return m.solve(c, r, nil) }

// solve gives the dates of a clutch, and of events within its steps those that are
// wanted.
func (m *Model) solve(c Clutch, r *Room, wanted []midway) Outlook {
	for _, look := range c.Looks {
		look.mustBeValid()
	}
	if r != nil && r.model != m {
		panic("development: an outlook with the room of another model")
	}
	o := Outlook{Events: make([]Event, len(links)), Within: make([]Event, len(midways)), model: m, PaceSD: 1}
	for i, l := range links {
		o.Events[i].Stage = l.end
	}
	for i, w := range midways {
		o.Within[i].Stage = w.stage
	}
	laid, begin, ok := m.laying(c)
	if !ok {
		o.warn(nil, "neither the date of laying nor anything seen is known: no dates are given")
		return o
	}
	ev := sift(laid, m.halves(laid, c.Looks))
	ev.looks = daysOfLooks(c.Looks)
	o.From, o.Warnings, o.PaceSD = laid, ev.warnings, 0
	o.record(&ev)
	if c.Laid.Known() {
		o.Laid = civil.Exactly(c.Laid)
	}
	s := &solver{model: m, ev: &ev, room: r, tempos: m.tempos(c, laid, &ev, r), out: &o, begin: begin, wanted: wanted}
	for i, p := range paces {
		s.weights[i] = p.weight
	}
	s.run()
	m.warmthWarnings(&o, c, s.tempos)
	return o
}

// record notes what was seen to begin.
func (o *Outlook) record(ev *evidence) {
	for i := range links {
		if ev.recorded[i] {
			o.Events[i].Recorded = true
			o.Events[i].set(o.From, Point(ev.day[i]))
		}
	}
	for i, v := range ev.within {
		if v.recorded {
			o.Within[i].Recorded = true
			o.Within[i].set(o.From, Point(v.lo))
		}
	}
}

// daysOfLooks counts the days on which a clutch was looked at. One glance into the tub
// can tell two things: that there are toes, and no front legs.
func daysOfLooks(looks []Look) int {
	seen := make(map[civil.Date]bool, len(looks))
	for _, l := range looks {
		seen[l.On] = true
	}
	return len(seen)
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
		if m.known[i] && (i == 0 || links[i-1].end < stage || l.end <= stage) {
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
		if m.known[i] {
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
