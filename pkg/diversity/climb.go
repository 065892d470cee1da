package diversity

import "math/bits"

// climber walks from a node up through its ancestors, youngest first, or down
// through its descendants, oldest first. Its arrays are clear between two walks,
// so that a walk costs only what it meets.
type climber struct {
	next  func(k int32, f func(next int32, weight float64)) // the nodes one step on
	share []float64
	marks []uint64 // one bit a node: share is not clear
	left  int      // marks that are set
}

func newClimber(next func(k int32, f func(next int32, weight float64)), nodes int) *climber {
	return &climber{next: next, share: make([]float64, nodes), marks: make([]uint64, (nodes+63)/64)}
}

// climb calls visit for the node and each of its ancestors with the share that
// the node has from there by the ways on which visit gave true.
func (c *climber) climb(from int32, visit func(k int32, share float64) bool) {
	c.add(from, 1)
	for word := from / 64; c.left > 0; word-- {
		for c.marks[word] != 0 {
			c.step(word*64+int32(bits.Len64(c.marks[word]))-1, visit)
		}
	}
}

// descend is the same downwards: the share is that which the descendant has from
// the node.
func (c *climber) descend(from int32, visit func(k int32, share float64) bool) {
	c.add(from, 1)
	for word := from / 64; c.left > 0; word++ {
		for c.marks[word] != 0 {
			c.step(word*64+int32(bits.TrailingZeros64(c.marks[word])), visit)
		}
	}
}

func (c *climber) step(k int32, visit func(k int32, share float64) bool) {
	share := c.share[k]
	c.share[k] = 0
	c.marks[k/64] &^= 1 << (k % 64)
	c.left--
	if visit(k, share) {
		c.next(k, func(next int32, weight float64) { c.add(next, share*weight) })
	}
}

func (c *climber) add(k int32, share float64) {
	if bit := uint64(1) << (k % 64); c.marks[k/64]&bit == 0 {
		c.marks[k/64] |= bit
		c.left++
	}
	c.share[k] += share
}

// children gives a function that calls f for each node one step down from k that
// has such nodes itself, with the share that it has from k.
func (t *tree) children() func(k int32, f func(child int32, weight float64)) {
	inner := make([]bool, t.len())
	for k := range int32(t.len()) {
		t.above(k, func(parent int32, _ float64) { inner[parent] = true })
	}
	first := make([]int32, t.len()+1) // in all, by parent
	each := func(f func(parent, child int32, weight float64)) {
		for k := range int32(t.len()) {
			if inner[k] {
				t.above(k, func(parent int32, weight float64) { f(parent, k, weight) })
			}
		}
	}
	each(func(parent, _ int32, _ float64) { first[parent+1]++ })
	for k := range t.len() {
		first[k+1] += first[k]
	}
	all, filled := make([]term, first[t.len()]), make([]int32, t.len())
	each(func(parent, child int32, weight float64) {
		all[first[parent]+filled[parent]] = term{child, weight}
		filled[parent]++
	})
	return func(k int32, f func(child int32, weight float64)) {
		for _, c := range all[first[k]:first[k+1]] {
			f(c.node, c.weight)
		}
	}
}
