package pairing

import "github.com/spawnwright/spawnwright/pkg/civil"

// Sex is what an animal is recorded as.
type Sex int

// The sexes. The zero value is not known.
const (
	SexUnknown Sex = iota
	Male
	Female
)

// String gives "male", "female" or "unknown".
func (s Sex) String() string {
	switch s {
	case Male:
		return "male"
	case Female:
		return "female"
	}
	return "unknown"
}

// Animal is what the rules look at. Zero values stand for what is not known.
type Animal struct {
	ID             string
	Node           int // index in the pedigree
	Species        string
	Line, Locality string
	Sex            Sex

	Hatched, OutOfWater civil.Date
	Acquired            civil.Date // came to the room
	Died, Left          civil.Date
	LastClutch          civil.Date // latest clutch of a female that is on record

	LengthMM float64 // snout to vent
	WeightG  float64
	Promised string // to whom it is reserved
}
