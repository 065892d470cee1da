package pedigree

// nowhere is the place of unknown parents. It has no node and belongs to no level.
const nowhere = 0

// reduced is the part of a pedigree that kinships of some nodes need: these and
// their ancestors. Its nodes, called places, are numbered by level, so that parents come
// before their young, and so that those that are used together lie together. For inbreeding the nodes are all
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
	r.order(g, wanted, g.levels(wanted, first))
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

// order numbers the wanted nodes by level and, within a level, in the order of
// their dams, or of their sires when these are more: first those that have none.
// Then a sweep that goes through the places in order comes by their parents nearly
// in order, too, on the side where there are many.
func (r *reduced) order(g *graph, wanted []bool, level []int32) {
	side := g.moreParents(wanted)
	var nodes []int32
	var levels [][]int32 // nodes, as far as they can be put in order
	for k, is := range wanted {
		r.place[k] = none
		if !is {
			continue
		}
		nodes = append(nodes, int32(k))
		for len(levels) <= int(level[k]) {
			levels = append(levels, nil)
		}
		if level[k] == 0 || side[k] == none {
			levels[level[k]] = append(levels[level[k]], int32(k))
		}
	}
	young := sorted(len(nodes), g.len()+1, func(i int) int32 { return side[nodes[i]] + 1 })
	next := startsOf(young, g.len(), func(i int32) int32 { return side[nodes[i]] })
	r.node = make([]int32, 1, len(nodes)+1)
	for l := range levels {
		r.levels = append(r.levels, int32(len(r.node)))
		for _, k := range levels[l] {
			r.place[k] = int32(len(r.node))
			r.node = append(r.node, k)
			for _, i := range young[next[k]:next[k+1]] {
				if y := nodes[i]; level[y] > 0 {
					levels[level[y]] = append(levels[level[y]], y)
				}
			}
		}
	}
	r.levels = append(r.levels, int32(len(r.node)))
}

// moreParents gives the sires or the dams of all nodes: those of which there are
// more.
func (g *graph) moreParents(wanted []bool) []int32 {
	is := make([]uint8, g.len())
	count := [2]int{}
	for k, wanted := range wanted {
		if !wanted {
			continue
		}
		for side, parent := range [2]int32{g.sire[k], g.dam[k]} {
			if parent != none && is[parent]&(1<<side) == 0 {
				is[parent] |= 1 << side
				count[side]++
			}
		}
	}
	if count[0] > count[1] {
		return g.sire
	}
	return g.dam
}

// startsOf gives where in a list that is sorted by key each key begins, and one
// more. Those with a negative key come first.
func startsOf(list []int32, keys int, key func(int32) int32) []int32 {
	starts := make([]int32, keys+1)
	for _, i := range list {
		if k := key(i); k >= 0 {
			starts[k+1]++
		} else {
			starts[0]++
		}
	}
	for k := range keys {
		starts[k+1] += starts[k]
	}
	return starts
}
