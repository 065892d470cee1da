package pedigree

// Inbreeding gives the inbreeding coefficient F of animal i, from 0 to 1: the
// kinship of its parents, 0 when one is unknown. When a [Group] stands in the
// ancestry it is the expected value.
//
// All were computed by [New], once for each different couple of parents: by one
// sweep up and one down the pedigree for each parent and all its mates, over
// their ancestors only (Colleau 2002, Genetics Selection Evolution 34:409;
// Sargolzaei, Iwaisaki and Colleau 2005, Journal of Animal Breeding and Genetics
// 122:325). A couple of full siblings, or of a parent and its young, needs none.
func (p *Pedigree) Inbreeding(i int) float64 { return p.computed().familyOf(p.node(i)).f }

// ExpectedInbreeding gives the expected inbreeding coefficient of young of one of
// the sires and one of the dams, all equally likely: the mean kinship of sires
// to dams. An animal named on both sides counts as mated with itself; keep the
// two apart. An animal named twice on one side is twice as likely.
//
// It panics when there are no sires or no dams. Time grows with the number of
// ancestors, not with the number of pairs.
func (p *Pedigree) ExpectedInbreeding(sires, dams []int) float64 {
	if len(sires) == 0 || len(dams) == 0 {
		panic("pedigree: no sires or no dams")
	}
	return p.cross(p.equal(sires), p.equal(dams))
}

// equal gives animals with equal weights that add up to 1.
func (p *Pedigree) equal(animals []int) []term {
	terms := make([]term, len(animals))
	for i, a := range animals {
		terms[i] = term{p.node(a), 1 / float64(len(animals))}
	}
	return terms
}

// cross gives a'Kb with a walker that is free.
func (p *Pedigree) cross(a, b []term) float64 {
	w := p.walkers.Get().(*walker)
	defer p.walkers.Put(w)
	return w.cross(p.computed(), a, b)
}
