package development

import (
	"cmp"
	"math"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// evidence is what the looks at a clutch come to. Days are counted from laid.
// Events are numbered as links are, each by the step that it ends.
type evidence struct {
	recorded [len(links)]bool
	day      [len(links)]int // of the recorded events
	lo, hi   [len(links)]int // of the other looks: not before, at latest
	within   [len(midways)]interval
	looks    int // days on which there were any
	// The places of the looks that say so.
	dayBy, loBy, hiBy [len(links)]int
	warnings
}

// interval is what was seen of an event within a step: not before lo, at latest
// on hi, and the places of the looks that say so.
type interval struct {
	lo, hi, loBy, hiBy int
	recorded           bool // it was seen to begin
}

// bounded reports whether anything was seen of it.
func (v interval) bounded() bool { return v.lo != ever || v.hi != never }

// never and ever are the bounds of an event that no look bounds.
const (
	ever  = math.MinInt32 / 2
	never = math.MaxInt32 / 2
)

// sift sorts out what the looks tell. Recorded events always stand. Of the
// other looks one that contradicts what stands is left out; those of an
// earlier day are taken first. The order of looks does not matter.
func sift(laid civil.Date, looks []sighting) evidence {
	var ev evidence
	for i := range links {
		ev.lo[i], ev.hi[i], ev.dayBy[i], ev.loBy[i], ev.hiBy[i] = ever, never, -1, -1, -1
	}
	for i := range midways {
		ev.within[i] = interval{ever, never, -1, -1, false}
	}
	stands := []sighting{{Look{Laid, laid, Reached}, -1}}
	for _, look := range inOrder(looks) {
		i, _ := linkOf(look.Stage)
		other, found := opposed(stands, look)
		about := []int{look.at, other.at}
		switch {
		case found && look.records() && !ev.recorded[i]:
			ev.warn(about, "%v contradicts %v: both dates are kept, but one must be wrong", look.Look, other.Look)
			ev.record(i, look.On.Sub(laid), look.at)
			stands = append(stands, look)
		case found:
			ev.warn(about, "%v contradicts %v: it is left out", look.Look, other.Look)
		case look.records():
			ev.record(i, look.On.Sub(laid), look.at)
			stands = append(stands, look)
		case look.On.Sub(laid) >= longest:
			ev.warn(about[:1], "%v is ten years or more after laid on %v: it is left out", look.Look, laid)
		default:
			ev.bound(look, laid)
			stands = append(stands, look)
		}
	}
	return ev
}

// inOrder gives the looks in the order in which sift takes them, each once.
func inOrder(looks []sighting) []sighting {
	sorted := slices.Clone(looks)
	slices.SortFunc(sorted, func(a, b sighting) int {
		switch {
		case a.records() && !b.records():
			return -1
		case b.records() && !a.records():
			return 1
		}
		return cmp.Or(cmp.Compare(a.On, b.On), cmp.Compare(a.Stage, b.Stage), cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.at, b.at))
	})
	return slices.CompactFunc(sorted, func(a, b sighting) bool { return a.Look == b.Look })
}

// opposed finds the first of those that stand that contradicts look.
func opposed(stands []sighting, look sighting) (_ sighting, found bool) {
	for _, s := range stands {
		if look.contradicts(s.Look) {
			return s, true
		}
	}
	return sighting{}, false
}

func (ev *evidence) record(event, day, by int) {
	ev.recorded[event], ev.day[event], ev.dayBy[event] = true, day, by
}

// bound notes what look says of each event.
func (ev *evidence) bound(look sighting, laid civil.Date) {
	from, bounded := look.notBefore()
	to, reached := look.atLatest()
	lo, hi := from.Sub(laid), to.Sub(laid)
	for i, l := range links {
		if bounded && l.end >= look.Stage && lo > ev.lo[i] {
			ev.lo[i], ev.loBy[i] = lo, look.at
		}
		if reached && l.end <= look.Stage && hi < ev.hi[i] {
			ev.hi[i], ev.hiBy[i] = hi, look.at
		}
	}
	ev.boundWithin(look, lo, hi, bounded, reached)
}

// boundWithin notes what a look at a stage within a step says of those within
// that step; of looks at the ends of steps that follows.
func (ev *evidence) boundWithin(look sighting, lo, hi int, bounded, reached bool) {
	step, ok := stepAround(look.Stage)
	for i, w := range midways {
		if !ok || w.step != step {
			continue
		}
		v := &ev.within[i]
		if bounded && w.stage >= look.Stage && lo > v.lo {
			v.lo, v.loBy = lo, look.at
		}
		if reached && w.stage <= look.Stage && hi < v.hi {
			v.hi, v.hiBy = hi, look.at
		}
		v.recorded = v.recorded || w.stage == look.Stage && look.Kind == Reached
	}
}

// bounds gives what was seen of the steps from first to before last.
func (ev *evidence) bounds(first, last int) bounds {
	var b bounds
	for i := first; i < last; i++ {
		b.lo = append(b.lo, ev.lo[i])
		b.hi = append(b.hi, ev.hi[i])
		b.closed, b.end = ev.recorded[i], ev.day[i]
	}
	if n := len(b.hi); n > 0 && !b.closed {
		if next, ok := ev.nextRecorded(last); ok {
			b.hi[n-1] = min(b.hi[n-1], ev.day[next])
		}
	}
	return b
}

// nextRecorded gives the first recorded event from event i on.
func (ev *evidence) nextRecorded(i int) (_ int, ok bool) {
	for ; i < len(links); i++ {
		if ev.recorded[i] {
			return i, true
		}
	}
	return 0, false
}
