package pedigree

// nowhere is the place of unknown parents. It has no node and belongs to no level.
const nowhere = 0

// reduced is the part of a pedigree that kinships of some nodes need: these and
// their ancestors. Its nodes, called places, are numbered by level and, within a
// level, in the order of the graph, so that parents come before their young and
// those that are used together lie together. For inbreeding the nodes are all
// parents; in a pedigree of clutches they are few (Sargolzaei, Iwaisaki and
// Colleau 2005, Journal of Animal Breeding and Genetics 122:325).
type reduced struct {
	node   []int32   // by place
	place  []int32   // by node; none when the node is left out
	above  []descent // by place
	terms  [][]term  // of groups; nodes are places
	levels []int32   // first place of each level, and the number of places
}

// descent has the places of the parents of a place, and what is new in it, 0 as
// long as that is not known. The sire of a group is the number of its terms
// instead, counted down from -1.
type descent struct {
	sire, dam int32
	own       float64
}

// reduce gives the wanted nodes and their ancestors, which it marks as wanted.
// Nodes before first are on level 0, a later one stands one level above the
// higher of its parents.
func (g *graph) reduce(wanted []bool, first int) *reduced {
	g.markAncestors(wanted)
	r := &reduced{place: make([]int32, g.len())}
	r.order(wanted, g.levels(wanted, first))
	r.above = make([]descent, len(r.node))
	for place, k := range r.node {
		if place == nowhere {
			continue
		}
		d := descent{sire: r.of(g.sire[k]), dam: r.of(g.dam[k])}
		if g.group[k] != none {
			d.sire = r.addTerms(g.groups[g.group[k]].terms)
		}
		if int(k) < first {
			d.own = g.own[k]
		}
		r.above[place] = d
	}
	return r
}

// of gives the place of a parent.
func (r *reduced) of(k int32) int32 {
	if k == none {
		return nowhere
	}
	return r.place[k]
}

func (r *reduced) addTerms(terms []term) int32 {
	own := make([]term, len(terms))
	for i, t := range terms {
		own[i] = term{r.place[t.node], t.weight}
	}
	r.terms = append(r.terms, own)
	return -int32(len(r.terms))
}

// levels gives the level of each wanted node.
func (g *graph) levels(wanted []bool, first int) []int32 {
	level := make([]int32, g.len())
	for k := int32(first); int(k) < g.len(); k++ {
		if wanted[k] {
			g.above(k, func(parent int32, _ float64) { level[k] = max(level[k], level[parent]+1) })
		}
	}
	return level
}

// order numbers the wanted nodes by level.
func (r *reduced) order(wanted []bool, level []int32) {
	var nodes []int32
	highest := int32(-1)
	for k, is := range wanted {
		r.place[k] = none
		if is {
			nodes = append(nodes, int32(k))
			highest = max(highest, level[k])
		}
	}
	r.node = make([]int32, 1, len(nodes)+1)
	for _, i := range sorted(len(nodes), int(highest)+1, func(i int) int32 { return level[nodes[i]] }) {
		k, place := nodes[i], int32(len(r.node))
		r.node, r.place[k] = append(r.node, k), place
		for len(r.levels) <= int(level[k]) {
			r.levels = append(r.levels, place)
		}
	}
	r.levels = append(r.levels, int32(len(r.node)))
}
