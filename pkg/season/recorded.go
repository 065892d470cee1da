package season

import (
	"cmp"
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// recorded is what the diary says of a pairing, after contradictions are
// settled: the day on which each phase began.
type recorded struct {
	began    []civil.Date // for each phase; unknown when not recorded
	last     int          // the latest phase that has begun, -1 for none
	warnings []string
}

// settle reads the records of p. A record counts for more than one of an earlier
// phase that is later; of what is left of a phase the latest day counts, as the
// diary only grows.
func (p Pairing) settle(today civil.Date) recorded {
	r := recorded{began: make([]civil.Date, len(p.Phases)), last: -1}
	dates := make([][]civil.Date, len(p.Phases))
	for _, b := range slices.SortedFunc(slices.Values(p.Began), Began.compare) {
		k := slices.IndexFunc(p.Phases, func(q Phase) bool { return q.Name == b.Phase })
		if k < 0 {
			r.warnf("%s is recorded to have begun on %s, but it is not in the cycle of %s; that was passed over", b.Phase, b.On, p.ID)
			continue
		}
		if b.On > today {
			r.warnf("%s is recorded to have begun on %s, which is after today, %s", b.Phase, b.On, today)
		}
		dates[k] = append(dates[k], b.On)
	}
	next := len(p.Phases)
	for k := next - 1; k >= 0; k-- {
		if next < len(p.Phases) {
			dates[k] = r.upTo(dates[k], p.Phases[k].Name, p.Phases[next].Name, r.began[next])
		}
		if r.began[k] = r.latest(dates[k], p.Phases[k].Name); r.began[k].Known() {
			r.last, next = max(r.last, k), k
		}
	}
	return r
}

func (b Began) compare(c Began) int {
	return cmp.Or(cmp.Compare(b.On, c.On), cmp.Compare(b.Phase, c.Phase))
}

// upTo drops the days of a phase after the start of the next one.
func (r *recorded) upTo(dates []civil.Date, phase, next string, began civil.Date) []civil.Date {
	for len(dates) > 0 && dates[len(dates)-1] > began {
		r.warnf("%s is recorded to have begun on %s, before %s on %s; the record of %s was passed over",
			next, began, phase, dates[len(dates)-1], phase)
		dates = dates[:len(dates)-1]
	}
	return dates
}

// latest gives the last of the days of a phase.
func (r *recorded) latest(dates []civil.Date, phase string) civil.Date {
	if len(dates) == 0 {
		return 0
	}
	last := dates[len(dates)-1]
	if dates[0] != last {
		r.warnf("%s is recorded to have begun on %s and on %s; the later day was taken", phase, dates[0], last)
	}
	return last
}

func (r *recorded) warnf(format string, args ...any) {
	r.warnings = append(r.warnings, fmt.Sprintf(format, args...))
}

// fix limits c to what is recorded. Up to the last record nothing has to keep
// off the days away any more, and lengths that the records contradict are
// allowed, with a warning.
func (r *recorded) fix(c chain) chain {
	before := -1
	for k := 0; k <= r.last; k++ {
		c.handsOn[k] = false
		if !r.began[k].Known() {
			continue
		}
		c = c.with(k, single(r.began[k]))
		if before >= 0 {
			r.widen(c.phases[before:k], r.began[before], r.began[k])
		}
		before = k
	}
	return c
}

func single(d civil.Date) days { return days{{int(d), int(d)}} }

// widen allows phases to take the days between two records. What is too long
// goes to the first of them, as it does in [Plan].
func (r *recorded) widen(phases []Phase, first, next civil.Date) {
	least, most := 0, 0
	for _, p := range phases {
		least, most = least+p.Min, most+p.Max
	}
	took := next.Sub(first)
	if took >= least && took <= most {
		return
	}
	what := phases[0].Name
	if n := len(phases); n > 1 {
		what += " to " + phases[n-1].Name
	}
	r.warnf("%s took %s from %s on, where the profile has %d to %d", what, count(took, "day"), first, least, most)
	if took > most {
		phases[0].Max = took
		return
	}
	for i := range phases {
		phases[i].Min = 0
	}
}

// presumed warns of phases that are over without a record, the start of which
// is a guess.
func (r *recorded) presumed(phases []Phase) {
	for k := 0; k < r.last; k++ {
		if !r.began[k].Known() {
			r.warnf("nothing is recorded of the start of %s; it is taken to be over", phases[k].Name)
		}
	}
}
