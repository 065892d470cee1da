package planner

import "context"

// bounding looks for the prices with the highest bound, by steps from the best
// prices so far along the overuse that ways of all rounds have on average (volume
// algorithm; Barahona and Anbil 2000, Mathematical Programming 87:385). The
// average comes near to a plan in parts, which is what makes the last percents
// quick. All in whole numbers.
type bounding struct {
	*model
	crew    *crew
	now     prices
	best    prices
	bound   int64     // in units, of best
	paths   [][]int   // at the prices of now
	least   []int64   // the same
	slope   load      // overuse by these paths
	mean    [][]int64 // overuse on average, in parts of whole
	stretch int64     // of a step, in parts of whole
	weight  int64     // most that a round counts in mean, in parts of whole
	better  int       // better rounds that went on in the same direction
	stale   int       // rounds without a better bound
	count   int       // rounds
	before  int64     // bound at the end of the last period
	idle    int       // periods that brought next to nothing
	steps   int
}

// whole is 1 as a number with a fraction.
const whole = 1 << 16

// period is the number of rounds after which it is seen how well it goes.
const period = 50

func newBounding(m *model, crew *crew) *bounding {
	b := &bounding{
		model: m, crew: crew, now: m.newPrices(), best: m.newPrices(), bound: -never,
		paths: make([][]int, len(m.chains)), least: make([]int64, len(m.chains)),
		slope: m.newLoad(), stretch: whole / 10, weight: whole / 5, before: -never,
	}
	for range m.left {
		b.mean = append(b.mean, make([]int64, m.days))
	}
	return b
}

// settled reports that more rounds bring next to nothing.
func (b *bounding) settled() bool { return b.idle > 2 }

// rounds goes on for a number of rounds, or until the bound reaches goal, the
// cost of the best plan known, or is settled.
func (b *bounding) rounds(ctx context.Context, n int, goal int64) {
	for range n {
		if ctx.Err() != nil || b.bound > goal-unit || b.settled() {
			return
		}
		b.step(goal)
		b.round()
	}
}

// round finds the bound at the prices of now, and what the ways overuse.
func (b *bounding) round() {
	b.now.sum(b.left)
	b.crew.each(len(b.chains), func(i int, t *table) { b.price(i, t) })
	b.steps += len(b.chains)
	b.count++
	total := -b.now.constant
	for _, v := range b.least {
		total += v
	}
	b.overuse()
	ahead := b.average()
	b.adapt(total, ahead)
	if total > b.bound {
		b.bound, b.best = total, b.now.clone()
	}
	if b.count%period == 0 {
		b.look()
	}
}

// price finds the best days of a chain at the prices of now.
func (b *bounding) price(i int, t *table) {
	c := b.chains[i]
	w := window{c.first, c.last}
	b.least[i], b.paths[i] = c.leaveOut, nil
	if w.empty() {
		return
	}
	t.lay(c, w, b.left, b.crew.nothing, b.now.sums)
	if least := t.least(c, w); least < c.leaveOut {
		b.least[i] = least
		b.paths[i] = make([]int, len(c.phases)+1)
		t.path(c, w, b.paths[i])
	}
}

func (b *bounding) overuse() {
	for r := range b.slope {
		for d, left := range b.left[r] {
			b.slope[r][d] = -left
		}
	}
	for i, c := range b.chains {
		if b.paths[i] != nil {
			c.addPath(b.slope, b.paths[i], 1)
		}
	}
}

// adapt makes steps longer while the bound rises along a direction that the new
// ways still agree with, and shorter when it does not rise.
func (b *bounding) adapt(total int64, ahead bool) {
	if total > b.bound {
		b.stale = 0
		if ahead {
			b.better++
		}
		if b.better >= 2 {
			b.better, b.stretch = 0, min(2*whole, b.stretch*11/10)
		}
		return
	}
	if b.stale++; b.stale >= 10 {
		b.stale, b.stretch = 0, max(8, b.stretch*2/3)
	}
}

// look lessens what a round counts when a period brought little, so that the
// mean is of more rounds, for which longer steps are tried again.
func (b *bounding) look() {
	gain := b.bound - b.before
	if gain < b.bound/50 {
		b.weight = max(whole/200, b.weight*7/10)
		b.stretch = max(whole/50, b.stretch)
	}
	if b.idle++; gain > max(unit/16, b.bound/5000) {
		b.idle = 0
	}
	b.before = b.bound
}
