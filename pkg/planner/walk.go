package planner

import (
	"cmp"
	"context"
	"math/rand/v2"
	"slices"
)

// walk changes a plan again and again: a few pairings that are in each other's
// way are taken out, and these and those that were left out are planned one after
// another in a new order (ruin and recreate; Schrimpf and others 2000, Journal of
// Computational Physics 159:139). At first what a plan holds counts a part of its
// price too, so that plans come first that leave room for one more; towards the
// end only the cost counts. A plan that is a little worse may be kept, the less
// the nearer the end (simulated annealing; Kirkpatrick and others 1983, Science
// 220:671).
type walk struct {
	*vacancies
	pick   *rand.Rand
	now    solution
	best   solution
	prices prices
	worth  []int64 // by chain, what planning it gains at the prices
	part   int64   // of the prices that count at first, in percent
	heat   int64   // how much worse a plan may be at first
	steps  int
}

func newWalk(m *model, from solution, p prices, worth []int64) *walk {
	w := &walk{
		vacancies: newVacancies(m), prices: p, worth: worth,
		now: solution{slices.Clone(from.paths), from.cost}, best: from,
	}
	for i, path := range from.paths {
		if path != nil {
			w.book(i, path, 1)
		}
	}
	return w
}

// run makes changes until the steps are done.
func (w *walk) run(ctx context.Context, t *table, steps int) {
	for w.steps < steps && ctx.Err() == nil {
		ahead := int64(steps - w.steps)
		w.change(t, w.part*ahead/int64(steps), w.heat*ahead/int64(steps))
	}
}

// change makes one change, when the plan is not too much worse with it, at a part
// of the prices.
func (w *walk) change(t *table, part, heat int64) {
	w.steps++
	before := slices.Clone(w.now.paths)
	changed := w.ruin()
	for i, path := range before {
		if path == nil && w.pick.IntN(4) > 0 {
			changed = append(changed, i)
		}
	}
	w.order(changed)
	sums := w.prices.sums
	if w.pick.IntN(2) == 0 {
		sums = nil
	}
	for _, i := range changed {
		w.insert(i, t, sums)
	}
	cost := w.costOf(w.now.paths)
	worse := cost - w.now.cost
	for _, i := range changed {
		worse += (w.priceOf(i, w.now.paths[i]) - w.priceOf(i, before[i])) / 100 * part
	}
	if r := w.pick.Int64N(1024); worse > heat*r/1024*r/1024 {
		for _, i := range changed {
			w.put(i, before[i])
		}
		return
	}
	if w.now.cost = cost; cost < w.best.cost {
		w.best = solution{slices.Clone(w.now.paths), cost}
	}
}

// ruin takes some chains out that are near to one of them, and gives them.
func (w *walk) ruin() []int {
	var planned []int
	for i, path := range w.now.paths {
		if path != nil {
			planned = append(planned, i)
		}
	}
	if len(planned) == 0 {
		return nil
	}
	first := planned[w.pick.IntN(len(planned))]
	near := make([]int, len(w.chains))
	for _, i := range planned {
		near[i] = w.pick.IntN(60) + w.shared(w.now.paths, first, i)
	}
	near[first] = 1 << 30
	slices.SortStableFunc(planned, func(a, b int) int { return near[b] - near[a] })
	planned = planned[:min(len(planned), 1+w.pick.IntN(10))]
	for _, i := range planned {
		w.put(i, nil)
	}
	return planned
}

// order sets the order in which chains are planned: by chance, by what they gain,
// or by both.
func (w *walk) order(list []int) {
	w.pick.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
	chance := int64(0)
	switch w.pick.IntN(3) {
	case 0:
		return
	case 1:
		chance = 400 * unit
	}
	gain := slices.Clone(w.worth)
	for _, i := range list {
		gain[i] += w.pick.Int64N(chance + 1)
	}
	slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(gain[b], gain[a]) })
}

// insert plans a chain beside the others, if it fits there.
func (w *walk) insert(i int, t *table, sums [][]int64) {
	path, worked := w.place(i, t, sums)
	if worked {
		w.steps++
	}
	if path != nil && w.chains[i].costOf(path) < w.chains[i].leaveOut {
		w.put(i, path)
	}
}

// put gives a chain other days, nil to leave it out.
func (w *walk) put(i int, path []int) {
	if was := w.now.paths[i]; was != nil {
		w.book(i, was, -1)
	}
	if w.now.paths[i] = path; path != nil {
		w.book(i, path, 1)
	}
}

// priceOf is the price of all that a chain holds with its days.
func (w *walk) priceOf(i int, path []int) int64 {
	total := int64(0)
	if path == nil {
		return total
	}
	for _, it := range w.chains[i].items {
		sums := w.prices.sums[it.resource]
		if from, to := min(it.start(path[it.a]), w.days), min(it.end(path[it.b]), w.days); from < to {
			total += int64(it.amount) * (sums[to] - sums[from])
		}
	}
	return total
}
