package occupancy_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/occupancy"
)

// alike is clutches that each hold one tub on the same day with the same chance.
func alike(clutches, tubs int, chance float64) occupancy.Season {
	first := date("2027-03-01")
	s := occupancy.Season{First: first, Days: 3, Resources: []occupancy.Resource{{Name: "tubs", Count: tubs}}}
	for range clutches {
		s.Clutches = append(s.Clutches, occupancy.Clutch{Courses: []occupancy.Course{
			{Chance: chance, Holds: []occupancy.Hold{{First: first.Add(1), Last: first.Add(1), Amount: 1}}},
		}})
	}
	return s
}

// TestBinomial has the clutches of which any table of the binomial distribution
// says how many come: of 10 with a chance of 0.3, more than 5 with 0.0473, with
// 0.9527 at most 5, with 0.1493 at most 1 and with 0.8497 at most 4.
func TestBinomial(t *testing.T) {
	risk, err := occupancy.Assess(alike(10, 5, 0.3), occupancy.Options{Seasons: 100_000, Seed: 7, Workers: 2})
	require.NoError(t, err)
	tubs := risk.Resources[0]
	day := tubs.Loads[1]
	assert.InDelta(t, 0.0473, day.Over, 0.00005)
	assert.InDelta(t, 3, day.Mean, 1e-12)
	assert.Equal(t, []int{1, 3, 5}, []int{day.P10, day.P50, day.P90})
	assert.InDelta(t, 1-0.1493, day.Above(1), 0.00005)
	assert.InDelta(t, 1, day.Above(-1), 1e-12)
	assert.Zero(t, day.Above(10))
	assert.Equal(t, date("2027-03-02"), tubs.Worst)
	assert.Equal(t, day.Over, tubs.WorstOver)
	assert.Equal(t, 1.0, tubs.DaysShort)
	assert.InDelta(t, 0.0473, tubs.Short.Value(), 4*tubs.Short.Error())
	assert.InDelta(t, 1-0.8497, tubs.With(-1).Value(), 0.005)
	assert.Equal(t, tubs.Short, risk.Any)
	assert.Zero(t, tubs.Loads[0].Over)
	assert.Zero(t, tubs.Loads[0].P90)
}

func TestMore(t *testing.T) {
	risk, err := occupancy.Assess(alike(10, 2, 0.5), occupancy.Options{Seasons: 10_000, Seed: 1})
	require.NoError(t, err)
	tubs := risk.Resources[0] // at most 5, 6, 7, 8, 9 of 10 come with chances 0.623, 0.828, 0.945, 0.989, 0.999
	for _, row := range []struct {
		wished float64
		more   int
	}{{1, 0}, {0.95, 0}, {0.4, 3}, {0.2, 4}, {0.1, 5}, {0.02, 6}, {0, 8}} {
		assert.Equal(t, row.more, tubs.More(row.wished), "%v", row.wished)
	}
}

// TestDaysShort has a clutch that is late or not: then for four days there are
// too few, and otherwise for two.
func TestDaysShort(t *testing.T) {
	first := date("2027-03-01")
	holds := func(days int) []occupancy.Hold {
		return []occupancy.Hold{{First: first, Last: first.Add(days - 1), Amount: 2}}
	}
	s := occupancy.Season{
		First: first, Days: 10, Resources: []occupancy.Resource{{Name: "tubs", Count: 1}},
		Clutches: []occupancy.Clutch{{ID: "C", Courses: []occupancy.Course{{0.25, holds(2)}, {0.25, holds(4)}}}},
	}
	risk, err := occupancy.Assess(s, occupancy.Options{Seasons: 20_000, Seed: 3})
	require.NoError(t, err)
	assert.InDelta(t, 3, risk.Resources[0].DaysShort, 0.05)
	assert.InDelta(t, 0.5, risk.Any.Value(), 0.02)
	assert.Equal(t, first, risk.Resources[0].Worst, "the first of two days that are equally bad")
	assert.InDelta(t, 0.5, risk.Resources[0].WorstOver, 1e-12)
}

func TestChance(t *testing.T) {
	c := occupancy.Chance{Seasons: 5000, Of: 20_000}
	assert.Equal(t, 0.25, c.Value())
	assert.InDelta(t, 0.003062, c.Error(), 1e-6)
	assert.Zero(t, occupancy.Chance{Of: 100}.Error())
}

func TestWorkers(t *testing.T) {
	s := alike(7, 3, 0.4)
	moves := []occupancy.Move{{Clutch: 2, Days: 1}, {Clutch: 0, Days: -1}}
	one, err := occupancy.Assess(s, occupancy.Options{Seasons: 1001, Seed: 5})
	require.NoError(t, err)
	oneMoved, err := occupancy.TryMoves(s, occupancy.Options{Seasons: 1001, Seed: 5}, moves)
	require.NoError(t, err)
	for _, workers := range []int{2, 3, 2000} {
		o := occupancy.Options{Seasons: 1001, Seed: 5, Workers: workers}
		many, err := occupancy.Assess(s, o)
		require.NoError(t, err)
		assert.Equal(t, one, many)
		moved, err := occupancy.TryMoves(s, o, moves)
		require.NoError(t, err)
		assert.Equal(t, oneMoved, moved)
	}
	other, err := occupancy.Assess(s, occupancy.Options{Seasons: 1001, Seed: 6})
	require.NoError(t, err)
	assert.NotEqual(t, one, other, "another seed has other seasons")
}

// TestSeasonsAreIndependent plays so many seasons that a hidden tie between the
// draws of one season, or of neighbouring ones, would show.
func TestSeasonsAreIndependent(t *testing.T) {
	for seed := range uint64(4) {
		risk, err := occupancy.Assess(alike(8, 0, 0.5), occupancy.Options{Seasons: 200_000, Seed: seed, Workers: 2})
		require.NoError(t, err)
		tubs := risk.Resources[0]
		for n, want := range []float64{255, 247, 219, 163, 93, 37, 9, 1} { // of 256: more than n of 8
			got := tubs.With(n)
			assert.InDelta(t, want/256, got.Value(), 4.5*got.Error(), "more than %d", n)
		}
	}
}

// TestNeighbours looks at season after season: with a chance of one in two they
// differ from the one before in half of all cases.
func TestNeighbours(t *testing.T) {
	short := make([]int, 201) // of the first n seasons
	for n := range short[1:] {
		risk, err := occupancy.Assess(alike(1, 0, 0.5), occupancy.Options{Seasons: n + 1, Seed: 9})
		require.NoError(t, err)
		short[n+1] = risk.Any.Seasons
	}
	differ := []int{0, 0} // by whether the later number is odd
	for n := 1; n < 200; n++ {
		if short[n+1]-short[n] != short[n]-short[n-1] {
			differ[n%2]++
		}
	}
	assert.InDelta(t, 50, differ[0], 20)
	assert.InDelta(t, 50, differ[1], 20)
}

func TestNothing(t *testing.T) {
	s := occupancy.Season{First: date("2027-03-01"), Days: 2, Resources: []occupancy.Resource{{Name: "tubs"}}}
	risk, err := occupancy.Assess(s, occupancy.Options{Seasons: 10})
	require.NoError(t, err)
	assert.Zero(t, risk.Any.Seasons)
	assert.Zero(t, risk.Resources[0].Worst)
	assert.Zero(t, risk.Resources[0].More(0))
	assert.Zero(t, risk.Resources[0].DaysShort)
	loads, err := occupancy.Loads(s)
	require.NoError(t, err)
	assert.Equal(t, risk.Resources[0].Loads, loads[0])
}
