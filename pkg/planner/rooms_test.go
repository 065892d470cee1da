package planner_test

import (
	"fmt"
	"math/rand/v2"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/planner"
)

// day0 is the first day of all seasons in these tests.
var day0 = civil.Of(2027, 1, 4)

// randomSeason gives n pairings in a room of 4 rain chambers, 3 cooling places,
// 24 tubs and 30 bins over 400 days, with three absences and shows to be ready
// for, the same for the same seed.
func randomSeason(seed uint64, n int) planner.Problem {
	r := rand.New(rand.NewPCG(seed, 99))
	p := planner.Problem{
		First: day0, Days: 400,
		Resources: []planner.Resource{
			{"rain chamber", 4},
			{"cooling place", 3},
			{"tadpole tub", 24},
			{"froglet bin", 30},
			{planner.Minutes, 180},
		},
	}
	for range 3 {
		first := day0.Add(r.IntN(330))
		p.Away = append(p.Away, civil.Span{First: first, Last: first.Add(2 + r.IntN(8))})
	}
	shows := []int{230, 260, 290, 320, 350, 380, 410, 440}
	for i := range n {
		p.Chains = append(p.Chains, randomChain(r, i, n, shows[r.IntN(len(shows))]))
	}
	return p
}

func randomChain(r *rand.Rand, i, n, due int) planner.Chain {
	ready := 120 + r.IntN(30)
	tubs, bins := 1+r.IntN(4), 1+r.IntN(3)
	metamorph := 55 + r.IntN(20)
	return planner.Chain{
		ID:      fmt.Sprintf("P-%02d", i+1),
		Animals: []string{fmt.Sprintf("dam %d", i), fmt.Sprintf("sire %d", r.IntN(n))},
		Phases: []planner.Phase{
			{Name: "conditioning", Min: 21, Usual: 28, Max: 42, Stretch: 1, Minutes: 5},
			{Name: "cooling", Min: 21, Usual: 35, Max: 49, Stretch: 1, Uses: []planner.Use{{"cooling place", 1}}},
			{Name: "warm-up", Min: 7, Usual: 14, Max: 21, Stretch: 1, Minutes: 5},
			{Name: "rain", Min: 3, Usual: 6, Max: 10, Stretch: 1, Attended: true, Minutes: 15, Uses: []planner.Use{{"rain chamber", 1}}},
			{Name: "rest", Min: 42, Usual: 56, Max: 84, Stretch: 1},
		},
		Visits: []planner.Visit{
			{"cooling", 0, 30},
			{"warm-up", 0, 30},
			{"rain", 0, 45},
			{"rest", 0, 30},
			{"rain", metamorph, 45},
		},
		Holds: []planner.Hold{
			{Phase: "rest", From: 14, To: 20, Resource: "rain chamber", Amount: 1},
			{Phase: "rain", From: 7, To: metamorph + 15, Resource: "tadpole tub", Amount: tubs},
			{Phase: "rain", From: metamorph - 5, To: ready, Until: day0.Add(due), Resource: "froglet bin", Amount: bins},
		},
		Wishes:   []planner.Wish{{Phase: "rain", On: day0.Add(due - ready), Early: 2, Late: 10}},
		LeaveOut: 800,
	}
}
