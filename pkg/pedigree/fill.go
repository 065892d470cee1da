package pedigree

// filler computes what is new in each node, level by level: a node needs the
// inbreeding of its parents, and the kinship of a couple needs what is new in
// their common ancestors, which are on the levels up to that of the pivot.
type filler struct {
	graph   *graph
	reduced *reduced
	pivots  *pivots
	first   int // node; what stands before is known
	workers workers[*sweeper]
}

// fill computes families, inbreeding coefficients and the diagonals of K and D
// for the nodes from first on; those before are known.
//
// An animal has K = (1 + F)/2 and D = 1/2 - (K of sire + K of dam)/4. A group of
// candidates c with shares w has, when it is one unknown animal, K = the mean
// of the candidates' K; when each of the young has its own draw, K = w'Kw, the
// kinship of two draws. D is K - w'Kw in both cases. A source has K = D = its
// kinship.
func (g *graph) fill(first int) {
	firstFamily := len(g.families)
	g.addFamilies(first)
	r := g.reduce(g.parents(first), first)
	f := &filler{graph: g, reduced: r, pivots: g.pivots(r, first, firstFamily), first: first}
	f.workers.create = func() *sweeper { return newSweeper(r) }
	for level := range len(r.levels) - 1 {
		from, to := r.levels[level], r.levels[level+1]
		f.settle(from, to)
		f.settleGroups(from, to)
		f.sweep(f.pivots.among(from, to))
	}
	for k := int32(first); int(k) < g.len(); k++ {
		if r.place[k] == none {
			g.settle(k)
		}
	}
	g.measure(first, firstFamily)
}

// parents marks the parents of the nodes from first on, and the groups, also those
// that have no young yet.
func (g *graph) parents(first int) []bool {
	is := make([]bool, g.len())
	for k := int32(first); int(k) < g.len(); k++ {
		g.above(k, func(parent int32, _ float64) { is[parent] = true })
		is[k] = is[k] || g.group[k] != none
	}
	return is
}

// settle computes K and D of the animals of a level.
func (f *filler) settle(from, to int32) {
	for place := from; place < to; place++ {
		k := f.reduced.node[place]
		if int(k) >= f.first && f.graph.group[k] == none {
			f.graph.settle(k)
			f.reduced.above[place].own = f.graph.own[k]
		}
	}
}

// settle computes K and D of an animal whose parents are settled, and of a couple
// of close relatives first its kinship.
func (g *graph) settle(k int32) {
	sire, dam := g.sire[k], g.dam[k]
	family := g.familyOf(k)
	if family.f == closed {
		family.f = g.closeKinship(sire, dam)
	}
	g.self[k] = (1 + family.f) / 2
	g.own[k] = 0.5 - (g.selfOf(sire)+g.selfOf(dam))/4
}

func (g *graph) selfOf(k int32) float64 {
	if k == none {
		return 0
	}
	return g.self[k]
}

// settleGroups computes K and D of the groups of a level. As long as a group has
// no D, its kinship with itself as the sweep sees it is w'Kw.
func (f *filler) settleGroups(from, to int32) {
	var groups []int32
	for place := from; place < to; place++ {
		if k := f.reduced.node[place]; int(k) >= f.first && f.graph.group[k] != none {
			groups = append(groups, place)
		}
	}
	f.batches(groups, func(s *sweeper, batch []int32) {
		for _, place := range batch {
			s.mark(place, ofMate)
		}
		s.sweep(batch)
		for lane, place := range batch {
			f.graph.settleGroup(f.reduced.node[place], s.value(place, lane))
		}
	})
	for _, place := range groups {
		f.reduced.above[place].own = f.graph.own[f.reduced.node[place]]
	}
}

// settleGroup takes the kinship of two draws.
func (g *graph) settleGroup(k int32, drawn float64) {
	c := g.groups[g.group[k]]
	switch c.kind {
	case Source:
		g.self[k], g.own[k] = c.base, c.base
	case Several:
		g.self[k], g.own[k] = drawn, 0
	case OneUnknown:
		self := 0.0
		for _, t := range c.terms {
			self += t.weight * g.self[t.node]
		}
		g.self[k], g.own[k] = self, max(0, self-drawn) // below 0 by rounding only, as with one candidate
	}
}

// sweep computes the kinships of pivots to their mates.
func (f *filler) sweep(places []int32) {
	f.batches(places, func(s *sweeper, batch []int32) {
		for _, place := range batch {
			for _, m := range f.pivots.of(place) {
				s.mark(m.place, ofMate)
			}
		}
		s.sweep(batch)
		for lane, place := range batch {
			for _, m := range f.pivots.of(place) {
				f.graph.families[m.family].f = s.value(m.place, lane)
			}
		}
	})
}

// batches shares places out to the workers, as many at a time as there are lanes.
func (f *filler) batches(places []int32, task func(s *sweeper, batch []int32)) {
	count := (len(places) + lanes - 1) / lanes
	f.workers.do(count, func(s *sweeper, i int) {
		s.begin()
		task(s, places[i*lanes:min((i+1)*lanes, len(places))])
	})
}
