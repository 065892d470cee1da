package pedigree

// AncestryOf gives the pedigree of these animals, of all that they descend from or
// may descend from through a [Group], and of nobody else. What is asked of it has the
// answer of p, to the rounding of the last digits, and rests on no inbreeding but
// theirs: that of p is not computed for it. The animals keep their order and are
// numbered anew; see [Pedigree.Index].
//
// The same animal may be named more than once. One pass over all animals.
func (p *Pedigree) AncestryOf(animals []int) *Pedigree {
	marked := make([]bool, p.graph.len())
	for _, i := range animals {
		marked[p.node(i)] = true
	}
	p.graph.markAncestors(marked)
	graph, node := p.graph.cut(marked)
	cut := &Pedigree{graph: graph, groups: make(map[string]int32), rows: longer[int32](nil, graph.len())}
	for k := range cut.rows {
		cut.rows[k] = none
	}
	cut.inOrder = true
	for row, k := range p.nodes {
		if marked[k] {
			cut.inOrder = cut.inOrder && node[k] == int32(len(cut.ids))
			cut.rows[node[k]] = int32(len(cut.ids))
			cut.nodes = append(cut.nodes, node[k])
			cut.ids = append(cut.ids, p.ids[row])
		}
	}
	cut.inOrder = cut.inOrder && len(cut.nodes) == len(cut.rows)
	for k, of := range graph.group {
		if of != none {
			cut.groups[graph.groups[of].id] = int32(k)
		}
	}
	cut.table = idTable{}.grown(cut.ids, 0)
	for row := range cut.ids {
		cut.table.add(cut.ids, row)
	}
	cut.walkers.New = func() any { return newWalker(graph.len()) }
	return cut
}

// cut gives the graph of the marked nodes, whose parents are marked too, with nothing
// computed, and the node of each in it.
func (g *graph) cut(marked []bool) (c graph, node []int32) {
	node = make([]int32, g.len())
	at := func(k int32) int32 {
		if k == none {
			return none
		}
		return node[k]
	}
	for k, is := range marked {
		if !is {
			continue
		}
		node[k] = int32(c.len())
		group := int32(none)
		if g.group[k] != none {
			group = int32(len(c.groups))
			from := g.groups[g.group[k]]
			to := candidates{id: from.id, kind: from.kind, base: from.base}
			for _, t := range from.terms {
				to.terms = append(to.terms, term{node[t.node], t.weight})
			}
			c.groups = append(c.groups, to)
		}
		c.sire, c.dam, c.group = append(c.sire, at(g.sire[k])), append(c.dam, at(g.dam[k])), append(c.group, group)
	}
	return c.bare(), node
}
