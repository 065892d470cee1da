package species

// PhaseName names a phase of the breeding cycle.
type PhaseName string

// The phases in the order in which they are gone through.
const (
	Conditioning PhaseName = "conditioning" // heavy feeding
	Cooling      PhaseName = "cooling"      // cool or dry, little food
	WarmUp       PhaseName = "warm-up"      // back to warmth and damp
	Rain         PhaseName = "rain"         // in the rain chamber or with the eggs' place open
	Rest         PhaseName = "rest"         // before the next conditioning
)

// Phase is one part of the breeding cycle of an adult pairing.
type Phase struct {
	Name          PhaseName
	Days          Days // of Rain: nights
	DayC, NightC  Range
	HumidityPct   Range
	LightH        Number // hours of light a day
	Feeding, Note Text
}
