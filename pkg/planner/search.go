package planner

import (
	"context"
	"slices"
)

// search is a branch and bound over a model. At each node every chain has its
// best days by a dynamic programme; where they do not fit together, the node is
// split over one of the things that clash.
type search struct {
	*model
	prices   prices
	table    *table
	certain  load
	joint    load
	best     solution
	rounds   int // how often the prices are moved at a node
	steps    int // computations of one chain so far
	mostStep int
	ctx      context.Context
	stopped  bool
	unseen   int64 // least bound of the nodes that were not looked at, never when there is none
}

// solution is a plan of a model: by chain the days of the boundaries, nil for
// what is left out.
type solution struct {
	paths [][]int
	cost  int64 // never when there is none
}

func newSearch(ctx context.Context, m *model, p prices, mostStep int) *search {
	phases := 0
	for _, c := range m.chains {
		phases = max(phases, len(c.phases))
	}
	return &search{
		model: m, prices: p, table: newTable(phases, m.days), certain: m.newLoad(), joint: m.newLoad(),
		best: solution{cost: never}, mostStep: mostStep, ctx: ctx, unseen: never,
	}
}

// limit is the most that a solution may cost to be better than the best.
func (s *search) limit() int64 { return s.best.cost - unit }

// spent reports whether the search has to end.
func (s *search) spent() bool {
	if s.steps >= s.mostStep || s.ctx.Err() != nil {
		s.stopped = true
	}
	return s.stopped
}

// solve searches the whole model; when it was not stopped the best solution is
// proven best, or there is none better than the one it began with.
func (s *search) solve() {
	n := s.start()
	n.total = -s.prices.constant
	if s.propagate(n) {
		s.run(n)
	}
}

// run searches below a node that is up to date.
func (s *search) run(n *state) {
	if s.spent() {
		s.unseen = min(s.unseen, n.total)
		return
	}
	before := s.prices
	defer func() { s.prices = before }()
	s.mark(n)
	if !s.sharpen(n) {
		return
	}
	clash := s.clash(n)
	if clash == nil {
		s.offer(n.path)
		if n.total > s.limit() {
			return
		}
	}
	var children []*state
	for _, child := range s.split(n, clash) {
		if s.propagate(child) {
			children = append(children, child)
		}
	}
	slices.SortStableFunc(children, func(a, b *state) int { return int(max(-1, min(1, a.total-b.total))) })
	for _, child := range children {
		if child.total <= s.limit() {
			s.run(child)
		}
	}
}

// mark counts what the chains of a node hold for certain.
func (s *search) mark(n *state) {
	s.certain.clear()
	for i, c := range s.chains {
		if n.chosen[i] == in {
			c.addCertain(s.certain, n.window[i], 1)
		}
	}
}

// offer takes the paths for the best solution if they cost less.
func (s *search) offer(paths [][]int) {
	if cost := s.costOf(paths); cost < s.best.cost {
		s.best = solution{slices.Clone(paths), cost}
	}
}

func (m *model) costOf(paths [][]int) int64 {
	cost := int64(0)
	for i, c := range m.chains {
		if paths[i] == nil {
			cost += c.leaveOut
		} else {
			cost += c.costOf(paths[i])
		}
	}
	return cost
}

// propagate brings a node up to date: the best days of each chain, and limits
// that leave nothing out that could be part of a better solution. It reports
// whether there can be one.
func (s *search) propagate(n *state) bool {
	s.mark(n)
	if !s.certain.within(s.left) {
		return false
	}
	for round := 0; round < 8; round++ {
		again := false
		for i := range s.chains {
			if !n.dirty[i] {
				continue
			}
			n.dirty[i] = false
			if !s.update(n, i) {
				return false
			}
			again = true
		}
		if !again {
			break
		}
	}
	return n.total <= s.limit()
}

func (l load) within(left load) bool {
	for r, row := range l {
		for d, v := range row {
			if v > left[r][d] {
				return false
			}
		}
	}
	return true
}

// update brings one chain of a node up to date, and what is certain with it.
func (s *search) update(n *state, i int) bool {
	c, w := s.chains[i], n.window[i]
	before, was := w.clone(), n.chosen[i] == in
	if was {
		c.addCertain(s.certain, w, -1)
	}
	ok := s.refresh(n, i)
	if n.chosen[i] == in {
		c.addCertain(s.certain, w, 1)
		s.wake(n, i, before, was)
	}
	return ok
}

// refresh finds the best days of a chain beside what is certain of the others.
func (s *search) refresh(n *state, i int) bool {
	c, w := s.chains[i], n.window[i]
	if n.chosen[i] == out {
		n.set(i, c.leaveOut, nil)
		return n.total <= s.limit()
	}
	s.steps++
	least := never
	if !w.empty() {
		s.table.lay(c, w, s.left, s.certain, s.prices.sums)
		least = s.table.least(c, w)
	}
	switch {
	case n.chosen[i] == open && c.leaveOut <= least:
		n.set(i, c.leaveOut, nil)
	case least == never:
		return false
	default:
		path := make([]int, len(c.phases)+1)
		s.table.path(c, w, path)
		n.set(i, least, path)
	}
	return n.total <= s.limit() && s.narrow(n, i, least)
}

func (n *state) set(i int, least int64, path []int) {
	n.total += least - n.least[i]
	n.least[i], n.path[i] = least, path
}

// narrow takes out of the limits of a chain what would cost too much, and
// settles whether it is planned at all.
func (s *search) narrow(n *state, i int, least int64) bool {
	c := s.chains[i]
	most := n.least[i] + s.limit() - n.total // what this chain may cost
	if n.chosen[i] == open {
		switch {
		case least > most:
			n.chosen[i] = out
			return true
		case c.leaveOut > most:
			n.chosen[i] = in
		}
	}
	s.table.tighten(c, n.window[i], most)
	return true
}

// wake marks the chains that share what a chain newly holds for certain.
func (s *search) wake(n *state, i int, before window, was bool) {
	for _, it := range s.chains[i].items {
		first, end := it.certain(n.window[i])
		if first >= end {
			continue
		}
		if wasFirst, wasEnd := it.certain(before); !was || first != wasFirst || end != wasEnd {
			s.wakeUsers(n, i, it.resource)
		}
	}
}

func (s *search) wakeUsers(n *state, but, resource int) {
	for j, c := range s.chains {
		if j != but && n.chosen[j] != out && c.wants(resource) {
			n.dirty[j] = true
		}
	}
}

func (c *chain) wants(resource int) bool {
	return slices.ContainsFunc(c.items, func(it item) bool { return it.resource == resource })
}
