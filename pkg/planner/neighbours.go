package planner

import (
	"context"
	"math/rand/v2"
	"slices"
)

// improving makes a plan better by taking a few pairings out and planning them
// anew, exactly, beside all others (large neighbourhood search; Shaw 1998,
// Principles and Practice of Constraint Programming, 417).
type improving struct {
	*model
	crew  *crew
	best  solution
	alone []int64 // by chain, its least cost when nobody else counts
	pick  *rand.Rand
	steps int
	size  int // pairings taken out
	quiet int // batches without a better plan
}

// batch is how many neighbourhoods of one plan are tried side by side.
const batch = 4

// trial is one neighbourhood with what came of it.
type trial struct {
	chains []int
	found  solution
	steps  int
}

// try looks at a batch of neighbourhoods and takes the best of what was found.
func (v *improving) try(ctx context.Context, mostSteps int) {
	trials := make([]trial, batch)
	for k := range trials {
		trials[k].chains = v.neighbours()
	}
	v.crew.each(batch, func(k int, t *table) { trials[k].run(ctx, v, t, mostSteps) })
	better := false
	for _, tr := range trials {
		v.steps += tr.steps
		better = v.take(tr) || better
	}
	if v.quiet++; better {
		v.quiet, v.size = 0, max(3, v.size-1)
	} else if v.quiet%8 == 0 && v.size < min(8, len(v.chains)) {
		v.size++
	}
}

// take puts what a trial found into the best plan, if it fits there and is
// better; another trial may have been taken before it.
func (v *improving) take(tr trial) bool {
	if tr.found.paths == nil {
		return false
	}
	paths := slices.Clone(v.best.paths)
	for k, i := range tr.chains {
		paths[i] = tr.found.paths[k]
	}
	cost := v.costOf(paths)
	if cost >= v.best.cost || !v.feasible(paths) {
		return false
	}
	v.best = solution{paths, cost}
	return true
}

func (m *model) feasible(paths [][]int) bool {
	l := m.newLoad()
	for i, c := range m.chains {
		if paths[i] != nil {
			c.addPath(l, paths[i], 1)
		}
	}
	return l.within(m.left)
}

// run plans the chains of a trial anew.
func (tr *trial) run(ctx context.Context, v *improving, t *table, mostSteps int) {
	sub := &model{days: v.days}
	for _, row := range v.left {
		sub.left = append(sub.left, slices.Clone(row))
	}
	cost := int64(0)
	for i, c := range v.chains {
		if slices.Contains(tr.chains, i) {
			cost += v.costOne(i)
		} else if path := v.best.paths[i]; path != nil {
			c.addPath(sub.left, path, -1)
		}
	}
	for _, i := range tr.chains {
		sub.chains = append(sub.chains, v.chains[i])
	}
	s := newSearch(ctx, sub, sub.newPrices(), mostSteps)
	s.table = t
	s.best.cost = cost
	s.solve()
	tr.found, tr.steps = s.best, s.steps
}

func (v *improving) costOne(i int) int64 {
	if v.best.paths[i] == nil {
		return v.chains[i].leaveOut
	}
	return v.chains[i].costOf(v.best.paths[i])
}

// neighbours picks a pairing, the more likely the more it costs beyond what it
// would alone, and others that are in its way, ascending.
func (v *improving) neighbours() []int {
	n := len(v.chains)
	first := v.costly()
	nearness := make([]int, n)
	for i := range v.chains {
		nearness[i] = v.pick.IntN(60) + v.shared(v.best.paths, first, i)
	}
	nearness[first] = 1 << 30
	order := v.orderBy(func(i int) int { return -nearness[i] })
	return slices.Sorted(slices.Values(order[:min(v.size, n)]))
}

func (v *improving) costly() int {
	excess := make([]int64, len(v.chains))
	total := int64(0)
	for i := range v.chains {
		excess[i] = min(v.costOne(i)-v.alone[i], never/int64(2*len(v.chains))) + unit/4
		total += excess[i]
	}
	at := v.pick.Int64N(total)
	for i, e := range excess {
		if at -= e; at < 0 {
			return i
		}
	}
	return len(excess) - 1
}

// shared is for how many days two pairings hold the same thing, or hold it
// within days of each other. A pairing that is left out is near to all.
func (m *model) shared(paths [][]int, a, b int) int {
	pa, pb := paths[a], paths[b]
	if pa == nil || pb == nil {
		return 30
	}
	total := 0
	for _, x := range m.chains[a].items {
		for _, y := range m.chains[b].items {
			if x.resource == y.resource {
				common := min(x.end(pa[x.b]), y.end(pb[y.b])) - max(x.start(pa[x.a]), y.start(pb[y.a]))
				total += max(0, min(common+10, 60))
			}
		}
	}
	return min(total, 200)
}
