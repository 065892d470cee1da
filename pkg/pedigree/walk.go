package pedigree

import "math/bits"

// walker computes a'Ka' products by walking from two sets of nodes up through
// their ancestors, youngest first (Meuwissen and Luo 1992, Genetics Selection
// Evolution 24:305; with both sides at once and stopping when one has run out,
// Quaas 1995, as in Mrode 2014, appendix B.2).
//
// The nodes still to visit are marked in an array of bits, so that finding the
// youngest does not slow down when there are many. All arrays are clear between
// two walks.
type walker struct {
	share [][2]float64 // what has come up to each node from either side
	marks []uint64     // one bit a node: share is not clear
	left  [2]int       // marked nodes with a share from either side
	steps int          // nodes visited so far, over all walks
}

func newWalker(nodes int) *walker {
	return &walker{share: make([][2]float64, nodes), marks: make([]uint64, (nodes+63)/64)}
}

// cross gives a'Kb: the sum over the ancestors that a and b have in common,
// themselves included, of both shares and what is new in the ancestor. All terms
// of the sum are positive: it is 0 exactly when nothing is in common.
func (w *walker) cross(g *graph, a, b []term) float64 {
	youngest := int32(0)
	for _, t := range a {
		w.add(t.node, t.weight, 0)
		youngest = max(youngest, t.node)
	}
	for _, t := range b {
		w.add(t.node, 0, t.weight)
		youngest = max(youngest, t.node)
	}
	sum := 0.0
	for word := int(youngest / 64); word >= 0; word-- {
		for w.marks[word] != 0 {
			k := int32(word*64 + bits.Len64(w.marks[word]) - 1)
			shareA, shareB := w.take(k)
			w.steps++
			if w.left[0] == 0 && shareA == 0 || w.left[1] == 0 && shareB == 0 {
				continue // nothing in common can follow: only clear up
			}
			sum += shareA * shareB * g.own[k]
			w.pass(g, k, shareA, shareB)
		}
	}
	return sum
}

// pass hands the shares of node k on to the nodes one step up.
func (w *walker) pass(g *graph, k int32, a, b float64) {
	if g.group[k] != none {
		for _, c := range g.groups[g.group[k]].terms {
			w.add(c.node, a*c.weight, b*c.weight)
		}
		return
	}
	if s := g.sire[k]; s != none {
		w.add(s, a/2, b/2)
	}
	if d := g.dam[k]; d != none {
		w.add(d, a/2, b/2)
	}
}

func (w *walker) add(k int32, a, b float64) {
	share := &w.share[k]
	if share[0] == 0 && a > 0 {
		w.left[0]++
	}
	if share[1] == 0 && b > 0 {
		w.left[1]++
	}
	share[0] += a
	share[1] += b
	w.marks[k/64] |= 1 << (k % 64)
}

// take clears node k and gives what it held.
func (w *walker) take(k int32) (a, b float64) {
	a, b = w.share[k][0], w.share[k][1]
	w.share[k] = [2]float64{}
	w.marks[k/64] &^= 1 << (k % 64)
	if a > 0 {
		w.left[0]--
	}
	if b > 0 {
		w.left[1]--
	}
	return a, b
}
