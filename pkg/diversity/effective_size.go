package diversity

import (
	"math"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// EffectiveSize is the number of animals of an ideal population that would have
// become inbred as fast.
type EffectiveSize struct {
	Size float64
	// StandardError of Size; 0 when Counted is 1, as one animal says nothing of
	// the spread.
	StandardError float64
	// Counted is the number of animals that it is taken from.
	Counted int
}

// RealisedSize gives the realised effective size of the living animals from the
// individual increase in inbreeding, and whether there is one: without any
// inbreeding it is infinite, and without animals of more than one complete
// generation nothing is known.
//
// An animal with inbreeding F and t equivalent complete generations has the
// increase 1 - (1 - F)^(1/(t - 1)); the size is 1 over twice the mean, and its
// standard error 2 Size^2 times that of the mean (Gutiérrez, Cervantes, Molina,
// Valera and Goyache 2008, Genetics Selection Evolution 40:359; the exponent with
// t - 1 Gutiérrez, Cervantes and Goyache 2009, Journal of Animal Breeding and
// Genetics 126:327). Animals with t of 1 or less cannot be inbred but by selfing
// and are left out. The error leaves aside that relatives are no independent
// witnesses.
//
// With groups in the ancestry expected values stand in the formula, which is
// approximate then. One pass over the living animals.
func RealisedSize(p *pedigree.Pedigree, living []int) (EffectiveSize, bool) {
	var increases []float64
	sum := 0.0
	for _, i := range living {
		if t := p.CompleteGenerations(i); t > 1 {
			increase := 1 - math.Pow(1-p.Inbreeding(i), 1/(t-1))
			increases = append(increases, increase)
			sum += increase
		}
	}
	if sum <= 0 {
		return EffectiveSize{Counted: len(increases)}, false
	}
	n := float64(len(increases))
	mean := sum / n
	size := EffectiveSize{Size: 1 / (2 * mean), Counted: len(increases)}
	if len(increases) > 1 {
		squares := 0.0
		for _, x := range increases {
			squares += (x - mean) * (x - mean)
		}
		size.StandardError = 2 * size.Size * size.Size * math.Sqrt(squares/(n-1)/n)
	}
	return size, true
}
