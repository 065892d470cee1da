package pedigree

// Block gives the kinships of some animals to others: entry [r][c] is that of
// rows[r] and cols[c]. Values agree with [Pedigree.Kinship] to the rounding of
// the last digits. An animal may be in both lists, and more than once.
//
// The animals of the shorter list are taken some at a time through the ancestors
// that all have, as [New] does it for parents, on several cores.
func (p *Pedigree) Block(rows, cols []int) [][]float64 {
	block := make([][]float64, len(rows))
	for r := range block {
		block[r] = make([]float64, len(cols))
	}
	if len(rows) <= len(cols) {
		p.eachKinship(rows, cols, func(r, c int, k float64) { block[r][c] = k })
	} else {
		p.eachKinship(cols, rows, func(c, r int, k float64) { block[r][c] = k })
	}
	return block
}

// eachKinship calls set with the places in the lists and the kinship of each
// pivot and each mate, from several goroutines.
func (p *Pedigree) eachKinship(pivots, mates []int, set func(pivot, mate int, k float64)) {
	wanted := make([]bool, p.graph.len())
	for _, list := range [][]int{pivots, mates} {
		for _, i := range list {
			wanted[p.node(i)] = true
		}
	}
	r := p.computed().reduce(wanted, p.graph.len())
	places := func(animals []int) []int32 {
		at := make([]int32, len(animals))
		for i, a := range animals {
			at[i] = r.place[p.node(a)]
		}
		return at
	}
	from, to := places(pivots), places(mates)
	w := workers[*sweeper]{create: func() *sweeper { return newSweeper(r) }}
	w.do((len(from)+lanes-1)/lanes, func(s *sweeper, batch int) {
		first := batch * lanes
		s.begin()
		for _, k := range to {
			s.mark(k, ofMate)
		}
		s.sweep(from[first:min(first+lanes, len(from))])
		for lane := range min(lanes, len(from)-first) {
			for m, k := range to {
				set(first+lane, m, s.value(k, lane))
			}
		}
	})
}
