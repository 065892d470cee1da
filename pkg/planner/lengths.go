package planner

import "slices"

// table is the working space of the dynamic programme over the boundaries of one
// chain. All slices are by boundary and day; only days between the limits of the
// boundary are filled.
type table struct {
	ahead  [][]int64 // least cost from a boundary on a day to the end, with both
	behind [][]int64 // least cost from the start up to a boundary on a day
	node   [][]int64 // cost of a boundary on a day, never where it cannot lie
	clear  [][]int   // by phase: the first day from here on that it cannot cover
	base   [][]int64 // by phase: price of what it uses on all days before this one
	run    []int
	short  slide // ends of a phase that are at most the usual length away
	long   slide // and those that are farther away
}

func newTable(phases, days int) *table {
	grid := func(n int) [][]int64 {
		rows := make([][]int64, n)
		for k := range rows {
			rows[k] = make([]int64, days+1)
		}
		return rows
	}
	t := &table{ahead: grid(phases + 1), behind: grid(phases + 1), node: grid(phases + 1), base: grid(phases)}
	for range phases {
		t.clear = append(t.clear, make([]int, days+1))
	}
	t.run = make([]int, days+1)
	return t
}

// window is the limits of the boundaries of a chain.
type window struct{ first, last []int }

func (w window) empty() bool {
	for k := range w.first {
		if w.first[k] > w.last[k] {
			return true
		}
	}
	return false
}

// load is how much of each resource is used, by day.
type load [][]int

// lay fills in where the boundaries can lie and what that costs, given what
// others hold for certain and the prices of the resources; no prices are nil.
func (t *table) lay(c *chain, w window, left, others load, prices [][]int64) {
	for k := range c.phases {
		t.layPhase(c, k, w, left, others)
		t.layBase(c.uses[k], k, w.first[k], w.last[k+1], prices)
	}
	for k := range w.first {
		node := t.node[k]
		for d := w.first[k]; d <= w.last[k]; d++ {
			node[d] = never
			if c.open[k][d] {
				node[d] = c.cost[k][d]
			}
		}
		for _, h := range c.holds[k] {
			t.layHold(h, node, w.first[k], w.last[k], left[h.resource], others[h.resource], prices)
		}
	}
}

// layPhase finds the days that a phase cannot cover.
func (t *table) layPhase(c *chain, k int, w window, left, others load) {
	first, last := w.first[k], w.last[k+1]
	clear := t.clear[k]
	blocked := clear[first : last+1]
	for i := range blocked {
		blocked[i] = 0
	}
	for _, u := range c.uses[k] {
		l, o := left[u.resource], others[u.resource]
		for d := first; d < last; d++ {
			if o[d]+u.amount > l[d] {
				clear[d] = 1
			}
		}
	}
	away := c.phases[k].attended
	for d := first; d < min(last, len(away)); d++ {
		if away[d] {
			clear[d] = 1
		}
	}
	next := last
	for d := last; d >= first; d-- {
		if clear[d] == 1 {
			next = d
		}
		clear[d] = next
	}
}

func (t *table) layBase(uses []use, k, first, last int, prices [][]int64) {
	base := t.base[k][first : last+1]
	for i := range base {
		base[i] = 0
	}
	if prices == nil {
		return
	}
	for _, u := range uses {
		p := prices[u.resource][first : last+1]
		for i := range base {
			base[i] += int64(u.amount) * p[i]
		}
	}
}

// layHold takes a hold into the cost of the boundary it is counted from.
func (t *table) layHold(h item, node []int64, first, last int, left, others []int, prices [][]int64) {
	days := len(left)
	if h.start(first) >= days {
		return
	}
	end := min(days, h.end(last))
	next := end
	for d := end - 1; d >= h.start(first); d-- {
		if others[d]+h.amount > left[d] {
			next = d
		}
		t.run[d] = next
	}
	for a := first; a <= last; a++ {
		from, to := min(h.start(a), days), min(h.end(a), days)
		if from >= to || node[a] == never {
			continue
		}
		if t.run[from] < to {
			node[a] = never
		} else if prices != nil {
			node[a] += int64(h.amount) * (prices[h.resource][to] - prices[h.resource][from])
		}
	}
}

// least gives the least cost of the chain, never when it cannot lie anywhere.
func (t *table) least(c *chain, w window) int64 {
	n := len(c.phases)
	copy(t.ahead[n][w.first[n]:w.last[n]+1], t.node[n][w.first[n]:w.last[n]+1])
	for k := n - 1; k >= 0; k-- {
		t.stepBack(&c.phases[k], k, w)
	}
	best := never
	for d := w.first[0]; d <= w.last[0]; d++ {
		best = min(best, t.ahead[0][d])
	}
	return best
}

// stepBack finds the least cost from a boundary on. Shorter and longer lengths
// than the usual are two windows of ends, which move on with the day.
func (t *table) stepBack(ph *phase, k int, w window) {
	ahead, next, base, node, clear := t.ahead[k], t.ahead[k+1], t.base[k], t.node[k], t.clear[k]
	short, long := &t.short, &t.long
	short.clear()
	long.clear()
	nextShort, nextLong := w.first[k+1], w.first[k+1]
	for d := w.first[k]; d <= w.last[k]; d++ {
		ahead[d] = never
		if node[d] == never {
			continue
		}
		to, usual := min(w.last[k+1], d+ph.max, clear[d]), d+ph.usual
		for nextShort = max(nextShort, d+ph.min); nextShort <= min(to, usual); nextShort++ {
			if v := next[nextShort]; v != never {
				short.add(nextShort, v+base[nextShort]-ph.stretch*int64(nextShort))
			}
		}
		for nextLong = max(nextLong, usual+1); nextLong <= to; nextLong++ {
			if v := next[nextLong]; v != never {
				long.add(nextLong, v+base[nextLong]+ph.stretch*int64(nextLong))
			}
		}
		off := ph.stretch * int64(usual)
		best := never
		if v := short.least(d + ph.min); v != never {
			best = v + off
		}
		if v := long.least(usual + 1); v != never {
			best = min(best, v-off)
		}
		if best != never {
			ahead[d] = best + node[d] - base[d]
		}
	}
}

// path reads the days of the boundaries off a table after least: of equal ones
// the latest start, then the lengths nearest to the usual.
func (t *table) path(c *chain, w window, path []int) {
	best := never
	for d := w.last[0]; d >= w.first[0]; d-- {
		if t.ahead[0][d] < best {
			best, path[0] = t.ahead[0][d], d
		}
	}
	for k := range c.phases {
		path[k+1] = t.follow(&c.phases[k], k, path[k], w)
	}
}

func (t *table) follow(ph *phase, k, d int, w window) int {
	from, to := max(w.first[k+1], d+ph.min), min(w.last[k+1], d+ph.max, t.clear[k][d])
	best, at, near := never, from, 0
	for e := from; e <= to; e++ {
		away := max(e-d-ph.usual, ph.usual-e+d)
		v := t.ahead[k+1][e] + t.base[k][e] + ph.stretch*int64(away)
		if v < best || v == best && away < near {
			best, at, near = v, e, away
		}
	}
	return at
}

// tighten moves the limits in to the days that some chain of at most a cost goes
// through; least has to come first.
func (t *table) tighten(c *chain, w window, most int64) {
	t.forward(c, w)
	for k := range w.first {
		through := func(d int) bool {
			if t.node[k][d] == never || t.ahead[k][d] == never || t.behind[k][d] == never {
				return false
			}
			return t.ahead[k][d]+t.behind[k][d]-t.node[k][d] <= most
		}
		first, last := w.first[k], w.last[k]
		for first <= last && !through(first) {
			first++
		}
		for last > first && !through(last) {
			last--
		}
		w.first[k], w.last[k] = first, last
	}
}

// forward fills in the least cost up to each boundary.
func (t *table) forward(c *chain, w window) {
	for k := range w.first {
		row := t.behind[k][w.first[k] : w.last[k]+1]
		for i := range row {
			row[i] = never
		}
	}
	copy(t.behind[0][w.first[0]:w.last[0]+1], t.node[0][w.first[0]:w.last[0]+1])
	for k := range c.phases {
		ph := &c.phases[k]
		behind, next, base := t.behind[k], t.behind[k+1], t.base[k]
		for d := w.first[k]; d <= w.last[k]; d++ {
			if behind[d] == never {
				continue
			}
			from, to := max(w.first[k+1], d+ph.min), min(w.last[k+1], d+ph.max, t.clear[k][d])
			start := behind[d] - base[d]
			for e := from; e <= to; e++ {
				next[e] = min(next[e], start+ph.departure(e-d))
			}
		}
		for e := w.first[k+1]; e <= w.last[k+1]; e++ {
			if next[e] != never {
				if t.node[k+1][e] == never {
					next[e] = never
				} else {
					next[e] += base[e] + t.node[k+1][e]
				}
			}
		}
	}
}

func (w window) clone() window { return window{slices.Clone(w.first), slices.Clone(w.last)} }
