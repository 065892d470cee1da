package kin

import (
	"fmt"
	"maps"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Brood is young of a clutch that are no animals of their own yet.
type Brood struct {
	Clutch *collection.Clutch
	Young  int // how many
}

// WithYoung gives the pedigree of a collection with young of its clutches. Their
// numbers follow on those of the animals, brood by brood. It panics when a parent of a
// clutch is not in the pedigree.
func (a *Ancestry) WithYoung(broods ...Brood) *pedigree.Pedigree {
	sets := parentSets{made: maps.Clone(a.sets)}
	var records []pedigree.Record
	for _, b := range broods {
		c := b.Clutch
		sire, dam := sets.parent(c.ID+", sire", c.Sires, c.SireMix), sets.parent(c.ID+", dam", c.Dams, c.DamMix)
		for n := range b.Young {
			records = append(records, pedigree.Record{ID: fmt.Sprintf("%s, young %d", c.ID, n+1), Sire: sire, Dam: dam}) // no id has a comma
		}
	}
	grown, err := a.Pedigree.Grow(records, sets.list...)
	if err != nil {
		panic("kin: young of clutches that were read do not fit into the pedigree: " + err.Error())
	}
	return grown
}
