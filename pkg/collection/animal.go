package collection

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Sex is a sex as the file writes it.
type Sex string

// The sexes.
const (
	Male       Sex = "male"
	Female     Sex = "female"
	UnknownSex Sex = "unknown"
)

// Animal is one animal of the file. What it has from its clutch and from the
// diary is filled in: the comment of a field says what.
type Animal struct {
	ID      string
	Name    string // what the keeper calls it
	Species string // id; that of the clutch when left out
	Sex     Sex
	SexSign string // how the sex is known, such as "called"; empty when it is not said

	Line     string // that of the clutch when left out
	Locality string // that of all parents when left out and they agree

	Hatched    civil.Date // when left out: the day on which all of its clutch were seen hatched
	OutOfWater civil.Date // when left out: the day on which all of its clutch were seen out of water
	Acquired   civil.Date
	Died       civil.Date // or as the diary says
	Left       civil.Date // or as the diary says

	Sires  []string // the possible sires, one when he is known; those of the clutch when there is one
	Dams   []string // the possible dams, likewise
	Clutch string   // the clutch it came from, empty when none is recorded

	WeightG  float64 // as in the list of animals, 0 when left out; see [Collection.Weight]
	LengthMM float64 // snout to vent, likewise; see [Collection.Length]
	Place    string  // as in the list of animals; see [Collection.PlaceOf]
	Promised string  // to whom
	Holds    []Hold  // as in the list of animals; see [Collection.HoldsAt]
	Food     string  // what it eats
	Note     string

	At strictyaml.Position // where its id stands
}

// Status says whether an animal is in the room.
type Status string

// The states of an animal.
const (
	Here Status = "here"
	Left Status = "left"
	Died Status = "died"
)

// Status gives the state of a on a day, and the day on which that began; the
// day is unknown for [Here]. An animal that left and died afterwards has died.
// On the day of leaving or dying itself the animal counts as gone. An unknown
// day stands for the end of the records.
func (a *Animal) Status(on civil.Date) (Status, civil.Date) {
	switch {
	case past(a.Died, on):
		return Died, a.Died
	case past(a.Left, on):
		return Left, a.Left
	}
	return Here, 0
}

// past reports whether d is known and not after on, where an unknown day
// stands for the end of the records.
func past(d, on civil.Date) bool { return d.Known() && (!on.Known() || d <= on) }
