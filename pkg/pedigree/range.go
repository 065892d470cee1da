package pedigree

// Range gives the least and the greatest inbreeding coefficient that animal i can
// have, over all ways in which its parents and ancestors could have been. They
// are equal to [Pedigree.Inbreeding] when no [Group] stands in the ancestry. ok
// is false when there are too many ways to go through, and the range is not
// known; see [Pedigree.KinshipRange].
func (p *Pedigree) Range(i int) (low, high float64, ok bool) {
	f := p.Inbreeding(i)
	return f, f, !p.Uncertain(i)
}

// KinshipRange gives the least and the greatest kinship that animals i and j can
// have, over all ways in which their parents and ancestors could have been.
func (p *Pedigree) KinshipRange(i, j int) (low, high float64, ok bool) {
	f := p.Kinship(i, j)
	return f, f, !p.Uncertain(i) && !p.Uncertain(j)
}
