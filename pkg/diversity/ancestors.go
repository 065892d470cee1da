package diversity

import (
	"cmp"
	"container/heap"
	"math"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Ancestor is an animal, founder or not, and what it adds to the explanation of
// the living animals' genes.
type Ancestor struct {
	Animal int
	// Marginal is the share of the living animals' genes that comes through it
	// and through none of the ancestors before it in the list.
	Marginal float64
}

// AncestorContributions gives the ancestors that explain the living animals' genes
// with the fewest names: again and again the one with the largest marginal
// contribution, until nothing is left (Boichard, Maignel and Verrier 1997,
// Genetics Selection Evolution 29:5, their exact method). The contributions add
// up to 1. Of equal ones the one of the lower generation comes first, then the
// one whose id sorts first. Living animals may be in the list themselves.
//
// Where all that is left of some founders came through one animal, that animal
// stands for them: bottlenecks show.
//
// Contributions count as equal below 1e-13, and those below 1e-12 are left out.
// Each ancestor costs a walk over its own ancestors; how much of it is explained
// already is found out only for those that may come next.
func AncestorContributions(p *pedigree.Pedigree, living []int) []Ancestor {
	t := newTree(p, living)
	s := newSelection(p, t, living)
	var chosen []Ancestor
	for {
		k, marginal := s.next()
		if marginal < 1e-12 {
			return chosen
		}
		chosen = append(chosen, Ancestor{int(t.animal[k]), marginal})
		s.choose(k)
	}
}

// AncestorEquivalents gives fa, the effective number of ancestors: 1 over the sum
// of the squared marginal contributions that [AncestorContributions] gives, with
// the source and the cost there. It is at most fe as a rule: since the choice looks
// one step ahead only, it ends a little above at times. No living animals give 0.
func AncestorEquivalents(p *pedigree.Pedigree, living []int) float64 {
	return ancestorEquivalents(AncestorContributions(p, living))
}

func ancestorEquivalents(ancestors []Ancestor) float64 {
	sum := 0.0
	for _, a := range ancestors {
		sum += a.Marginal * a.Marginal
	}
	return over(sum)
}

// selection is the state of the method. What comes to a node (p) is kept current;
// how much of it is explained (a) is computed when needed. Both only move one
// way, so that p(1-a) as last computed is a bound from above, and the best bound
// that is current is the best of all.
type selection struct {
	tree    *tree
	climber *climber
	p       []float64
	chosen  []bool
	round   int32
	queue   queue
}

func newSelection(p *pedigree.Pedigree, t *tree, living []int) *selection {
	s := &selection{tree: t, climber: newClimber(t), p: t.weights(living), chosen: make([]bool, t.len())}
	t.collect(s.p)
	s.queue = queue{pedigree: p, tree: t}
	for k := range int32(t.len()) {
		if t.animal[k] != none {
			s.queue.all = append(s.queue.all, bound{k, none, rounded(s.p[k])})
		}
	}
	heap.Init(&s.queue)
	return s
}

// rounded makes contributions equal that differ by rounding only.
func rounded(x float64) float64 { return math.Round(x*(1<<43)) / (1 << 43) }

// next gives the node with the largest marginal contribution.
func (s *selection) next() (k int32, marginal float64) {
	for len(s.queue.all) > 0 {
		top := &s.queue.all[0]
		if top.value < 1e-12 {
			break
		}
		if top.round == s.round {
			k = top.node
			heap.Pop(&s.queue)
			return k, s.marginal(k)
		}
		top.value, top.round = rounded(s.marginal(top.node)), s.round
		heap.Fix(&s.queue, 0)
	}
	return none, 0
}

// marginal gives p(1-a) of a node that is not chosen.
func (s *selection) marginal(k int32) float64 {
	if s.p[k] <= 0 {
		return 0
	}
	explained := 0.0
	s.climber.climb(k, func(k int32, share float64) bool {
		if s.chosen[k] {
			explained += share
		}
		return !s.chosen[k]
	})
	return s.p[k] * (1 - explained)
}

// choose cuts a node off from its ancestors: what came to them through it goes.
func (s *selection) choose(chosen int32) {
	through := s.p[chosen]
	s.climber.climb(chosen, func(k int32, share float64) bool {
		if k != chosen {
			s.p[k] -= share * through
		}
		return !s.chosen[k]
	})
	s.chosen[chosen] = true
	s.round++
}

// bound is a marginal contribution as it was in some round.
type bound struct {
	node, round int32
	value       float64
}

// queue has the largest bound first.
type queue struct {
	pedigree *pedigree.Pedigree
	tree     *tree
	all      []bound
}

func (q *queue) Len() int      { return len(q.all) }
func (q *queue) Swap(i, j int) { q.all[i], q.all[j] = q.all[j], q.all[i] }
func (q *queue) Push(x any)    { q.all = append(q.all, x.(bound)) }

func (q *queue) Less(i, j int) bool {
	if q.all[i].value != q.all[j].value {
		return q.all[i].value > q.all[j].value
	}
	a, b := int(q.tree.animal[q.all[i].node]), int(q.tree.animal[q.all[j].node])
	return cmp.Or(
		cmp.Compare(q.pedigree.Generation(a), q.pedigree.Generation(b)),
		cmp.Compare(q.pedigree.ID(a), q.pedigree.ID(b)),
	) < 0
}

func (q *queue) Pop() any {
	last := len(q.all) - 1
	x := q.all[last]
	q.all = q.all[:last]
	return x
}
