package development

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// The slow twin of [Outlook.Siblings]: clutches are drawn, and the first and the
// last of their siblings looked up.
func TestSiblingsAgainstDraws(t *testing.T) {
	m := leafFrog(t)
	o := m.Outlook(Clutch{Laid: day(0), Looks: []Look{{Feeding, day(9), Reached}}}, nil)
	random := rand.New(rand.NewPCG(1, 1))
	const heads, draws = 30, 4000
	e, _ := o.Event(FrontLegs)
	var firsts, lasts []float64
	for range draws {
		half := float64(e.Dist.Quantile(random.Float64()))
		first, last := math.Inf(1), 0.0
		for range heads {
			at := half * math.Exp(m.siblings*random.NormFloat64())
			first, last = min(first, at), max(last, at)
		}
		firsts, lasts = append(firsts, first), append(lasts, last)
	}
	slices.Sort(firsts)
	slices.Sort(lasts)
	all := o.Siblings(heads)
	require.Len(t, all, 3)
	s := all[0]
	assert.Equal(t, FrontLegs, s.Stage)
	assert.Equal(t, e.Window, s.Half)
	for i, p := range []float64{0.1, 0.5, 0.9} {
		first := []civil.Date{s.First.Early, s.First.Likely, s.First.Late}[i].Sub(day(0))
		last := []civil.Date{s.Last.Early, s.Last.Likely, s.Last.Late}[i].Sub(day(0))
		assert.InDelta(t, firsts[int(p*draws)], first, 1.2, "first, %v", p)
		assert.InDelta(t, lasts[int(p*draws)], last, 1.2, "last, %v", p)
	}
}

func TestSiblings(t *testing.T) {
	m := leafFrog(t)
	o := m.Outlook(Clutch{Laid: day(0), Looks: []Look{{FrontLegs, day(70), Reached}}}, nil)
	one := o.Siblings(1)[0]
	assert.InDelta(t, 0, one.First.Likely.Sub(one.Half.Likely), 1, "one has no siblings")
	few, many := o.Siblings(10)[1], o.Siblings(1000)[1]
	assert.Less(t, many.First.Likely, few.First.Likely)
	assert.Greater(t, many.Last.Likely, few.Last.Likely)
	assert.Panics(t, func() { o.Siblings(0) })
	assert.Empty(t, m.Outlook(Clutch{}, nil).Siblings(5))
}

func at(t *testing.T, days []DayHeads, n int) DayHeads {
	t.Helper()
	i := slices.IndexFunc(days, func(d DayHeads) bool { return d.On == day(n) })
	require.GreaterOrEqual(t, i, 0)
	return days[i]
}

func TestHeads(t *testing.T) {
	p := profile(
		step(species.Egg, 6, 7, 9, 0.8), step(species.Hatchling, 1, 2, 3, 0.95), step(species.Tadpole, 48, 60, 80, 0.7),
		step(species.Metamorph, 5, 7, 10, 0.85), step(species.GrowOut, 40, 56, 75, 0.9),
	)
	p.TadpolesPerLitre = species.Number{Value: 2, Source: invented}
	m := mustModel(t, p)
	o := m.Outlook(Clutch{Laid: day(0)}, nil)
	days, warnings := o.Heads([]Count{{day(0), 100}}, civil.Span{First: day(-1), Last: day(400)})
	assert.Empty(t, warnings)
	require.Len(t, days, 402)
	assert.Zero(t, at(t, days, -1).Living, "nothing is said of the day before the first count")
	assert.Equal(t, Heads{100, 100, 100}, at(t, days, 0).Living)
	assert.Equal(t, Heads{100, 100, 100}, at(t, days, 0).Stages[0])

	end := at(t, days, 400)
	assert.InDelta(t, 100*0.8*0.95*0.7*0.85*0.9, end.Living.Expected, 1e-6, "the product of the shares")
	assert.Equal(t, end.Living, end.Stages[5])
	assert.Less(t, end.Living.Low, 32)
	assert.Greater(t, end.Living.High, 50)

	for i, d := range days[1:] {
		sum := 0.0
		for _, s := range d.Stages {
			sum += s.Expected
			assert.LessOrEqual(t, s.Low, s.High)
		}
		assert.InDelta(t, d.Living.Expected, sum, 1e-5)
		assert.InDelta(t, d.Living.Expected, d.Stages[0].Expected+d.InWater.Expected+d.OnLand.Expected, 1e-5)
		if i > 0 {
			assert.LessOrEqual(t, d.Living.Expected, days[i].Living.Expected, "none comes back")
		}
		assert.Equal(t, float64(d.InWater.High)/2, d.Litres)
	}
	bins := at(t, days, 120)
	assert.Equal(t, (bins.OnLand.High+9)/10, bins.Bins(10))
	assert.Panics(t, func() { bins.Bins(0) })
}

// A count starts anew, and takes the doubt about what went before with it.
func TestHeadsFromCounts(t *testing.T) {
	m := leafFrog(t)
	c := Clutch{Laid: day(0), Looks: []Look{{Feeding, day(9), Reached}, {FrontLegs, day(50), NotYet}}}
	o := m.Outlook(c, nil)
	span := civil.Span{First: day(0), Last: day(250)}
	eggs, _ := o.Heads([]Count{{day(0), 100}}, span)
	counted, _ := o.Heads([]Count{{day(50), 70}, {day(0), 100}}, span) // in any order
	assert.Equal(t, at(t, eggs, 49), at(t, counted, 49), "before the count nothing changes")
	assert.Equal(t, Heads{70, 70, 70}, at(t, counted, 50).Living)
	assert.InDelta(t, 70, at(t, counted, 50).Stages[2].Expected, 5, "nearly all are tadpoles")
	spread := func(h Heads) float64 { return float64(h.High-h.Low) / h.Expected }
	assert.Less(t, spread(at(t, counted, 250).Living), spread(at(t, eggs, 250).Living))
	dead, _ := o.Heads([]Count{{day(0), 100}, {day(50), 0}}, span)
	assert.Zero(t, at(t, dead, 60).Living)
	_, warnings := o.Heads([]Count{{day(0), 40}, {day(20), 50}}, span)
	assert.Equal(t, []Warning{{Text: "50 were counted on 2027-03-06, and 40 on 2027-02-14 before: the later count is taken", Count: Count{day(20), 50}}}, warnings)
	none, _ := m.Outlook(Clutch{}, nil).Heads([]Count{{day(0), 100}}, span)
	assert.Zero(t, at(t, none, 9).Living)
}

func TestHeadsWithoutShares(t *testing.T) {
	m := mustModel(t, profile(step(species.Egg, 6, 7, 9, 0.8), step(species.Hatchling, 1, 2, 3, -1)))
	days, warnings := m.Outlook(Clutch{Laid: day(0)}, nil).Heads([]Count{{day(0), 50}}, civil.Span{First: day(40), Last: day(40)})
	assert.Equal(t, []Warning{{Text: "the profile does not say how many live through the step hatchling: all are taken to"}}, warnings)
	assert.InDelta(t, 40, days[0].Living.Expected, 1e-6)
	assert.Equal(t, days[0].Living, days[0].Stages[2], "what is not known of tadpoles leaves them tadpoles")
}
