package season

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// latestRain is the last day on which the rain can begin for the young to be
// ready in time.
func (j *job) latestRain() int { return int(j.ReadyBy) - j.ReadyAfter }

// backward plans from the day by which young must be ready.
func (j *job) backward() {
	c := j.rec.fix(j.question())
	switch {
	case j.rec.last < 0:
		j.fresh(c)
	case j.rec.last < c.rain:
		j.onward(c)
	default:
		j.inRain(c)
	}
}

// fresh plans a cycle of which nothing has begun.
func (j *job) fresh(c chain) {
	c.late = true
	unhurried := c.with(c.rain, upTo(j.latestRain()))
	soonest := from(max(j.today, j.NotBefore))
	hurried := unhurried.with(0, soonest)
	if p, ok := hurried.solve(); ok {
		j.plan = p
		return
	}
	if j.MayBeLate && j.late(c.with(0, soonest)) {
		return
	}
	earliest := j.ready(c.with(0, soonest))
	if hurried.ignoring(c.away).feasible() {
		j.isAway(hurried, atEarliest(earliest))
		j.conflicts[0].Earliest = earliest
		return
	}
	j.plan, _ = unhurried.solve()
	begin := unhurried.usable()[0].last()
	j.conflicts = []Conflict{{
		Kind: TooLate, Pairings: []string{j.ID}, Earliest: earliest,
		Days:    civil.Span{First: date(begin), Last: max(j.today, j.NotBefore).Add(-1)},
		Message: fmt.Sprintf("%s: too late for %s: %s%s", j.ID, j.target(), j.tooLate(date(begin)), atEarliest(earliest)),
	}}
}

// tooLate says why a cycle cannot begin by a day.
func (j *job) tooLate(begin civil.Date) string {
	if j.NotBefore > j.today {
		return fmt.Sprintf("%s would have to begin by %s, and may not begin before %s", j.firstPhase(), begin, j.NotBefore)
	}
	return fmt.Sprintf("%s would have had to begin by %s, and today is %s", j.firstPhase(), begin, j.today)
}

// late plans a cycle that may be late with its rain as early as it can be.
func (j *job) late(c chain) bool {
	u := c.usable()
	if len(u[0]) == 0 {
		return false
	}
	c.late = false
	rain := u[c.rain].first()
	j.plan, _ = c.with(c.rain, days{{rain, rain}}).nearest()
	return true
}

// isBehind warns that young are ready after their day, where they may be, or
// where nobody can change it any more.
func (j *job) isBehind() {
	if !j.ReadyBy.Known() {
		return
	}
	rain := anchor(j.Phases)
	by := j.plan[rain] - j.latestRain()
	switch {
	case by <= 0:
	case j.MayBeLate:
		j.rec.warnf("young are ready %s after %s", count(by, "day"), j.target())
	case j.rec.last >= rain:
		j.rec.warnf("the %s began on %s and would have had to by %s: at the wished certainty young are ready %s after %s",
			j.Phases[rain].Name, date(j.plan[rain]), date(j.latestRain()), count(by, "day"), j.target())
	}
}

// ready gives the first day by which young are ready in any plan of c, unknown
// when that is beyond all dates.
func (j *job) ready(c chain) civil.Date { return j.readyFrom(c.usable()[c.rain].first()) }

func (j *job) readyFrom(rain int) civil.Date {
	if day := rain + j.ReadyAfter; day <= int(civil.Last) {
		return date(day)
	}
	return 0
}

// atEarliest ends a message about young that are ready on day.
func atEarliest(day civil.Date) string {
	if !day.Known() {
		return ""
	}
	return fmt.Sprintf("; young can be ready by %s at the earliest", day)
}

func (j *job) target() string {
	if j.Target == "" {
		return j.ReadyBy.String()
	}
	return fmt.Sprintf("%s (%s)", j.Target, j.ReadyBy)
}

func (j *job) firstPhase() string {
	if len(j.Phases) == 0 {
		return "the cycle"
	}
	return j.Phases[0].Name
}

// shortened warns when the phases before the rain of a backward plan that has
// not begun are shorter than if there were more time.
func (j *job) shortened() {
	if j.Start.Known() || j.rec.last >= 0 || len(j.conflicts) > 0 || j.plan.usual(j.Phases) {
		return
	}
	c := j.question()
	rain := j.plan[c.rain]
	p, _ := c.with(c.rain, days{{rain, rain}}).nearest()
	if missing := j.plan[0] - p[0]; missing > 0 {
		j.rec.warnf("to be ready by %s the phases before the rain are cut by %s; with more time %s would begin on %s",
			j.ReadyBy, count(missing, "day"), j.firstPhase(), date(p[0]))
	}
}

// onward plans a cycle that has begun and is not in the rain yet.
func (j *job) onward(c chain) {
	inTime := c.with(c.rain, upTo(j.latestRain()))
	if p, ok := inTime.solve(); ok {
		j.plan = p
		return
	}
	if j.MayBeLate && j.late(c) {
		return
	}
	if inTime.ignoring(c.away).feasible() {
		if !c.feasible() {
			j.isAway(inTime, "")
			return
		}
		earliest := j.ready(c)
		j.isAway(inTime, atEarliest(earliest))
		j.conflicts[0].Earliest = earliest
		return
	}
	would := "the rain would have to begin by " + date(j.latestRain()).String()
	if p, ok := c.solve(); ok {
		j.plan = p
		rain := c.usable()[c.rain].first()
		j.isLate(rain, fmt.Sprintf("%s and can begin on %s at the earliest", would, date(rain)))
		return
	}
	j.isAway(c, "")
	rain := c.ignoring(c.away).usable()[c.rain].first()
	j.isLate(rain, fmt.Sprintf("%s and, the days away left aside, can begin on %s at the earliest", would, date(rain)))
}

// inRain plans a cycle whose rain has begun. When that was is no longer to be
// planned.
func (j *job) inRain(c chain) {
	if p, ok := c.solve(); ok {
		j.plan = p
	} else {
		j.isAway(c, "")
	}
}

// isLate is the conflict of a cycle whose rain can only come after the latest day.
func (j *job) isLate(rain int, why string) {
	earliest := j.readyFrom(rain)
	j.conflicts = append(j.conflicts, Conflict{
		Kind: TooLate, Pairings: []string{j.ID}, Earliest: earliest,
		Days:    run{j.latestRain() + 1, rain}.span(),
		Message: fmt.Sprintf("%s: too late for %s: %s%s", j.ID, j.target(), why, atEarliest(earliest)),
	})
}

// latestStarts gives the latest start of each phase; see [Dated].
func (j *job) latestStarts() []civil.Date {
	latest := make([]civil.Date, len(j.Phases))
	if j.Start.Known() {
		return latest
	}
	c := j.question()
	u := c.with(c.rain, upTo(j.latestRain())).usable()
	for k := j.rec.last + 1; k <= c.rain && k < len(latest); k++ {
		latest[k] = date(u[k].last())
	}
	return latest
}
