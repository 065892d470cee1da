package collection

import (
	"time"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Equipment is what the room has. A capacity that is not known does not limit
// anything, and whoever uses it says that it was not checked.
type Equipment struct {
	RainChambers  Given[int] // pairings that can be in the rain at once
	CoolingPlaces Given[int] // pairings that can be cooled or kept dry at once
	TadpoleTubs   Tubs
	FrogletBins   Bins
	MinutesADay   Given[int] // hands-on work on an ordinary day

	// RetryAfterDays is how long after the end of the rain a chamber is kept free
	// for a second attempt; not known when none is kept free.
	RetryAfterDays Given[int]
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
	ClutchesASeason int           // most clutches that one female lays in a season, 0 for any number
	Relax           []RelaxedRule // rules of pairing that are not applied
	SpacePct        [2]int        // percentiles of development from and to which tubs and bins are kept free
}

// RelaxedRule is a rule of pairing that is not applied. Whether there is such a
// rule, and whether it can be relaxed, is for others to say.
type RelaxedRule struct {
	Name string // small letters and hyphens

	At strictyaml.Position
}

// Card is what stands on the card of an animal that leaves.
type Card struct {
	Contact string // a personal line; empty when nothing personal is printed
}

// Shipping is when parcels go.
type Shipping struct {
	Weekdays    []time.Weekday // days on which they are handed over, Monday first, none twice
	TransitDays int            // days on the way, 1 to 5
	Closed      []civil.Span   // days on which the carrier takes nothing, by first day
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

// defaultSpacePct is the window of a forecast.
var defaultSpacePct = [2]int{10, 90}

// defaultWeekdays keeps parcels from lying over a weekend (common practice, no
// source).
func defaultWeekdays() []time.Weekday {
	return []time.Weekday{time.Monday, time.Tuesday, time.Wednesday, time.Thursday}
}
