package frogroom_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/horizon"
)

// TestHorizonOfRandomRooms: year 0 is the line as it is, shares are shares, and workers
// make no difference.
func TestHorizonOfRandomRooms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := randomFile(t)
		r, _ := frogroom.Read("room.yaml", []byte(f.text(f.diary)))
		on := civil.Date(rapid.IntRange(int(day("2023-06-01")), int(day("2028-12-31"))).Draw(t, "on"))
		w := horizon.Wish{Years: 2, Runs: 5, Weight: 0.1, Death: rapid.SampledFrom([]float64{0, 0.3}).Draw(t, "deaths")}
		got, err := r.Horizon(on, w)
		require.NoError(t, err)
		w.Workers = 3
		again, err := r.Horizon(on, w)
		require.NoError(t, err)
		require.Empty(t, cmp.Diff(got, again))
		for _, s := range got.Species {
			if s.NoFuture != "" {
				require.Less(t, s.Living, 2)
				continue
			}
			require.Len(t, s.Ways, 3)
			for _, way := range s.Ways {
				require.Len(t, way.Years, 3)
				for _, y := range way.Years {
					require.True(t, y.Below >= 0 && y.Below <= 1+1e-9 && y.Lost >= 0 && y.Lost <= 1+1e-9)
				}
			}
			first := s.Ways[0].Years[0].GeneDiversity
			require.InDelta(t, first.Low, first.High, 1e-9)
		}
	})
}

// TestHorizonBeginsWithTheLine holds year 0 against the gene diversity of kin.
func TestHorizonBeginsWithTheLine(t *testing.T) {
	r := room(t, basic+`
  - {id: F, species: clockwork, sire: A, dam: D, sex: male, out_of_water: 2024-01-01}
  - {id: G, species: clockwork, sire: A, dam: D, sex: female, out_of_water: 2024-01-01}
`)
	on := day("2027-03-01")
	h, err := r.Horizon(on, horizon.Wish{Runs: 20, Years: 3, Goal: 0.5})
	require.NoError(t, err)
	s := h.Species[0]
	assert.InDelta(t, r.Kin(on).Groups[0].GeneDiversity, s.Ways[0].Years[0].GeneDiversity.Mean, 1e-9)
	assert.True(t, s.Enough)
	assert.Nil(t, s.Help)

	h, err = r.Horizon(on, horizon.Wish{Runs: 20, Years: 3, Goal: 0.85})
	require.NoError(t, err)
	require.NotNil(t, h.Species[0].Help)
	assert.Equal(t, 1, h.Species[0].Help.Year, "the line is under the goal already")
	assert.Positive(t, h.Species[0].Help.Animals)
}

// TestHorizonOfAVeryLargeLine: its kinships alone would take gigabytes.
func TestHorizonOfAVeryLargeLine(t *testing.T) {
	var b strings.Builder
	b.WriteString(basic)
	for i := range horizon.LargestLine + 1 {
		fmt.Fprintf(&b, "  - {id: X%d, species: hyla-cinerea, sex: male, out_of_water: 2024-01-01}\n", i)
	}
	h, err := room(t, b.String()).Horizon(day("2027-03-01"), horizon.Wish{Species: "hyla-cinerea", Runs: 1, Years: 1})
	require.NoError(t, err)
	assert.Equal(t, 1001, h.Species[0].Living)
	assert.NotEmpty(t, h.Species[0].NoFuture)
}

func TestHorizonOfNobody(t *testing.T) {
	_, err := room(t, basic).Horizon(day("2027-03-01"), horizon.Wish{Species: "nobody"})
	var unknown *collection.UnknownError
	require.True(t, errors.As(err, &unknown))
}
