package collection

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Mix says how a list of possible parents is meant.
type Mix string

// The mixes.
const (
	One     Mix = "one"     // the young all share one parent of the list, it is not known which
	Several Mix = "several" // each egg has its own parent out of the list
)

// Promise is a number of young of a clutch that are reserved.
type Promise struct {
	To    string // to whom
	Count int    // at least 1

	At strictyaml.Position // where it begins
}

// Clutch is one clutch of the file. What it has from its parents is filled in.
type Clutch struct {
	ID      string
	Species string // id; that of the parents when left out
	Laid    civil.Date

	Sires   []string // the possible sires: none when unknown, one when he is known
	Dams    []string // the possible dams, likewise
	SireMix Mix      // [One] unless the file says otherwise
	DamMix  Mix
	Pairing string // the pairing it came from; its animals are the parents when these are left out

	Eggs     int    // 0 when they were not counted
	Line     string // of the young; that of the dams when left out and they agree
	Locality string // of the parents when they agree
	Place    string // as in the list of clutches; see [Collection.PlaceOf]
	Ended    civil.Date
	Food     string    // what the young eat
	Promised []Promise // young that are reserved; see [Collection.Owed]
	Note     string

	At strictyaml.Position // where its id stands
}
