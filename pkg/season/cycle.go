package season

import (
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// job is the planning of one pairing.
type job struct {
	Pairing
	rec   recorded
	today civil.Date
	away  days

	plan      plan
	conflicts []Conflict // why the plan does not do what was asked
}

func newJob(p Pairing, away days, today civil.Date) *job {
	j := &job{Pairing: p, rec: p.settle(today), today: today, away: away}
	switch {
	case len(p.Days) > 0:
		for _, d := range p.Days {
			j.plan = append(j.plan, int(d))
		}
	case p.Start.Known():
		j.forward()
	default:
		j.backward()
	}
	return j
}

// warn adds the doubts about the plan to those about the records.
func (j *job) warn() {
	j.rec.presumed(j.Phases)
	j.shortened()
	j.isBehind()
	j.overdue()
}

// question gives the chain of the pairing before anything is recorded or fixed.
func (j *job) question() chain {
	n := len(j.Phases)
	c := chain{phases: slices.Clone(j.Phases), away: j.away, rain: anchor(j.Phases)}
	for i := range c.phases {
		p := &c.phases[i]
		p.Max = min(p.Max, int(civil.Last))
		p.Usual, p.Min = min(p.Usual, p.Max), min(p.Min, p.Max)
	}
	for k := range n + 1 {
		c.limits = append(c.limits, always)
		c.handsOn = append(c.handsOn, handsOn(j.Phases, k))
	}
	return c
}

// anchor gives the boundary from which the young are counted.
func anchor(phases []Phase) int {
	for _, name := range []string{Rain, Rest} {
		if k := slices.IndexFunc(phases, func(p Phase) bool { return p.Name == name }); k >= 0 {
			return k
		}
	}
	return len(phases)
}

// handsOn reports whether animals are moved at boundary k.
func handsOn(phases []Phase, k int) bool {
	moves := func(p Phase) bool { return p.Name == Rain || p.Place != "" }
	switch n := len(phases); {
	case n == 0:
		return false
	case k == 0:
		return moves(phases[0])
	case k == n:
		return moves(phases[n-1])
	}
	return true
}

func from(d civil.Date) days { return days{{int(d), far}} }
func upTo(day int) days      { return days{{-far, day}} }

// overdue warns when the plan has a phase begin in the past without a record,
// in a cycle that is not over.
func (j *job) overdue() {
	n := len(j.Phases)
	late := slices.ContainsFunc(j.conflicts, func(c Conflict) bool { return c.Kind == TooLate })
	if late && j.rec.last < 0 || n == 0 || j.plan[n] <= int(j.today) {
		return // a plan that begins before today is what the conflict is about
	}
	for k := n - 1; k > j.rec.last; k-- {
		if j.plan[k] < int(j.today) {
			j.rec.warnf("%s was to begin on %s and nothing is recorded of it: record the day on which it began, or change the pairing",
				j.Phases[k].Name, date(j.plan[k]))
			return
		}
	}
}

// whole gives the days of the cycle.
func (j *job) whole() run { return run{j.plan[0], j.plan[len(j.plan)-1] - 1} }

// cycle gives the result.
func (j *job) cycle() Cycle {
	rain := date(j.plan[anchor(j.Phases)])
	c := Cycle{Pairing: j.ID, RainStart: rain, Warnings: j.rec.warnings}
	latest := j.latestStarts()
	for k, p := range j.Phases {
		c.Phases = append(c.Phases, Dated{
			Name:        p.Name,
			Place:       p.Place,
			Span:        run{j.plan[k], j.plan[k+1] - 1}.span(),
			LatestStart: latest[k],
			Recorded:    j.rec.began[k].Known(),
		})
	}
	for _, s := range j.Stages {
		w := civil.Window{Early: rain.Add(s.Early), Likely: rain.Add(s.Likely), Late: rain.Add(s.Late)}
		c.Stages = append(c.Stages, StageWindow{Stage: s.Stage, Window: w})
	}
	return c
}
