package occupancy

import (
	"fmt"
	"math"
	"slices"
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
// The cost for each season is O(days × resources) for each move of a clutch that
// comes in it.
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
		g := newGame(&s, t.deck)
		for n := from; n < o.Seasons; n += step {
			g.deal(o.Seed, n)
			t.look(g, part)
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

// trial is moves that are tried.
type trial struct {
	season *Season
	deck   *deck
	moves  []Move
	rises  [][][]rise // [move][course]: what the clutch does once it is moved
}

func newTrial(s *Season, moves []Move) *trial {
	t := &trial{season: s, deck: newDeck(s), moves: moves}
	for _, m := range moves {
		t.rises = append(t.rises, s.risesOf(s.Clutches[m.Clutch], m.Days))
	}
	return t
}

func (t *trial) blank(seasons int) []Moved {
	all := make([]Moved, len(t.moves))
	change := Change{Short: Chance{Of: seasons}}
	for i, m := range t.moves {
		all[i] = Moved{Move: m, Any: change, Resources: slices.Repeat([]Change{change}, len(t.season.Resources))}
	}
	return all
}

// look notes what the moves do in the season that g has dealt.
func (t *trial) look(g *game, out []Moved) {
	before, anyBefore := g.short()
	for i, m := range t.moves {
		after, anyAfter := before, anyBefore
		if course := g.course[m.Clutch]; course >= 0 && m.Days != 0 {
			was, is := t.deck.rises[m.Clutch][course], t.rises[i][course]
			g.put(was, -1)
			g.put(is, 1)
			after, anyAfter = g.short()
			g.put(is, -1)
			g.put(was, 1)
		}
		out[i].Any.note(anyBefore, anyAfter)
		for r := range after {
			out[i].Resources[r].note(before[r], after[r])
		}
	}
}

// short reports which resources run out, and whether any does.
func (g *game) short() (each []bool, any bool) {
	each = make([]bool, len(g.load))
	for r := range each {
		_, over := g.look(r)
		each[r] = over > 0
		any = any || each[r]
	}
	return each, any
}
