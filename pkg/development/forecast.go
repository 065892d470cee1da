package development

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Forecast is when a clutch reaches each event, and what is doubtful about it.
type Forecast struct {
	Events   []Event  // Hatched, Feeding, FrontLegs, OutOfWater, SaleReady, in this order
	Warnings []string // one line each, without a full stop; to be shown with the dates
}

// Event is one stage of a forecast.
type Event struct {
	Stage    Stage
	Window   civil.Window // 10th, 50th and 90th percentile; not known where Dist is not
	Recorded bool         // it was seen to begin, on the one day of Window
	Dist     Distribution // days after laid; unknown where nothing is known of it
	Basis    Basis        // what the date rests on; of [Model.Outlook] only
}

// Event gives the event of stage s; ok is false for stages that are not
// forecast.
func (f Forecast) Event(s Stage) (_ Event, ok bool) {
	for _, e := range f.Events {
		if e.Stage == s {
			return e, true
		}
	}
	return Event{}, false
}

// Forecast gives the dates of a clutch that was laid on laid, in the light of
// the looks at it, in whatever order they come. Each event has the exact
// distribution of its day under the model, given all looks together.
//
// An event that a look records as [Reached] has that day and no other, and what
// comes after it is counted from there. Looks that contradict each other are
// named in a warning; recorded events stand and the other look is left out.
// Where what was seen has a chance of less than 3 in 100 under the model, a
// warning says so; below 1 in a million the forecast gives every step a small
// chance of any length, so that it widens and goes on from what was seen. An
// event is left unknown after a step that the profile lacks, and between
// recorded events whose dates run backward or lie more than ten years apart.
//
// It panics when laid or the date of a look is not known, and for a stage or
// kind of look that there is not. The cost is that of a few convolutions, about
// a million multiplications, and the square of the number of looks.
func (m *Model) Forecast(laid civil.Date, looks []Look) Forecast {
	if !laid.Known() {
		panic("development: a forecast needs the date of laying")
	}
	for _, look := range looks {
		look.mustBeValid()
	}
	ev := sift(laid, m.halves(laid, looks))
	f := ev.forecast(laid)
	from, day := Laid, 0
	for i := 0; i < len(links); {
		s := m.stretch(&ev, i, day)
		n := len(s.steps)
		if n > 0 {
			f.settle(laid, day, from, f.Events[i:i+n], s)
		}
		if n == 0 || !s.closed {
			// Nothing leads on from here but the next recorded event.
			next, ok := ev.nextRecorded(i + n)
			if !ok {
				break
			}
			n = next - i + 1
		}
		i += n
		from, day = links[i-1].end, ev.day[i-1]
	}
	return f
}

// forecast gives a forecast of what is recorded; all else is unknown.
func (ev *evidence) forecast(laid civil.Date) Forecast {
	f := Forecast{Events: make([]Event, len(links)), Warnings: ev.warnings}
	for i, l := range links {
		f.Events[i].Stage = l.end
		if ev.recorded[i] {
			f.Events[i].Recorded = true
			f.Events[i].set(laid, Point(ev.day[i]))
		}
	}
	return f
}

// stretch gives the run of known steps from step i, which begins on day, up to
// a recorded event, a step that is not known, or the last. It has no steps
// when step i itself is not known.
func (m *Model) stretch(ev *evidence, i, day int) stretch {
	last := i
	for last < len(links) && m.steps[last].Known() && (last == i || !ev.recorded[last-1]) {
		last++
	}
	return stretch{m.steps[i:last], ev.bounds(i, last, day)}
}

// bounds gives what was seen of the steps from first to before last, which
// begin on day.
func (ev *evidence) bounds(first, last, day int) bounds {
	var b bounds
	for i := first; i < last; i++ {
		b.lo = append(b.lo, since(day, ev.lo[i]))
		b.hi = append(b.hi, since(day, ev.hi[i]))
		b.closed, b.end = ev.recorded[i], ev.day[i]-day
	}
	if n := len(b.hi); n > 0 && !b.closed {
		if next, ok := ev.nextRecorded(last); ok {
			b.hi[n-1] = min(b.hi[n-1], ev.day[next]-day)
		}
	}
	return b
}

// since counts a bound from day.
func since(day, bound int) int {
	if bound == ever || bound == never {
		return bound
	}
	return bound - day
}

// settle works out the events of a stretch that begins on day with from.
func (f *Forecast) settle(laid civil.Date, day int, from Stage, events []Event, s stretch) {
	if s.hi[len(s.hi)-1] < 0 || s.closed && s.end < 0 {
		return // recorded dates run backward, and sift has said so
	}
	if s.reach() > longest {
		f.warn("what was seen after %v reaches over more than ten years: no dates are given for it", from)
		return
	}
	dists, chance, ok := s.solve()
	if chance < doubtful {
		stages := make([]Stage, len(events))
		for i, e := range events {
			stages[i] = e.Stage
		}
		f.warn("%s", s.doubt(from, stages, chance))
	}
	if !ok || chance < impossible {
		dists, _, ok = s.widened().solve()
	}
	for i := range events {
		if ok && !events[i].Recorded {
			events[i].set(laid, dists[i].Plus(Point(day)))
		}
	}
}

func (f *Forecast) warn(format string, args ...any) {
	f.Warnings = append(f.Warnings, fmt.Sprintf(format, args...))
}

// set gives e its distribution and the window that follows from it.
func (e *Event) set(laid civil.Date, d Distribution) {
	e.Dist = d
	e.Window = civil.Window{
		Early:  laid.Add(d.Quantile(0.1)),
		Likely: laid.Add(d.Quantile(0.5)),
		Late:   laid.Add(d.Quantile(0.9)),
	}
}
