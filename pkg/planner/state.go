package planner

import "slices"

// whether says whether a chain is planned.
type whether int8

const (
	open whether = iota
	in
	out
)

// state is what a node of the search knows of each chain: the limits of its
// boundaries, and the best days within them when nobody else counts but for
// prices and for what others hold for certain.
type state struct {
	window []window
	chosen []whether
	least  []int64 // by chain, with prices
	path   [][]int // by chain; nil when the best is to leave it out
	dirty  []bool  // least and path are not up to date, only a bound
	total  int64   // sum of least, less the price of all that there is
}

func (m *model) start() *state {
	s := &state{}
	for _, c := range m.chains {
		s.window = append(s.window, window{slices.Clone(c.first), slices.Clone(c.last)})
		s.chosen = append(s.chosen, open)
		s.least = append(s.least, 0)
		s.path = append(s.path, nil)
		s.dirty = append(s.dirty, true)
	}
	return s
}

func (s *state) clone() *state {
	n := &state{
		window: make([]window, len(s.window)), chosen: slices.Clone(s.chosen), least: slices.Clone(s.least),
		path: slices.Clone(s.path), dirty: slices.Clone(s.dirty), total: s.total,
	}
	for i, w := range s.window {
		n.window[i] = w.clone()
	}
	return n
}

// certain gives the days on which an item is held whatever the rest of the plan,
// as long as the chain is planned.
func (it item) certain(w window) (first, end int) {
	return it.start(w.last[it.a]), it.end(w.first[it.b])
}

// addCertain adds what a chain holds for certain to a load, times by.
func (c *chain) addCertain(l load, w window, by int) {
	for _, it := range c.items {
		first, end := it.certain(w)
		l.add(it.use, first, end, by)
	}
}

// add adds a use on the days from first up to end, times by.
func (l load) add(u use, first, end, by int) {
	row := l[u.resource]
	for d := max(first, 0); d < min(end, len(row)); d++ {
		row[d] += by * u.amount
	}
}

// addPath adds what a chain holds with given days of its boundaries.
func (c *chain) addPath(l load, path []int, by int) {
	for _, it := range c.items {
		l.add(it.use, it.start(path[it.a]), it.end(path[it.b]), by)
	}
}

// fits reports whether a chain with given days fits beside a load.
func (c *chain) fits(l, left load, path []int) bool {
	c.addPath(l, path, 1)
	ok := true
	for _, it := range c.items {
		row, most := l[it.resource], left[it.resource]
		for d := max(0, it.start(path[it.a])); d < min(it.end(path[it.b]), len(row)) && ok; d++ {
			ok = row[d] <= most[d]
		}
	}
	c.addPath(l, path, -1)
	return ok
}

func (m *model) newLoad() load {
	l := make(load, len(m.left))
	for r := range l {
		l[r] = make([]int, m.days)
	}
	return l
}

func (l load) clear() {
	for _, row := range l {
		clear(row)
	}
}
