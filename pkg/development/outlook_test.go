package development

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/species"
)

// leafFrog is an invented species of the size that a tree frog has.
func leafFrog(t testing.TB) *Model {
	m, err := NewModel(profile(
		step(species.Egg, 6, 7, 9, 0.8), step(species.Hatchling, 1, 2, 3, 0.95), step(species.Tadpole, 48, 60, 80, 0.7),
		step(species.Metamorph, 5, 7, 10, 0.85), step(species.GrowOut, 40, 56, 75, 0.9),
	))
	require.NoError(t, err)
	return m
}

// Before anything is seen each step alone is as the profile has it, and their
// sum spreads wider than that of independent steps.
func TestOutlookWithoutLooks(t *testing.T) {
	m := leafFrog(t)
	o := m.Outlook(Clutch{Laid: day(0)}, nil)
	for n := range 12 {
		assert.InDelta(t, until(m, Hatched).CDF(n), o.Events[0].Dist.CDF(n), 2e-5, "day %d", n)
	}
	for i, e := range o.Events[1:] {
		assert.InDelta(t, until(m, e.Stage).Mean(), e.Dist.Mean(), 0.02, "%v", e.Stage)
		assert.Greater(t, e.Dist.SD(), until(m, e.Stage).SD()*1.02, "%v: a slow clutch is slow in all steps (%d)", e.Stage, i)
	}
	assert.InDelta(t, 0, o.Pace, 1e-4)
	assert.InDelta(t, 1, o.PaceSD, 1e-3)
	assert.InDelta(t, 0.02, o.Stall, 1e-4)
	assert.Empty(t, o.Warnings)
	assert.Equal(t, "the book", o.Events[4].Basis.String())
}

// A slow egg speaks for slow tadpoles, and moves what is far ahead.
func TestPaceCarriesOver(t *testing.T) {
	m := leafFrog(t)
	at := func(hatched int) Outlook {
		return m.Outlook(Clutch{Laid: day(0), Looks: []Look{{Hatched, day(hatched), Reached}}}, nil)
	}
	fast, usual, slow := at(5), at(7), at(10)
	assert.Less(t, fast.Pace, usual.Pace)
	assert.Less(t, usual.Pace, slow.Pace)
	assert.Less(t, slow.PaceSD, 1.0)
	tadpole := func(o Outlook, hatched int) float64 { return o.Events[2].Dist.Mean() - float64(hatched) }
	assert.Less(t, tadpole(fast, 5)+4, tadpole(usual, 7))
	assert.Less(t, tadpole(usual, 7)+4, tadpole(slow, 10))
}

// All looks together, at whatever stage, against the slow twin.
func TestOutlookAgainstEnumeration(t *testing.T) {
	law := species.Law{Kind: species.ThermalSum, ThresholdC: 10, Source: invented}
	warm := func(s species.Step) species.Step {
		s.AtC = species.Range{Low: 20, High: 20, Source: invented}
		s.CoversC = species.Range{Low: 15, High: 30, Source: invented}
		s.Law = law
		return s
	}
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		days := func(name species.StepName, least, most float64) species.Step {
			p50 := rapid.Float64Range(least, most).Draw(t, string(name))
			return warm(step(name, p50*0.8, p50, p50*1.3, 1))
		}
		m, err := NewModel(profile(days(species.Egg, 0.4, 0.7), days(species.Hatchling, 0.4, 0.7), days(species.Tadpole, 1, 4), days(species.Metamorph, 0.4, 0.7), days(species.GrowOut, 0.5, 2)))
		if err != nil {
			t.Fatal(err)
		}
		soon := species.Percentiles{P10: 0.4, P50: 0.7, P90: 1.2}
		m.courses[2] = daysOf(soon)
		c := Clutch{Laid: day(0)}
		even := rapid.Bool().Draw(t, "even") // the twin knows the shares of steps in even warmth only
		for range rapid.IntRange(0, 3).Draw(t, "readings") {
			if even {
				break
			}
			r := Reading{day(rapid.IntRange(-1, 6).Draw(t, "from")), rapid.Float64Range(15, 30).Draw(t, "c")}
			c.Water = append(c.Water, r)
			c.Air = append(c.Air, Reading{r.From, 45 - r.C})
		}
		var p path
		at := 0
		for i := range p {
			at += rapid.IntRange(0, 2).Draw(t, "days")
			p[i] = at
		}
		c.Looks = trueLooks(t, p)
		if !even {
			c.Looks = slices.DeleteFunc(c.Looks, func(l Look) bool { step, ok := stepAround(l.Stage); return ok && step == tadpole })
		}
		o := m.Outlook(c, nil)
		if contradictory(o) || rough(o) {
			return
		}
		twin := enumeratePaces(m, c, [...]species.Percentiles{usualHindLegs, usualToes, soon})
		if twin.total < 1e-3 {
			return
		}
		compared++
		compare := func(e Event, marginal map[int]float64) {
			for day := range twinHorizon {
				want := marginal[day] / twin.total
				// What is cut off at the far ends counts for more when something rare was seen.
				if math.Abs(e.Dist.Mass(day)-want) > 2e-5+4e-6/twin.total {
					t.Fatalf("%v on day %d: %v, want %v (looks %v)", e.Stage, day, e.Dist.Mass(day), want, c.Looks)
				}
			}
		}
		for i, e := range o.Events {
			compare(e, twin.marginals[i])
		}
		for i, e := range o.Within {
			if even || midways[i].step == growOut {
				compare(e, twin.within[i])
			}
		}
	})
	if !testing.Short() { // which draws too few clutches to count by
		assert.GreaterOrEqual(t, compared, 50, "of 100 clutches")
	}
}
