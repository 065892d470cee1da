package planner_test

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/planner"
)

// rainFrom is a pairing that needs a rain chamber for 6 days from a day between
// two.
func rainFrom(id string, earliest, latest int) planner.Chain {
	return planner.Chain{ID: id, Phases: []planner.Phase{{
		Name: "rain", Min: 6, Usual: 6, Max: 6, Uses: []planner.Use{{"rain chamber", 1}},
		Earliest: day0.Add(earliest), Latest: day0.Add(latest),
	}}}
}

func TestSmallest(t *testing.T) {
	chambers := func(n int) []planner.Resource { return []planner.Resource{{"rain chamber", n}} }
	attended := rainFrom("P1", 3, 5)
	attended.Phases[0].Attended = true
	endless := rainFrom("P1", 0, 99)
	endless.Phases[0].Min, endless.Phases[0].Usual, endless.Phases[0].Max = 101, 101, 120
	optional := rainFrom("P9", 2, 4)
	optional.LeaveOut = 10
	rows := []struct {
		name    string
		problem planner.Problem
		want    planner.Conflict
		ok      bool
	}{
		{
			"there is room for all",
			planner.Problem{Resources: chambers(2), Chains: []planner.Chain{rainFrom("P1", 2, 4), rainFrom("P2", 2, 4), rainFrom("P3", 30, 30)}},
			planner.Conflict{},
			false,
		},
		{
			"three in two chambers; the fourth has nothing to do with it, nor what may be left out",
			planner.Problem{Resources: chambers(2), Chains: []planner.Chain{rainFrom("P1", 2, 4), rainFrom("P2", 3, 4), rainFrom("P3", 20, 20), rainFrom("P4", 2, 5), optional}},
			planner.Conflict{Chains: []string{"P1", "P2", "P4"}, Proven: true, Cures: []planner.Cure{
				{Resource: "rain chamber", More: 1},
				{Chain: "P1", Days: 4}, // from 8, after P4 has begun on 2
				{Chain: "P2", Days: 4}, // from 8, after P1 or P4
				{Chain: "P4", Days: 3}, // from 8
			}},
			true,
		},
		{
			"one that cannot be alone, for somebody has to be there",
			planner.Problem{
				Resources: chambers(1), Chains: []planner.Chain{attended},
				Away: []civil.Span{{First: day0.Add(80), Last: day0.Add(85)}, {First: day0.Add(7), Last: day0.Add(12)}},
			},
			planner.Conflict{Chains: []string{"P1"}, Proven: true, Cures: []planner.Cure{{Away: 2}, {Chain: "P1", Days: 8}}},
			true,
		},
		{
			"no chamber at all",
			planner.Problem{Resources: chambers(0), Chains: []planner.Chain{rainFrom("P1", 2, 4)}},
			planner.Conflict{Chains: []string{"P1"}, Proven: true, Cures: []planner.Cure{{Resource: "rain chamber", More: 1}}},
			true,
		},
		{
			"nobody in the room all year",
			planner.Problem{
				Resources: chambers(1), Chains: []planner.Chain{attended, rainFrom("P2", 3, 30)},
				Away: []civil.Span{{First: day0.Add(-30), Last: day0.Add(400)}},
			},
			planner.Conflict{Chains: []string{"P1"}, Proven: true, Cures: []planner.Cure{{Away: 1}}},
			true,
		},
		{
			"not before day 20 and not after day 11",
			planner.Problem{Resources: chambers(1), Chains: []planner.Chain{rainFrom("P1", 20, 11)}},
			planner.Conflict{Chains: []string{"P1"}, Proven: true, Cures: []planner.Cure{{Chain: "P1", Days: 9}}},
			true,
		},
		{
			"a phase longer than the season",
			planner.Problem{Resources: chambers(1), Chains: []planner.Chain{endless}},
			planner.Conflict{Chains: []string{"P1"}, Proven: true},
			true,
		},
		{
			"to begin too late for the season",
			planner.Problem{Chains: []planner.Chain{rainFrom("P1", 95, 97)}},
			planner.Conflict{Chains: []string{"P1"}, Proven: true},
			true,
		},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			row.problem.First, row.problem.Days = day0, 100
			got, ok := planner.Smallest(t.Context(), row.problem, planner.Options{})
			assert.Equal(t, row.ok, ok)
			assert.Empty(t, cmp.Diff(row.want, got))
		})
	}
}

// TestSmallestIsSmallest takes each pairing out of a conflict: the rest can run.
// Each cure does, and a day or a place less does not.
func TestSmallestIsSmallest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := tinyProblem(t)
		for i := range p.Chains {
			p.Chains[i].LeaveOut = 0
		}
		can := func(q planner.Problem) bool { return planner.Solve(t.Context(), q, planner.Options{}).Complete() }
		c, ok := planner.Smallest(t.Context(), p, planner.Options{})
		require.Equal(t, can(p), !ok)
		for _, without := range c.Chains {
			require.True(t, can(only(p, func(id string) bool { return id != without && slices.Contains(c.Chains, id) })))
		}
		p = only(p, func(id string) bool { return slices.Contains(c.Chains, id) })
		for _, cure := range c.Cures {
			require.True(t, can(cured(p, cure)), "%v", cure)
			less := cure
			less.Days, less.More = max(0, cure.Days-1), max(0, cure.More-1)
			if less.Away == 0 {
				require.False(t, can(cured(p, less)), "%v", less)
			}
		}
	})
}

// only gives a problem with some of its chains.
func only(p planner.Problem, which func(id string) bool) planner.Problem {
	var some []planner.Chain
	for _, c := range p.Chains {
		if which(c.ID) {
			some = append(some, c)
		}
	}
	p.Chains = some
	return p
}

// cured gives a problem in which a cure was applied.
func cured(p planner.Problem, cure planner.Cure) planner.Problem {
	if cure.Away > 0 {
		p.Away = slices.Delete(slices.Clone(p.Away), cure.Away-1, cure.Away)
	}
	p.Resources = slices.Clone(p.Resources)
	for i := range p.Resources {
		if p.Resources[i].Name == cure.Resource {
			p.Resources[i].Count += cure.More
		}
	}
	p.Chains = slices.Clone(p.Chains)
	for i := range p.Chains {
		c := &p.Chains[i]
		c.Phases = slices.Clone(c.Phases)
		for k := range c.Phases {
			if c.ID == cure.Chain && c.Phases[k].Latest.Known() {
				c.Phases[k].Latest = c.Phases[k].Latest.Add(cure.Days)
			}
		}
	}
	return p
}
