package pedigree

// Grow gives the pedigree with more animals and groups. New animals are numbered
// on from [Pedigree.Len]; they may have old and new animals and groups as
// parents, and new groups may have old candidates. What is known of the old
// animals stays as it is: none of them can be named again. p does not change.
//
// Errors are those of [New]; entries are counted from the first of p.
func (p *Pedigree) Grow(records []Record, groups ...Group) (*Pedigree, error) {
	all, old := p.records()
	return New(append(all, records...), append(old, groups...)...)
}

// records gives what the pedigree was made from.
func (p *Pedigree) records() ([]Record, []Group) {
	name := func(k int32) string {
		switch {
		case k == none:
			return ""
		case p.rows[k] == none:
			return p.graph.groups[p.graph.group[k]].id
		}
		return p.ids[p.rows[k]]
	}
	records := make([]Record, p.Len())
	for i, k := range p.nodes {
		records[i] = Record{ID: p.ids[i], Sire: name(p.graph.sire[k]), Dam: name(p.graph.dam[k])}
	}
	groups := make([]Group, len(p.graph.groups))
	for i, c := range p.graph.groups {
		groups[i] = Group{ID: c.id, Kind: c.kind, Kinship: c.base}
		for _, t := range c.terms {
			groups[i].Candidates = append(groups[i].Candidates, Candidate{ID: name(t.node), Weight: t.weight})
		}
	}
	return records, groups
}
