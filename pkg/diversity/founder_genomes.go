package diversity

import "github.com/spawnwright/spawnwright/pkg/pedigree"

// FounderGenomeEquivalents gives fg by kinship: the number of unrelated founders,
// not inbred, that would have the same gene diversity, 1/(2 MK), where MK is the
// mean kinship of the living animals to each other, each to itself included (Lacy
// 1995, Zoo Biology 14:565; Caballero and Toro 2000, Genetical Research 75:331).
//
// It is not the estimator by retained genes, [GeneDrop.FounderGenomeEquivalents]:
// that one asks which founder genes are still there, this one also how evenly.
// No living animals give 0. With groups in the ancestry MK is its exact
// expectation. Time grows with the number of ancestors.
func FounderGenomeEquivalents(p *pedigree.Pedigree, living []int) float64 {
	if len(living) == 0 {
		return 0
	}
	return over(2 * (1 - p.GeneDiversity(living)))
}
