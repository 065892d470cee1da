package development

import (
	"fmt"

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
	}
	return fmt.Sprintf("%s LookKind(%d) on %s", l.Stage, int(l.Kind), l.On)
}

func (l Look) mustBeValid() {
	l.Stage.mustBeValid()
	if l.Kind < Reached || l.Kind > By {
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
