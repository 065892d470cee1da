package collection

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Pairing is a wish for the season: who goes together, and when. Exactly one
// of Start, Target and ReadyBy is given in the file.
type Pairing struct {
	ID      string
	Species string   // id, from its animals
	Sires   []string // all males that go in together, at least one
	Dams    []string // all females, at least one

	Start   civil.Date // conditioning begins; unknown when the plan goes backward
	Target  string     // name of the target, empty when there is none
	ReadyBy civil.Date // the date to plan backward from; of the target when that is named
	// CertaintyPct is how sure it must be that the date is met, 50 to 95; of the
	// target when that is named, and 0 with Start.
	CertaintyPct int
	NotBefore    civil.Date // conditioning does not begin earlier; unknown when it may at any time
	LeaveOutCost Given[int] // what it costs to leave the pairing out of the plan; it must be planned when not known
	Raise        Given[int] // most tadpoles of each dam's clutch that are raised; all when not known
	Note         string

	At strictyaml.Position // where its id stands
}

// Target is a date by which a number of young must be ready.
type Target struct {
	Name         string
	On           civil.Date
	Species      string // id
	Froglets     int
	CertaintyPct int        // 50 to 95
	LateCost     Given[int] // of each day that the young are late; they must not be when it is not known
	EarlyCost    Given[int] // of each day that they are early

	At strictyaml.Position // where its name stands
}
