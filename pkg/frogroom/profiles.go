package frogroom

import (
	"cmp"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/species"
)

// Profiles gives copies of all profiles, sorted by id: those built in, those
// that the file changes in their place, and those that it adds.
func (r *Room) Profiles() []*species.Profile {
	var out []*species.Profile
	for _, p := range r.Collection.Species {
		out = append(out, p.Clone())
	}
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
	for _, p := range profiles {
		if p.ID == name || p.Name == name {
			return p, nil
		}
	}
	return nil, &UnknownSpeciesError{ID: name, Nearest: nearest(name, len(profiles), func(i int) string { return profiles[i].ID })}
}
