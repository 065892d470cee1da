package planner_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/planner"
)

// everyPlan gives the least cost of all plans, by trying every day for every
// phase of every chain.
func everyPlan(p planner.Problem, missing int) int {
	choices := make([][]planner.Cycle, len(p.Chains))
	for i, c := range p.Chains {
		choices[i] = append(everyCycle(p, c), planner.Cycle{ID: c.ID, Days: []civil.Date{}})
	}
	least := -1
	var try func(i, cost int, cycles []planner.Cycle)
	try = func(i, cost int, cycles []planner.Cycle) {
		if least >= 0 && cost >= least {
			return
		}
		if i == len(choices) {
			if len(planner.Check(p, planner.Plan{Cycles: cycles, Cost: cost, Missing: missing})) == 0 {
				least = cost
			}
			return
		}
		for _, c := range choices[i] {
			try(i+1, cost+costOf(p.Chains[i], c, missing), append(cycles[:i:i], c))
		}
	}
	try(0, 0, nil)
	return least
}

// everyCycle gives all days that a chain could have if it were alone.
func everyCycle(p planner.Problem, c planner.Chain) []planner.Cycle {
	alone := p
	alone.Chains = []planner.Chain{c}
	var found []planner.Cycle
	var grow func(days []civil.Date)
	grow = func(days []civil.Date) {
		if len(days) == len(c.Phases)+1 {
			cycle := planner.Cycle{ID: c.ID, Days: days}
			if len(planner.Check(alone, planner.Plan{Cycles: []planner.Cycle{cycle}, Cost: costOf(c, cycle, 0)})) == 0 {
				found = append(found, cycle)
			}
			return
		}
		for length := 0; length <= c.Phases[len(days)-1].Max; length++ {
			grow(append(days[:len(days):len(days)], days[len(days)-1].Add(length)))
		}
	}
	for d := range p.Days + 1 {
		grow([]civil.Date{p.First.Add(d)})
	}
	return found
}

// costOf is the cost of a cycle, written down once more.
func costOf(c planner.Chain, cycle planner.Cycle, missing int) int {
	if len(cycle.Days) == 0 {
		if c.LeaveOut > 0 {
			return c.LeaveOut
		}
		return missing
	}
	cost, last := 0, len(c.Phases)
	for k, p := range c.Phases {
		off := cycle.Days[k+1].Sub(cycle.Days[k]) - p.Usual
		if off < 0 {
			off = -off
		}
		cost += off * p.Stretch
	}
	for _, w := range c.Wishes {
		at := last
		for k, p := range c.Phases {
			if p.Name == w.Phase {
				at = k
			}
		}
		if late := cycle.Days[at].Sub(w.On); late > 0 {
			cost += late * w.Late
		} else {
			cost -= late * w.Early
		}
	}
	return cost
}

// tinyProblem draws a room so small that every plan can be tried.
func tinyProblem(t *rapid.T) planner.Problem {
	n := func(from, to int, name string) int { return rapid.IntRange(from, to).Draw(t, name) }
	p := planner.Problem{
		First: day0, Days: n(4, 9, "days"),
		Resources: []planner.Resource{{"box", n(0, 2, "boxes")}, {"tub", n(0, 3, "tubs")}, {planner.Minutes, n(2, 6, "minutes")}},
	}
	for range n(0, 2, "absences") {
		first := day0.Add(n(-1, 9, "away"))
		p.Away = append(p.Away, civil.Span{First: first, Last: first.Add(n(0, 2, "away for"))})
	}
	if n(0, 1, "is taken") == 1 {
		first := day0.Add(n(-2, 8, "taken"))
		p.Taken = append(p.Taken, planner.Taken{Resource: "box", Span: civil.Span{First: first, Last: first.Add(n(0, 4, "taken for"))}, Amount: n(1, 2, "taken boxes")})
	}
	for i := range n(1, 3, "chains") {
		p.Chains = append(p.Chains, tinyChain(n, i))
	}
	return p
}

func tinyChain(n func(from, to int, name string) int, i int) planner.Chain {
	c := planner.Chain{ID: fmt.Sprint("P", i), Animals: []string{fmt.Sprint("animal ", n(0, 2, "animal")), fmt.Sprint("animal ", n(0, 4, "animal"))}}
	names := []string{"wait", "rain", planner.End}
	anyPhase := func() string { return names[n(0, 2, "of phase")] }
	for _, name := range names[:2] {
		least := n(0, 2, "min")
		usual := least + n(0, 1, "usual")
		ph := planner.Phase{
			Name: name, Min: least, Usual: usual, Max: usual + n(0, 1, "max"), Stretch: n(0, 3, "stretch"),
			Attended: n(0, 2, "attended") == 0, Minutes: n(0, 2, "work"),
			Uses: []planner.Use{{[]string{"box", "tub", "air"}[n(0, 2, "use of")], n(0, 2, "use")}},
		}
		if n(0, 3, "has earliest") == 0 {
			ph.Earliest = day0.Add(n(-1, 6, "earliest"))
		}
		if n(0, 3, "has latest") == 0 {
			ph.Latest = day0.Add(n(0, 9, "latest"))
		}
		c.Phases = append(c.Phases, ph)
	}
	for range n(0, 2, "holds") {
		from := n(0, 3, "from")
		h := planner.Hold{Phase: anyPhase(), From: from, To: from + n(0, 4, "to"), Resource: []string{"box", "tub"}[n(0, 1, "hold of")], Amount: n(0, 2, "held")}
		if n(0, 2, "has until") == 0 {
			h.Until = day0.Add(n(-2, 10, "until"))
		}
		c.Holds = append(c.Holds, h)
	}
	for range n(0, 2, "visits") {
		c.Visits = append(c.Visits, planner.Visit{Phase: anyPhase(), Day: n(0, 4, "visit"), Minutes: n(0, 2, "visit for")})
	}
	for range n(0, 2, "wishes") {
		c.Wishes = append(c.Wishes, planner.Wish{Phase: anyPhase(), On: day0.Add(n(-3, 12, "wish")), Early: n(0, 4, "early"), Late: n(0, 4, "late")})
	}
	if n(0, 2, "may be left out") > 0 {
		c.LeaveOut = n(1, 30, "leave out")
	}
	return c
}

// TestSolveFindsTheBest compares with trying every plan.
func TestSolveFindsTheBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := tinyProblem(t)
		plan := planner.Solve(t.Context(), p, planner.Options{})
		require.True(t, plan.Proven)
		require.Empty(t, planner.Check(p, plan))
		require.Equal(t, everyPlan(p, plan.Missing), plan.Cost)
		for i, c := range plan.Cycles {
			if len(c.Days) == 0 && p.Chains[i].LeaveOut == 0 {
				assert.False(t, plan.Complete())
			}
		}
	})
}

// TestSolveStopsAnywhere takes any limit on the work: the plan keeps all rules,
// the bound is one, and the workers do not show.
func TestSolveStopsAnywhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := tinyProblem(t)
		steps := rapid.IntRange(1, 200).Draw(t, "steps")
		plan := planner.Solve(t.Context(), p, planner.Options{Steps: steps})
		best := planner.Solve(t.Context(), p, planner.Options{})
		require.Empty(t, planner.Check(p, plan))
		require.LessOrEqual(t, plan.Bound, best.Cost)
		require.GreaterOrEqual(t, plan.Cost, best.Cost)
		require.Equal(t, plan, planner.Solve(t.Context(), p, planner.Options{Steps: steps, Workers: 3}))
		hinted := planner.Solve(t.Context(), p, planner.Options{Hint: best.Cycles})
		require.Equal(t, best.Cycles, hinted.Cycles, "a best plan as the hint is kept")
	})
}
