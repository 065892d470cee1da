package planner

import (
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// unit is what a cost of 1 counts inside, so that prices can be fractions of it.
const unit = 1 << 12

// never is a cost that nothing has.
const never = int64(1) << 60

// model is a problem on days counted from 0, or a part of one.
type model struct {
	days   int
	chains []*chain
	left   [][]int // by resource and day, what there is for the chains
}

// chain is a pairing. Boundary k is the first day of phase k, boundary n the day
// after the last phase.
type chain struct {
	index    int // in the problem
	phases   []phase
	uses     [][]use  // by phase, held on each of its days
	holds    [][]item // by boundary, counted from it
	items    []item   // all that is held, animals from the first boundary to the last
	first    []int    // by boundary, the days on which it can lie
	last     []int
	open     [][]bool  // by boundary and day: it can lie there
	cost     [][]int64 // by boundary and day, in units
	leaveOut int64     // in units
}

type phase struct {
	min, usual, max int
	stretch         int64 // in units
	attended        []bool
}

type use struct{ resource, amount int }

// item is an amount of a resource that is held from boundary a on, moved by
// from, up to but not on the end: boundary b moved by to, or the day until if
// that is later.
type item struct {
	a, b, from, to, until int
	use
}

func (it item) start(a int) int { return a + it.from }
func (it item) end(b int) int   { return max(b+it.to, it.until) }

func newModel(p Problem) *model {
	m := &model{days: p.Days}
	number := map[string]int{}
	for i, r := range p.Resources {
		number[r.Name] = i
		left := make([]int, p.Days)
		for d := range left {
			left[d] = r.Count
		}
		m.left = append(m.left, left)
	}
	for _, t := range p.Taken {
		if r, known := number[t.Resource]; known {
			m.take(r, t.Span.First.Sub(p.First), t.Span.Last.Sub(p.First)+1, t.Amount)
		}
	}
	animals := m.animals(p)
	away := awayDays(p)
	missing := p.missing() * unit
	for i, c := range p.Chains {
		x := newChain(p, c, number, away)
		x.index = i
		x.leaveOut = int64(c.LeaveOut) * unit
		if c.LeaveOut == 0 {
			x.leaveOut = missing
		}
		x.hold(c.Animals, animals)
		m.chains = append(m.chains, x)
	}
	return m
}

// take lessens what is left of a resource, on the days that are planned.
func (m *model) take(resource, first, end, amount int) {
	left := m.left[resource]
	for d := max(first, 0); d < min(end, m.days); d++ {
		left[d] = max(0, left[d]-amount)
	}
}

// animals adds a resource for each animal that is in more than one chain.
func (m *model) animals(p Problem) map[string]int {
	number, chains := map[string]int{}, map[string]int{}
	for _, c := range p.Chains {
		for _, a := range distinct(c.Animals) {
			if chains[a]++; chains[a] == 2 {
				number[a] = len(m.left)
				m.left = append(m.left, slices.Repeat([]int{1}, p.Days))
			}
		}
	}
	return number
}

func distinct(names []string) []string {
	sorted := slices.Sorted(slices.Values(names))
	return slices.Compact(sorted)
}

// awayDays tells of each day from the first on whether nobody is in the room. It
// ends after the last day away; later days are not.
func awayDays(p Problem) []bool {
	n := 0
	for _, s := range p.Away {
		n = max(n, s.Last.Sub(p.First)+1)
	}
	away := make([]bool, n)
	for _, s := range p.Away {
		for d := max(0, s.First.Sub(p.First)); d <= s.Last.Sub(p.First); d++ {
			away[d] = true
		}
	}
	return away
}

// missing is what a chain counts that must be planned and is not: more than all
// chains can cost together.
func (p Problem) missing() int64 {
	total := int64(1)
	for _, c := range p.Chains {
		total += int64(c.LeaveOut)
		for _, q := range c.Phases {
			total += int64(q.Stretch) * int64(max(q.Usual-q.Min, min(q.Max, p.Days)-q.Usual))
		}
		for _, w := range c.Wishes {
			on := w.On.Sub(p.First)
			total += max(w.cost(0, on), w.cost(p.Days, on))
		}
	}
	return total
}

// cost is what a wish for day on costs when it is met on a day.
func (w Wish) cost(day, on int) int64 {
	return max(int64(w.Late)*int64(day-on), int64(w.Early)*int64(on-day))
}

func newChain(p Problem, c Chain, number map[string]int, away []bool) *chain {
	n := len(c.Phases)
	x := &chain{uses: make([][]use, n), holds: make([][]item, n+1)}
	boundary := map[string]int{End: n}
	for k, q := range c.Phases {
		boundary[q.Name] = k
		ph := phase{min: q.Min, usual: q.Usual, max: q.Max, stretch: int64(q.Stretch) * unit}
		if q.Attended {
			ph.attended = away
		}
		x.phases = append(x.phases, ph)
		for _, u := range slices.Concat(q.Uses, []Use{{Minutes, q.Minutes}}) {
			x.use(k, u, number)
		}
	}
	for _, h := range c.Holds {
		until := 0
		if h.Until.Known() {
			until = h.Until.Sub(p.First) + 1
		}
		x.holdFrom(item{a: boundary[h.Phase], b: boundary[h.Phase], from: h.From, to: h.To, until: until}, h.Resource, h.Amount, number)
	}
	for _, v := range c.Visits {
		x.holdFrom(item{a: boundary[v.Phase], b: boundary[v.Phase], from: v.Day, to: v.Day + 1}, Minutes, v.Minutes, number)
	}
	x.open = x.openDays(p, c, boundary, away)
	x.cost = x.costs(p, c, boundary)
	x.limits(p, c)
	return x
}

// use books a use of a phase, when it can run short.
func (x *chain) use(k int, u Use, number map[string]int) {
	if r, known := number[u.Resource]; known && u.Amount > 0 {
		x.uses[k] = append(x.uses[k], use{r, u.Amount})
		x.items = append(x.items, item{a: k, b: k + 1, use: use{r, u.Amount}})
	}
}

// holdFrom books a hold, when it can run short.
func (x *chain) holdFrom(it item, resource string, amount int, number map[string]int) {
	if r, known := number[resource]; known && amount > 0 {
		it.use = use{r, amount}
		x.holds[it.a] = append(x.holds[it.a], it)
		x.items = append(x.items, it)
	}
}

// hold books the animals that other chains want too.
func (x *chain) hold(animals []string, number map[string]int) {
	for _, a := range distinct(animals) {
		r, shared := number[a]
		if !shared {
			continue
		}
		for k := range x.phases {
			x.uses[k] = append(x.uses[k], use{r, 1})
		}
		x.items = append(x.items, item{a: 0, b: len(x.phases), use: use{r, 1}})
	}
}

// openDays tells on which days a boundary can lie without a visit on a day away.
func (x *chain) openDays(p Problem, c Chain, boundary map[string]int, away []bool) [][]bool {
	open := make([][]bool, len(x.phases)+1)
	for k := range open {
		open[k] = slices.Repeat([]bool{true}, p.Days+1)
	}
	for _, v := range c.Visits {
		days := open[boundary[v.Phase]]
		for t := range days {
			if t+v.Day < len(away) && away[t+v.Day] {
				days[t] = false
			}
		}
	}
	return open
}

// costs gives what the wishes cost, by boundary and day.
func (x *chain) costs(p Problem, c Chain, boundary map[string]int) [][]int64 {
	cost := make([][]int64, len(x.phases)+1)
	for k := range cost {
		cost[k] = make([]int64, p.Days+1)
	}
	for _, w := range c.Wishes {
		days, on := cost[boundary[w.Phase]], w.On.Sub(p.First)
		for t := range days {
			days[t] += w.cost(t, on) * unit
		}
	}
	return cost
}

// limits sets between which days each boundary lies, as far as the lengths and
// the limits of the chain alone tell.
func (x *chain) limits(p Problem, c Chain) {
	n := len(x.phases)
	x.first, x.last = make([]int, n+1), make([]int, n+1)
	for k := range x.last {
		x.last[k] = p.Days
		if k < n {
			x.first[k], x.last[k] = c.Phases[k].between(p.First, p.Days)
		}
	}
	for k, ph := range x.phases {
		x.first[k+1] = max(x.first[k+1], x.first[k]+ph.min)
		x.last[k+1] = min(x.last[k+1], x.last[k]+ph.max)
	}
	for k := n - 1; k >= 0; k-- {
		x.first[k] = max(x.first[k], x.first[k+1]-x.phases[k].max)
		x.last[k] = min(x.last[k], x.last[k+1]-x.phases[k].min)
	}
}

// between gives the days on which a phase may begin.
func (q Phase) between(first civil.Date, days int) (from, to int) {
	to = days
	if q.Earliest.Known() {
		from = max(0, q.Earliest.Sub(first))
	}
	if q.Latest.Known() {
		to = min(to, q.Latest.Sub(first))
	}
	return from, to
}

// costOf gives the cost of days for the boundaries, without prices.
func (x *chain) costOf(path []int) int64 {
	total := int64(0)
	for k, day := range path {
		total += x.cost[k][day]
		if k > 0 {
			total += x.phases[k-1].departure(path[k] - path[k-1])
		}
	}
	return total
}

func (ph phase) departure(length int) int64 {
	return ph.stretch * int64(max(length-ph.usual, ph.usual-length))
}
