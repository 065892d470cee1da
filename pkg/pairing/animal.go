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

// MarshalText gives the same as String.
func (s Sex) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// Possible gives the sexes as which an animal can be bred: both when its own is not known.
func (s Sex) Possible() []Sex {
	if s == SexUnknown {
		return []Sex{Male, Female}
	}
	return []Sex{s}
}

// Animal is what the rules look at. Zero values stand for what is not known.
type Animal struct {
	ID             string
	Node           int // index in the pedigree
	Species        string
	Line, Locality string
	Sex            Sex
	SexSign        string // how the sex is known, such as "called"; empty when nobody wrote it down

	Laid                civil.Date // the day on which the clutch that it came from was laid
	Hatched, OutOfWater civil.Date
	Acquired            civil.Date // came to the room
	Died, Left          civil.Date
	// Clutches are the days on which a female laid, or may have laid, the earliest
	// first: those on record, also of clutches that still run.
	Clutches []civil.Date
	// Quarantines and HealthHolds are those on record, also those that are over.
	Quarantines, HealthHolds []Hold

	LengthMM float64 // snout to vent
	WeightG  float64
	Promised string // to whom it is reserved
}

// lastClutch gives the day of the latest clutch, unknown when there is none.
func (a Animal) lastClutch() civil.Date {
	if len(a.Clutches) == 0 {
		return 0
	}
	return a.Clutches[len(a.Clutches)-1]
}
