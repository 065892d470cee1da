package pedigree

import "slices"

// graph is the pedigree in an order that puts parents before children. Its
// nodes are animals and groups: what an animal has of its ancestors comes half
// through its sire node and half through its dam node, what a group has comes
// from its candidates by their shares.
type graph struct {
	sire, dam []int32 // parents of an animal; none when unknown, and for groups
	group     []int32 // place in groups; none for an animal
	groups    []candidates

	self []float64 // kinship of each node to itself, the diagonal of K
	own  []float64 // what is new in each node, the diagonal of D

	family   []int32 // of each node
	families []family
}

// candidates are a group: nodes of animals and their probabilities.
type candidates struct {
	id    string
	kind  GroupKind
	terms []term  // none for a Source
	base  float64 // kinship of a Source
}

// term is a node with a weight.
type term struct {
	node   int32
	weight float64
}

// extended gives the graph with the new places, in their order, after its nodes;
// node has the node of each. What is computed of the new ones is still 0.
func (g *graph) extended(l *links, order []int, node []int32) graph {
	n, more := g.len(), len(order)
	e := graph{
		sire: longer(g.sire, more), dam: longer(g.dam, more), group: longer(g.group, more), groups: slices.Clip(g.groups),
		self: longer(g.self, more), own: longer(g.own, more),
		family: longer(g.family, more), families: slices.Clip(g.families),
	}
	at := func(place int) int32 {
		switch {
		case place == none:
			return none
		case place < 0:
			return nodeAt(place)
		}
		return node[place]
	}
	for i, place := range order {
		k := n + i
		e.sire[k], e.dam[k], e.group[k] = none, none, none
		if place < l.records {
			e.sire[k], e.dam[k] = at(l.parents[place][0]), at(l.parents[place][1])
			continue
		}
		from := l.groups[place-l.records]
		c := candidates{id: from.ID, kind: from.Kind, base: from.Kinship}
		for i, share := range from.shares() {
			c.terms = append(c.terms, term{at(l.members[place-l.records][i]), share})
		}
		e.group[k] = int32(len(e.groups))
		e.groups = append(e.groups, c)
	}
	return e
}

// longer gives a copy with more elements, which are 0.
func longer[E any](s []E, more int) []E {
	longer := make([]E, len(s)+more)
	copy(longer, s)
	return longer
}

func (g *graph) familyOf(k int32) *family { return &g.families[g.family[k]] }

func (g *graph) len() int { return len(g.sire) }

// bare gives a graph with the same parents, of which nothing is computed.
func (g *graph) bare() graph {
	n := g.len()
	return graph{
		sire: g.sire, dam: g.dam, group: g.group, groups: g.groups,
		self: make([]float64, n), own: make([]float64, n), family: make([]int32, n),
	}
}

// markAncestors adds the ancestors of the marked nodes.
func (g *graph) markAncestors(marked []bool) {
	for k := int32(g.len()) - 1; k >= 0; k-- {
		if marked[k] {
			g.above(k, func(parent int32, _ float64) { marked[parent] = true })
		}
	}
}
