package occupancy

import (
	"slices"
	"sync"
)

// played is what came of the seasons that were played, by resource and season.
type played struct {
	peaks [][]int32 // the greatest need of any day
	over  [][]int32 // days on which there were too few
}

// play plays s as o says.
func (s *Season) play(o Options) played {
	var p played
	for range s.Resources {
		p.peaks = append(p.peaks, make([]int32, o.Seasons))
		p.over = append(p.over, make([]int32, o.Seasons))
	}
	deck := newDeck(s)
	o.each(func(from, step int) {
		g := newGame(s, deck)
		for n := from; n < o.Seasons; n += step {
			g.deal(o.Seed, n)
			for r := range s.Resources {
				p.peaks[r][n], p.over[r][n] = g.look(r)
			}
		}
	})
	return p
}

// each calls f in as many goroutines as there are workers, each with the first of
// its seasons and how many numbers on the next one is.
func (o Options) each(f func(from, step int)) {
	workers := max(o.Workers, 1)
	var all sync.WaitGroup
	for w := range workers {
		all.Go(func() { f(w, workers) })
	}
	all.Wait()
}

// short reports whether anything ran out in season n.
func (p played) short(n int) bool {
	return slices.ContainsFunc(p.over, func(days []int32) bool { return days[n] > 0 })
}

// any counts the seasons in which anything ran out.
func (p played) any(seasons int) Chance {
	c := Chance{Of: seasons}
	for n := range seasons {
		if p.short(n) {
			c.Seasons++
		}
	}
	return c
}

// daysOver gives the days on which there were too few of a resource, over all
// seasons.
func (p played) daysOver(resource int) int {
	sum := 0
	for _, days := range p.over[resource] {
		sum += int(days)
	}
	return sum
}
