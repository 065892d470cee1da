package species

import "strings"

// PhaseName names a phase of the breeding cycle.
type PhaseName string

// The phases in the order in which they are gone through.
const (
	Conditioning PhaseName = "conditioning" // heavy feeding
	Cooling      PhaseName = "cooling"      // cool or dry, little food
	WarmUp       PhaseName = "warm-up"      // back to warmth and damp
	Rain         PhaseName = "rain"         // until there are eggs
	Rest         PhaseName = "rest"         // before the next conditioning
)

var phaseNames = []PhaseName{Conditioning, Cooling, WarmUp, Rain, Rest}

// key is the name as it stands in a file.
func (n PhaseName) key() string { return strings.ReplaceAll(string(n), "-", "_") }

// Where a phase is gone through; see [Phase.Where].
const (
	OwnTank      = "own tank"
	RainChamber  = "rain chamber"
	CoolingPlace = "cooling place"
)

var places = []string{OwnTank, RainChamber, CoolingPlace}

// Phase is one part of the breeding cycle of an adult pairing.
type Phase struct {
	Name         PhaseName
	Days         Days // of Rain: nights
	Place        Text // OwnTank, RainChamber or CoolingPlace, where it is not the usual one
	DayC, NightC Range
	HumidityPct  Range
	LightH       Number // hours of light a day
	MinutesADay  Number // hands-on work on the pairing
	Feeding      Text
	Note         Text
}

// Where gives the place that the phase takes up: Place when it is known,
// otherwise a rain chamber for Rain, a cooling place for Cooling, and the own
// tank for the others.
func (ph Phase) Where() string {
	switch {
	case ph.Place.Known():
		return ph.Place.Value
	case ph.Name == Rain:
		return RainChamber
	case ph.Name == Cooling:
		return CoolingPlace
	}
	return OwnTank
}
