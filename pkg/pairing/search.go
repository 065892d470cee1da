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
	limits      []limit
	limitsOf    [][]int // by option
	least, most []int32 // young of each option when it is chosen
	young       int
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
// plans of a branch from below. The same input gives the same plans, whatever
// the machine; only effort.Stop can change that.
//
// It panics if c has no pool, no young to hold back, a negative weight, an
// option without a side or without young, or a limit on an option that is not
// there.
func (c Choice) Best(effort Effort) Outcome {
	c.mustBeSound()
	s := newSearch(&c, effort)
	s.scoring = newScoring(&c)
	root := s.root()
	if !s.tighten(root) {
		return Outcome{Bound: math.Inf(1), Proven: true}
	}
	s.begin(root)
	z := s.start(root)
	left := s.explore(root, s.tangentAt(z, make([]float64, len(s.limits))), atRoot)
	o := Outcome{Plans: s.plans, Bound: left, Proven: !s.stopped, Nodes: s.nodes}
	if len(s.plans) > 0 {
		o.Bound = min(left, s.plans[0].Score)
	}
	return o
}

func newSearch(c *Choice, effort Effort) *search {
	effort.Plans = max(1, effort.Plans)
	s := &search{effort: effort, young: c.Young, dearest: 10 * (1 + c.Weight), limitsOf: make([][]int, len(c.Options))}
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
func (s *search) start(root *node) []float64 {
	z := make([]float64, len(root.hi))
	if len(s.plans) > 0 {
		for _, pick := range s.plans[0].Picks {
			z[pick.Option] = float64(pick.Young)
		}
		return z
	}
	sum := 0.0
	for _, hi := range root.hi {
		sum += float64(hi)
	}
	for p, hi := range root.hi {
		z[p] = float64(hi) * float64(s.young) / sum
	}
	return z
}

// effortPerNode is how often the bound of a node is improved, and by what part of
// the way that would just close the gap the prices follow each time.
type effortPerNode struct {
	steps int
	pace  float64
}

// The root is where all other bounds begin: many steps, and careful ones. Below
// it a few long ones do (found by trial on random choices).
var (
	atRoot = effortPerNode{300, 0.3}
	below  = effortPerNode{4, 1}
)

// cutoff is the score from which a plan is of no interest.
func (s *search) cutoff() float64 {
	if len(s.plans) < s.effort.Plans {
		return math.Inf(1)
	}
	return s.plans[len(s.plans)-1].Score - slack
}

// explore looks at all plans of a node that may be of interest, and gives a
// bound on those that it left aside when it was stopped.
func (s *search) explore(n *node, t *tangent, effort effortPerNode) float64 {
	s.nodes++
	y := make([]int32, len(n.lo))
	t, value, marginal := s.bound(n, t, y, effort)
	if value >= s.cutoff() {
		return math.Inf(1)
	}
	if s.stop() {
		return value
	}
	if s.fix(n, t, y, value, marginal) {
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
	for _, child := range s.children(n, t, p) {
		switch {
		case s.stopped:
			left = min(left, value)
		case s.tighten(child):
			left = min(left, s.explore(child, t, below))
		}
	}
	return left
}

// bound improves the tangent until it cuts the node off or no longer gains, and
// gives the best one with where it is smallest.
func (s *search) bound(n *node, t *tangent, y []int32, effort effortPerNode) (*tangent, float64, float64) {
	value, marginal := t.least(n, s.young, y)
	best, now, at := t, value, slices.Clone(y)
	for range effort.steps {
		if value >= s.cutoff() || math.IsInf(value, 1) {
			break
		}
		s.offer(at)
		gap := s.cutoff() - now
		if math.IsInf(gap, 1) {
			gap = 0.01 * math.Abs(now)
		}
		t = s.climb(t, at, effort.pace*max(gap, slack))
		var m float64
		now, m = t.least(n, s.young, at)
		if now > value {
			best, value, marginal = t, now, m
			copy(y, at)
		}
	}
	return best, value, marginal
}

func (s *search) stop() bool {
	if s.effort.Nodes > 0 && s.nodes >= s.effort.Nodes || s.effort.Stop != nil && s.nodes%64 == 1 && s.effort.Stop() {
		s.stopped = true
	}
	return s.stopped
}

// fix decides options that cost too much the other way: one without young would
// take them from the dearest that have some, and one with young would
// leave them to those that are dearer.
func (s *search) fix(n *node, t *tangent, y []int32, value, marginal float64) bool {
	spare := s.cutoff() - value
	if math.IsInf(spare, 1) || math.IsInf(marginal, -1) {
		return false
	}
	fixed := false
	for i := range n.lo {
		p := int32(i)
		if !n.undecided(p) {
			continue
		}
		switch d := t.slope[p] - marginal; {
		case y[p] == 0 && d*float64(s.least[p]) >= spare:
			n.hi[p], fixed = 0, true
		case y[p] > 0 && -d*float64(y[p]) >= spare:
			n.lo[p], fixed = s.least[p], true
		}
	}
	return fixed
}

// branch gives the option to decide next: the one that is nearest to being
// chosen, and when all are decided one whose number of young is open.
func (s *search) branch(n *node, t *tangent) (int32, bool) {
	next, ok := int32(0), false
	better := func(p int32) bool {
		return cmp.Or(cmp.Compare(t.z[next]/float64(s.most[next]), t.z[p]/float64(s.most[p])), cmp.Compare(t.slope[p], t.slope[next])) < 0
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
func (s *search) children(n *node, t *tangent, p int32) [2]*node {
	low, high := n.clone(), n.clone()
	if n.undecided(p) {
		high.lo[p], low.hi[p] = s.least[p], 0
		return [2]*node{high, low}
	}
	at := min(max(int32(math.Floor(t.z[p])), n.lo[p]), n.hi[p]-1)
	low.hi[p], high.lo[p] = at, at+1
	if t.z[p]-float64(at) > 0.5 {
		return [2]*node{high, low}
	}
	return [2]*node{low, high}
}
