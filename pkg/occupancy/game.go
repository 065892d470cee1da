package occupancy

import (
	"math/rand/v2"
	"sort"
)

// game is one season that is played. It is used for one after another.
type game struct {
	season *Season
	deck   *deck
	source *rand.PCG
	course []int     // of each clutch; -1 is none
	load   [][]int32 // [resource][day]: how much higher than on the day before; one day longer than the season
}

func newGame(s *Season, d *deck) *game {
	g := &game{season: s, deck: d, source: new(rand.PCG), course: make([]int, len(s.Clutches))}
	for range s.Resources {
		g.load = append(g.load, make([]int32, s.Days+1))
	}
	return g
}

// deal draws the courses of season n.
func (g *game) deal(seed uint64, n int) {
	for _, load := range g.load {
		clear(load)
	}
	g.source.Seed(seed, uint64(n))
	random := rand.New(g.source)
	for i, odds := range g.deck.odds {
		drawn := random.Float64()
		g.course[i] = sort.Search(len(odds), func(k int) bool { return drawn < odds[k] })
		if g.course[i] == len(odds) {
			g.course[i] = -1
			continue
		}
		g.put(g.deck.rises[i][g.course[i]], 1)
	}
}

// put adds rises to the loads, or with a sign of −1 takes them away.
func (g *game) put(rises []rise, sign int32) {
	for _, r := range rises {
		g.load[r.resource][r.day] += sign * r.by
	}
}

// look gives the greatest load of a resource and on how many days there are too
// few.
func (g *game) look(resource int) (peak, over int32) {
	count := int32(g.season.Resources[resource].Count)
	load := int32(0)
	for _, by := range g.load[resource][:g.season.Days] {
		load += by
		peak = max(peak, load)
		if load > count {
			over++
		}
	}
	return peak, over
}
