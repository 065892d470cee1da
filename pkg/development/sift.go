package development

import (
	"cmp"
	"fmt"
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
	looks    int             // that were given, each counted once
	warnings []string
}

// never and ever are the bounds of an event that no look bounds.
const (
	ever  = math.MinInt32
	never = math.MaxInt32
)

// sift sorts out what the looks tell. Recorded events always stand. Of the
// other looks one that contradicts what stands is left out; those of an
// earlier day are taken first. The order of looks does not matter.
func sift(laid civil.Date, looks []Look) evidence {
	var ev evidence
	for i := range links {
		ev.lo[i], ev.hi[i] = ever, never
	}
	stands := []Look{{Laid, laid, Reached}}
	for _, look := range inOrder(looks) {
		i, _ := linkOf(look.Stage)
		other, found := opposed(stands, look)
		switch {
		case found && look.records() && !ev.recorded[i]:
			ev.warn("%v contradicts %v: both dates are kept, but one must be wrong", look, other)
			ev.record(i, look.On.Sub(laid))
			stands = append(stands, look)
		case found:
			ev.warn("%v contradicts %v: it is left out", look, other)
		case look.records():
			ev.record(i, look.On.Sub(laid))
			stands = append(stands, look)
		case look.On.Sub(laid) >= longest:
			ev.warn("%v is ten years or more after laid on %v: it is left out", look, laid)
		default:
			ev.bound(look, laid)
			stands = append(stands, look)
		}
	}
	return ev
}

// inOrder gives the looks in the order in which sift takes them, each once.
func inOrder(looks []Look) []Look {
	sorted := slices.Clone(looks)
	slices.SortFunc(sorted, func(a, b Look) int {
		switch {
		case a.records() && !b.records():
			return -1
		case b.records() && !a.records():
			return 1
		}
		return cmp.Or(cmp.Compare(a.On, b.On), cmp.Compare(a.Stage, b.Stage), cmp.Compare(a.Kind, b.Kind))
	})
	return slices.Compact(sorted)
}

// opposed finds the first of those that stand that contradicts look.
func opposed(stands []Look, look Look) (_ Look, found bool) {
	for _, s := range stands {
		if look.contradicts(s) {
			return s, true
		}
	}
	return Look{}, false
}

func (ev *evidence) warn(format string, args ...any) {
	ev.warnings = append(ev.warnings, fmt.Sprintf(format, args...))
}

func (ev *evidence) record(event, day int) {
	ev.recorded[event], ev.day[event] = true, day
}

// bound notes what look says of each event.
func (ev *evidence) bound(look Look, laid civil.Date) {
	from, bounded := look.notBefore()
	to, reached := look.atLatest()
	for i, l := range links {
		if bounded && l.end >= look.Stage {
			ev.lo[i] = max(ev.lo[i], from.Sub(laid))
		}
		if reached && l.end <= look.Stage {
			ev.hi[i] = min(ev.hi[i], to.Sub(laid))
		}
	}
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
