package diversity

import "math/bits"

// climber walks from a node up through its ancestors, youngest first. Its arrays
// are clear between two walks, so that a walk costs only what it meets.
type climber struct {
	tree  *tree
	share []float64
	marks []uint64 // one bit a node: share is not clear
}

func newClimber(t *tree) *climber {
	return &climber{tree: t, share: make([]float64, t.len()), marks: make([]uint64, (t.len()+63)/64)}
}

// climb calls visit for the node and each of its ancestors with the share that
// the node has from there by the ways on which visit gave true.
func (c *climber) climb(from int32, visit func(k int32, share float64) bool) {
	c.add(from, 1)
	for word := int(from / 64); word >= 0; word-- {
		for c.marks[word] != 0 {
			bit := bits.Len64(c.marks[word]) - 1
			k := int32(word*64 + bit)
			share := c.share[k]
			c.share[k] = 0
			c.marks[word] &^= 1 << bit
			if visit(k, share) {
				c.tree.above(k, func(parent int32, weight float64) { c.add(parent, share*weight) })
			}
		}
	}
}

func (c *climber) add(k int32, share float64) {
	c.share[k] += share
	c.marks[k/64] |= 1 << (k % 64)
}
