package planner

import "context"

// Conflict is a smallest set of pairings that cannot all be planned.
type Conflict struct {
	// Chains are the ids: each of them is needed for the conflict, so that with
	// any one left out the rest can run.
	Chains []string
	// Proven: no plan has all of them. Otherwise none was found within the work
	// allowed.
	Proven bool
	// Cures are what would resolve it, one at a time, in the order: one more of a
	// resource, an absence less, later limits. Empty when nothing looked at does.
	Cures []Cure
}

// Cure is one change that lets all pairings of a conflict run.
type Cure struct {
	Resource string // one more of it, or of its kind
	More     int    // for a resource: how many more
	Away     int    // without this one of Problem.Away, counted from 1; 0 for none
	Chain    string // with the latest days of this pairing later by Days
	Days     int
}

// Smallest names a smallest conflict among the chains that must be planned: it
// takes one after another out as long as the rest still has no plan (deletion
// filter; Chinneck and Dravnieks 1991, ORSA Journal on Computing 3:157). ok is
// false when there is a plan for all. Chains that may be left out do not matter.
// It solves the problem once for each chain and for each cure that it looks at,
// each time with the work of options.
func Smallest(ctx context.Context, p Problem, o Options) (c Conflict, ok bool) {
	validate(p)
	o.Hint = nil
	q := p
	q.Chains = nil
	for _, x := range p.Chains {
		if x.LeaveOut == 0 {
			q.Chains = append(q.Chains, x.bare())
		}
	}
	whole := Solve(ctx, q, o)
	if whole.Complete() {
		return Conflict{}, false
	}
	c.Proven = whole.Proven
	for i := 0; i < len(q.Chains); {
		rest := q
		rest.Chains = append(q.Chains[:i:i], q.Chains[i+1:]...)
		plan := Solve(ctx, rest, o)
		if plan.Complete() {
			i++
			continue
		}
		q, c.Proven = rest, plan.Proven
	}
	for _, x := range q.Chains {
		c.Chains = append(c.Chains, x.ID)
	}
	c.Cures = cures(ctx, q, o)
	return c, true
}

// bare gives a chain without what costs: only whether there is a plan counts.
func (c Chain) bare() Chain {
	c.Wishes = nil
	phases := make([]Phase, len(c.Phases))
	for k, p := range c.Phases {
		p.Stretch = 0
		phases[k] = p
	}
	c.Phases = phases
	return c
}

// cures tries one change after another on a conflict.
func cures(ctx context.Context, p Problem, o Options) []Cure {
	works := func(q Problem) bool { return Solve(ctx, q, o).Complete() }
	var found []Cure
	for i, r := range p.Resources {
		for more := 1; more <= max(1, min(r.Count, 3)); more++ {
			if works(p.withMore(i, more)) {
				found = append(found, Cure{Resource: r.Name, More: more})
				break
			}
		}
	}
	for i := range p.Away {
		q := p
		q.Away = append(p.Away[:i:i], p.Away[i+1:]...)
		if works(q) {
			found = append(found, Cure{Away: i + 1})
		}
	}
	for i, c := range p.Chains {
		if days, ok := p.delay(i, works); ok {
			found = append(found, Cure{Chain: c.ID, Days: days})
		}
	}
	return found
}

func (p Problem) withMore(resource, more int) Problem {
	p.Resources = append([]Resource(nil), p.Resources...)
	p.Resources[resource].Count += more
	return p
}

// mostDelay is the longest delay that is looked at, in days.
const mostDelay = 128

// delay gives by how many days the latest days of a chain have to be later for a
// plan of all, by halving.
func (p Problem) delay(i int, works func(Problem) bool) (days int, ok bool) {
	if !works(p.later(i, mostDelay)) {
		return 0, false
	}
	least, enough := 1, mostDelay
	for least < enough {
		if half := (least + enough) / 2; works(p.later(i, half)) {
			enough = half
		} else {
			least = half + 1
		}
	}
	return enough, true
}

// later gives a problem in which a chain has its latest days later.
func (p Problem) later(i, days int) Problem {
	p.Chains = append([]Chain(nil), p.Chains...)
	c := &p.Chains[i]
	c.Phases = append([]Phase(nil), c.Phases...)
	for k := range c.Phases {
		if q := &c.Phases[k]; q.Latest.Known() {
			q.Latest = q.Latest.Add(days)
		}
	}
	return p
}
