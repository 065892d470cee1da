package occupancy

// need is what one clutch needs of one resource: for each day from the first on
// which it may need any, the chance of each number.
type need struct {
	from int
	days [][]float64
}

func (n *need) to() int { return n.from + len(n.days) }

// needs gives for each resource the needs of all clutches that may need any.
func (s *Season) needs() [][]need {
	all := make([][]need, len(s.Resources))
	for _, c := range s.Clutches {
		for r := range s.Resources {
			if n := s.need(c, r); len(n.days) > 0 {
				all[r] = append(all[r], n)
			}
		}
	}
	return all
}

func (s *Season) need(c Clutch, resource int) need {
	n := s.reach(c, resource)
	held := make([]int, len(n.days))
	for _, course := range c.Courses {
		clear(held)
		for _, h := range course.Holds {
			if h.Resource != resource {
				continue
			}
			from, to := h.days(s, 0)
			for d := from; d < to; d++ {
				held[d-n.from] += h.Amount
			}
		}
		for i, amount := range held {
			n.add(i, amount, course.Chance)
		}
	}
	for _, chances := range n.days {
		rest := 1.0
		for _, p := range chances[1:] {
			rest -= p
		}
		chances[0] = max(rest, 0)
	}
	return n
}

// reach gives a need with the days on which c may hold any of a resource.
func (s *Season) reach(c Clutch, resource int) need {
	first, last := s.Days, 0
	for _, course := range c.Courses {
		for _, h := range course.Holds {
			from, to := h.days(s, 0)
			if h.Resource == resource && from < to {
				first, last = min(first, from), max(last, to)
			}
		}
	}
	if first >= last {
		return need{}
	}
	n := need{from: first, days: make([][]float64, last-first)}
	for i := range n.days {
		n.days[i] = []float64{0}
	}
	return n
}

// add notes that on day i so many are needed with some chance.
func (n *need) add(i, amount int, chance float64) {
	for len(n.days[i]) <= amount {
		n.days[i] = append(n.days[i], 0)
	}
	n.days[i][amount] += chance
}
