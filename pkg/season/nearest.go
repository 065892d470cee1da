package season

import "slices"

// nearest gives the plan with the least total departure from the usual lengths;
// which of equal ones is told at [Plan]. Some boundary has to be fixed.
//
// It is a dynamic programme over the days of each boundary, made small by first
// allowing no phase to depart by more than a few days: a plan whose total is
// within that bound is best of all, as every other has a phase beyond it. The
// bound doubles until that holds. The cost is phases times the square of the
// total departure.
func (c chain) nearest() (plan, bool) {
	for bound := 7; ; bound = 2*bound + 7 {
		near, whole := c.within(bound)
		if u := near.usable(); len(u[0]) > 0 {
			if p, total := near.cheapest(u); total <= bound || whole {
				return p, true
			}
		} else if whole {
			return nil, false
		}
	}
}

// within gives c with lengths that depart from the usual by no more than bound,
// and whether that allows all that c allows.
func (c chain) within(bound int) (near chain, whole bool) {
	whole = true
	phases := slices.Clone(c.phases)
	for i := range phases {
		p := &phases[i]
		if p.Usual-p.Min > bound || p.Max-p.Usual > bound {
			whole = false
		}
		p.Min, p.Max = max(p.Min, p.Usual-bound), min(p.Max, p.Usual+bound)
	}
	c.phases = phases
	return c, whole
}

// totals are the least departures with which a boundary can lie on the days
// from first on.
type totals struct {
	first int
	least []int
}

const none = -1 // a day that cannot be reached

func newTotals(s days) totals {
	t := totals{first: s.first(), least: make([]int, s.last()-s.first()+1)}
	for i := range t.least {
		t.least[i] = none
	}
	return t
}

func (t totals) at(day int) int {
	if i := day - t.first; i >= 0 && i < len(t.least) {
		return t.least[i]
	}
	return none
}

// cheapest is the dynamic programme: u are the usable days of each boundary.
func (c chain) cheapest(u []days) (plan, int) {
	t := make([]totals, len(u))
	t[0] = newTotals(u[0])
	each(u[0], func(day int) { t[0].least[day-t[0].first] = 0 })
	for k, p := range c.phases {
		t[k+1] = newTotals(u[k+1])
		each(u[k+1], func(day int) {
			t[k+1].least[day-t[k+1].first] = p.leastTotal(t[k], day)
		})
	}
	return c.traced(t)
}

// leastTotal gives the least total with which a phase can end on a day, and
// none when it cannot; before has the totals of its first day.
func (p Phase) leastTotal(before totals, day int) int {
	least := none
	for length := max(p.Min, day-before.first-len(before.least)+1); length <= min(p.Max, day-before.first); length++ {
		total := before.at(day - length)
		if total == none {
			continue
		}
		if total += p.departure(length); least == none || total < least {
			least = total
		}
	}
	return least
}

func (p Phase) departure(length int) int { return max(length-p.Usual, p.Usual-length) }

func each(s days, do func(day int)) {
	for _, r := range s {
		for day := r.first; day <= r.last; day++ {
			do(day)
		}
	}
}

// traced follows the totals back from the end. As the end need not be fixed it
// carries all days that lead to a best plan, and each phase, from the last to
// the first, takes the length nearest to the usual one that any of them allows.
func (c chain) traced(t []totals) (plan, int) {
	n := len(c.phases)
	ends, total := t[n].best()
	lengths := make([]int, n)
	for k := n - 1; k >= 0; k-- {
		lengths[k], ends = c.phases[k].lastStep(t[k], t[k+1], ends)
	}
	p := make(plan, n+1)
	p[0] = ends[0]
	for k, length := range lengths {
		p[k+1] = p[k] + length
	}
	return p, total
}

// best gives the least total and the days that have it.
func (t totals) best() (at []int, total int) {
	total = none
	for i, v := range t.least {
		switch {
		case v == none || total != none && v > total:
		case v == total:
			at = append(at, t.first+i)
		default:
			at, total = []int{t.first + i}, v
		}
	}
	return at, total
}

// lastStep gives the preferred length with which a phase can end on one of the
// days in ends without loss, and the days on which it then begins.
func (p Phase) lastStep(before, after totals, ends []int) (length int, starts []int) {
	for departure := 0; ; departure++ {
		for _, length := range []int{p.Usual + departure, p.Usual - departure} {
			if length < p.Min || length > p.Max {
				continue
			}
			for _, end := range ends {
				if total := before.at(end - length); total != none && total+departure == after.at(end) {
					starts = append(starts, end-length)
				}
			}
			if len(starts) > 0 {
				return length, starts
			}
		}
	}
}
