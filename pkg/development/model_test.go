package development

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/species"
)

const invented = "invented for this test"

func step(name species.StepName, p10, p50, p90, survival float64) species.Step {
	s := species.Step{Name: name, Days: species.Percentiles{P10: p10, P50: p50, P90: p90, Source: invented}}
	if survival >= 0 {
		s.Survival = species.Number{Value: survival, Source: invented}
	}
	return s
}

func profile(steps ...species.Step) *species.Profile {
	return &species.Profile{ID: "invented-frog", Development: steps}
}

func mustModel(t *testing.T, p *species.Profile) *Model {
	t.Helper()
	m, err := NewModel(p)
	require.NoError(t, err)
	return m
}

// A keeper whose tadpoles get their legs early, and whose froglets are slow to eat,
// says so in the profile.
func TestProfileSaysWhenLegsAndFirstFoodCome(t *testing.T) {
	tadpoles, growing := step(species.Tadpole, 100, 100, 100, 1), step(species.GrowOut, 50, 50, 50, 1)
	tadpoles.HindLegsPct = species.Percentiles{P10: 4, P50: 5, P90: 6, Source: "own notes"}
	tadpoles.ToesPct = species.Percentiles{P10: 38, P50: 40, P90: 42, Source: "own notes"}
	growing.EatingDays = species.Percentiles{P10: 8, P50: 10, P90: 13, Source: "own notes"}
	of := func(steps ...species.Step) *species.Profile {
		return profile(append([]species.Step{step(species.Egg, 7, 7, 7, 1), step(species.Hatchling, 2, 2, 2, 1), step(species.Metamorph, 4, 4, 4, 1)}, steps...)...)
	}
	o := mustModel(t, of(tadpoles, growing)).Outlook(Clutch{Laid: day(0)}, nil)
	for stage, want := range map[Stage]civil.Window{
		HindLegs: {Early: day(9 + 4), Likely: day(9 + 5), Late: day(9 + 6)},
		Toes:     {Early: day(9 + 38), Likely: day(9 + 40), Late: day(9 + 42)},
		Eating:   {Early: day(113 + 8), Likely: day(113 + 10), Late: day(113 + 13)},
	} {
		e, _ := o.Event(stage)
		assert.Equal(t, want, e.Window, "%v", stage)
	}

	tadpoles.ToesPct.P90 = 100
	_, err := NewModel(of(tadpoles, growing))
	assert.EqualError(t, err, "invented-frog: step tadpole: 38, 40, 100 (10th, 50th, 90th percentile): parts of a step rise between 0 and 100 %")
	tadpoles.ToesPct.P90, growing.EatingDays.P10 = 42, 11
	_, err = NewModel(of(tadpoles, growing))
	assert.EqualError(t, err, "invented-frog: step grow-out: 11, 10, 13 (10th, 50th, 90th percentile): they have to rise")
}

func TestModelFollowsTheStepsOfAProfile(t *testing.T) {
	m := mustModel(t, profile(
		step(species.GrowOut, 40, 56, 75, 0.9), // the order in the profile does not matter
		step(species.Egg, 6, 7, 9, 0.8),
		step(species.Hatchling, 1, 2, 3, 0.95),
		step(species.Tadpole, 48, 60, 80, 0.7),
		step(species.Metamorph, 5, 7, 10, 0.85),
	))
	got, want := m.Outlook(Clutch{Laid: day(0)}, nil).All(), leafFrog(t).Outlook(Clutch{Laid: day(0)}, nil).All()
	for i, e := range got {
		sameDistribution(t, want[i].Dist, e.Dist)
	}
}

// The likely date is no sum of likely lengths where the late ends are long.
func TestMedianOfTheSumIsNoSumOfMedians(t *testing.T) {
	m := mustModel(t, profile(
		step(species.Egg, 6, 7, 12, 1), step(species.Hatchling, 1, 2, 5, 1), step(species.Tadpole, 50, 60, 100, 1),
		step(species.Metamorph, 6, 7, 14, 1), step(species.GrowOut, 45, 50, 90, 1),
	))
	e, _ := m.Outlook(Clutch{Laid: day(0)}, nil).Event(SaleReady)
	sale := e.Dist
	assert.Greater(t, sale.Quantile(0.5), 7+2+60+7+50+10)
	assert.Less(t, sale.CDF(7+2+60+7+50), 0.36)
	assert.Less(t, sale.Quantile(0.9), 12+5+100+14+90, "nor is the late date a sum of late lengths")
}

func TestModelOfAProfileWithGaps(t *testing.T) {
	m := mustModel(t, profile(
		step(species.Egg, 6, 7, 9, 0.8),
		step(species.Hatchling, 1, 2, 3, -1),
		species.Step{Name: species.Tadpole, Survival: species.Number{Value: 0.5, Source: invented}},
		step(species.GrowOut, 40, 56, 75, 0.9),
	))
	o := m.Outlook(Clutch{Laid: day(0)}, nil)
	for _, e := range o.All() {
		assert.Equal(t, e.Stage <= Feeding, e.Dist.Known(), "%v", e.Stage)
	}
	for _, e := range mustModel(t, profile()).Outlook(Clutch{Laid: day(0)}, nil).All() {
		assert.False(t, e.Dist.Known(), "%v", e.Stage)
	}
}

func TestNewModelErrors(t *testing.T) {
	_, err := NewModel(profile(step(species.Egg, 6, 7, 9, 1), step(species.Tadpole, 48, 40, 80, 1)))
	var wrong *StepError
	require.ErrorAs(t, err, &wrong)
	assert.Equal(t, species.Tadpole, wrong.Step)
	var cause *PercentilesError
	require.ErrorAs(t, err, &cause)
	assert.EqualError(t, err, "invented-frog: step tadpole: 48, 40, 80 (10th, 50th, 90th percentile): they have to rise")
	assert.Panics(t, func() { _, _ = NewModel(nil) })
}

func TestSurvival(t *testing.T) {
	m := mustModel(t, profile(
		step(species.Egg, 6, 7, 9, 0.8),
		step(species.Hatchling, 1, 2, 3, 0.5),
		step(species.Tadpole, 48, 60, 80, 0.25),
		step(species.Metamorph, 5, 7, 10, -1), // not known
		step(species.GrowOut, 40, 56, 75, 0),  // known, and nothing
	))
	for _, row := range []struct {
		name     string
		from, to Stage
		want     float64
		ok       bool
	}{
		{"one step", Laid, Hatched, 0.8, true},
		{"product", Laid, FrontLegs, 0.8 * 0.5 * 0.25, true},
		{"from the middle", Hatched, FrontLegs, 0.5 * 0.25, true},
		{"no way to go", Feeding, Feeding, 1, true},
		{"no way to go, from the first", Laid, Laid, 1, true},
		{"over an unknown step", FrontLegs, SaleReady, 0, false},
		{"none is a share too", OutOfWater, SaleReady, 0, true},
		{"backward", FrontLegs, Hatched, 0, false},
		{"backward by one", Feeding, Hatched, 0, false},
		{"backward to the first", Hatched, Laid, 0, false},
		{"from within a step", Toes, FrontLegs, 0, false},
		{"to within a step", Feeding, HindLegs, 0, false},
		{"within a step, even with no way to go", Eating, Eating, 0, false},
	} {
		t.Run(row.name, func(t *testing.T) {
			share, ok := m.Survival(row.from, row.to)
			assert.Equal(t, row.ok, ok)
			assert.InDelta(t, row.want, share, 1e-12)
		})
	}
}
