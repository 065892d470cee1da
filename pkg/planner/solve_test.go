package planner_test

import (
	"context"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/planner"
)

// TestSolveStopped: a search that is told to stop at once still gives a plan
// that keeps all rules, and a bound.
func TestSolveStopped(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	stop()
	p := randomSeason(1, 12)
	plan := planner.Solve(ctx, p, planner.Options{})
	assert.True(t, plan.Stopped)
	assert.False(t, plan.Proven)
	assert.Empty(t, planner.Check(p, plan))
	assert.Positive(t, plan.Gap())
}

// TestSolveLarge: a thousand pairings that stand in each other's way, with all
// memory of the process below 1 GiB.
func TestSolveLarge(t *testing.T) {
	p := randomSeason(1, 1000)
	plan := planner.Solve(t.Context(), p, planner.Options{Steps: 3000, Workers: 2})
	assert.Empty(t, planner.Check(p, plan))
	assert.Positive(t, plan.Bound)
	var memory runtime.MemStats
	runtime.ReadMemStats(&memory)
	assert.Less(t, memory.Sys, uint64(1<<30))
	t.Logf("%d MiB", memory.Sys>>20)
}

// TestSolveKeepsAnnounced: a room that is as it was keeps the days announced; a
// chamber that breaks moves one pairing, and that as little as it can.
func TestSolveKeepsAnnounced(t *testing.T) {
	announced := func(c planner.Chain, on int) planner.Chain {
		c.Wishes = append(c.Wishes, planner.Wish{"rain", day0.Add(on), 1, 1})
		return c
	}
	p := planner.Problem{
		First: day0, Days: 60, Resources: []planner.Resource{{"rain chamber", 2}},
		Chains: []planner.Chain{announced(rainFrom("P1", 2, 30), 5), announced(rainFrom("P2", 2, 30), 8), announced(rainFrom("P3", 2, 30), 20)},
	}
	days := func(plan planner.Plan) (out []civil.Date) {
		for _, c := range plan.Cycles {
			out = append(out, c.Days[0])
		}
		return out
	}
	plan := planner.Solve(t.Context(), p, planner.Options{})
	assert.Equal(t, []civil.Date{day0.Add(5), day0.Add(8), day0.Add(20)}, days(plan))
	p.Resources[0].Count = 1
	plan = planner.Solve(t.Context(), p, planner.Options{Hint: plan.Cycles})
	assert.Equal(t, 3, plan.Cost)
	assert.Equal(t, day0.Add(20), plan.Cycles[2].Days[0])
	assert.Equal(t, 6, plan.Cycles[1].Days[0].Sub(plan.Cycles[0].Days[0]))
}

func TestSolveAwayAllYear(t *testing.T) {
	p := randomSeason(2, 4)
	p.Away = []civil.Span{{First: day0.Add(-10), Last: day0.Add(900)}}
	plan := planner.Solve(t.Context(), p, planner.Options{})
	assert.True(t, plan.Proven)
	assert.Equal(t, 4*800, plan.Cost, "all are left out")
}

func TestSolvePanics(t *testing.T) {
	rows := []struct {
		name   string
		change func(*planner.Problem)
		says   string
	}{
		{"no day", func(p *planner.Problem) { p.First = 0 }, "planner: the first day is not known"},
		{"no days", func(p *planner.Problem) { p.Days = 0 }, "planner: 0 days cannot be planned, only 1 to 20000"},
		{"two of a name", func(p *planner.Problem) { p.Resources = append(p.Resources, planner.Resource{"tadpole tub", 1}) }, `planner: a resource is given twice or without its name: "tadpole tub"`},
		{"negative count", func(p *planner.Problem) { p.Resources[0].Count = -1 }, "planner: resource rain chamber has a count of -1"},
		{"negative taken", func(p *planner.Problem) { p.Taken = []planner.Taken{{Resource: "tadpole tub", Amount: -2}} }, "planner: -2 of tadpole tub are taken"},
		{"twice", func(p *planner.Problem) { p.Chains[1].ID = "P-01" }, `planner: the id of a chain is empty or stands twice: "P-01"`},
		{"no phases", func(p *planner.Problem) { p.Chains[0].Phases = nil }, "planner: chain P-01 has no phases"},
		{"negative leave-out", func(p *planner.Problem) { p.Chains[0].LeaveOut = -1 }, "planner: chain P-01: leaving it out costs -1"},
		{"phase twice", func(p *planner.Problem) { p.Chains[0].Phases[1].Name = "rain" }, `planner: chain P-01 has a phase twice or without a name: "rain"`},
		{"the end as a phase", func(p *planner.Problem) { p.Chains[0].Phases[1].Name = planner.End }, `planner: chain P-01 has a phase twice or without a name: "end"`},
		{"lengths", func(p *planner.Problem) { p.Chains[0].Phases[1].Min = 50 }, "planner: chain P-01 has cooling of 50, usually 35, at most 49 days"},
		{"stretch", func(p *planner.Problem) { p.Chains[0].Phases[1].Stretch = -1 }, "planner: chain P-01: cooling has a negative or too large cost or work"},
		{"use", func(p *planner.Problem) { p.Chains[0].Phases[1].Uses[0].Amount = -1 }, "planner: chain P-01: cooling uses -1 of cooling place"},
		{"hold", func(p *planner.Problem) { p.Chains[0].Holds[0].From = 30 }, "planner: chain P-01 holds 1 of rain chamber from day 30 to 20"},
		{"hold of nothing", func(p *planner.Problem) { p.Chains[0].Holds[0].Phase = "sleep" }, `planner: chain P-01 has no phase "sleep"`},
		{"visit of nothing", func(p *planner.Problem) { p.Chains[0].Visits[0].Phase = "sleep" }, `planner: chain P-01 has no phase "sleep"`},
		{"visit before", func(p *planner.Problem) { p.Chains[0].Visits[0].Day = -1 }, "planner: chain P-01 is visited on day -1 for 30 minutes"},
		{"wish for nothing", func(p *planner.Problem) { p.Chains[0].Wishes[0].Phase = "sleep" }, `planner: chain P-01 has no phase "sleep"`},
		{"wish without a day", func(p *planner.Problem) { p.Chains[0].Wishes[0].On = 0 }, "planner: chain P-01 wishes for a day unknown, too far from 2027-01-04"},
		{"weight", func(p *planner.Problem) { p.Chains[0].Wishes[0].Late = -1 }, "planner: chain P-01 has a wish of weight 2 and -1"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			p := randomSeason(1, 2)
			row.change(&p)
			assert.PanicsWithValue(t, row.says, func() { planner.Solve(t.Context(), p, planner.Options{}) })
		})
	}
}
