package planner_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/planner"
)

// TestCheck has a plan that is right, and each time one thing that is not.
func TestCheck(t *testing.T) {
	problem := func() planner.Problem {
		a, b := rainFrom("P1", 2, 20), rainFrom("P2", 2, 20)
		a.Animals, b.Animals = []string{"Bram"}, []string{"Bram", "Ida"}
		a.Phases[0].Max, a.Phases[0].Stretch = 8, 3
		a.Wishes = []planner.Wish{{"rain", day0.Add(3), 5, 2}}
		b.Visits = []planner.Visit{{planner.End, 1, 30}}
		b.Holds = []planner.Hold{{Phase: planner.End, From: 1, To: 3, Until: day0.Add(20), Resource: "tub", Amount: 2}}
		return planner.Problem{
			First: day0, Days: 30, Chains: []planner.Chain{a, b},
			Resources: []planner.Resource{{"rain chamber", 1}, {"tub", 2}, {planner.Minutes, 30}},
			Away:      []civil.Span{{First: day0.Add(16), Last: day0.Add(16)}},
		}
	}
	cycle := func(id string, days ...int) planner.Cycle {
		c := planner.Cycle{ID: id, Days: []civil.Date{}}
		for _, d := range days {
			c.Days = append(c.Days, day0.Add(d))
		}
		return c
	}
	// P1 a day late and a day too long: 2 + 3.
	plan := func() planner.Plan {
		return planner.Plan{Cycles: []planner.Cycle{cycle("P1", 4, 11), cycle("P2", 11, 17)}, Cost: 5, Bound: 4, Missing: 1000}
	}
	rows := []struct {
		name   string
		change func(*planner.Problem, *planner.Plan)
		fault  string
	}{
		{"right", func(*planner.Problem, *planner.Plan) {}, ""},
		{"too long", func(_ *planner.Problem, p *planner.Plan) { p.Cycles[0] = cycle("P1", 2, 11) }, "P1: rain takes 9 days, and 6 to 8 are allowed"},
		{"too early", func(_ *planner.Problem, p *planner.Plan) { p.Cycles[0] = cycle("P1", 1, 8) }, "P1: rain begins on 2027-01-05"},
		{"at once", func(_ *planner.Problem, p *planner.Plan) { p.Cycles[0] = cycle("P1", 5, 12) }, "Bram is in P1 and P2 at once on 2027-01-15"},
		{"one chamber", func(_ *planner.Problem, p *planner.Plan) { p.Cycles[0] = cycle("P1", 5, 12) }, "rain chamber: 2 are used on 2027-01-15 and 1 are there"},
		{"a day away", func(p *planner.Problem, _ *planner.Plan) { p.Away[0].Last = day0.Add(18) }, "P2: hands are needed on 2027-01-22, a day away"},
		{"nobody there", func(p *planner.Problem, _ *planner.Plan) { p.Chains[1].Phases[0].Attended = true }, "P2: nobody is in the room on 2027-01-20, in rain"},
		{"work", func(p *planner.Problem, _ *planner.Plan) { p.Resources[2].Count = 29 }, "minutes: 30 are used on 2027-01-22 and 29 are there"},
		{"tubs until", func(p *planner.Problem, _ *planner.Plan) {
			p.Taken = []planner.Taken{{"tub", civil.Span{First: day0.Add(20), Last: day0.Add(25)}, 9}}
		}, "tub: 2 are used on 2027-01-24 and 0 are there"},
		{"cost", func(_ *planner.Problem, p *planner.Plan) { p.Cost = 6 }, "the plan costs 5 and says 6"},
		{"bound", func(_ *planner.Problem, p *planner.Plan) { p.Bound = 6 }, "the bound 6 is above the cost 5"},
		{"proof", func(_ *planner.Problem, p *planner.Plan) { p.Proven = true }, "the plan is said to be proven best, and its bound 4 is not its cost 5"},
		{"left out", func(_ *planner.Problem, p *planner.Plan) { p.Cycles[0] = cycle("P1") }, "the plan costs 1000 and says 5"},
		{"another", func(_ *planner.Problem, p *planner.Plan) { p.Cycles[0].ID = "P3" }, `cycle 1 is of "P3" where the problem has "P1"`},
		{"a day missing", func(_ *planner.Problem, p *planner.Plan) { p.Cycles[0] = cycle("P1", 4) }, "P1: 1 days for 1 phases"},
		{"a chain missing", func(_ *planner.Problem, p *planner.Plan) { p.Cycles = p.Cycles[:1] }, "the plan has 1 cycles and the problem 2 chains"},
		{"after the end", func(p *planner.Problem, _ *planner.Plan) { p.Days = 16 }, "P2: runs from 2027-01-15 up to 2027-01-21, outside the days that are planned"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			p, s := problem(), plan()
			row.change(&p, &s)
			faults := planner.Check(p, s)
			if row.fault == "" {
				assert.Empty(t, faults)
				return
			}
			assert.Contains(t, faults, row.fault)
		})
	}
}
