package horizon_test

import (
	"fmt"
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
	assert.Contains(t, p.Assumptions, "1 of unknown sex, taken as male and female by turns")
	assert.Contains(t, p.Assumptions, "the plan has at most 4 different pairs a year")

	p = ahead(kept, horizon.Wish{Goal: 0.8})
	require.NotNil(t, p.Help, "two founders hold 0.75 at most")
	assert.Equal(t, 1, p.Help.Year)
	assert.False(t, p.Enough)

	p = ahead(horizon.Keeping{Line: horizon.Line{Kinship: [][]float64{{0.5}}, Male: []bool{true}, Age: []int{2}}, Matures: 1}, horizon.Wish{})
	assert.NotEmpty(t, p.NoFuture, "one animal is no line")
	assert.Empty(t, p.Ways)

	p = ahead(kept, horizon.Wish{Goal: 0.1, Pairings: 1})
	assert.Contains(t, p.Assumptions, "the plan has at most one pair a year")

	n := horizon.LargestLine + 1
	kinship := make([][]float64, n)
	for i := range kinship {
		kinship[i] = make([]float64, n)
	}
	p = ahead(horizon.Keeping{Line: horizon.Line{Kinship: kinship, Male: make([]bool, n), Age: make([]int, n)}}, horizon.Wish{})
	assert.Equal(t, "lines of up to 1000 animals are played, and this one has 1001", p.NoFuture, "it would take hours and gigabytes")
	assert.Empty(t, p.Ways)
}

// TestAheadStoppedAnywhere: whatever was played by then has all its years, and nothing is
// said of what was not looked for.
func TestAheadStoppedAnywhere(t *testing.T) {
	pair := horizon.Line{Kinship: [][]float64{{0.5, 0}, {0, 0.5}}, Male: []bool{true, false}, Age: []int{2, 2}}
	seen := map[string]bool{}
	for most, whole := 0, false; !whole; most++ {
		calls := 0
		w, err := horizon.Wish{Runs: 3, Years: 2, Goal: 0.99, Stop: func() bool { calls++; return calls > most }}.Complete()
		require.NoError(t, err)
		p := horizon.Keeping{Line: pair, Matures: 1}.Ahead(w)
		require.Equal(t, len(p.Ways) == 0, p.NoFuture != "")
		require.Equal(t, len(p.Ways) == 0, p.Runs == 0)
		for _, way := range p.Ways {
			require.Len(t, way.Years, 3, "%s, stopped at call %d", way.Way, most)
		}
		require.False(t, p.Enough || p.Help != nil)
		whole = calls <= most
		require.Equal(t, !whole && p.NoFuture == "", p.HelpOpen, "stopped at call %d", most)
		seen[fmt.Sprintf("%d ways, all runs %t", len(p.Ways), p.Runs == 3)] = true
	}
	for _, want := range []string{"0 ways, all runs false", "1 ways, all runs false", "3 ways, all runs false", "3 ways, all runs true"} {
		require.True(t, seen[want], want)
	}
}
