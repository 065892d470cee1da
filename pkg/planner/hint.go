package planner

// read takes a hint for a solution, if it is one.
func (m *model) read(p Problem, hint []Cycle) (solution, bool) {
	s := solution{paths: make([][]int, len(m.chains))}
	if len(hint) != len(m.chains) {
		return s, false
	}
	for i, c := range m.chains {
		if len(hint[i].Days) == 0 {
			continue
		}
		for _, d := range hint[i].Days {
			s.paths[i] = append(s.paths[i], d.Sub(p.First))
		}
		if !c.allows(s.paths[i]) {
			return s, false
		}
	}
	s.cost = m.costOf(s.paths)
	return s, m.feasible(s.paths)
}

// allows reports whether a chain can have its boundaries on some days, others
// left aside.
func (c *chain) allows(path []int) bool {
	if len(path) != len(c.phases)+1 {
		return false
	}
	for k, d := range path {
		if d < c.first[k] || d > c.last[k] || !c.open[k][d] {
			return false
		}
		if k == len(c.phases) {
			return true
		}
		ph := c.phases[k]
		if length := path[k+1] - d; length < ph.min || length > ph.max {
			return false
		}
		for e := d; e < min(path[k+1], len(ph.attended)); e++ {
			if ph.attended[e] {
				return false
			}
		}
	}
	return true
}
