package timetable

import (
	"github.com/spawnwright/spawnwright/pkg/planner"
)

// mostSuspects is how many pairings are looked at in search of a smallest
// conflict.
const mostSuspects = 24

// conflict says why there is no plan: the smallest set of pairings that cannot
// run together. In a large season it looks among one that found no place and
// those that share its days. The best plan that was found says who they are.
func (f *fitting) conflict(p planner.Problem, plan planner.Plan) *planner.Conflict {
	o := planner.Options{Steps: f.o.steps(min(len(f.free), mostSuspects)) / 5, Workers: f.o.Workers}
	if suspects := f.suspects(p, plan); len(suspects) < len(p.Chains) {
		q := p
		q.Chains = suspects
		if c, ok := planner.Smallest(f.ctx, q, o); ok {
			return &c
		}
		var c planner.Conflict
		for _, k := range missing(p, plan) {
			c.Chains = append(c.Chains, p.Chains[k].ID)
		}
		return &c
	}
	c, ok := planner.Smallest(f.ctx, p, o)
	if !ok { // the search was longer the second time
		for _, x := range p.Chains {
			c.Chains = append(c.Chains, x.ID)
		}
	}
	return &c
}

// missing gives the chains that must be planned and found no place.
func missing(p planner.Problem, plan planner.Plan) []int {
	var out []int
	for k, c := range plan.Cycles {
		if len(c.Days) == 0 && p.Chains[k].LeaveOut == 0 {
			out = append(out, k)
		}
	}
	return out
}

// suspects gives the first chain without a place and those whose days alone lie
// beside its own, in order.
func (f *fitting) suspects(p planner.Problem, plan planner.Plan) []planner.Chain {
	lost := missing(p, plan)
	if len(p.Chains) <= mostSuspects || len(lost) == 0 {
		return p.Chains
	}
	own := f.alone.Cycles[f.free[lost[0]]].Span()
	out := []planner.Chain{p.Chains[lost[0]]}
	for k, i := range f.free {
		if k != lost[0] && len(out) < mostSuspects && p.Chains[k].LeaveOut == 0 && f.alone.Cycles[i].Span().Overlaps(own) {
			out = append(out, p.Chains[k])
		}
	}
	return out
}
