package planner

import "slices"

// place plans the chains one after another, each at its best beside those before
// it. Prices keep it off days that others will want.
func (m *model) place(order []int, p prices, t *table, l load) solution {
	l.clear()
	s := solution{paths: make([][]int, len(m.chains))}
	for _, i := range order {
		c := m.chains[i]
		if path := m.placeOne(c, p, t, l); path != nil && c.costOf(path) < c.leaveOut {
			c.addPath(l, path, 1)
			s.paths[i] = path
		}
	}
	s.cost = m.costOf(s.paths)
	return s
}

// placeOne gives the best days of a chain beside a load, nil when there are none.
func (m *model) placeOne(c *chain, p prices, t *table, l load) []int {
	w := window{c.first, c.last}
	if w.empty() {
		return nil
	}
	t.lay(c, w, m.left, l, p.sums)
	if t.least(c, w) == never {
		return nil
	}
	path := make([]int, len(c.phases)+1)
	t.path(c, w, path)
	if !c.fits(l, m.left, path) {
		return nil
	}
	return path
}

// byRoom orders the chains by how little room they have: by the number of days
// on which they can end.
func (m *model) byRoom() []int {
	return m.orderBy(func(i int) int { return m.chains[i].last[0] - m.chains[i].first[0] })
}

// orderBy orders the chains by a key, equal ones as they are.
func (m *model) orderBy(key func(i int) int) []int {
	order := make([]int, len(m.chains))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return key(a) - key(b) })
	return order
}
