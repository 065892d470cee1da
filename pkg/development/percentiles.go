package development

import (
	"fmt"
	"math"
)

const (
	// z90 is the 90th percentile of the standard normal distribution.
	z90 = 1.2815515655446004

	// longest is the most days that one step may take: ten years. It bounds
	// memory and time whatever the numbers are.
	longest = 3650

	// spill is the largest chance beyond longest that is passed over.
	spill = 1e-3
)

// PercentilesError says why three percentiles make no distribution. It is what
// [FromPercentiles] returns.
type PercentilesError struct {
	P10, P50, P90 float64
	Reason        string // without a full stop
}

func (e *PercentilesError) Error() string {
	return fmt.Sprintf("%v, %v, %v (10th, 50th, 90th percentile): %s", e.P10, e.P50, e.P90, e.Reason)
}

// FromPercentiles makes the distribution of a length whose 10th, 50th and 90th
// percentile are given in days and parts of days. It is a two-piece lognormal:
// ln days is normal about ln P50, with the standard deviation
// (ln P50 - ln P10)/z below it and (ln P90 - ln P50)/z above, z = 1.2816, so
// that all three are met. Lengths of development spread in proportion to
// themselves (Sharpe and DeMichele 1977), and a late percentile is no last
// day; both speak for a lognormal, and against a shape with a hard end.
//
// A whole day k takes the chance from k-½ to k+½; what is below half a day is
// on day 0. Two percentiles that are the same put their half of the chance on
// that one day. A percentile of 0 stands for half a day, the last that falls on
// day 0.
//
// Errors are *[PercentilesError]: for percentiles that are negative, not
// numbers or out of order, and for a spread that reaches beyond ten years.
func FromPercentiles(p10, p50, p90 float64) (Distribution, error) {
	fail := func(reason string) (Distribution, error) {
		return Distribution{}, &PercentilesError{p10, p50, p90, reason}
	}
	for _, p := range [3]float64{p10, p50, p90} {
		if !(p >= 0) || math.IsInf(p, 1) {
			return fail("each has to be a number of days from 0")
		}
	}
	if p10 > p50 || p50 > p90 {
		return fail("they have to rise")
	}
	shape := newTwoPiece(p10, p50, p90)
	if 1-shape.cdf(longest+0.5) > spill {
		return fail("the spread reaches beyond ten years")
	}
	var masses []float64
	below := 0.0
	for day := 0; day <= longest; day++ {
		upTo := shape.cdf(float64(day) + 0.5)
		masses = append(masses, max(upTo-below, 0))
		below = upTo
		if 1-upTo < tailCut/100 {
			break
		}
	}
	masses[len(masses)-1] += 1 - below // so that all that is below keeps its chance
	return FromMasses(0, masses), nil
}

// twoPiece is a lognormal with one spread on either side of its median.
type twoPiece struct{ mu, below, above float64 }

func newTwoPiece(p10, p50, p90 float64) twoPiece {
	ln := func(p float64) float64 {
		if p == 0 {
			p = 0.5
		}
		return math.Log(p)
	}
	mu := ln(p50)
	return twoPiece{mu: mu, below: max(mu-ln(p10), 0) / z90, above: max(ln(p90)-mu, 0) / z90}
}

// cdf gives the chance of a length of at most days.
func (t twoPiece) cdf(days float64) float64 {
	x := math.Log(days) - t.mu
	sigma := t.above
	if x < 0 {
		sigma = t.below
	}
	switch {
	case sigma > 0:
		return math.Erfc(-x/sigma/math.Sqrt2) / 2
	case x < 0:
		return 0
	}
	return 1 // no spread above the median: all of that half is on it
}

// leastSpread is the smallest spread of ln days that is counted with: no
// clutch keeps a length to the hour.
const leastSpread = 0.004

// standardised gives t with at least leastSpread on either side.
func (t twoPiece) standardised() twoPiece {
	t.below, t.above = max(t.below, leastSpread), max(t.above, leastSpread)
	return t
}

// z gives a length in standard deviations of ln days from the median. t has
// to be standardised.
func (t twoPiece) z(days float64) float64 {
	if days <= 0 {
		return math.Inf(-1)
	}
	x := math.Log(days) - t.mu
	if x < 0 {
		return x / t.below
	}
	return x / t.above
}

// days is the inverse of z.
func (t twoPiece) days(z float64) float64 {
	if z < 0 {
		return math.Exp(t.mu + z*t.below)
	}
	return math.Exp(t.mu + z*t.above)
}

// spread is the mean of the two.
func (t twoPiece) spread() float64 { return (t.below + t.above) / 2 }
