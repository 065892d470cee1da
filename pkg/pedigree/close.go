package pedigree

// close reports whether [graph.closeKinship] can tell the kinship of a couple: an
// animal with itself, with its parent, or with a full sibling. These are most
// couples of a line that is kept closed, where ancestors go back without end.
func (g *graph) close(a, b int32) bool {
	return a == b || g.isParent(a, b) || g.isParent(b, a) || g.fullSibs(a, b)
}

// closeKinship gives the kinship of a close couple from what is known of the two
// and their parents.
func (g *graph) closeKinship(a, b int32) float64 {
	switch {
	case a == b:
		return g.self[a]
	case g.isParent(a, b): // the mean of the parent's kinships with both parents
		return (g.self[a] + g.familyOf(b).f) / 2
	case g.isParent(b, a):
		return (g.self[b] + g.familyOf(a).f) / 2
	}
	return (g.self[g.sire[a]]+g.self[g.dam[a]])/4 + g.familyOf(a).f/2
}

func (g *graph) isParent(parent, young int32) bool {
	return g.sire[young] == parent || g.dam[young] == parent
}

func (g *graph) fullSibs(a, b int32) bool {
	return g.sire[a] != none && g.dam[a] != none && g.sire[a] == g.sire[b] && g.dam[a] == g.dam[b]
}
