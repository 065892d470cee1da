package pairing

// node is a set of plans: each option has from lo to hi young. An option with lo
// 0 and hi above is undecided: it has none, or at least its least number.
type node struct {
	lo, hi []int32
}

func (n *node) undecided(p int32) bool { return n.lo[p] == 0 && n.hi[p] > 0 }

func (n *node) clone() *node {
	both := make([]int32, 2*len(n.lo))
	c := &node{lo: both[:len(n.lo):len(n.lo)], hi: both[len(n.lo):]}
	copy(c.lo, n.lo)
	copy(c.hi, n.hi)
	return c
}

// tighten narrows a node by all limits until nothing changes, and reports
// whether a plan may be left in it.
func (s *search) tighten(n *node) bool {
	for {
		changed, possible := s.tightenYoung(n)
		if !possible {
			return false
		}
		for i := range s.limits {
			again, possible := s.tightenLimit(n, &s.limits[i])
			if !possible {
				return false
			}
			changed = changed || again
		}
		if !changed {
			return true
		}
	}
}

// tightenYoung goes by the number of young.
func (s *search) tightenYoung(n *node) (changed, possible bool) {
	low, high := int32(0), int64(0)
	for p := range n.lo {
		low += n.lo[p]
		high += int64(n.hi[p])
	}
	young := int32(s.young)
	if low > young || high < int64(young) {
		return false, false
	}
	for p := range n.lo {
		most := n.lo[p] + young - low
		if n.hi[p] <= most {
			continue
		}
		n.hi[p], changed = most, true
		if n.lo[p] == 0 && most < s.least[p] {
			n.hi[p] = 0
		}
	}
	return changed, true
}

func (s *search) tightenLimit(n *node, l *limit) (changed, possible bool) {
	chosen, open := 0, 0
	high, most := int64(0), int64(0)          // young of chosen options, and of an open one
	low, fewest := int64(0), int64(s.young)+1 // likewise
	for _, p := range l.options {
		switch {
		case n.lo[p] > 0:
			chosen++
			high += int64(n.hi[p])
			low += int64(n.lo[p])
		case n.hi[p] > 0:
			open++
			most = max(most, int64(n.hi[p]))
			fewest = min(fewest, int64(s.least[p]))
		}
	}
	if chosen > l.most || chosen+open < l.least {
		return false, false
	}
	if l.all && high+int64(min(open, l.most-chosen))*most < int64(s.young) {
		return false, false
	}
	if missing := l.least - chosen; missing > 0 && low+int64(missing)*fewest > int64(s.young) {
		return false, false
	}
	if open == 0 || chosen < l.most && chosen+open > l.least {
		return false, true
	}
	for _, p := range l.options {
		if !n.undecided(p) {
			continue
		}
		if chosen == l.most {
			n.hi[p] = 0
		} else {
			n.lo[p] = s.least[p]
		}
	}
	return true, true
}
