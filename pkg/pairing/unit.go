package pairing

import "math"

// nearly is how much of the unit a plan is better at least if it is better: 1 but for rounding.
const nearly = 0.99

// unit gives a number of which the scores of any two plans differ by a whole multiple, or 0
// when none is found that is of use. Kinships are halves of halves, and young are whole: in a
// line that is not old the scores are far apart, and a bound that is less than a unit
// below a plan proves it.
func (s *scoring) unit() float64 {
	var parts []float64
	for a, row := range s.kin {
		for _, x := range row[:a+1] {
			parts = append(parts, x/2) // two young of two options have a quarter of each of four kinships, both ways round
		}
	}
	first := 0.0
	for p, shares := range s.shares {
		if len(shares) != 2 {
			return 0
		}
		own := s.bend(p, p)
		if p == 0 {
			first = s.lin[p] + own
		}
		// The square of the young is the young and an even number; and all young together are a given number.
		parts = append(parts, 2*own, math.Abs(s.lin[p]+own-first))
	}
	unit := 0.0
	for _, x := range parts {
		unit = divisor(unit, x)
		if unit > 0 && unit < 10*slack {
			return 0
		}
	}
	if unit > 0 && s.measures(unit, parts) {
		return unit
	}
	return 0
}

// noise is what numbers of the score are at most wrong by.
const noise = 1e-15

// divisor gives the greatest number of which both are multiples (Euclid).
func divisor(x, y float64) float64 {
	for y > noise {
		x, y = y, math.Mod(x, y)
		if x-y < noise {
			y = 0
		}
	}
	return x
}

// measures reports whether the parts are so near to whole multiples of the unit that the scores are,
// of which each has at most four parts for two young.
func (s *scoring) measures(unit float64, parts []float64) bool {
	most := (1 - nearly) / 2 * unit / (8 * float64(s.young) * float64(s.young))
	for _, x := range parts {
		if math.Abs(x-unit*math.Round(x/unit)) > most {
			return false
		}
	}
	return true
}
