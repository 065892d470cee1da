package development

import (
	"fmt"
	"math"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Look is what somebody saw of a clutch on one day. A look at a stage tells of
// the others too: what has reached it has reached all before it, and what has
// not yet reached it has reached none after it.
type Look struct {
	Stage Stage
	On    civil.Date
	Kind  LookKind
}

// LookKind says what a look tells about its stage.
type LookKind int

const (
	Reached LookKind = iota // it began on that day
	NotYet                  // at the end of that day it had not begun
	By                      // on that day it had begun; when is not known
	Some                    // on that day some of the clutch had reached it, and others not
)

// String says what was seen, such as "hatched not yet on 2027-03-19".
func (l Look) String() string {
	switch l.Kind {
	case Reached:
		return fmt.Sprintf("%s on %s", l.Stage, l.On)
	case NotYet:
		return fmt.Sprintf("%s not yet on %s", l.Stage, l.On)
	case By:
		return fmt.Sprintf("%s by %s", l.Stage, l.On)
	case Some:
		return fmt.Sprintf("%s in some on %s", l.Stage, l.On)
	}
	return fmt.Sprintf("%s LookKind(%d) on %s", l.Stage, int(l.Kind), l.On)
}

func (l Look) mustBeValid() {
	l.Stage.mustBeValid()
	if l.Kind < Reached || l.Kind > Some {
		panic("development: no such kind of look: " + l.String())
	}
	if !l.On.Known() {
		panic("development: a look without a date: " + l.String())
	}
}

// records reports whether l gives the day of an event that is forecast.
func (l Look) records() bool {
	_, event := linkOf(l.Stage)
	return event && l.Kind == Reached
}

// notBefore gives the first day on which the stage of l may have begun; ok is
// false when l does not say.
func (l Look) notBefore() (_ civil.Date, ok bool) {
	switch l.Kind {
	case Reached:
		return l.On, true
	case NotYet:
		return l.On + 1, true
	}
	return 0, false
}

// atLatest gives the last day on which the stage of l may have begun; ok is
// false when l does not say.
func (l Look) atLatest() (_ civil.Date, ok bool) { return l.On, l.Kind != NotYet }

// contradicts reports whether l and m cannot both be so.
func (l Look) contradicts(m Look) bool { return l.rulesOut(m) || m.rulesOut(l) }

// rulesOut reports whether the stage of l began too late for m, which has a
// stage begun that is no earlier one.
func (l Look) rulesOut(m Look) bool {
	from, bounded := l.notBefore()
	to, reached := m.atLatest()
	return bounded && reached && l.Stage <= m.Stage && from > to
}

// someSpread is how far out siblings are seen, in standard deviations of their
// spread: 95 of 100 are nearer to the middle one.
const someSpread = 2

// A sighting is a look with its place in the list that it was given in; below
// 0 for one that stands in none.
type sighting struct {
	Look
	at int
}

// halves gives the looks with those that were true of some of a clutch put in
// terms of the day by which half of it is there: neither so much later that
// nobody could have been there yet, nor so much earlier that all would have been.
func (m *Model) halves(laid civil.Date, looks []Look) []sighting {
	var out []sighting
	for at, l := range looks {
		if l.Kind != Some {
			out = append(out, sighting{l, at})
			continue
		}
		factor := math.Exp(someSpread * m.siblings)
		days := float64(max(l.On.Sub(laid), 0))
		first, last := int(math.Ceil(days/factor)), int(math.Floor(days*factor))
		if last >= longest {
			out = append(out, sighting{Look{l.Stage, l.On, By}, at}) // too old to be of use; sift says so
			continue
		}
		if first > 0 {
			out = append(out, sighting{Look{l.Stage, laid.Add(first - 1), NotYet}, at})
		}
		out = append(out, sighting{Look{l.Stage, laid.Add(last), By}, at})
	}
	return out
}
