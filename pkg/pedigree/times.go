package pedigree

// Times gives K v, where v has a number for each animal: for each animal i the
// sum over all j of the kinship of i and j times v[j]. With v = 1/n at each of n
// animals that is the mean kinship to them; the product v'Kv of contributions v
// is the kinship of the young that they would have together. K is never formed:
// two passes over all animals (Colleau 2002, Genetics Selection Evolution
// 34:409). It panics when v has not one number for each animal.
func (p *Pedigree) Times(v []float64) []float64 {
	w := p.toNodes(v)
	p.computed().times(w)
	return p.toRows(w)
}

// Contributions gives T'v, where v has a number for each animal: how much each
// animal contributed, all in all, to a pool of genes that takes v[j] from animal
// j. Every animal hands what it has received, its own v included, on to its
// parents by halves, and to the candidates of a [Group] by their probabilities.
// What goes to unknown parents and to sources is lost: the sum over the founders,
// which are the animals without known parents, falls short of the sum of v by
// that. One pass over all animals. It panics when v has not one number for each
// animal.
func (p *Pedigree) Contributions(v []float64) []float64 {
	w := p.toNodes(v)
	p.graph.up(w)
	return p.toRows(w)
}

// toNodes gives values of animals in the order of nodes, 0 for groups.
func (p *Pedigree) toNodes(v []float64) []float64 {
	if len(v) != p.Len() {
		panic("pedigree: not one number for each animal")
	}
	w := make([]float64, p.graph.len())
	if p.inOrder {
		copy(w, v)
		return w
	}
	for i, k := range p.nodes {
		w[k] = v[i]
	}
	return w
}

// toRows gives values of nodes in the order of animals; it may be the same slice.
func (p *Pedigree) toRows(w []float64) []float64 {
	if p.inOrder {
		return w
	}
	v := make([]float64, p.Len())
	for i, k := range p.nodes {
		v[i] = w[k]
	}
	return v
}

// times replaces v with K v = T (D (T'v)): what the nodes hold goes up to their
// ancestors, is weighted with what is new in each, and comes down again.
func (g *graph) times(v []float64) {
	g.up(v)
	for k, own := range g.own {
		sire, dam := g.sire[k], g.dam[k]
		sum := 0.0
		switch {
		case sire != none && dam != none:
			sum = (v[sire] + v[dam]) / 2
		case sire != none:
			sum = v[sire] / 2
		case dam != none:
			sum = v[dam] / 2
		case g.group[k] != none:
			for _, c := range g.groups[g.group[k]].terms {
				sum += v[c.node] * c.weight
			}
		}
		v[k] = v[k]*own + sum
	}
}

// up replaces v with T'v: it adds what each node holds to the nodes one step up,
// youngest first.
func (g *graph) up(v []float64) {
	for k := len(v) - 1; k >= 0; k-- {
		x := v[k]
		if x == 0 {
			continue
		}
		sire, dam := g.sire[k], g.dam[k]
		if sire != none {
			v[sire] += x / 2
		}
		if dam != none {
			v[dam] += x / 2
		}
		if sire == dam && g.group[k] != none { // a group has neither
			for _, c := range g.groups[g.group[k]].terms {
				v[c.node] += x * c.weight
			}
		}
	}
}
