package planner

// clash is a day on which the best days of the chains of a node do not fit
// together, and something held on it that may be moved.
type clash struct {
	chain int
	item  item
	day   int
	stuck bool // nothing that is held on the day can be moved
}

// clash finds the longest run of days on which a resource is overused by the
// paths of a node, and takes the day in its middle; nil when all fits.
func (s *search) clash(n *state) *clash {
	s.joint.clear()
	for i, c := range s.chains {
		if n.path[i] != nil {
			c.addPath(s.joint, n.path[i], 1)
		}
	}
	resource, first, longest := -1, 0, 0
	for r, row := range s.joint {
		run := 0
		for d, v := range row {
			if v <= s.left[r][d] {
				run = 0
				continue
			}
			if run++; run > longest {
				resource, first, longest = r, d-run+1, run
			}
		}
	}
	if resource < 0 {
		return nil
	}
	return s.movable(n, resource, first+longest/2)
}

// movable finds what is held on a day with the narrowest limits that still leave
// it room to move.
func (s *search) movable(n *state, resource, day int) *clash {
	found, narrowest := &clash{stuck: true, day: day}, 0
	for i, c := range s.chains {
		path, w := n.path[i], n.window[i]
		if path == nil {
			continue
		}
		for _, it := range c.items {
			if it.resource != resource || it.start(path[it.a]) > day || it.end(path[it.b]) <= day {
				continue
			}
			if first, end := it.certain(w); n.chosen[i] == in && first <= day && day < end {
				continue
			}
			room := w.last[it.a] - w.first[it.a]
			if found.stuck || room < narrowest {
				found, narrowest = &clash{chain: i, item: it, day: day}, room
			}
		}
	}
	return found
}

// split divides a node into parts that have nothing in common and leave nothing
// out.
func (s *search) split(n *state, at *clash) []*state {
	switch {
	case at == nil:
		return s.divide(n)
	case at.stuck:
		return nil
	}
	i, it, day := at.chain, at.item, at.day
	var parts []*state
	if n.chosen[i] == open {
		parts = append(parts, n.with(i, out))
	}
	if it.until <= day {
		over := n.with(i, in)
		over.window[i].last[it.b] = min(over.window[i].last[it.b], day-it.to)
		parts = append(parts, over)
	}
	later := n.with(i, in)
	later.window[i].first[it.a] = max(later.window[i].first[it.a], day+1-it.from)
	held := n.with(i, in)
	held.window[i].last[it.a] = min(held.window[i].last[it.a], day-it.from)
	if it.until <= day {
		held.window[i].first[it.b] = max(held.window[i].first[it.b], day+1-it.to)
	}
	return append(parts, later, held)
}

// with gives a copy of a node in which a chain is planned or left out.
func (n *state) with(i int, chosen whether) *state {
	c := n.clone()
	c.chosen[i] = chosen
	c.dirty[i] = true
	return c
}

// divide splits a node whose paths fit together but cost more than their bound:
// over a chain that may still be left out, or over the boundary with most room.
func (s *search) divide(n *state) []*state {
	chain, boundary, most := -1, 0, 0
	for i := range s.chains {
		if n.chosen[i] == open {
			return []*state{n.with(i, in), n.with(i, out)}
		}
		if n.chosen[i] == out {
			continue
		}
		for k := range n.window[i].first {
			if room := n.window[i].last[k] - n.window[i].first[k]; room > most {
				chain, boundary, most = i, k, room
			}
		}
	}
	if chain < 0 {
		return nil
	}
	day := n.path[chain][boundary]
	before, same, after := n.with(chain, in), n.with(chain, in), n.with(chain, in)
	before.window[chain].last[boundary] = day - 1
	same.window[chain].first[boundary], same.window[chain].last[boundary] = day, day
	after.window[chain].first[boundary] = day + 1
	return []*state{same, before, after}
}
