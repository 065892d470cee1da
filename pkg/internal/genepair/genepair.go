// Package genepair keeps pairs of genes that are followed up a pedigree, whose nodes
// are numbered so that each comes after those that it comes from.
package genepair

import (
	"cmp"
	"slices"
)

// Pairs are the pairs that are on their way. The gene in the younger node is always
// moved first, so that no way up is missed, and there is one sum for each pair of
// nodes, however many ways lead there.
type Pairs struct{ older [][]Older } // by younger node

// Older is the other node of a pair, and the chance of the pair.
type Older struct {
	Node   int32
	Chance float64
}

// New is for nodes below n.
func New(n int) Pairs { return Pairs{make([][]Older, n)} }

// Add notes a pair; what is noted twice adds up.
func (p Pairs) Add(a, b int32, chance float64) {
	p.older[max(a, b)] = append(p.older[max(a, b)], Older{min(a, b), chance})
}

// Take gives the pairs of which k is the younger node, or both, in the order of the
// older nodes, and forgets them.
func (p Pairs) Take(k int32) []Older {
	all := p.older[k]
	p.older[k] = nil
	slices.SortStableFunc(all, func(x, y Older) int { return cmp.Compare(x.Node, y.Node) })
	merged := all[:0]
	for _, o := range all {
		if last := len(merged) - 1; last >= 0 && merged[last].Node == o.Node {
			merged[last].Chance += o.Chance
		} else {
			merged = append(merged, o)
		}
	}
	return merged
}

// Draw moves a pair of which both genes are in a group of n candidates: to one
// candidate when the group is one animal, to two draws when each of the young has its
// own.
func Draw(n int, candidate func(i int) (node int32, weight float64), one bool, chance float64, add func(a, b int32, chance float64)) {
	for i := range n {
		a, weight := candidate(i)
		if one {
			add(a, a, chance*weight)
			continue
		}
		for j := range n {
			b, other := candidate(j)
			add(a, b, chance*weight*other)
		}
	}
}
