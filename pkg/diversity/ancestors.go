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
// Each ancestor costs a walk over its own ancestors and over those of its
// descendants that have young.
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

// selection is the state of the method: what comes to a node (p) and how much of
// it is explained (a). Both only move one way, so that p(1-a) as it was once is a
// bound from above, and the largest bound that is current is the best of all.
type selection struct {
	tree      *tree
	up, down  *climber
	p         []float64
	explained []float64 // of nodes with children; 1 when chosen
	chosen    []bool
	round     int32
	queue     queue
}

func newSelection(p *pedigree.Pedigree, t *tree, living []int) *selection {
	s := &selection{
		tree: t, up: newClimber(t.above, t.len()), down: newClimber(t.children(), t.len()),
		p: t.weights(living), explained: make([]float64, t.len()), chosen: make([]bool, t.len()),
	}
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
	explained := 0.0
	s.tree.above(k, func(parent int32, weight float64) { explained += weight * s.explained[parent] })
	return s.p[k] * (1 - explained)
}

// choose cuts a node off from its ancestors, to which nothing comes through it any
// more, and hands down to its descendants what it explains in addition.
func (s *selection) choose(chosen int32) {
	through := s.p[chosen]
	s.up.climb(chosen, func(k int32, share float64) bool {
		if k != chosen {
			s.p[k] -= share * through
		}
		return !s.chosen[k]
	})
	more := 1 - s.explained[chosen]
	s.down.descend(chosen, func(k int32, share float64) bool {
		if !s.chosen[k] {
			s.explained[k] += share * more
		}
		return !s.chosen[k]
	})
	s.explained[chosen] = 1
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
