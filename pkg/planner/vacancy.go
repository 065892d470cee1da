package planner

// vacancy tells for how long an amount of a resource is free beside a plan.
type vacancy struct {
	use
	until []int // by day, the first day from it on that the amount is not free
	stale bool  // the plan has changed
}

// vacancies is what a plan holds and leaves free for each chain. What is free is
// worked out again only for resources of which the plan holds more or less.
type vacancies struct {
	*model
	load   load
	of     [][]*vacancy   // by resource
	phases [][][]*vacancy // by chain and phase
	holds  [][][]*vacancy // by chain and boundary, as the holds of the chain
	home   []int          // until of days on which somebody is in the room
	limits window         // of the chain that is placed
}

func newVacancies(m *model) *vacancies {
	v := &vacancies{model: m, load: m.newLoad(), of: make([][]*vacancy, len(m.left))}
	for _, c := range m.chains {
		phases, holds := make([][]*vacancy, len(c.uses)), make([][]*vacancy, len(c.holds))
		for k, uses := range c.uses {
			for _, u := range uses {
				phases[k] = append(phases[k], v.vacancy(u))
			}
			if away := c.phases[k].attended; away != nil && v.home == nil {
				v.home = make([]int, m.days+1)
				untils(v.home, func(d int) bool { return d < len(away) && away[d] })
			}
		}
		for k, items := range c.holds {
			for _, it := range items {
				holds[k] = append(holds[k], v.vacancy(it.use))
			}
		}
		v.phases, v.holds = append(v.phases, phases), append(v.holds, holds)
	}
	return v
}

// vacancy gives that of an amount, one for all that want the same.
func (v *vacancies) vacancy(u use) *vacancy {
	for _, known := range v.of[u.resource] {
		if known.amount == u.amount {
			return known
		}
	}
	made := &vacancy{use: u, until: make([]int, v.days+1), stale: true}
	v.of[u.resource] = append(v.of[u.resource], made)
	return made
}

// untils fills in by day the first day from it on that is blocked, the number of
// days when none is.
func untils(until []int, blocked func(d int) bool) {
	next := len(until) - 1
	for d := next; d >= 0; d-- {
		if d < len(until)-1 && blocked(d) {
			next = d
		}
		until[d] = next
	}
}

// book books a chain with its days, by 1, or takes it out, by -1.
func (v *vacancies) book(i int, path []int, by int) {
	v.chains[i].addPath(v.load, path, by)
	for _, it := range v.chains[i].items {
		for _, x := range v.of[it.resource] {
			x.stale = true
		}
	}
}

func (v *vacancies) refresh(list [][]*vacancy) {
	for _, xs := range list {
		for _, x := range xs {
			if x.stale {
				load, left := v.load[x.resource], v.left[x.resource]
				untils(x.until, func(d int) bool { return load[d]+x.amount > left[d] })
				x.stale = false
			}
		}
	}
}

// place gives the best days of a chain beside the plan, nil when there are none,
// and whether a table had to be worked out to see it.
func (v *vacancies) place(i int, t *table, sums [][]int64) (path []int, worked bool) {
	c := v.chains[i]
	v.refresh(v.phases[i])
	v.refresh(v.holds[i])
	v.limits.first = append(v.limits.first[:0], c.first...)
	v.limits.last = append(v.limits.last[:0], c.last...)
	w := v.limits
	if v.shrink(i, w); w.empty() {
		return nil, false
	}
	v.lay(i, w, t, sums)
	if t.least(c, w) == never {
		return nil, true
	}
	path = make([]int, len(c.phases)+1)
	t.path(c, w, path)
	if !c.fits(v.load, v.left, path) {
		return nil, true
	}
	return path, true
}

// shrink moves limits in to days on which a boundary can lie, with the shortest
// phase after it.
func (v *vacancies) shrink(i int, w window) {
	c := v.chains[i]
	for k := range w.first {
		if k > 0 {
			w.first[k] = max(w.first[k], w.first[k-1]+c.phases[k-1].min)
			w.last[k] = min(w.last[k], w.last[k-1]+c.phases[k-1].max)
		}
		for w.first[k] <= w.last[k] && !v.can(i, k, w.first[k]) {
			w.first[k]++
		}
		for w.first[k] <= w.last[k] && !v.can(i, k, w.last[k]) {
			w.last[k]--
		}
		if w.first[k] > w.last[k] {
			return
		}
	}
	for k := len(c.phases) - 1; k >= 0; k-- {
		w.first[k] = max(w.first[k], w.first[k+1]-c.phases[k].max)
		w.last[k] = min(w.last[k], w.last[k+1]-c.phases[k].min)
	}
}

func (v *vacancies) can(i, k, d int) bool {
	return v.lies(i, k, d) && (k == len(v.chains[i].phases) || v.clear(i, k, d) >= d+v.chains[i].phases[k].min)
}

// lies reports whether a boundary can lie on a day with what is held from it.
func (v *vacancies) lies(i, k, d int) bool {
	c := v.chains[i]
	if !c.open[k][d] {
		return false
	}
	for n, x := range v.holds[i][k] {
		from, to := min(c.holds[k][n].start(d), v.days), min(c.holds[k][n].end(d), v.days)
		if from < to && x.until[from] < to {
			return false
		}
	}
	return true
}

// clear gives the first day from d on that a phase cannot cover.
func (v *vacancies) clear(i, k, d int) int {
	until := v.days
	for _, x := range v.phases[i][k] {
		until = min(until, x.until[d])
	}
	if v.chains[i].phases[k].attended != nil {
		until = min(until, v.home[d])
	}
	return until
}

// lay fills in a table for a chain.
func (v *vacancies) lay(i int, w window, t *table, sums [][]int64) {
	c := v.chains[i]
	for k := range w.first {
		node := t.node[k]
		for d := w.first[k]; d <= w.last[k]; d++ {
			if !v.lies(i, k, d) {
				node[d] = never
				continue
			}
			node[d] = c.cost[k][d]
			for _, h := range c.holds[k] {
				if from, to := min(h.start(d), v.days), min(h.end(d), v.days); sums != nil && from < to {
					node[d] += int64(h.amount) * (sums[h.resource][to] - sums[h.resource][from])
				}
			}
		}
		if k == len(c.phases) {
			return
		}
		t.layBase(c.uses[k], k, w.first[k], w.last[k+1], sums)
		for d := w.first[k]; d <= w.last[k]; d++ {
			t.clear[k][d] = v.clear(i, k, d)
		}
	}
}
