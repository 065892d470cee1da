package horizon_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/horizon"
)

func TestWishesThatMakeNoSense(t *testing.T) {
	for name, w := range map[string]horizon.Wish{
		"no year":                {Years: -1},
		"more runs than a night": {Runs: 2_000_000},
		"more than all":          {Goal: 2},
		"everybody dies":         {Death: 1},
		"no number":              {Weight: math.NaN()},
		"less than no pairing":   {Pairings: -1},
		"too old":                {Lives: 101},
	} {
		_, err := w.Complete()
		var wrong *horizon.WishError
		require.ErrorAs(t, err, &wrong, name)
	}
	usual, err := horizon.Wish{Seed: 7}.Complete()
	require.NoError(t, err)
	assert.Equal(t, horizon.Wish{Years: 10, Runs: 1000, Lives: 8, Goal: 0.9, Seed: 7}, usual)
}

// TestAhead is about which ways are played and whether help is looked for.
func TestAhead(t *testing.T) {
	pair := horizon.Line{Kinship: [][]float64{{0.5, 0}, {0, 0.5}}, Male: []bool{true, false}, Age: []int{2, 2}}
	ahead := func(k horizon.Keeping, w horizon.Wish) horizon.Prospect {
		w.Runs, w.Years = 5, 3
		w, err := w.Complete()
		require.NoError(t, err)
		return k.Ahead(w)
	}
	kept := horizon.Keeping{Line: pair, Species: "hyla-cinerea", Matures: 1, Unsexed: 1}

	p := ahead(kept, horizon.Wish{Goal: 0.1, CrossEvery: 1, Pairings: 4})
	var ways []string
	for _, w := range p.Ways {
		ways = append(ways, w.Way)
		assert.Equal(t, 3, w.Years[3].Year, "from year 0 on")
		assert.InDelta(t, 0.75, w.Years[0].GeneDiversity.Mean, 1e-12, "two founders: 1 - 1/4")
	}
	assert.Equal(t, []string{"plan", "plan, lines crossed every year", "equal families", "random"}, ways)
	assert.True(t, p.Enough)
	assert.Nil(t, p.Help)
	assert.Contains(t, p.Assumptions, "1 of unknown sex count as male and female by turns")
	assert.Contains(t, p.Assumptions, "the plan has at most 4 different pairs a year")

	p = ahead(kept, horizon.Wish{Goal: 0.8})
	require.NotNil(t, p.Help, "two founders hold 0.75 at most")
	assert.Equal(t, 1, p.Help.Year)
	assert.False(t, p.Enough)

	p = ahead(horizon.Keeping{Line: horizon.Line{Kinship: [][]float64{{0.5}}, Male: []bool{true}, Age: []int{2}}, Matures: 1}, horizon.Wish{})
	assert.NotEmpty(t, p.NoFuture, "one animal is no line")
	assert.Empty(t, p.Ways)
}
