package timetable

import (
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/planner"
)

// Shifts gives by how many days from least to most, negative for earlier, the whole
// cycle of a pairing can be moved while all others stay: within its limits and the
// room, with hands on no day away. A start that the keeper has set is no limit here.
// It is empty for a pairing that is not in the plan, or has begun. The cost is that
// of adding up the loads once, and for each day what the pairing holds.
func (t Timetable) Shifts(id string, least, most int) []int {
	k := slices.IndexFunc(t.Plan.Cycles, func(c planner.Cycle) bool { return c.ID == id })
	if k < 0 || len(t.Plan.Cycles[k].Days) == 0 {
		return nil
	}
	f := newShifting(t, k)
	var out []int
	for by := least; by <= most; by++ {
		if by != 0 && f.fits(by) {
			out = append(out, by)
		}
	}
	return out
}

// shifting is one pairing beside all others.
type shifting struct {
	p      planner.Problem
	chain  planner.Chain
	days   []civil.Date
	others map[string]Load
	busy   []civil.Span // of its animals in other pairings
}

func newShifting(t Timetable, k int) *shifting {
	f := &shifting{p: t.Problem, chain: t.Problem.Chains[k], days: t.Plan.Cycles[k].Days, others: make(map[string]Load)}
	rest := planner.Plan{Cycles: slices.Clone(t.Plan.Cycles)}
	rest.Cycles[k].Days = nil
	for _, l := range loadsOf(t.Problem, rest) {
		f.others[l.Resource] = l
	}
	for i, c := range rest.Cycles {
		if len(c.Days) > 0 && slices.ContainsFunc(t.Problem.Chains[i].Animals, func(a string) bool { return slices.Contains(f.chain.Animals, a) }) {
			f.busy = append(f.busy, civil.Span{First: c.Days[0], Last: c.Days[len(c.Days)-1].Add(-1)})
		}
	}
	return f
}

// fits reports whether the pairing can be so many days later.
func (f *shifting) fits(by int) bool {
	days := make([]civil.Date, len(f.days))
	start := make(map[string]civil.Date)
	for k, d := range f.days {
		days[k] = d.Add(by)
		if k == len(f.chain.Phases) {
			start[planner.End] = days[k]
			break
		}
		ph := f.chain.Phases[k]
		start[ph.Name] = days[k]
		set := k == 0 && ph.Earliest.Known() && ph.Earliest == ph.Latest && ph.Earliest > f.p.First
		if !set && (ph.Earliest.Known() && days[k] < ph.Earliest || ph.Latest.Known() && days[k] > ph.Latest) {
			return false
		}
	}
	last := days[len(days)-1]
	if days[0] < f.p.First || last > f.p.First.Add(f.p.Days) {
		return false
	}
	whole := civil.Span{First: days[0], Last: last.Add(-1)}
	return !slices.ContainsFunc(f.busy, whole.Overlaps) && f.manned(days, start) && f.holds(days)
}

// manned reports whether nobody has to be there on a day away.
func (f *shifting) manned(days []civil.Date, start map[string]civil.Date) bool {
	for _, away := range f.p.Away {
		for k, ph := range f.chain.Phases {
			if span := (civil.Span{First: days[k], Last: days[k+1].Add(-1)}); ph.Attended && span.Overlaps(away) {
				return false
			}
		}
		for _, v := range f.chain.Visits {
			if away.Contains(start[v.Phase].Add(v.Day)) {
				return false
			}
		}
	}
	return true
}

// holds reports whether there is room for all that the pairing holds.
func (f *shifting) holds(days []civil.Date) bool {
	for resource, amounts := range f.own(days) {
		l := f.others[resource]
		for d, amount := range amounts {
			if amount > 0 && amount+l.Used[d] > l.Count {
				return false
			}
		}
	}
	return true
}

// own gives what the pairing holds with some days, by resource and day.
func (f *shifting) own(days []civil.Date) map[string][]int {
	own := make(map[string][]int)
	for _, b := range booked(f.chain, days) {
		l, counted := f.others[b.Resource]
		if !counted {
			continue
		}
		if own[b.Resource] == nil {
			own[b.Resource] = make([]int, len(l.Used))
		}
		for d := max(0, b.Span.First.Sub(f.p.First)); d <= min(b.Span.Last.Sub(f.p.First), len(l.Used)-1); d++ {
			own[b.Resource][d] += b.Amount
		}
	}
	return own
}
