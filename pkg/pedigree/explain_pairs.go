package pedigree

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
)

// pairTable has what is to be known of every pair of nodes in which the genes of
// two animals can be at once.
type pairTable struct {
	lines *lines
	pairs [][]pair // by younger node, in order of the older
	met   []meet   // animals in which both can be
	from  []meet   // sources in which both can be
	count int
	cut   bool // there were too many pairs: those that are left were dropped
}

// pairsKept is how many pairs are looked at: about 25 MB.
const pairsKept = 500_000

// pair is the older node of a pair.
type pair struct {
	older  int32
	chance float64 // that the genes come to be here
	ways   uint64  // number of ways to here
	best   float64 // the largest share that a way on from here brings; 0 when none leads to an ancestor
}

// meet is a node in which both genes can be.
type meet struct {
	node   int32
	chance float64
	ways   uint64
}

func newPairTable(l *lines) *pairTable {
	return &pairTable{lines: l, pairs: make([][]pair, len(l.animal))}
}

// fill goes up from the two animals and counts, and then down again and finds the
// best way on from everywhere.
func (t *pairTable) fill() {
	l := t.lines
	t.add(l.a, l.b, 1, 1)
	for k := int32(len(t.pairs) - 1); k >= 0; k-- {
		t.pairs[k] = mergePairs(t.pairs[k])
		t.count += len(t.pairs[k])
		if t.count > pairsKept {
			clear(t.pairs[:k+1])
			t.cut = true
			break
		}
		for _, p := range t.pairs[k] {
			switch here := (meet{k, p.chance, p.ways}); {
			case p.older == k && l.kind[k] == lineAnimal:
				t.met = append(t.met, here)
			case p.older == k && l.kind[k] == lineSource && l.self[k] > 0:
				t.from = append(t.from, here)
			}
			l.moves(k, p.older, func(toA, toB *edge, weight float64) {
				t.add(after(k, toA), after(p.older, toB), p.chance*weight, p.ways)
			})
		}
	}
	for k := range int32(len(t.pairs)) {
		for n := range t.pairs[k] {
			p := &t.pairs[k][n]
			if p.older == k && l.kind[k] == lineAnimal {
				p.best = l.self[k]
			}
			l.moves(k, p.older, func(toA, toB *edge, weight float64) {
				p.best = max(p.best, weight*t.best(after(k, toA), after(p.older, toB)))
			})
		}
	}
}

// after gives where an edge leads, or the node itself when there is none.
func after(k int32, e *edge) int32 {
	if e == nil {
		return k
	}
	return e.to
}

func (t *pairTable) add(a, b int32, chance float64, ways uint64) {
	t.pairs[max(a, b)] = append(t.pairs[max(a, b)], pair{older: min(a, b), chance: chance, ways: ways})
}

func (t *pairTable) best(a, b int32) float64 {
	row := t.pairs[max(a, b)]
	n, ok := slices.BinarySearchFunc(row, min(a, b), func(p pair, older int32) int { return cmp.Compare(p.older, older) })
	if !ok {
		return 0
	}
	return row[n].best
}

// mergePairs makes one of the pairs with the same older node, in order.
func mergePairs(pairs []pair) []pair {
	slices.SortFunc(pairs, func(x, y pair) int { return cmp.Compare(x.older, y.older) })
	merged := pairs[:0]
	for _, p := range pairs {
		if last := len(merged) - 1; last >= 0 && merged[last].older == p.older {
			merged[last].chance += p.chance
			merged[last].ways = plus(merged[last].ways, p.ways)
		} else {
			merged = append(merged, p)
		}
	}
	return merged
}

// plus adds counts and stays at the largest when they are too many.
func plus(x, y uint64) uint64 {
	sum, carry := bits.Add64(x, y, 0)
	if carry != 0 {
		return math.MaxUint64
	}
	return sum
}
