package season

import "slices"

// chain is the question that one pairing puts: on which days can its boundaries
// lie? Boundary k is the first day of phase k, and the last boundary is the day
// after the chain.
type chain struct {
	phases  []Phase // with the lengths that are allowed
	limits  []days  // the days on which each boundary may lie
	handsOn []bool  // whether a boundary has to keep off the days away
	away    days
	rain    int  // the boundary from which the young are counted
	late    bool // the rain is to begin as late as it can
}

// with gives a copy of c in which boundary k is also limited to s.
func (c chain) with(k int, s days) chain {
	limits := slices.Clone(c.limits)
	limits[k] = limits[k].and(s)
	c.limits = limits
	return c
}

// ignoring gives a copy of c with other days away.
func (c chain) ignoring(away days) chain {
	c.away = c.away.without(away)
	return c
}

func (c chain) allowed(k int) days {
	if c.handsOn[k] {
		return c.limits[k].without(c.away)
	}
	return c.limits[k]
}

// usable gives for each boundary the days that it has in some plan: reachable
// from the boundaries before it and leading to those after it. The sets are all
// empty when there is no plan. It costs phases times spans away.
func (c chain) usable() []days {
	n := len(c.phases)
	u := make([]days, n+1)
	u[0] = c.allowed(0)
	for k, p := range c.phases {
		u[k+1] = u[k].moved(p.Min, p.Max).and(c.allowed(k + 1))
	}
	for k := n - 1; k >= 0; k-- {
		u[k] = u[k].and(u[k+1].moved(-c.phases[k].Max, -c.phases[k].Min))
	}
	return u
}

func (c chain) feasible() bool { return len(c.usable()[0]) > 0 }

// plan is a day for each boundary.
type plan []int

// usual reports whether each phase has its usual length.
func (p plan) usual(phases []Phase) bool {
	for k, q := range phases {
		if p[k+1]-p[k] != q.Usual {
			return false
		}
	}
	return true
}

// solve gives the best plan of a chain in which some boundary is fixed to a
// day, or which has its rain as late as it can.
func (c chain) solve() (plan, bool) {
	if p, ok := c.undisturbed(); ok {
		return p, true
	}
	if !c.late {
		return c.nearest()
	}
	u := c.usable()
	if len(u[0]) == 0 {
		return nil, false
	}
	last := u[c.rain].last()
	return c.with(c.rain, days{{last, last}}).nearest()
}

// undisturbed gives the plan with the usual lengths, if there is nothing against
// it; no other is better then. Most pairings need no more than that.
func (c chain) undisturbed() (plan, bool) {
	pin := c.rain
	if !c.late {
		pin = slices.IndexFunc(c.limits, func(s days) bool { return len(s) == 1 && s[0].first == s[0].last })
	}
	if len(c.limits[pin]) == 0 {
		return nil, false
	}
	p := make(plan, len(c.limits))
	p[pin] = c.limits[pin].last()
	if r, away := c.away.holding(p[pin]); away && c.late && c.handsOn[pin] {
		p[pin] = r.first - 1
	}
	for k := pin - 1; k >= 0; k-- {
		p[k] = p[k+1] - c.phases[k].Usual
	}
	for k := pin; k < len(c.phases); k++ {
		p[k+1] = p[k] + c.phases[k].Usual
	}
	for k, day := range p {
		_, within := c.limits[k].holding(day)
		_, away := c.away.holding(day)
		if !within || away && c.handsOn[k] {
			return nil, false
		}
	}
	return p, true
}

// blocked gives the plan of a chain that days away leave without one: the plan
// that ignores a single absence if that is enough, else all of them. event is
// the first boundary that it puts on such a day, and in the run away that it
// lies in. There has to be a plan without any days away.
func (c chain) blocked() (p plan, event int, in run) {
	free := c.ignoring(c.away)
	reach := free.usable()
	hull := run{reach[0].first(), reach[len(reach)-1].last()}
	for _, r := range c.away {
		if r.last < hull.first || hull.last < r.first {
			continue
		}
		if p, ok := c.ignoring(days{r}).solve(); ok {
			event, in = c.onAway(p, days{r})
			return p, event, in
		}
	}
	p, _ = free.solve()
	event, in = c.onAway(p, c.away)
	return p, event, in
}

// onAway gives the first boundary of p that is hands-on and lies on one of the
// days away, of which there has to be one.
func (c chain) onAway(p plan, away days) (event int, in run) {
	for k, day := range p {
		if r, ok := away.holding(day); ok && c.handsOn[k] {
			return k, r
		}
	}
	panic("season: a plan without fault was taken for a blocked one")
}
