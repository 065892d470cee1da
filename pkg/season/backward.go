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
	hurried := unhurried.with(0, from(j.today))
	earliest := j.ready(c.with(0, from(j.today)))
	if p, ok := hurried.solve(); ok {
		j.plan = p
		j.shortened(unhurried)
		return
	}
	if hurried.ignoring(c.away).feasible() {
		j.isAway(hurried, fmt.Sprintf("; young can be ready by %s at the earliest", earliest))
		j.conflict.Earliest = earliest
		return
	}
	j.plan, _ = unhurried.solve()
	begin := unhurried.usable()[0].last()
	j.conflict = &Conflict{
		Kind: TooLate, Pairings: []string{j.ID}, Earliest: earliest,
		Days: civil.Span{First: date(begin), Last: j.today.Add(-1)},
		Message: fmt.Sprintf("%s: too late for %s: %s would have had to begin by %s; from today, %s, with the shortest phases, young can be ready by %s at the earliest",
			j.ID, j.target(), j.firstPhase(), date(begin), j.today, earliest),
	}
}

// ready gives the first day by which young are ready in any plan of c.
func (j *job) ready(c chain) civil.Date {
	return date(c.usable()[c.rain].first() + j.ReadyAfter)
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

// shortened warns when the phases before the rain are shorter than in the plan
// of unhurried, which may begin before today.
func (j *job) shortened(unhurried chain) {
	rain := j.plan[unhurried.rain]
	p, _ := unhurried.with(unhurried.rain, days{{rain, rain}}).nearest()
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
	if inTime.ignoring(c.away).feasible() {
		j.isAway(inTime, "")
		if c.feasible() {
			j.conflict.Earliest = j.ready(c)
			j.conflict.Message += fmt.Sprintf("; young can be ready by %s at the earliest", j.conflict.Earliest)
		}
		return
	}
	p, ok := c.solve()
	if !ok {
		j.isAway(c, "")
		return
	}
	j.plan = p
	rain := c.usable()[c.rain].first()
	j.isLate(rain, fmt.Sprintf("the rain would have to begin by %s and can begin on %s at the earliest", date(j.latestRain()), date(rain)))
}

// inRain plans a cycle whose rain has begun.
func (j *job) inRain(c chain) {
	p, ok := c.solve()
	if !ok {
		j.isAway(c, "")
		return
	}
	j.plan = p
	if rain := p[c.rain]; rain > j.latestRain() {
		j.isLate(rain, fmt.Sprintf("the rain would have had to begin by %s and began on %s", date(j.latestRain()), date(rain)))
	}
}

// isLate is the conflict of a cycle whose rain comes after the latest day.
func (j *job) isLate(rain int, why string) {
	earliest := date(rain + j.ReadyAfter)
	j.conflict = &Conflict{
		Kind: TooLate, Pairings: []string{j.ID}, Earliest: earliest,
		Days:    run{j.latestRain() + 1, rain}.span(),
		Message: fmt.Sprintf("%s: too late for %s: %s; young can be ready by %s at the earliest", j.ID, j.target(), why, earliest),
	}
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
