package planner

import (
	"context"
	"math/rand/v2"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Options say how long to search.
type Options struct {
	// Steps is how much work may be done, counted in computations of one chain;
	// 0 means 1,000,000, some 30 seconds of processor time.
	Steps   int
	Workers int // at least 1 is taken; the plan does not depend on it
	// Hint is a plan to begin with, such as the one that was announced. It is
	// kept where nothing is better. A hint that breaks a limit is passed over.
	Hint []Cycle
}

const usualSteps = 1_000_000

// Solve plans a season. It ends when the plan is proven best, when the work of
// options is done, or when ctx is; the plan is then the best that was found,
// and it has a bound in any case. Unless ctx ended, the plan is the same on
// every machine.
//
// Solve panics on problems that no reader should let through: names or ids that
// are empty or stand twice, limits out of order, phases that are not in the
// chain, negative numbers, or numbers above 100,000 (costs: 10,000).
//
// The memory grows with the days, times the resources and animals that are
// shared; the work of a step with the days on which a chain can begin, times the
// lengths that its phases can have.
func Solve(ctx context.Context, p Problem, o Options) Plan {
	validate(p)
	v := newSolving(ctx, p, o)
	v.solve()
	return v.plan(p)
}

// solving is the course of Solve.
type solving struct {
	*model
	ctx     context.Context
	crew    *crew
	bounds  *bounding
	improve *improving
	most    int // steps
	steps   int
	least   int64 // what a search that ended early found that every plan costs, in units
	proven  bool
}

func newSolving(ctx context.Context, p Problem, o Options) *solving {
	m := newModel(p)
	c := newCrew(m, o.Workers)
	v := &solving{model: m, ctx: ctx, crew: c, bounds: newBounding(m, c), most: o.Steps}
	if v.most <= 0 {
		v.most = usualSteps
	}
	v.improve = &improving{
		model: m, crew: c, pick: rand.New(rand.NewPCG(1, 2)), size: 3, alone: make([]int64, len(m.chains)),
		best: solution{paths: make([][]int, len(m.chains))},
	}
	v.improve.best.cost = m.costOf(v.improve.best.paths)
	if hint, ok := m.read(p, o.Hint); ok {
		v.offer(hint)
	}
	return v
}

func (v *solving) offer(s solution) {
	if s.cost < v.improve.best.cost {
		v.improve.best = s
	}
}

// bound is the least that any plan costs, in units: a whole cost.
func (v *solving) bound() int64 {
	return max(0, (max(v.bounds.bound, v.least)+unit-1)/unit*unit)
}

// mostSearched is the greatest season that is searched whole, however far its
// bound is.
const mostSearched = 24

func (v *solving) small() bool { return len(v.chains) <= mostSearched }

func (v *solving) done() bool {
	v.proven = v.proven || v.bound() >= v.improve.best.cost
	return v.proven || v.steps >= v.most || v.ctx.Err() != nil
}

func (v *solving) solve() {
	v.bounds.round() // without prices, each chain alone
	copy(v.improve.alone, v.bounds.least)
	v.begin()
	v.approach()
	if near := v.improve.best.cost / 25; v.small() || v.improve.best.cost-v.bound() <= near {
		v.prove()
	}
	v.wander((v.most - v.steps) / 2)
	for !v.done() {
		v.try(200)
	}
}

// approach raises the bound and improves the plan by turns, until the prices have
// settled. The search of a small season needs good prices more than anything, so
// that there it raises the bound first for longer, and leaves most of the work to
// the search.
func (v *solving) approach() {
	rounds, most := 60, v.most
	if v.small() {
		rounds, most = max(rounds, min(v.most/(8*max(1, len(v.chains))), 600)), v.most*2/5
	}
	for !v.done() {
		v.lift(rounds)
		v.begin()
		for range 12 {
			if v.done() {
				return
			}
			v.try(60)
		}
		if v.bounds.settled() || v.steps > most {
			return
		}
		rounds = 60
	}
}

// try plans some chains anew, with that many steps for each of them.
func (v *solving) try(steps int) {
	before := v.improve.steps
	v.improve.try(v.ctx, steps*v.improve.size)
	v.steps += v.improve.steps - before
}

// wander goes two ways from the best plan, side by side, with that many steps.
func (v *solving) wander(steps int) {
	if v.done() {
		return
	}
	v.bounds.best.sum(v.left)
	worth := make([]int64, len(v.chains))
	for i, c := range v.chains {
		worth[i] = c.leaveOut - v.bounds.least[i]
	}
	walks := make([]*walk, 2)
	v.crew.each(len(walks), func(k int, t *table) {
		w := newWalk(v.model, v.improve.best, v.bounds.best, worth)
		w.pick = rand.New(rand.NewPCG(uint64(k), 3))
		w.part, w.heat = 60+40*int64(k), v.bound()/400
		w.run(v.ctx, t, steps/len(walks))
		walks[k] = w
	})
	for _, w := range walks {
		v.steps += w.steps
		v.offer(w.best)
	}
}

// lift raises the bound.
func (v *solving) lift(rounds int) {
	before := v.bounds.steps
	v.bounds.rounds(v.ctx, min(rounds, 1+(v.most-v.steps)/max(1, len(v.chains))), v.improve.best.cost)
	v.steps += v.bounds.steps - before
}

// begin plans the chains one after another in several orders.
func (v *solving) begin() {
	rain := func(i int) int {
		if path := v.bounds.paths[i]; path != nil {
			return path[0]
		}
		return -1
	}
	price := func(i int) int { return int(max(0, min(1<<30, v.improve.alone[i]-v.bounds.least[i]))) }
	l := v.newLoad()
	for _, order := range [][]int{
		v.byRoom(), v.orderBy(rain), v.orderBy(func(i int) int { return -rain(i) }), v.orderBy(price),
	} {
		for _, p := range []prices{v.bounds.best, v.newPrices()} {
			if v.done() {
				return
			}
			p.sum(v.left)
			v.offer(v.place(order, p, v.crew.tables[0], l))
			v.steps += len(order)
		}
	}
}

// prove searches the whole season for a plan that is better, with a part of the
// work. In a small season, limits are soon so narrow that a step takes a third of
// the time of others, and counts so.
func (v *solving) prove() {
	if v.done() {
		return
	}
	steps, light := v.most/3, 1
	if v.small() {
		steps, light = v.most*2/5, 3
	}
	s := newSearch(v.ctx, v.model, v.bounds.best, light*min(steps, v.most-v.steps))
	s.prices.sum(v.left)
	s.best, s.rounds = v.improve.best, 6
	s.solve()
	v.steps += s.steps / light
	v.offer(s.best)
	v.proven = !s.stopped
	v.least = min(s.unseen, s.best.cost)
}

// plan gives the result.
func (v *solving) plan(p Problem) Plan {
	best := v.improve.best
	out := Plan{
		Cost: int(best.cost / unit), Bound: int(v.bound() / unit), Missing: int(p.missing()),
		Proven: v.proven, Steps: v.steps, Stopped: v.ctx.Err() != nil,
	}
	if v.proven {
		out.Bound = out.Cost
	}
	for i, c := range p.Chains {
		cycle := Cycle{ID: c.ID, Days: []civil.Date{}}
		for _, d := range best.paths[i] {
			cycle.Days = append(cycle.Days, p.First.Add(d))
		}
		out.Cycles = append(out.Cycles, cycle)
	}
	return out
}
