package pedigree

// Kinship gives the kinship of animals i and j, from 0 to 1: the expected
// inbreeding of their young. Of an animal to itself it is (1 + F)/2. It is
// exactly 0 for animals that have no known ancestor in common, and the same in
// both directions. Time grows with the number of ancestors of both.
func (p *Pedigree) Kinship(i, j int) float64 {
	a, b := p.node(i), p.node(j)
	if a == b {
		return p.computed().self[a]
	}
	return p.cross([]term{{a, 1}}, []term{{b, 1}})
}

// KinshipTo gives the kinship of every animal to animal j, by number. Values
// agree with [Pedigree.Kinship] to the rounding of the last digits. Two passes
// over all animals.
func (p *Pedigree) KinshipTo(j int) []float64 {
	v := make([]float64, p.graph.len())
	v[p.node(j)] = 1
	p.computed().times(v)
	return p.toRows(v)
}

// MeanKinship gives, by number, the mean kinship of every animal to the living
// ones, which are given by number; a living animal's mean counts its kinship to
// itself (Ballou and Lacy 1995, in Population Management for Survival and
// Recovery, 76). An animal with a low value carries genes that few others carry.
// One named twice counts twice. With no living animals all values are 0. Two
// passes over all animals.
func (p *Pedigree) MeanKinship(living []int) []float64 {
	v := make([]float64, p.graph.len())
	for _, i := range living {
		v[p.node(i)] += 1 / float64(len(living))
	}
	p.computed().times(v)
	return p.toRows(v)
}

// GeneDiversity gives the gene diversity that the living animals keep, as a share
// of that of unrelated founders: 1 less the mean of their mean kinship (Lacy
// 1995, Zoo Biology 14:565). No animals keep none: the result is 0. Time grows
// with the number of ancestors.
func (p *Pedigree) GeneDiversity(living []int) float64 {
	if len(living) == 0 {
		return 0
	}
	all := p.equal(living)
	return 1 - p.cross(all, all)
}
