package pairing

import (
	"math"
	"slices"
)

// squares is what is known of the square of what each parent gives to the young, which
// is a part of the score: it can be bounded without a tangent. The young of an option are
// its own, so that the square is at least the sum of the squares over the options of
// the parent. And the young are whole, so that what a parent gives goes in steps,
// and a square between two steps is never met, only the chord above. Each has a share
// of the part, and the shares may be anything (see [tangent]).
type squares struct {
	own   []float64 // the part of the score that is such a square
	step  []float64 // of what a parent gives
	moved []float64 // share that is counted by option, to begin with
}

func newSquares(sc *scoring, limits []limit) squares {
	sq := squares{own: ownParts(sc.kin), step: make([]float64, len(sc.kin))}
	options := make([]int, len(sc.kin)) // of each parent
	parts := make([]int, len(sc.kin))   // least common multiple of the parts of a young, each 1/n
	for _, shares := range sc.shares {
		for _, a := range shares {
			options[a.parent]++
			parts[a.parent] = multiple(max(1, parts[a.parent]), int(math.Round(1/a.part)))
		}
	}
	for a, n := range parts {
		sq.step[a] = 1 / float64(n)
	}
	sq.moved = slices.Clone(sq.own)
	for a, n := range uses(sc, limits, options) {
		sq.moved[a] /= float64(n)
	}
	return sq
}

// uses gives in how many options of a plan a parent can be at most.
func uses(sc *scoring, limits []limit, options []int) []int {
	uses := slices.Clone(options)
	for _, l := range limits {
		in := make([]int, len(options))
		for _, p := range l.options {
			for _, a := range sc.shares[p] {
				in[a.parent]++
			}
		}
		for a, n := range in {
			if n == options[a] {
				uses[a] = max(1, min(uses[a], l.most))
			}
		}
	}
	return uses
}

// chord is by how much the chord of the square is above its tangent, when parent a gives c.
func (sq *squares) chord(a int, c float64) float64 {
	off := c - sq.step[a]*math.Round(c/sq.step[a])
	return off * off
}

func multiple(a, b int) int {
	x, y := a, b
	for y != 0 {
		x, y = y, x%y
	}
	return a / x * b
}
