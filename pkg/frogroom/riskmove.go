package frogroom

import (
	"cmp"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/occupancy"
	"github.com/spawnwright/spawnwright/pkg/season"
)

const (
	farthestMove = 60  // days, about as long as most tadpoles need
	coarseMoves  = 12  // of each pairing at first
	mostMoves    = 240 // at first, of all
)

// move finds the pairing that helps most when it is moved to other days that the
// room allows: first some days of each, spread over all, and then all days between
// those beside the best.
func (g *gamble) move(r *Risk, resource int, o occupancy.Options, short occupancy.Shortage) {
	var moves []occupancy.Move
	room := make(map[int][]int) // by clutch
	for k, who := range g.who {
		one, ok := g.movable(who)
		if !ok || k > 0 && g.who[k-1] == who || !g.holds(k, resource, short) || len(moves)+coarseMoves > mostMoves {
			continue
		}
		room[k] = g.fitted.Shifts(who, -farthestMove, min(farthestMove, latestMove(one)))
		for _, days := range spread(room[k], coarseMoves) {
			moves = append(moves, occupancy.Move{Clutch: k, Days: days})
		}
	}
	tried := g.try(o, moves)
	best, ok := bestMove(tried, resource, short)
	if !ok {
		return
	}
	var fine []occupancy.Move
	for _, days := range between(room[best.Clutch], moves, best.Move) {
		fine = append(fine, occupancy.Move{Clutch: best.Clutch, Days: days})
	}
	best, _ = bestMove(append(tried, g.try(o, fine)...), resource, short)
	if now := best.Resources[resource].Short; now.Value() < 0.75*short.Short.Value() {
		r.Move, r.MoveDays, r.MovePct = g.who[best.Clutch], best.Days, *percent(now.Value())
	}
}

func (g *gamble) try(o occupancy.Options, moves []occupancy.Move) []occupancy.Moved {
	if len(moves) == 0 {
		return nil
	}
	tried, err := occupancy.TryMoves(g.season, o, moves)
	if err != nil {
		panic("frogroom: " + err.Error()) // the season was assessed before
	}
	return tried
}

// bestMove gives the least move of those that are enough: that make the chance what
// is wished, or else bring nine tenths of what the best of them brings.
func bestMove(tried []occupancy.Moved, resource int, short occupancy.Shortage) (occupancy.Moved, bool) {
	if len(tried) == 0 {
		return occupancy.Moved{}, false
	}
	seasons := func(m occupancy.Moved) int { return m.Resources[resource].Short.Seasons }
	least := slices.MinFunc(tried, func(a, b occupancy.Moved) int { return cmp.Compare(seasons(a), seasons(b)) })
	now := short.Short.Seasons
	enough := max(int(wishedRisk*float64(short.Short.Of)), seasons(least)+(now-seasons(least))/10)
	return slices.MinFunc(tried, func(a, b occupancy.Moved) int {
		return cmp.Or(cmp.Compare(max(seasons(a), enough), max(seasons(b), enough)), cmp.Compare(abs(a.Days), abs(b.Days)), cmp.Compare(seasons(a), seasons(b)))
	}), true
}

// holds reports whether a clutch may hold some of a resource on the worst day, so
// that moving it can help.
func (g *gamble) holds(clutch, resource int, short occupancy.Shortage) bool {
	return slices.ContainsFunc(g.season.Clutches[clutch].Courses, func(c occupancy.Course) bool {
		return slices.ContainsFunc(c.Holds, func(h occupancy.Hold) bool {
			return h.Resource == resource && h.First <= short.Worst && max(h.Last, h.Until) >= short.Worst
		})
	})
}

// movable gives a pairing of one dam of which nothing has begun.
func (g *gamble) movable(id string) (planned, bool) {
	for _, one := range g.planned {
		if one.ID == id && len(one.Dams) == 1 && !slices.ContainsFunc(one.cycle.Phases, func(ph season.Dated) bool { return ph.Recorded }) {
			return one, true
		}
	}
	return planned{}, false
}

// latestMove gives by how many days a pairing can be later with its young still in
// time.
func latestMove(one planned) int {
	if !one.ReadyBy.Known() {
		return farthestMove
	}
	for _, ph := range one.cycle.Phases {
		if ph.Name == season.Rain && ph.LatestStart.Known() {
			return ph.LatestStart.Sub(one.cycle.RainStart)
		}
	}
	return 0
}

// spread gives at most n of some days, the first and the last among them.
func spread(days []int, n int) []int {
	if len(days) <= n {
		return days
	}
	out := make([]int, n)
	for i := range out {
		out[i] = days[i*(len(days)-1)/(n-1)]
	}
	return out
}

// between gives the days that were not tried of those between the neighbours of a
// move, ascending.
func between(room []int, tried []occupancy.Move, at occupancy.Move) []int {
	before, after := at.Days-farthestMove, at.Days+farthestMove
	for _, m := range tried {
		switch {
		case m.Clutch != at.Clutch:
		case m.Days < at.Days:
			before = max(before, m.Days)
		case m.Days > at.Days:
			after = min(after, m.Days)
		}
	}
	return slices.DeleteFunc(slices.Clone(room), func(d int) bool { return d <= before || d >= after || d == at.Days })
}

func abs(n int) int { return max(n, -n) }
