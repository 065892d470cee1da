package species

import "strings"

// StepName names a step of development.
type StepName string

// The steps in order; each begins where the one before it ends.
const (
	Egg       StepName = "egg"       // laid to hatched
	Hatchling StepName = "hatchling" // hatched to feeding, Gosner 25
	Tadpole   StepName = "tadpole"   // feeding to front legs out, Gosner 42
	Metamorph StepName = "metamorph" // front legs out to out of water, tail gone, Gosner 46
	GrowOut   StepName = "grow-out"  // out of water to sale-ready
)

var stepNames = []StepName{Egg, Hatchling, Tadpole, Metamorph, GrowOut}

// key is the name as it stands in a file.
func (n StepName) key() string { return strings.ReplaceAll(string(n), "-", "_") }

// Step is one step of development.
type Step struct {
	Name    StepName
	Days    Percentiles // days that the step takes one clutch at AtC
	AtC     Range       // °C at which Days hold: of water, for GrowOut of air
	Law     Law         // how the length follows the temperature; where it is not known, Days hold at AtC only
	CoversC Range       // °C over which the source of Law has it; where it is not known, AtC
	// MinutesADay is the hands-on work on one clutch.
	MinutesADay Number
	Survival    Number // usual share that comes through the step, 0 to 1
	Stall       Number // share of clutches that never get through the step, 0 to 1
	Siblings    Number // spread of siblings about the half date of the end, as a share of the time since laying
	// HatchGosner is between which stages of Gosner 1960 eggs hatch, of the step Egg.
	HatchGosner Range
	// HindLegsPct and ToesPct are how much of the step Tadpole has passed when the hind
	// legs bud (Gosner 26) and the toes are free (Gosner 37): % of its length, above 0
	// and below 100.
	HindLegsPct, ToesPct Percentiles
	// EatingDays are the days from the begin of the step GrowOut to the first food.
	EatingDays Percentiles
	Note       Text
}
