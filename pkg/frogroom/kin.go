package frogroom

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/lineage"
)

// Kin gives inbreeding and mean kinship of all animals, see [kin.Ancestry.List];
// mean kinship is to those of the species that are in the room on that day.
func (r *Room) Kin(on civil.Date) kin.List {
	mustKnow(on)
	return r.Ancestry.List(on, nil)
}

// Lineage gives the picture of animals and their relatives, see
// [kin.Ancestry.Lineage]. An unknown day stands for the end of the records. The error is
// a *[collection.UnknownError].
func (r *Room) Lineage(on civil.Date, w kin.LineageWish) (*lineage.Drawing, error) {
	return r.Ancestry.Lineage(on, w)
}
