package frogroom

import (
	"cmp"
	"slices"
	"strings"

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

// FindProfile gives the profile with an id, a scientific or a common name, in
// any case. The error is an *[UnknownSpeciesError].
func FindProfile(profiles []*species.Profile, name string) (*species.Profile, error) {
	var part []string // ids of the profiles that have name as a part of theirs
	for _, p := range profiles {
		for _, own := range [...]string{p.ID, p.Name, p.CommonName} {
			if strings.EqualFold(own, name) {
				return p, nil
			}
		}
		if strings.Contains(strings.ToLower(p.ID+" "+p.CommonName), strings.ToLower(name)) {
			part = append(part, p.ID)
		}
	}
	e := &UnknownSpeciesError{ID: name, Nearest: nearest(name, len(profiles), func(i int) string { return profiles[i].ID })}
	if e.Nearest == "" && len(part) == 1 {
		e.Nearest = part[0]
	}
	return nil, e
}
