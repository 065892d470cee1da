package frogroom

import (
	"cmp"
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/species"
)

// Profiles gives all species: those built in, those that the file changes in
// their place, and those that it adds, sorted by id.
func (r *Room) Profiles() []*species.Profile {
	out := slices.Clone(r.Collection.Species)
	for _, p := range species.Builtin() {
		if _, own := r.Collection.Profile(p.ID); !own {
			out = append(out, p)
		}
	}
	slices.SortFunc(out, func(a, b *species.Profile) int { return cmp.Compare(a.ID, b.ID) })
	return out
}

// FindProfile gives the profile with an id or a scientific name. The error is
// an *[UnknownSpeciesError].
func FindProfile(profiles []*species.Profile, name string) (*species.Profile, error) {
	var known []string
	for _, p := range profiles {
		if p.ID == name || p.Name == name {
			return p, nil
		}
		known = append(known, p.ID)
	}
	return nil, &UnknownSpeciesError{ID: name, known: known}
}

// UnknownSpeciesError is a name that no profile has.
type UnknownSpeciesError struct {
	ID    string
	known []string
}

func (e *UnknownSpeciesError) Error() string {
	return withCure(fmt.Sprintf("there is no species %q; `spawnwright species list` shows them", e.ID), e.ID, e.known)
}
