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
		assert.InDelta(t, m.Until(Hatched).CDF(n), o.Events[0].Dist.CDF(n), 2e-5, "day %d", n)
	}
	for i, e := range o.Events[1:] {
		assert.InDelta(t, m.Until(e.Stage).Mean(), e.Dist.Mean(), 0.02, "%v", e.Stage)
		assert.Greater(t, e.Dist.SD(), m.Until(e.Stage).SD()*1.02, "%v: a slow clutch is slow in all steps (%d)", e.Stage, i)
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

// The slow twin of [Model.Outlook]: all paths there are, for many paces.
func enumeratePaces(m *Model, c Clutch, looks []Look) (marginals [len(links)]map[int]float64, total float64) {
	const points, horizon = 25, 26
	for i := range marginals {
		marginals[i] = map[int]float64{}
	}
	phi := func(x float64) float64 { return math.Erfc(-x/math.Sqrt2) / 2 }
	for k := range points {
		p := (float64(k) - (points-1)/2) / 2.4
		weight := math.Exp(-p*p/2) / (2.4 * rootTwoPi)
		var masses [len(links)][horizon][horizon]float64 // of each end, by step and begin
		for i := range links {
			clock := m.clock(i, c, c.Laid)
			for begin := range horizon {
				below := 0.0
				for end := begin; end < horizon; end++ {
					z := m.shapes[i].z(clock.end(end) - clock.at(begin))
					upTo := phi((z - math.Sqrt(paceShare)*p) / math.Sqrt(1-paceShare))
					masses[i][begin][end], below = upTo-below, upTo
				}
			}
		}
		var walk func(p path, step, at int, chance float64)
		walk = func(p path, step, at int, chance float64) {
			switch {
			case chance < 1e-12:
			case step < len(links):
				for end := at; end < horizon; end++ {
					p[step] = end
					walk(p, step+1, end, chance*masses[step][at][end])
				}
			case !slices.ContainsFunc(looks, func(l Look) bool { return !p.agrees(l) }):
				total += chance
				for i := range links {
					marginals[i][p[i]] += chance
				}
			}
		}
		walk(path{}, 0, 0, weight)
	}
	return marginals, total
}

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
		days := func(name species.StepName) species.Step {
			p50 := rapid.Float64Range(0.4, 0.9).Draw(t, string(name))
			return warm(step(name, p50*0.8, p50, p50*1.3, 1))
		}
		m, err := NewModel(profile(days(species.Egg), days(species.Hatchling), days(species.Tadpole), days(species.Metamorph), days(species.GrowOut)))
		if err != nil {
			t.Fatal(err)
		}
		c := Clutch{Laid: day(0)}
		for range rapid.IntRange(0, 3).Draw(t, "readings") {
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
		o := m.Outlook(c, nil)
		if contradictory(o.Forecast) || rough(o.Forecast) {
			return
		}
		marginals, total := enumeratePaces(m, c, c.Looks)
		if total < 1e-3 {
			return
		}
		compared++
		for i, e := range o.Events {
			for day := range 26 {
				want := marginals[i][day] / total
				// What is cut off at the far ends counts for more when something rare was seen.
				if math.Abs(e.Dist.Mass(day)-want) > 1e-5+2e-6/total {
					t.Fatalf("%v on day %d: %v, want %v (looks %v)", e.Stage, day, e.Dist.Mass(day), want, c.Looks)
				}
			}
		}
	})
	assert.GreaterOrEqual(t, compared, 50)
}
