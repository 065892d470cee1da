package pedigree

// pivots are the couples of which the kinship is to be computed, by one of the
// two, the pivot, which is swept from. The kinship of a couple comes from their
// common ancestors, so it can be computed as soon as it is known what is new in
// the pivot and its ancestors, for mates of any age.
type pivots struct {
	start []int32 // by place: where its mates begin; one more at the end
	mates []mate
}

// mate is the place of the other of a couple, and the family of their young.
type mate struct{ place, family int32 }

// closed marks, in place of the inbreeding coefficient, a family of which the
// parents are so close that no sweep is needed.
const closed = -1

// pivots finds the couples that are parents of the nodes from first on. The pivot
// is the one with more mates.
func (g *graph) pivots(r *reduced, first, firstFamily int) *pivots {
	n := len(r.node)
	couples := g.couples(r, first, firstFamily)
	count := make([]int32, n)
	for _, c := range couples {
		count[c[0]]++
		count[c[1]]++
	}
	for i, c := range couples {
		if count[c[1]] > count[c[0]] {
			couples[i][0], couples[i][1] = c[1], c[0]
		}
	}
	p := &pivots{start: make([]int32, n+1), mates: make([]mate, len(couples))}
	for i, c := range sorted(len(couples), n, func(i int) int32 { return couples[i][0] }) {
		couple := couples[c]
		p.start[couple[0]+1] = int32(i + 1)
		p.mates[i] = mate{couple[1], couple[2]}
	}
	for k := range n {
		p.start[k+1] = max(p.start[k+1], p.start[k])
	}
	return p
}

// couples gives the places of sire and dam, and the family of their young, of
// those families that need a sweep; it marks the others.
func (g *graph) couples(r *reduced, first, firstFamily int) [][3]int32 {
	var couples [][3]int32
	for k := range g.firstOfFamilies(first, firstFamily) {
		sire, dam := g.sire[k], g.dam[k]
		switch {
		case sire == none || dam == none:
		case g.close(sire, dam):
			g.families[g.family[k]].f = closed
		default:
			couples = append(couples, [3]int32{r.place[sire], r.place[dam], g.family[k]})
		}
	}
	return couples
}

// among gives those places from one to another that are pivots.
func (p *pivots) among(from, to int32) []int32 {
	var places []int32
	for k := from; k < to; k++ {
		if p.start[k+1] > p.start[k] {
			places = append(places, k)
		}
	}
	return places
}

// of gives the mates of a pivot.
func (p *pivots) of(place int32) []mate { return p.mates[p.start[place]:p.start[place+1]] }
