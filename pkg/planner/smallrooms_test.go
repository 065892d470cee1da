package planner_test

import (
	"fmt"
	"math/rand/v2"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/planner"
)

// storedSeason gives the problem of a stored instance: 4 to 10 pairings in a
// small room, with every part of the model somewhere.
func storedSeason(seed uint64) planner.Problem {
	r := rand.New(rand.NewPCG(seed, 7))
	n := 4 + int(seed)%7
	p := planner.Problem{
		First: day0, Days: 250,
		Resources: []planner.Resource{
			{"rain chamber", 1 + r.IntN(2)},
			{"cooling place", 1 + n/5 + r.IntN(2)},
			{"tadpole tub", 5 + n + r.IntN(4)},
			{"froglet bin", 6 + n + r.IntN(5)},
			{planner.Minutes, 120},
		},
		Taken: []planner.Taken{
			{"tadpole tub", civil.Span{First: day0, Last: day0.Add(40 + r.IntN(60))}, 3},
			{"rain chamber", civil.Span{First: day0.Add(-3), Last: day0.Add(r.IntN(70))}, 1},
		},
	}
	for range 2 {
		first := day0.Add(10 + r.IntN(150))
		p.Away = append(p.Away, civil.Span{First: first, Last: first.Add(1 + r.IntN(8))})
	}
	shows := []int{170, 195, 220}
	for i := range n {
		p.Chains = append(p.Chains, storedChain(r, i, n, shows[r.IntN(len(shows))]))
	}
	return p
}

func storedChain(r *rand.Rand, i, n, due int) planner.Chain {
	ready, metamorph := 70+r.IntN(15), 35+r.IntN(10)
	c := planner.Chain{
		ID:      fmt.Sprintf("P-%02d", i+1),
		Animals: []string{fmt.Sprintf("dam %d", i), fmt.Sprintf("sire %d", r.IntN(n))},
		Phases: []planner.Phase{
			{Name: "conditioning", Min: 10, Usual: 10, Max: 10, Minutes: 5},
			{Name: "cooling", Min: 21, Usual: 28, Max: 32, Stretch: r.IntN(3), Uses: []planner.Use{{"cooling place", 1}}},
			{Name: "warm-up", Min: 7, Usual: 10, Max: 14, Stretch: r.IntN(2)},
			{Name: "rain", Min: 3, Usual: 5, Max: 6, Stretch: 2, Attended: true, Minutes: 15, Uses: []planner.Use{{"rain chamber", 1}}},
			{Name: "rest", Min: 28, Usual: 28, Max: 28},
		},
		Visits: []planner.Visit{
			{"cooling", 0, 30},
			{"warm-up", 0, 30},
			{"rain", 0, 60},
			{planner.End, 0, 10},
			{"rain", metamorph, 60},
		},
		Holds: []planner.Hold{
			{Phase: "rain", From: 5, To: metamorph + 8, Resource: "tadpole tub", Amount: 1 + r.IntN(4)},
			{Phase: "rain", From: metamorph - 3, To: ready, Until: day0.Add(due), Resource: "froglet bin", Amount: 1 + r.IntN(4)},
		},
		Wishes: []planner.Wish{{Phase: "rain", On: day0.Add(due - ready), Early: 1 + r.IntN(3), Late: 4 + r.IntN(8)}},
	}
	switch r.IntN(4) {
	case 0: // it must be planned
	case 1:
		c.LeaveOut = 400
		c.Phases[0].Earliest = day0.Add(r.IntN(60))
	default:
		c.LeaveOut = 150 + r.IntN(400)
	}
	if r.IntN(3) == 0 {
		c.Holds = append(c.Holds, planner.Hold{Phase: "rest", From: 10, To: 15, Resource: "rain chamber", Amount: 1})
	}
	if r.IntN(3) == 0 {
		c.Wishes = append(c.Wishes, planner.Wish{Phase: "conditioning", On: day0.Add(30 + r.IntN(50)), Early: 1, Late: 1})
	}
	return c
}

// halved gives a season in which everything takes half as many days, for another
// solver to prove within seconds.
func halved(p planner.Problem) planner.Problem {
	half := func(d civil.Date) civil.Date {
		if !d.Known() {
			return d
		}
		return day0.Add(d.Sub(day0) / 2)
	}
	span := func(s civil.Span) civil.Span { return civil.Span{First: half(s.First), Last: half(s.Last)} }
	p.Days /= 2
	for i := range p.Away {
		p.Away[i] = span(p.Away[i])
	}
	for i := range p.Taken {
		p.Taken[i].Span = span(p.Taken[i].Span)
	}
	for _, c := range p.Chains {
		for k := range c.Phases {
			q := &c.Phases[k]
			q.Min, q.Usual, q.Max, q.Earliest = q.Min/2, q.Usual/2, q.Max/2, half(q.Earliest)
		}
		for k := range c.Holds {
			h := &c.Holds[k]
			h.From, h.To, h.Until = h.From/2, h.To/2, half(h.Until)
		}
		for k := range c.Visits {
			c.Visits[k].Day /= 2
		}
		for k := range c.Wishes {
			c.Wishes[k].On = half(c.Wishes[k].On)
		}
	}
	return p
}
