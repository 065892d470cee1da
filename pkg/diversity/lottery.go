package diversity

import (
	"slices"
	"sync"
)

// lottery is what all games have in common.
type lottery struct {
	tree   *tree
	living []int32    // nodes
	from   [][2]int32 // by node: the nodes of sire and dam, or none - 1 - place in rare
	rare   []origin
	groups []int32 // nodes of groups, in order
	count  int     // founders
	pools  []pool  // by source
}

// origin is where a gene comes from if not from a parent that is certain.
type origin struct {
	group  int32 // node of the group; none for a founder's gene
	number int32 // of the founder's gene
	source int32 // of the founder's gene, or none
}

func newLottery(t *tree, living []int, founders Contributions) *lottery {
	l := &lottery{tree: t, from: make([][2]int32, t.len()), count: len(founders)}
	for _, i := range living {
		l.living = append(l.living, t.node[i])
	}
	for _, s := range t.sources {
		l.pools = append(l.pools, newPool(s.kinship))
	}
	for k := range int32(t.len()) {
		if t.group[k] != none {
			l.groups = append(l.groups, k)
			continue
		}
		place := int32(none)
		t.founders(k, func(f Founder, _ float64) { place = int32(founders.find(f)) })
		for side, parent := range [2]int32{t.sire[k], t.dam[k]} {
			l.from[k][side] = l.origin(parent, 2*place+int32(side), t.source[k][side])
		}
	}
	return l
}

// origin gives what stands in from for a parent, or for a founder's gene when
// there is none.
func (l *lottery) origin(parent, number, source int32) int32 {
	rare := origin{group: none, number: number, source: source}
	switch {
	case parent != none && l.tree.group[parent] == none:
		return parent
	case parent != none:
		rare.group = parent
	}
	l.rare = append(l.rare, rare)
	return none - int32(len(l.rare))
}

// find gives the place of a founder that is there.
func (c Contributions) find(f Founder) int {
	place, _ := slices.BinarySearchFunc(c, f, func(c Contribution, f Founder) int { return c.Founder.compare(f) })
	return place
}

// run shares the drops out and adds up what the workers counted.
func (l *lottery) run(d Drops, workers int) *tally {
	tallies := make([]*tally, workers)
	var all sync.WaitGroup
	for w := range workers {
		all.Go(func() {
			game := l.newGame()
			for drop := w; drop < d.Count; drop += workers {
				game.play(d.Seed, uint64(drop))
			}
			tallies[w] = game.tally
		})
	}
	all.Wait()
	for _, other := range tallies[1:] {
		tallies[0].add(other)
	}
	return tallies[0]
}
