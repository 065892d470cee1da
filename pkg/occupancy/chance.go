package occupancy

import "math"

// Chance is in how many of the seasons that were played something happened.
type Chance struct {
	Seasons int // in which it happened
	Of      int // that were played
}

// Value gives the chance, from 0 to 1; NaN when none was played.
func (c Chance) Value() float64 { return float64(c.Seasons) / float64(c.Of) }

// Error gives the standard error of the chance, √(p(1−p)/n). It is 0 for what
// never or always happened; such a chance is then less than about 3/n away from 0
// or 1 (with 95 % certainty).
func (c Chance) Error() float64 {
	p := c.Value()
	return math.Sqrt(p * (1 - p) / float64(c.Of))
}
