package development

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestNormalTable(t *testing.T) {
	for x := -9.0; x < 9; x += 0.00317 {
		want := math.Erfc(-x/math.Sqrt2) / 2
		assert.InDelta(t, want, normalCDF(x), 1e-9)
		p, density := normalBoth(x)
		assert.InDelta(t, want, p, 1e-9)
		assert.InDelta(t, math.Exp(-x*x/2)/rootTwoPi, density, 1e-6)
	}
}

// Where the chance is too small for a number its logarithm goes on as it should.
func TestLnNormalBetween(t *testing.T) {
	for _, c := range []struct{ a, b float64 }{{-1, 1}, {3, math.Inf(1)}, {math.Inf(-1), -3}, {10, 10.1}, {20, 21}, {-21, -20}} {
		assert.InDelta(t, math.Log(normalBetween(c.a, c.b)), lnNormalBetween(c.a, c.b), 1e-9)
	}
	assert.InDelta(t, lnNormalBetween(-41, -40), lnNormalBetween(40, 41), 1e-9, "both tails are the same")
	// At 36 it is still a number: the ratio of steps tells how it goes on.
	for x := 30.0; x < 60; x++ {
		step := lnNormalBetween(x+1, x+2) - lnNormalBetween(x, x+1)
		assert.InDelta(t, -(x + 0.5), step, 0.05, "at %v", x)
	}
	assert.Less(t, lnNormalBetween(50, 50.0001), lnNormalBetween(50, 50.001), "a shorter stretch has less")
}
