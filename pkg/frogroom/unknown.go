package frogroom

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// UnknownAnimalError is an id that no animal has.
type UnknownAnimalError struct {
	ID      string
	Nearest string // the id of an animal that may have been meant; empty when none is near
}

func (e *UnknownAnimalError) Error() string { return noSuch("animal", e.ID, e.Nearest) }

// UnknownClutchError is an id that no clutch has.
type UnknownClutchError struct {
	ID      string
	Nearest string // the id of a clutch that may have been meant; empty when none is near
}

func (e *UnknownClutchError) Error() string { return noSuch("clutch", e.ID, e.Nearest) }

// UnknownYoungError is an id that neither an animal nor a clutch has.
type UnknownYoungError struct {
	ID      string
	Nearest string // the id of one that may have been meant; empty when none is near
}

func (e *UnknownYoungError) Error() string { return noSuch("animal or clutch", e.ID, e.Nearest) }

// UnknownPairingError is an id that no pairing has.
type UnknownPairingError struct {
	ID      string
	Nearest string // the id of a pairing that may have been meant; empty when none is near
}

func (e *UnknownPairingError) Error() string { return noSuch("pairing", e.ID, e.Nearest) }

// UnknownSpeciesError is a name that no profile has.
type UnknownSpeciesError struct {
	ID      string
	Nearest string // the id of a species that may have been meant; empty when none is near
}

func (e *UnknownSpeciesError) Error() string { return noSuch("species", e.ID, e.Nearest) }

// unknownSpecies is for an id of which the collection has no animals.
func (r *Room) unknownSpecies(id string) *UnknownSpeciesError {
	all := r.Collection.Species
	return &UnknownSpeciesError{ID: id, Nearest: nearest(id, len(all), func(i int) string { return all[i].ID })}
}

func noSuch(kind, id, nearest string) string {
	text := fmt.Sprintf("there is no %s %q", kind, id)
	if nearest != "" {
		text += fmt.Sprintf("; did you mean %q?", nearest)
	}
	return text
}

// nearest gives which of n ids is most like one that is unknown.
func nearest(id string, n int, known func(i int) string) string {
	ids := make([]string, n)
	for i := range ids {
		ids[i] = known(i)
	}
	return strictyaml.Nearest(id, ids)
}
