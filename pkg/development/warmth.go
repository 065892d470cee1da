package development

import (
	"math"

	"github.com/spawnwright/spawnwright/pkg/species"
)

const (
	// farthest is how many °C beyond what its source covers a law is followed,
	// by the ten-degree factor that it has at the edge. Farther out the rate
	// stays as it is there.
	farthest = 5

	// The factor at an edge is taken from 1.5 to 5, as Moore 1939 (Ecology 20)
	// has them in four ranids between 10 and 33 °C: the slope of a thermal sum
	// near its threshold is no guide.
	leastFactor, mostFactor = 1.5, 5.0

	// spreadOutside is how much each °C outside what is covered adds to the
	// spread of ln days. Factors from 1.5 to 5 are slopes of ln days from 0.04
	// to 0.16 a degree; this is the standard deviation among them, rounded up.
	spreadOutside = 0.05

	// spreadLawless is the same where there is no law and so no slope at all:
	// a ten-degree factor of 2.5, which is between Moore's, makes that much.
	spreadLawless = 0.09
)

// warmth is how the rate of a step follows the temperature.
type warmth struct {
	law       species.Law
	known     bool    // the profile says at what temperature its days hold
	reference float64 // the middle of it, °C
	covers    species.Range
}

func newWarmth(s species.Step) warmth {
	w := warmth{law: s.Law, known: s.AtC.Known(), reference: s.AtC.Middle(), covers: s.AtC}
	if w.law.Known() && s.CoversC.Known() {
		w.covers.Low = min(w.covers.Low, s.CoversC.Low)
		w.covers.High = max(w.covers.High, s.CoversC.High)
	}
	return w
}

// rate gives how many times as fast as at the reference the step goes at c.
func (w warmth) rate(c float64) float64 {
	if !w.law.Known() || !w.known {
		return 1
	}
	edge := min(max(c, w.covers.Low), w.covers.High)
	rate := w.law.Ratio(w.reference, edge)
	if c == edge {
		return rate
	}
	factor := min(max(w.law.Factor(edge), leastFactor), mostFactor)
	beyond := min(max(c-edge, -farthest), farthest)
	return rate * math.Pow(factor, beyond/10)
}

// outside gives how many °C c is outside of what is covered.
func (w warmth) outside(c float64) float64 {
	if !w.known {
		return 0
	}
	return max(w.covers.Low-c, c-w.covers.High, 0)
}

// spread gives what a mean of so many °C outside adds to the standard
// deviation of ln days. It grows no more beyond farthest, where nothing is to be
// expected of the animals anyway.
func (w warmth) spread(outside float64) float64 {
	outside = min(outside, farthest)
	if w.law.Known() {
		return spreadOutside * outside
	}
	return spreadLawless * outside
}
