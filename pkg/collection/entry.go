package collection

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Entry is one line of the diary: a day, what it is about, and one or more
// facts. Exactly one of Clutch, Animal, Pairing and Place is given.
type Entry struct {
	On      civil.Date
	Clutch  string
	Animal  string
	Pairing string
	Place   string

	Saw      string            // clutch: stage that was seen, a word of docs/file.md
	Gosner   int               // clutch: Gosner (1960) stage that was seen, 0 for none
	Some     bool              // clutch: only some were that far, and only those are counted
	Count    Given[int]        // clutch: living ones that were counted
	Losses   int               // clutch: dead ones that were found
	Sold     int               // clutch: young that left
	HeldBack int               // clutch: young that became animals of the collection
	Began    species.PhaseName // pairing: phase that began
	WeightG  float64           // animal, or the smallest of a clutch: 0 when not weighed
	LengthMM float64           // likewise: snout to vent, 0 when not measured
	Ate      bool              // animal: it was seen eating
	Hold     HoldKind          // animal: a hold that began, or [Lifted]; empty for none
	Until    civil.Date        // animal: last day of the hold that began, unknown until it is lifted
	Status   Status            // animal: [Died], [Left] or empty
	To       string            // animal that left, young that were sold: to whom
	MovedTo  string            // animal, clutch: the new place
	WaterC   Given[float64]    // clutch, animal, place: °C
	AirC     Given[float64]    // likewise
	Note     string

	At strictyaml.Position // where the entry begins
}

// Subject gives the id, or the place, that e is about.
func (e *Entry) Subject() string { return e.Clutch + e.Animal + e.Pairing + e.Place }
