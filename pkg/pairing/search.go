package pairing

import (
	"cmp"
	"math"
	"slices"
)

// search is a branch and bound over the options: each is chosen or not, and then
// has so many young.
type search struct {
	scoring     *scoring
	squares     squares
	room        []stretch // for the next ones
	limits      []limit
	limitsOf    [][]int // by option
	least, most []int32 // young of each option when it is chosen
	young       int
	unit        float64 // scores differ by whole multiples of it; 0 when that is not known
	pairs       *pairs  // nil when there are groups among the options
	twins       *twins  // nil when there are none
	dearest     float64 // highest price of a limit; scores differ by less
	effort      Effort
	plans       []Plan // best first
	nodes       int
	stopped     bool
}

type limit struct {
	options     []int32
	least, most int
	all         bool // it has every option
}

// slack is how much better a plan has to be to count as better.
const slack = 1e-10

// Best finds the plans with the lowest score within the limits: exactly, by
// branch and bound, unless effort ends it before. The score is convex in the
// numbers of young, so that a tangent, with a price on every limit, bounds all
// plans of a branch from below; that young are whole, and the pairings of an animal
// few, makes the bound a good one (see docs/methods.md). The same input gives the same
// plans, whatever the machine; only effort.Stop can change that.
//
// It panics if c has no pool, no young to hold back, a weight that is no number, an
// option without a side or without young, or a limit on an option that is not
// there.
func (c Choice) Best(effort Effort) Outcome {
	s := newSearch(&c, effort)
	if s.twins != nil && s.effort.Plans > 1 {
		return s.bestThenOthers()
	}
	return s.run()
}

func (s *search) run() Outcome {
	root := s.root()
	if !s.tighten(root) {
		return Outcome{Bound: math.Inf(1), Proven: true, OthersProven: true}
	}
	s.begin(root)
	left := s.tree(root)
	o := Outcome{Plans: s.plans, Bound: left, Proven: !s.stopped, OthersProven: !s.stopped, Nodes: s.nodes}
	if len(s.plans) > 0 {
		best := s.plans[0].Score
		o.Bound, o.Proven = min(left, best), o.Proven || left >= best-slack
	}
	return o
}

// tree looks at all plans of a root, and gives a bound on those that it left aside.
func (s *search) tree(root *node) float64 {
	z := s.start(root)
	return s.explore(root, s.tangentAt(z.even(s.orbits(root)), make([]float64, len(s.limits)), s.squares.moved), atRoot)
}

func newSearch(c *Choice, effort Effort) *search {
	c.mustBeSound()
	effort.Plans = max(1, effort.Plans)
	s := &search{effort: effort, young: c.Young, scoring: newScoring(c), dearest: 10 * (1 + math.Abs(c.Weight)), limitsOf: make([][]int, len(c.Options))}
	for _, o := range c.Options {
		s.least = append(s.least, int32(min(o.MinYoung, NoLimit)))
		s.most = append(s.most, int32(min(o.MaxYoung, c.Young)))
	}
	for _, l := range c.Limits {
		options := slices.Compact(slices.Sorted(slices.Values(l.Options)))
		one := limit{least: l.AtLeast, most: l.AtMost, all: len(options) == len(c.Options)}
		for _, p := range options {
			one.options = append(one.options, int32(p))
		}
		for _, p := range options {
			s.limitsOf[p] = append(s.limitsOf[p], len(s.limits))
		}
		s.limits = append(s.limits, one)
	}
	s.squares = newSquares(s.scoring, s.limits)
	s.unit = s.scoring.unit()
	s.pairs = newPairs(s.scoring)
	s.twins = newTwins(s)
	return s
}

// root is the node of all plans.
func (s *search) root() *node {
	n := &node{lo: make([]int32, len(s.most)), hi: slices.Clone(s.most)}
	for p := range n.hi {
		if n.hi[p] < s.least[p] {
			n.hi[p] = 0
		}
	}
	return n
}

// start gives the point where the first tangent touches the score: the plan that
// is known, or without one all options alike.
func (s *search) start(root *node) point {
	z := newPoint(len(root.hi))
	if len(s.plans) > 0 {
		for _, pick := range s.plans[0].Picks {
			z.set(pick.Option, float64(pick.Young), 1)
		}
		return z
	}
	sum := 0.0
	for _, hi := range root.hi {
		sum += float64(hi)
	}
	for p, hi := range root.hi {
		z.set(p, float64(hi), float64(s.young)/sum)
	}
	return z
}

// cutoff is the score from which a plan is of no interest.
func (s *search) cutoff() float64 {
	if len(s.plans) < s.effort.Plans {
		return math.Inf(1)
	}
	return s.plans[len(s.plans)-1].Score - max(slack, nearly*s.unit)
}

// explore looks at all plans of a node that may be of interest, and gives a
// bound on those that it left aside when it was stopped.
func (s *search) explore(n *node, t *tangent, effort effortPerNode) float64 {
	s.nodes++
	orbit := s.orbits(n)
	t, low := s.climb(n, t, orbit, effort)
	if low.value >= s.cutoff() {
		return math.Inf(1)
	}
	if s.stop() {
		return low.value
	}
	if s.fix(n, t, low) {
		if !s.tighten(n) {
			return math.Inf(1)
		}
	}
	p, ok := s.branch(n, t)
	if !ok {
		s.offer(n.lo)
		return math.Inf(1)
	}
	left := math.Inf(1)
	for _, child := range s.children(n, t, p, orbit) {
		switch {
		case s.stopped:
			left = min(left, low.value)
		case s.tighten(child):
			left = min(left, s.explore(child, t, below))
		}
	}
	return left
}

func (s *search) stop() bool {
	if s.effort.Nodes > 0 && s.nodes >= s.effort.Nodes || s.effort.Stop != nil && s.nodes%64 == 1 && s.effort.Stop() {
		s.stopped = true
	}
	return s.stopped
}

// fix takes numbers of young from the options that would cost too much. At the
// price of the marginal young each option has a number that is cheapest for it, and another
// one costs what it is dearer.
func (s *search) fix(n *node, t *tangent, low lowest) bool {
	spare := s.cutoff() - low.value
	if math.IsInf(spare, 1) || math.IsInf(low.marginal, -1) {
		return false
	}
	fixed := false
	for i := range n.lo {
		p := int32(i)
		if n.lo[p] == n.hi[p] {
			continue
		}
		cost := func(young int32) float64 { return t.of(p, young) - low.marginal*float64(young) }
		first := max(n.lo[p], s.least[p])
		least := cost(n.lo[p])
		for v := first; v <= n.hi[p]; v++ {
			least = min(least, cost(v))
		}
		hi, lo := n.hi[p], first
		for ; hi >= first && cost(hi)-least >= spare; hi-- {
		}
		for ; lo < hi && cost(lo)-least >= spare; lo++ {
		}
		switch {
		case n.undecided(p) && hi < first:
			n.hi[p], fixed = 0, true
		case n.undecided(p) && cost(0)-least < spare:
			fixed = fixed || hi < n.hi[p]
			n.hi[p] = hi
		default:
			fixed = fixed || hi < n.hi[p] || lo > n.lo[p]
			n.lo[p], n.hi[p] = lo, hi
		}
	}
	return fixed
}

// branch gives the option to decide next: the one that is nearest to being
// chosen, and when all are decided one whose number of young is open.
func (s *search) branch(n *node, t *tangent) (int32, bool) {
	next, ok := int32(0), false
	better := func(p int32) bool {
		return cmp.Or(cmp.Compare(t.z.chosen[next], t.z.chosen[p]), cmp.Compare(t.slope[p], t.slope[next])) < 0
	}
	for i := range n.lo {
		if p := int32(i); n.undecided(p) && (!ok || better(p)) {
			next, ok = p, true
		}
	}
	if ok {
		return next, true
	}
	for i := range n.lo {
		if p := int32(i); n.lo[p] < n.hi[p] && (!ok || n.hi[p]-n.lo[p] > n.hi[next]-n.lo[next]) {
			next, ok = p, true
		}
	}
	return next, ok
}

// children splits a node at option p, the more promising part first.
// Where twins make other options the same as p, none of them is taken if p is not.
func (s *search) children(n *node, t *tangent, p int32, orbit []int32) [2]*node {
	low, high := n.clone(), n.clone()
	if n.undecided(p) {
		high.lo[p], low.hi[p] = s.least[p], 0
		for q, o := range orbit {
			if o == orbit[p] {
				low.hi[q] = 0
			}
		}
		return [2]*node{high, low}
	}
	at := min(max(int32(math.Floor(t.z.young[p])), n.lo[p]), n.hi[p]-1)
	low.hi[p], high.lo[p] = at, at+1
	if t.z.young[p]-float64(at) > 0.5 {
		return [2]*node{high, low}
	}
	return [2]*node{low, high}
}
