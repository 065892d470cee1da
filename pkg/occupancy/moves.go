package occupancy

import (
	"fmt"
	"math"
	"sync"
)

// Move is a clutch that comes earlier or later.
type Move struct {
	Clutch int // place in Season.Clutches
	Days   int // later; negative is earlier
}

// Moved is what a move would do.
type Moved struct {
	Move
	Any       Change   // to the chance that anything runs out
	Resources []Change // in the order of Season.Resources
}

// Change is a chance after a move, and how it compares with before on the same
// seasons.
type Change struct {
	Short  Chance // of running out after the move
	Spared int    // seasons that ran out before and do not now
	Spoilt int    // seasons that run out only now
}

// Difference gives by how much the chance of running out falls, and the standard
// error of that, √((a+b−(a−b)²/n)/n²) for a seasons spared and b spoilt of n.
func (c Change) Difference() (value, standardError float64) {
	n, a, b := float64(c.Short.Of), float64(c.Spared), float64(c.Spoilt)
	return (a - b) / n, math.Sqrt(a+b-(a-b)*(a-b)/n) / n
}

// note counts a season.
func (c *Change) note(before, after bool) {
	switch {
	case before && !after:
		c.Spared++
	case !before && after:
		c.Spoilt++
	}
	if after {
		c.Short.Seasons++
	}
}

func (c *Change) add(d Change) {
	c.Short.Seasons += d.Short.Seasons
	c.Spared += d.Spared
	c.Spoilt += d.Spoilt
}

// TryMoves gives what each of some moves would do, one at a time, on the seasons
// that [Assess] plays with the same options. The error is a *[SeasonError]. It
// panics when o is out of range, as [Assess] does, or a move is of no clutch.
//
// The cost for each season is O(days × resources), and for each move of a clutch
// that comes in it the days on which it holds something before or after.
func TryMoves(s Season, o Options, moves []Move) ([]Moved, error) {
	o.must()
	for _, m := range moves {
		if m.Clutch < 0 || m.Clutch >= len(s.Clutches) {
			panic(fmt.Sprintf("occupancy: a move of clutch number %d of %d", m.Clutch, len(s.Clutches)))
		}
	}
	if err := s.check(); err != nil {
		return nil, err
	}
	t := newTrial(&s, moves)
	all := t.blank(o.Seasons)
	var adding sync.Mutex
	o.each(func(from, step int) {
		part := t.blank(o.Seasons)
		p := newProbe(t)
		for n := from; n < o.Seasons; n += step {
			p.game.deal(o.Seed, n)
			p.look(part)
		}
		adding.Lock()
		defer adding.Unlock()
		for i := range all {
			all[i].Any.add(part[i].Any)
			for r := range all[i].Resources {
				all[i].Resources[r].add(part[i].Resources[r])
			}
		}
	})
	return all, nil
}
