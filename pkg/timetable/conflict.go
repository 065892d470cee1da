package timetable

import (
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/planner"
)

// Conflict is a smallest set of pairings that cannot all be planned.
type Conflict struct {
	planner.Conflict

	// Unplaced: the search ended before it had a place for these pairings beside all
	// others, and why that is was not found.
	Unplaced bool
	// Resource is what runs short: more of it is a cure. It is empty where nothing
	// does. Count is how many there are, and Days are those from the first to the
	// last on which there would be too few if each had the days that it would have
	// alone.
	Resource string
	Count    int
	Days     civil.Span
	// Animals are those in more than one of the pairings, and Busy those that are
	// in another one, which cannot be moved.
	Animals, Busy []string
}

// mostSuspects is how many pairings are looked at in search of a smallest
// conflict.
const mostSuspects = 24

// conflict says why there is no plan: the smallest set of pairings that cannot
// run together. In a large season it looks among one that found no place and
// those that share its days. The best plan that was found says who they are.
func (f *fitting) conflict(p planner.Problem, plan planner.Plan) *Conflict {
	o := planner.Options{Steps: f.o.steps(min(len(f.free), mostSuspects)) / 5, Workers: f.o.Workers}
	q := p
	q.Chains = f.suspects(p, plan)
	c, ok := planner.Smallest(f.ctx, q, o)
	if !ok { // a search among fewer found a plan for them
		return f.stopped(p, plan)
	}
	f.short(q, &c, o)
	return f.told(p, c)
}

// stopped names the pairings that have no place yet.
func (f *fitting) stopped(p planner.Problem, plan planner.Plan) *Conflict {
	c := &Conflict{Unplaced: true}
	for _, k := range missing(p, plan) {
		c.Chains = append(c.Chains, p.Chains[k].ID)
	}
	return c
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
// beside its own; all in a small season.
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

// told says what the pairings of a conflict are short of.
func (f *fitting) told(p planner.Problem, c planner.Conflict) *Conflict {
	c.Cures = slices.DeleteFunc(c.Cures, func(x planner.Cure) bool { return f.going(x.Chain) })
	out := &Conflict{Conflict: c}
	for _, cure := range c.Cures {
		id, animal := strings.CutPrefix(cure.Resource, animalResource)
		switch {
		case cure.Resource == "":
		case animal:
			out.Busy = append(out.Busy, id)
		case out.Resource == "":
			out.Resource = cure.Resource
		}
	}
	seen := make(map[string]bool)
	for k := range f.free {
		if !slices.Contains(c.Chains, p.Chains[k].ID) {
			continue
		}
		for _, id := range p.Chains[k].Animals {
			if seen[id] && !slices.Contains(out.Animals, id) {
				out.Animals = append(out.Animals, id)
			}
			seen[id] = true
		}
	}
	f.crowded(p, out)
	return out
}

// crowded finds the days on which there is too little of what runs short.
func (f *fitting) crowded(p planner.Problem, c *Conflict) {
	q, plan := p, planner.Plan{}
	q.Chains = nil
	for k, i := range f.free {
		if slices.Contains(c.Chains, p.Chains[k].ID) {
			q.Chains = append(q.Chains, p.Chains[k])
			plan.Cycles = append(plan.Cycles, planner.Cycle{ID: p.Chains[k].ID, Days: f.ahead(i)})
		}
	}
	for _, load := range loads(q, plan) {
		if load.Resource != c.Resource {
			continue
		}
		c.Count = load.Count
		for d, used := range load.Used {
			if used > load.Count {
				c.Days = hull(c.Days, civil.Span{First: p.First.Add(d), Last: p.First.Add(d)})
			}
		}
	}
}

// going reports whether a pairing has begun and has no day to be ready by, so that
// it cannot be said to run later.
func (f *fitting) going(id string) bool {
	return slices.ContainsFunc(f.free, func(i int) bool {
		return f.inputs[i].ID == id && f.begun(i) >= 0 && !f.inputs[i].ReadyBy.Known()
	})
}

// hull gives the days from the first of two spans to the last; the first of them
// may be empty.
func hull(a, b civil.Span) civil.Span {
	if a.Days() == 0 {
		return b
	}
	return civil.Span{First: min(a.First, b.First), Last: max(a.Last, b.Last)}
}
