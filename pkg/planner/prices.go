package planner

import (
	"context"
	"slices"
)

// prices are what a resource costs by day, in units. The least cost of every
// chain at these prices, less the price of all that there is, is below the cost
// of every plan (Lagrangian relaxation; Fisher 1981, Management Science 27:1).
type prices struct {
	day      [][]int64 // by resource and day
	sums     [][]int64 // by resource: of all days before
	constant int64     // of all that there is
}

func (m *model) newPrices() prices {
	p := prices{}
	for range m.left {
		p.day = append(p.day, make([]int64, m.days))
		p.sums = append(p.sums, make([]int64, m.days+1))
	}
	return p
}

func (p *prices) clone() prices {
	c := prices{constant: p.constant}
	for r := range p.day {
		c.day = append(c.day, slices.Clone(p.day[r]))
		c.sums = append(c.sums, slices.Clone(p.sums[r]))
	}
	return c
}

// sum brings sums and constant up to date with the prices by day.
func (p *prices) sum(left load) {
	p.constant = 0
	for r, row := range p.day {
		for d, v := range row {
			p.sums[r][d+1] = p.sums[r][d] + v
			p.constant += v * int64(left[r][d])
		}
	}
}

// dear is the highest price of a day: no sum with it leaves the range.
const dear = int64(1) << 24

// bounding looks for the prices with the highest bound, by steps along the
// overuse of each resource (subgradient method; Held, Wolfe and Crowder 1974,
// Mathematical Programming 6:62), all in whole numbers.
type bounding struct {
	*model
	crew    *crew
	now     prices
	best    prices
	bound   int64 // in units, of best
	paths   [][]int
	least   []int64
	slope   load
	drift   [][]int64 // slope with a part of the steps before
	stretch int64     // of a step, 1024 for a whole one
	stale   int       // rounds without a better bound
	steps   int
}

func newBounding(m *model, crew *crew) *bounding {
	b := &bounding{
		model: m, crew: crew, now: m.newPrices(), best: m.newPrices(), bound: -never,
		paths: make([][]int, len(m.chains)), least: make([]int64, len(m.chains)),
		slope: m.newLoad(), stretch: 1024,
	}
	for range m.left {
		b.drift = append(b.drift, make([]int64, m.days))
	}
	return b
}

// rounds goes on for a number of rounds, or until the bound reaches goal or the
// steps become too small. goal is the cost of the best plan known.
func (b *bounding) rounds(ctx context.Context, n int, goal int64) {
	for range n {
		if ctx.Err() != nil || b.bound > goal-unit || b.stretch < 4 {
			return
		}
		b.round(goal)
	}
}

func (b *bounding) round(goal int64) {
	b.now.sum(b.left)
	b.crew.each(len(b.chains), func(i int, t *table) { b.price(i, t) })
	b.steps += len(b.chains)
	total := -b.now.constant
	for _, v := range b.least {
		total += v
	}
	if total > b.bound {
		if total-b.bound > b.bound/20000 {
			b.stale = 0
		}
		b.bound, b.best = total, b.now.clone()
	}
	if b.stale++; b.stale > 12 {
		b.stale, b.stretch = 0, b.stretch*2/3
		b.now = b.best.clone()
		b.now.sum(b.left)
	}
	b.step(total, goal)
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

// step moves the prices along the overuse.
func (b *bounding) step(total, goal int64) {
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
	size := int64(0)
	for r, row := range b.drift {
		for d := range row {
			g := int64(b.slope[r][d]) * 16
			if g < 0 && b.now.day[r][d] == 0 {
				g = 0
			}
			row[d] = (g*7 + row[d]*3) / 10
			size += row[d] * row[d] / 16
		}
	}
	if size == 0 {
		b.stretch = 0
		return
	}
	most := total + max(total/10, 20*unit)
	gap := max(min(goal, most)-total, unit/4)
	// A step is stretch/1024 * gap/|slope|² * slope; the 16 in drift and size cancel.
	for r, row := range b.drift {
		for d, g := range row {
			if g != 0 {
				b.now.day[r][d] = min(max(0, b.now.day[r][d]+gap*b.stretch/1024*g/size), dear)
			}
		}
	}
}
