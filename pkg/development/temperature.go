package development

import (
	"cmp"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Reading is a temperature that holds from a day on until the next reading.
type Reading struct {
	From civil.Date
	C    float64 // °C
}

// Temperatures are the temperatures of a place by day: the set-point of its
// heater, and what was measured. Each holds until the next; the last goes on
// for ever, and the first holds before its day too. Of two on one day the later
// in the list counts. None at all means that nothing is known, and development
// is counted as at the temperature of the profile.
type Temperatures []Reading

// byDay gives the readings in order, one a day.
func (t Temperatures) byDay() Temperatures {
	sorted := slices.Clone(t)
	slices.SortStableFunc(sorted, func(a, b Reading) int { return cmp.Compare(a.From, b.From) })
	out := sorted[:0]
	for _, r := range sorted {
		if n := len(out); n > 0 && out[n-1].From == r.From {
			out = out[:n-1]
		}
		out = append(out, r)
	}
	return out
}
