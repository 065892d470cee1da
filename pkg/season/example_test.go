package season_test

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/season"
)

// A pairing planned backward from a show, in a room where nobody is at home for
// three days in May.
func ExamplePlan() {
	room := season.Room{
		Capacity: []season.Capacity{{Place: "rain chamber", Count: 1, Known: true}},
		Away:     []civil.Span{{First: civil.Of(2027, 5, 1), Last: civil.Of(2027, 5, 3)}},
	}
	pairing := season.Pairing{
		ID:      "P-27-01",
		Animals: []string{"AC-02", "AC-04"},
		Phases: []season.Phase{
			{Name: "conditioning", Min: 21, Usual: 28, Max: 42},
			{Name: "cooling", Min: 28, Usual: 42, Max: 56, Place: "cooling place"},
			{Name: "warm-up", Min: 7, Usual: 10, Max: 14},
			{Name: "rain", Min: 3, Usual: 5, Max: 10, Place: "rain chamber"},
			{Name: "rest", Min: 42, Usual: 49, Max: 70},
		},
		ReadyBy:    civil.Of(2027, 9, 18),
		Target:     "autumn show",
		ReadyAfter: 140,
		Stages:     []season.StageOffset{{Stage: "sale-ready", Early: 112, Likely: 124, Late: 146}},
	}
	s := season.Plan(room, []season.Pairing{pairing}, civil.Of(2027, 1, 15))
	for _, p := range s.Cycles[0].Phases {
		fmt.Printf("%-12s %s", p.Name, p.Span)
		if p.LatestStart.Known() {
			fmt.Printf(", start no later than %s", p.LatestStart)
		}
		fmt.Println()
	}
	for _, st := range s.Cycles[0].Stages {
		fmt.Printf("%-12s %s\n", st.Stage, st.Window)
	}
	for _, text := range s.Unchecked {
		fmt.Println("not checked:", text)
	}
	// Output:
	// conditioning 2027-02-09..2027-03-08, start no later than 2027-03-05
	// cooling      2027-03-09..2027-04-19, start no later than 2027-03-26
	// warm-up      2027-04-20..2027-04-29, start no later than 2027-04-23
	// rain         2027-04-30..2027-05-04, start no later than 2027-04-30
	// rest         2027-05-05..2027-06-22
	// sale-ready   2027-08-20 / 2027-09-01 / 2027-09-23
	// not checked: cooling places, for how many there are is not given
	// not checked: tadpole tubs, froglet bins and hours of work
	// not checked: room for a second attempt when there are no eggs, and for cleaning a place between two pairings
}

// Two pairings share a rain chamber and a male.
func ExamplePlan_conflicts() {
	rain := []season.Phase{
		{Name: "rain", Min: 3, Usual: 5, Max: 10, Place: "rain chamber"},
		{Name: "rest", Min: 42, Usual: 49, Max: 70},
	}
	room := season.Room{Capacity: []season.Capacity{{Place: "rain chamber", Count: 1, Known: true}}}
	s := season.Plan(room, []season.Pairing{
		{ID: "P-27-01", Animals: []string{"AC-02", "AC-04"}, Phases: rain, Start: civil.Of(2027, 4, 1)},
		{ID: "P-27-02", Animals: []string{"AC-03", "AC-04"}, Phases: rain, Start: civil.Of(2027, 5, 20)},
		{ID: "P-27-03", Animals: []string{"AC-08", "AC-09"}, Phases: rain, Start: civil.Of(2027, 4, 3)},
	}, civil.Of(2027, 1, 15))
	for _, c := range s.Conflicts {
		fmt.Println(c.Message)
	}
	// Output:
	// rain chamber: 2 needed and 1 there on 2027-04-03..2027-04-05 (P-27-01 and P-27-03); P-27-03 started 3 days later, on 2027-04-06, clears it, and so does 1 more rain chamber
	// AC-04 is in P-27-01 and P-27-02 at once on 2027-05-20..2027-05-24; P-27-02 started 5 days later, on 2027-05-25, clears it
}
