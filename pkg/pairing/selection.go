package pairing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Selection is some animals that go well with each other, and with those that are there.
type Selection struct {
	Members []int // places in the pedigree, in rising order
	// MeanKinship is that of the members and of those that are there, each with
	// itself included.
	MeanKinship float64
	Bound       float64 // no selection has a lower mean kinship
	Proven      bool    // Members are the best, to 1e-10
	Nodes       int
}

// Select finds the k candidates that together with the animals that are there, which may
// be none, have the lowest mean kinship: young to keep for breeding, or a
// group for a buyer who wants unrelated animals. Of several that are as good one is taken
// with candidates that come early in the list.
//
// It is a branch and bound. A selection that is not finished costs at least, for each
// animal to come, its kinships with those that are in it already and the least it can have
// with the others to come. The same input gives the same result, unless effort.Stop
// ends the search.
//
// It panics if k is negative or there are fewer candidates, or if an animal
// stands in the lists twice.
func Select(p *pedigree.Pedigree, there, candidates []int, k int, effort Effort) Selection {
	if k < 0 || k > len(candidates) {
		panic(fmt.Sprintf("pairing: %d of %d candidates", k, len(candidates)))
	}
	all := slices.Sorted(slices.Values(slices.Concat(there, candidates)))
	if len(slices.Compact(slices.Clone(all))) < len(all) {
		panic("pairing: an animal stands twice among those to select and those that are there")
	}
	if len(all) == 0 || len(there)+k == 0 {
		return Selection{Proven: true}
	}
	s := newSelector(p, there, candidates, k, effort)
	s.greedy()
	left := s.explore(nil, 0, s.base)
	size := float64((len(there) + k) * (len(there) + k))
	out := Selection{MeanKinship: s.least / size, Bound: min(left, s.least) / size, Proven: !s.stopped, Nodes: s.nodes}
	for _, c := range s.best {
		out.Members = append(out.Members, s.nodeOf[c])
	}
	slices.Sort(out.Members)
	return out
}

// selector works with sums of kinships; candidates are numbered from 0.
type selector struct {
	nodeOf []int
	kin    [][]float64
	own    []float64   // kinship with itself and, both ways round, with those that are there
	few    [][]float64 // of each candidate: the sum of its 0, 1, 2 … smallest kinships with others
	base   float64
	k      int

	best    []int
	least   float64
	effort  Effort
	nodes   int
	stopped bool
}

func newSelector(p *pedigree.Pedigree, there, candidates []int, k int, effort Effort) *selector {
	s := &selector{nodeOf: candidates, k: k, least: math.Inf(1), effort: effort, kin: p.Block(candidates, candidates)}
	for _, row := range p.Block(there, there) {
		for _, x := range row {
			s.base += x
		}
	}
	for c, row := range p.Block(candidates, there) {
		own := s.kin[c][c]
		for _, x := range row {
			own += 2 * x
		}
		s.own = append(s.own, own)
		others := slices.Sorted(slices.Values(slices.Delete(slices.Clone(s.kin[c]), c, c+1)))
		sums := []float64{0}
		for i := range min(k, len(others)) {
			sums = append(sums, sums[i]+others[i])
		}
		s.few = append(s.few, sums)
	}
	return s
}

// cost is what candidate c adds to a selection.
func (s *selector) cost(c int, chosen []int) float64 {
	sum := s.own[c]
	for _, o := range chosen {
		sum += 2 * s.kin[c][o]
	}
	return sum
}

// greedy takes one candidate at a time, and then changes one for another while that helps.
func (s *selector) greedy() {
	var chosen []int
	for len(chosen) < s.k {
		best, least := -1, math.Inf(1)
		for c := range s.own {
			if x := s.cost(c, chosen); !slices.Contains(chosen, c) && x < least-slack {
				best, least = c, x
			}
		}
		chosen = append(chosen, best)
	}
	for s.improve(chosen) {
	}
	s.offer(chosen)
}

func (s *selector) improve(chosen []int) bool {
	for i, old := range chosen {
		rest := slices.Delete(slices.Clone(chosen), i, i+1)
		before := s.cost(old, rest)
		for c := range s.own {
			if !slices.Contains(chosen, c) && s.cost(c, rest) < before-slack {
				chosen[i] = c
				return true
			}
		}
	}
	return false
}

func (s *selector) offer(chosen []int) {
	sum := s.base
	for i, c := range chosen {
		sum += s.cost(c, chosen[:i])
	}
	if sum < s.least-slack {
		s.best, s.least = slices.Clone(chosen), sum
	}
}

// explore goes through all selections that have chosen and candidates from next on, whose sum
// is that of chosen so far, and gives a bound on those that it left aside.
func (s *selector) explore(chosen []int, next int, sum float64) float64 {
	s.nodes++
	missing := s.k - len(chosen)
	if missing == 0 {
		s.offer(chosen)
		return math.Inf(1)
	}
	bound := s.bound(chosen, next, sum, missing)
	if bound >= s.least-slack {
		return math.Inf(1)
	}
	if s.effort.Nodes > 0 && s.nodes >= s.effort.Nodes || s.effort.Stop != nil && s.nodes%64 == 1 && s.effort.Stop() {
		s.stopped = true
	}
	if s.stopped {
		return bound
	}
	in := s.explore(append(slices.Clone(chosen), next), next+1, sum+s.cost(next, chosen))
	out := s.explore(chosen, next+1, sum)
	return min(in, out)
}

// bound adds to the sum the cheapest candidates from next on. Those to come have at
// least their smallest kinships with each other; each such kinship counts for two of them,
// and so once for each.
func (s *selector) bound(chosen []int, next int, sum float64, missing int) float64 {
	if len(s.own)-next < missing {
		return math.Inf(1)
	}
	costs := make([]float64, 0, len(s.own)-next)
	for c := next; c < len(s.own); c++ {
		costs = append(costs, s.cost(c, chosen)+s.few[c][missing-1])
	}
	slices.SortFunc(costs, cmp.Compare)
	for _, x := range costs[:missing] {
		sum += x
	}
	return sum
}
