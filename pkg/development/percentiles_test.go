package development

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestFromPercentiles(t *testing.T) {
	for _, row := range []struct {
		name             string
		p10, p50, p90    float64
		d10, d50, d90    int
		first, atMost999 int // -1: not looked at
	}{
		{"whole days", 48, 60, 80, 48, 60, 80, -1, -1},
		{"more spread early than late", 20, 60, 65, 20, 60, 65, -1, -1},
		{"28, 32 and 36 hours fall on day 1", 28.0 / 24, 32.0 / 24, 36.0 / 24, 1, 1, 1, 1, 2},
		{"half days round down, as the day ends there", 4.5, 5.5, 6.5, 4, 5, 6, -1, -1},
		{"below half a day is day 0", 0.1, 0.3, 0.45, 0, 0, 0, 0, -1},
		{"no spread below", 10, 10, 14, 10, 10, 14, 10, -1},
		{"no spread above", 6, 10, 10, 6, 10, 10, -1, 10},
		{"no spread at all", 10, 10, 10, 10, 10, 10, 10, 10},
		{"no spread, half a day", 10.5, 10.5, 10.5, 10, 10, 10, 10, 10},
		{"nothing", 0, 0, 0, 0, 0, 0, 0, 0},
		{"none in one of ten", 0, 3, 5, 0, 3, 5, 0, -1},
		{"none in one of two", 0, 0, 5, 0, 0, 5, 0, -1},
	} {
		t.Run(row.name, func(t *testing.T) {
			d, err := FromPercentiles(row.p10, row.p50, row.p90)
			require.NoError(t, err)
			assert.Equal(t, []int{row.d10, row.d50, row.d90}, []int{d.Quantile(0.1), d.Quantile(0.5), d.Quantile(0.9)})
			if row.first >= 0 {
				assert.Equal(t, row.first, d.First())
			}
			if row.atMost999 >= 0 {
				assert.Equal(t, row.atMost999, d.Quantile(0.999))
			}
		})
	}
}

// Worked by hand with a table of the normal distribution:
// sigma = ln(80/60)/1.28155 = 0.22448 above, ln(60/48)/1.28155 = 0.17412 below.
func TestFromPercentilesByHand(t *testing.T) {
	d, err := FromPercentiles(48, 60, 80)
	require.NoError(t, err)
	assert.InDelta(t, 0.8325, d.CDF(74), 0.0002, "ln(74.5/60)/0.22448 = 0.964")
	assert.InDelta(t, 0.2550, d.CDF(53), 0.0002, "ln(53.5/60)/0.17412 = -0.659")
}

func TestFromPercentilesErrors(t *testing.T) {
	for name, p := range map[string][3]float64{
		"falls":                {5, 4, 9},
		"falls late":           {3, 4, 3},
		"negative":             {-1, 4, 9},
		"not a number":         {1, math.NaN(), 9},
		"endless":              {1, 4, math.Inf(1)},
		"beyond ten years":     {100, 1000, 5000},
		"far too wide":         {1, 2, 3000},
		"no spread, too late":  {4000, 4000, 4000},
		"very wide on one end": {1, 100, 2000},
	} {
		_, err := FromPercentiles(p[0], p[1], p[2])
		var wrong *PercentilesError
		require.ErrorAs(t, err, &wrong, name)
		assert.NotEmpty(t, wrong.Reason, name)
	}
	_, err := FromPercentiles(5, 4, 9)
	assert.EqualError(t, err, "5, 4, 9 (10th, 50th, 90th percentile): they have to rise")
}

// Whatever percentiles are given, each is met to the day: a day takes what
// falls up to half a day after it.
func TestPercentilesAreMet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p50 := rapid.Float64Range(0.6, 300).Draw(t, "p50")
		p10 := p50 / rapid.Float64Range(1, 2.5).Draw(t, "down")
		p90 := p50 * rapid.Float64Range(1, 2.5).Draw(t, "up")
		d, err := FromPercentiles(p10, p50, p90)
		if err != nil {
			t.Fatal(err)
		}
		for _, q := range []struct{ p, days float64 }{{0.1, p10}, {0.5, p50}, {0.9, p90}} {
			got := float64(d.Quantile(q.p))
			if got+0.5 < q.days-1e-6 || got > 0 && got-0.5 > q.days+1e-6 {
				t.Fatalf("percentile %v is day %v, want %v", q.p, got, q.days)
			}
		}
	})
}

func TestFromPercentilesAgainstFineIntegration(t *testing.T) {
	// The same shape by adding up the density in steps of a hundredth of a day.
	const p10, p50, p90, step = 3.0, 5.0, 11.0, 0.01
	d, err := FromPercentiles(p10, p50, p90)
	require.NoError(t, err)
	below, above := math.Log(p50/p10)/1.2815515655, math.Log(p90/p50)/1.2815515655
	sum := 0.0
	for i := range 4000 {
		x := (float64(i) + 0.5) * step
		sigma := above
		if x < p50 {
			sigma = below
		}
		z := math.Log(x/p50) / sigma
		sum += math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) / sigma / x * step
		if (i+1)%100 == 50 {
			assert.InDelta(t, sum, d.CDF((i+1)/100), 1e-4, "day %d", (i+1)/100)
		}
	}
}
