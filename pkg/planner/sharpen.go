package planner

import "slices"

// sharpen moves the prices so that the bound of a node rises, and brings the
// node up to date with the best of them. It reports whether there can still be a
// better solution below.
func (s *search) sharpen(n *state) bool {
	now := s.prices.clone()
	least, paths := slices.Clone(n.least), slices.Clone(n.path)
	best, bestLeast, bestPaths := now, least, paths
	total, top := n.total, n.total
	stretch := int64(1024)
	for range s.rounds {
		next := now.clone()
		if !s.follow(&next, paths, total, stretch) {
			break
		}
		now = next
		least, paths = make([]int64, len(least)), make([][]int, len(paths))
		total = s.value(n, now, least, paths)
		if total <= top {
			stretch = stretch * 2 / 3
			continue
		}
		top, best, bestLeast, bestPaths = total, now, least, paths
		if total > s.limit() {
			return false
		}
	}
	if top == n.total {
		return true
	}
	s.prices = best
	n.least, n.path, n.total = bestLeast, bestPaths, top
	for i := range n.dirty {
		n.dirty[i] = n.chosen[i] != out
	}
	return s.propagate(n)
}

// follow moves prices along the overuse by some paths, by a step of stretch/1024
// of the distance to the limit; false when nothing is left to move.
func (s *search) follow(p *prices, paths [][]int, total, stretch int64) bool {
	s.joint.clear()
	for i, c := range s.chains {
		if paths[i] != nil {
			c.addPath(s.joint, paths[i], 1)
		}
	}
	size := int64(0)
	for r, row := range s.joint {
		for d := range row {
			if row[d] -= s.left[r][d]; row[d] < 0 && p.day[r][d] == 0 {
				row[d] = 0
			}
			size += int64(row[d]) * int64(row[d])
		}
	}
	if size == 0 {
		return false
	}
	gap := min(max(s.limit()-total, unit), total/10+10*unit)
	for r, row := range s.joint {
		for d, g := range row {
			if g != 0 {
				p.day[r][d] = min(max(0, p.day[r][d]+gap*stretch/1024*int64(g)/size), dear)
			}
		}
	}
	p.sum(s.left)
	return true
}

// value finds the bound of a node at some prices.
func (s *search) value(n *state, p prices, least []int64, paths [][]int) int64 {
	total := -p.constant
	for i, c := range s.chains {
		least[i] = c.leaveOut
		if n.chosen[i] != out {
			s.valueOf(n, i, p, least, paths)
		}
		total += least[i]
	}
	return total
}

func (s *search) valueOf(n *state, i int, p prices, least []int64, paths [][]int) {
	c, w := s.chains[i], n.window[i]
	s.steps++
	if n.chosen[i] == in {
		c.addCertain(s.certain, w, -1)
		defer c.addCertain(s.certain, w, 1)
	}
	s.table.lay(c, w, s.left, s.certain, p.sums)
	v := s.table.least(c, w)
	if n.chosen[i] == open && c.leaveOut <= v {
		return
	}
	least[i] = v
	if v < never {
		paths[i] = make([]int, len(c.phases)+1)
		s.table.path(c, w, paths[i])
	}
}
