package diversity

import (
	"slices"
	"sync"
)

// lottery is what all games have in common.
type lottery struct {
	tree    *tree
	living  []int32    // nodes
	founder [][2]int32 // by node: places of the founders of the genes from sire and dam; none when a parent is known
	count   int        // founders
	pools   []pool     // by source
}

func newLottery(t *tree, living []int, founders Contributions) *lottery {
	l := &lottery{tree: t, founder: make([][2]int32, t.len()), count: len(founders)}
	for _, i := range living {
		l.living = append(l.living, t.node[i])
	}
	for _, s := range t.sources {
		l.pools = append(l.pools, newPool(s.kinship))
	}
	for k := range l.founder {
		l.founder[k] = [2]int32{none, none}
		t.founders(int32(k), func(f Founder, _ float64) {
			place := int32(founders.find(f))
			if f.Role != UnknownDam {
				l.founder[k][0] = place
			}
			if f.Role != UnknownSire {
				l.founder[k][1] = place
			}
		})
	}
	return l
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
