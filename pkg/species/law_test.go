package species

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func TestLawRatio(t *testing.T) {
	sum := Law{Kind: ThermalSum, ThresholdC: 8, Source: "me"}
	fixed := Law{Kind: FallingQ10, At: []Factor{{20, 2.5}}, Source: "me"}
	falling := Law{Kind: FallingQ10, At: []Factor{{10, 4}, {20, 2}}, Source: "me"}
	for _, c := range []struct {
		name     string
		law      Law
		from, to float64
		want     float64
	}{
		// 480 degree-days above 8 °C: 48, 40, 34.3 and 30 days at 18, 20, 22 and 24 °C.
		{"a thermal sum: 40 days for 48", sum, 18, 20, 48.0 / 40},
		{"a thermal sum: 30 days for 48", sum, 18, 24, 48.0 / 30},
		{"a thermal sum stands still at its threshold", sum, 18, 8, 0},
		{"and below it", sum, 18, 3, 0},
		// 48 days at 22 °C are 63.2 at 19 °C with a factor of 2.5.
		{"one factor: 63.2 days for 48", fixed, 22, 19, 48 / 63.2},
		{"ten degrees are the factor", fixed, 15, 25, 2.5},
		{"a falling factor below its nodes", falling, 0, 10, 4},
		{"a falling factor above its nodes", falling, 20, 30, 2},
		{"a falling factor between them is the geometric mean", falling, 10, 20, math.Sqrt(8)},
	} {
		t.Run(c.name, func(t *testing.T) {
			assert.InDelta(t, c.want, c.law.Ratio(c.from, c.to), 1e-3)
			if c.want > 0 {
				assert.InDelta(t, 1/c.want, c.law.Ratio(c.to, c.from), 1e-3, "there and back")
			}
		})
	}
}

// The factor is what the ratio says over a short way.
func TestLawFactorIsTheSlope(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		law := rapid.SampledFrom([]Law{
			{Kind: ThermalSum, ThresholdC: 4, Source: "me"},
			{Kind: FallingQ10, At: []Factor{{17.5, 3}, {23, 2.5}, {28, 1.6}}, Source: "me"},
		}).Draw(t, "law")
		c := rapid.Float64Range(6, 35).Draw(t, "c")
		const step = 1e-5
		slope := math.Log(law.Ratio(c-step, c+step)) / (2 * step)
		if math.Abs(slope*10-math.Log(law.Factor(c))) > 1e-3 {
			t.Fatalf("at %v: factor %v, slope %v", c, law.Factor(c), math.Exp(slope*10))
		}
	})
	assert.True(t, math.IsInf(Law{Kind: ThermalSum, ThresholdC: 4, Source: "me"}.Factor(4), 1))
}

func TestUnknownLawPanics(t *testing.T) {
	assert.Panics(t, func() { Law{}.Ratio(20, 21) })
	assert.Panics(t, func() { Law{}.Factor(20) })
}
