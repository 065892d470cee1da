package eyes

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Whoever looks sees white as white and black as black, so that rows sum to 1.
func TestGreyStaysGrey(t *testing.T) {
	for _, e := range Eyes {
		for _, row := range e.sees {
			assert.InDelta(t, 1, row[0]+row[1]+row[2], 2e-6, e.Name)
		}
		assert.InDelta(t, 100, e.Distance("#000000", "#ffffff"), 0.01, e.Name)
		assert.Zero(t, e.Distance("#7f7f7f", "#7f7f7f"), e.Name)
	}
}

// TestDistance has known colours in CIE L*a*b* (sRGB, D65): red is 53.24, 80.09, 67.20,
// green 87.73, -86.18, 83.18, blue 32.30, 79.19, -107.86.
func TestDistance(t *testing.T) {
	usual := Eyes[0]
	assert.InDelta(t, 170.6, usual.Distance("#ff0000", "#00ff00"), 0.1)
	assert.InDelta(t, 176.3, usual.Distance("#ff0000", "#0000ff"), 0.1)
	assert.InDelta(t, 258.7, usual.Distance("#00ff00", "#0000ff"), 0.1)
}

// Those who lack the cones for red or green take colours for alike that the others
// tell well apart, and the other way round.
func TestWhoConfusesWhat(t *testing.T) {
	for _, row := range []struct{ eye, a, b string }{
		{"protanopia", "#8c3c1e", "#5a5a14"},
		{"deuteranopia", "#d04848", "#8c8c3c"},
		{"tritanopia", "#00a0c8", "#00a08c"},
		{"grey", "#d55e00", "#0094d9"},
	} {
		for _, e := range Eyes {
			switch e.Name {
			case row.eye:
				assert.Less(t, e.Distance(row.a, row.b), 15.0, "%+v", row)
			case "usual":
				assert.Greater(t, e.Distance(row.a, row.b), 35.0, "%+v", row)
			}
		}
	}
}

// TestContrast has examples of the W3C: #767676 is the lightest grey that can be read on white.
func TestContrast(t *testing.T) {
	assert.InDelta(t, 21, Contrast("#000000", "#ffffff"), 1e-9)
	assert.InDelta(t, 4.54, Contrast("#ffffff", "#767676"), 0.005)
	assert.Less(t, Contrast("#ffffff", "#777777"), 4.5)
	assert.Panics(t, func() { Contrast("#12345", "#ffffff") })
}
