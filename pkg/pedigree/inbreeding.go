package pedigree

// fill computes the inbreeding coefficients and the diagonals of K and D, parents
// first.
//
// An animal has K = (1 + F)/2 and D = 1/2 - (K of sire + K of dam)/4. A group of
// candidates c with shares w has, when it is one unknown animal, K = the mean
// of the candidates' K; when each of the young has its own draw, K = w'Kw, the
// kinship of two draws. D is K - w'Kw in both cases.
func (p *Pedigree) fill() {
	g := &p.graph
	n := g.len()
	g.self, g.own = make([]float64, n), make([]float64, n)
	p.inbreeding = make([]float64, n)
	couples := g.couples()
	walker := newWalker(n)
	for k := range int32(n) {
		if g.group[k] != none {
			g.self[k], g.own[k] = g.ofGroup(walker, g.groups[g.group[k]])
		} else {
			f := couples.inbreeding(k)
			p.inbreeding[k] = f
			g.self[k] = (1 + f) / 2
			g.own[k] = 0.5 - (g.selfOf(g.sire[k])+g.selfOf(g.dam[k]))/4
		}
		couples.settle(g, walker, k)
	}
}

func (g *graph) ofGroup(w *walker, c candidates) (self, own float64) {
	if c.kind == Source {
		return c.base, c.base
	}
	drawn := w.cross(g, c.terms, c.terms)
	if c.kind == Several {
		return drawn, 0
	}
	for _, t := range c.terms {
		self += t.weight * g.self[t.node]
	}
	return self, max(0, self-drawn) // below 0 by rounding only, as with one candidate
}

func (g *graph) selfOf(k int32) float64 {
	if k == none {
		return 0
	}
	return g.self[k]
}

// Inbreeding gives the inbreeding coefficient F of animal i, from 0 to 1: the
// kinship of its parents, 0 when one is unknown. When a [Group] stands in the
// ancestry it is the expected value.
//
// All were computed by [New], once for each different couple of parents: by a walk
// up their ancestors (Meuwissen and Luo 1992, Genetics Selection Evolution
// 24:305), or, for a parent whose walks would cost more than that, by one sweep
// over the pedigree for all its mates (Colleau 2002, the same journal 34:409).
func (p *Pedigree) Inbreeding(i int) float64 { return p.inbreeding[p.node(i)] }

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
	return w.cross(&p.graph, a, b)
}
