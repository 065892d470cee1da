package diversity

import "github.com/spawnwright/spawnwright/pkg/pedigree"

// OverstatedAncestralInbreeding gives, by number, the ancestral inbreeding of
// every animal by the recursion of Ballou (1997, Journal of Heredity 88:169): the
// chance that a gene of the animal was in an inbred ancestor with two copies of
// it, Fa = the mean over the parents of Fa + (1 - Fa) F.
//
// It takes the inbreeding of a parent as independent of what happened before, and
// so overstates (Baumung et al. 2015, Journal of Animal Breeding and Genetics
// 132:100): along full sib lines by a seventh in the third inbred generation.
// [Drop] estimates the true value. It stays useful for comparison with published
// figures. With groups in the ancestry it is approximate besides. One pass over
// the pedigree.
func OverstatedAncestralInbreeding(p *pedigree.Pedigree) []float64 {
	all := make([]int, p.Len())
	for i := range all {
		all[i] = i
	}
	t := newTree(p, all)
	byNode, passed := make([]float64, t.len()), make([]float64, t.len())
	for k := range int32(t.len()) {
		t.above(k, func(parent int32, weight float64) { byNode[k] += weight * passed[parent] })
		passed[k] = byNode[k]
		if t.group[k] == none {
			passed[k] += (1 - byNode[k]) * p.Inbreeding(int(t.animal[k]))
		}
	}
	byAnimal := make([]float64, p.Len())
	for i, k := range t.node {
		byAnimal[i] = byNode[k]
	}
	return byAnimal
}
