package diversity

import "github.com/spawnwright/spawnwright/pkg/pedigree"

// FounderEquivalents gives fe, the number of founders that would give the same
// diversity if all contributed alike: 1 over the sum of their squared shares
// (Lacy 1989, Zoo Biology 8:111). It says nothing of genes lost on the way.
//
// An unknown parent beside a known one is a founder of its own (Boichard, Maignel
// and Verrier 1997, Genetics Selection Evolution 29:5, count so), so gaps make the
// value larger. No living animals give 0. With groups in the ancestry the expected
// shares are used and the value is approximate, too large. Two passes over the
// pedigree.
func FounderEquivalents(p *pedigree.Pedigree, living []int) float64 {
	return FounderContributions(p, living).Equivalents()
}
