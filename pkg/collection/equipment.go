package collection

import "time"

// Equipment is what the room has. A capacity that is not known does not limit
// anything, and whoever uses it says that it was not checked.
type Equipment struct {
	RainChambers  Given[int] // pairings that can be in the rain at once
	CoolingPlaces Given[int] // pairings that can be cooled or kept dry at once
	TadpoleTubs   Tubs
	FrogletBins   Bins
	MinutesADay   Given[int] // hands-on work on an ordinary day
}

// Tubs are the tubs for tadpoles.
type Tubs struct {
	Count  Given[int]
	Litres Given[float64] // in each
	WaterC Given[float64] // set-point, °C
}

// Bins are the bins for froglets.
type Bins struct {
	Count    Given[int]
	Froglets Given[int] // in each
}

// Rules are the keeper's limits.
type Rules struct {
	WarnInbreeding  float64 // inbreeding coefficient of young from which a pairing is warned about
	MaxInbreeding   float64 // the same, from which it is refused; not below WarnInbreeding
	PairingsASeason Given[int]
}

// Shipping is when parcels go.
type Shipping struct {
	Weekdays    []time.Weekday // days on which they are handed over, Monday first, none twice
	TransitDays int            // days on the way, 1 to 5
}

// The values of a file that leaves them out. The coefficients are those of
// young of first cousins (1/16) and of half-siblings (1/8), by common practice
// and without a source for frogs.
const (
	defaultWarnInbreeding = 1.0 / 16
	defaultMaxInbreeding  = 1.0 / 8
	defaultCertaintyPct   = 80
	defaultTransitDays    = 1
)

// defaultWeekdays keeps parcels from lying over a weekend (common practice, no
// source).
func defaultWeekdays() []time.Weekday {
	return []time.Weekday{time.Monday, time.Tuesday, time.Wednesday, time.Thursday}
}
