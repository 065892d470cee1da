package pedigree

// Grow gives the pedigree with more animals and groups. New animals are numbered
// on from [Pedigree.Len]. They may have old and new animals and groups as
// parents, and new groups may have old candidates. Old animals stay as they are:
// their parents cannot be changed, and what was computed of them is used again.
// p does not change.
//
// Errors are those of [New], with entries counted among the new ones. The numbers
// are those that New gives for all together, to the rounding of the last digits.
//
// What is known of the old ones is copied; apart from that, time grows with the
// new couples and their ancestors.
func (p *Pedigree) Grow(records []Record, groups ...Group) (*Pedigree, error) {
	p.computed()
	grown, err := p.linked(records, groups)
	if err != nil {
		return nil, err
	}
	grown.computed()
	return grown, nil
}

// linked gives the pedigree with more animals and groups, of which nothing is
// computed yet. What there is of p must be.
func (p *Pedigree) linked(records []Record, groups []Group) (*Pedigree, error) {
	links, err := link(p, records, groups)
	if err != nil {
		return nil, err
	}
	order, err := links.order()
	if err != nil {
		return nil, err
	}
	first := p.graph.len()
	node := make([]int32, len(order))
	for i, place := range order {
		node[place] = int32(first + i)
	}
	grown := &Pedigree{
		ids:    links.rowIDs,
		table:  links.table,
		groups: links.groupNodes(node),
		nodes:  longer(p.nodes, len(records)),
		rows:   longer(p.rows, len(order)),
		graph:  p.graph.extended(links, order, node),
		first:  first,
	}
	copy(grown.nodes[p.Len():], node)
	grown.inOrder = (p.inOrder || p.Len() == 0) && len(grown.nodes) == len(grown.rows)
	for i, place := range order {
		grown.inOrder = grown.inOrder && grown.nodes[first+i] == int32(first+i)
		if place < len(records) {
			grown.rows[first+i] = int32(p.Len() + place)
		} else {
			grown.rows[first+i] = none
		}
	}
	grown.walkers.New = func() any { return newWalker(first + len(order)) }
	return grown, nil
}
