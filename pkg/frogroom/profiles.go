package frogroom

import (
	"cmp"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
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
// any case. The error is a *[collection.UnknownError].
func FindProfile(profiles []*species.Profile, name string) (*species.Profile, error) {
	var ids, part []string // of all profiles, and of those that have name as a part of theirs
	for _, p := range profiles {
		ids = append(ids, p.ID)
		for _, own := range [...]string{p.ID, p.Name, p.CommonName} {
			if strings.EqualFold(own, name) {
				return p, nil
			}
		}
		if strings.Contains(strings.ToLower(p.ID+" "+p.CommonName), strings.ToLower(name)) {
			part = append(part, p.ID)
		}
	}
	near := strictyaml.Nearest(name, ids)
	if near == "" && len(part) == 1 {
		near = part[0]
	}
	return nil, &collection.UnknownError{Kind: "species", ID: name, Nearest: near}
}
