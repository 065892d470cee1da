package diversity

import (
	"math"
	"math/rand/v2"
)

// pool is a source in a gene drop: the fewest genes, all but the last equally
// frequent, of which two draws are the same with the source's kinship. A kinship
// of 1/2 makes it a single animal.
type pool struct {
	genes    int // none when no two draws are ever the same
	frequent float64
}

// newPool solves (n-1)a² + (1-(n-1)a)² = kinship for the frequency a.
func newPool(kinship float64) pool {
	n := math.Ceil(1 / kinship)
	switch {
	case !(n <= 1<<31): // also of kinship 0
		return pool{}
	case n == 1:
		return pool{genes: 1, frequent: 1}
	}
	root := math.Sqrt(max(0, (n*kinship-1)/(n-1)))
	return pool{genes: int(n), frequent: (1 + root) / n}
}

// draw gives the place of a gene, or a place that none has when no two are the
// same.
func (p pool) draw(source *rand.Rand) int {
	if p.genes == 0 {
		return none
	}
	return min(int(source.Float64()/p.frequent), p.genes-1)
}
