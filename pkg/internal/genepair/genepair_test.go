package genepair_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/internal/genepair"
)

func TestTake(t *testing.T) {
	p := genepair.New(5)
	p.Add(4, 2, 0.5)
	p.Add(1, 4, 0.25)
	p.Add(2, 4, 0.125) // the same two, the other way round
	p.Add(4, 4, 0.0625)
	p.Add(3, 2, 1)
	assert.Equal(t, []genepair.Older{{1, 0.25}, {2, 0.625}, {4, 0.0625}}, p.Take(4))
	assert.Empty(t, p.Take(4), "they were taken")
	assert.Equal(t, []genepair.Older{{2, 1}}, p.Take(3))
}

func TestDraw(t *testing.T) {
	candidate := func(i int) (int32, float64) { return int32(7 + i), []float64{0.75, 0.25}[i] }
	drawn := func(one bool) map[[2]int32]float64 {
		out := make(map[[2]int32]float64)
		genepair.Draw(2, candidate, one, 0.5, func(a, b int32, chance float64) { out[[2]int32{a, b}] += chance })
		return out
	}
	assert.Equal(t, map[[2]int32]float64{{7, 7}: 0.375, {8, 8}: 0.125}, drawn(true), "one animal, whoever it is")
	assert.Equal(t, map[[2]int32]float64{{7, 7}: 0.28125, {7, 8}: 0.09375, {8, 7}: 0.09375, {8, 8}: 0.03125}, drawn(false), "two draws")
}
