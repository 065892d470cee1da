package frogroom

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/collection"
)

// Outsider is an animal from outside that is described and not in the file. What is
// not known of its ancestry counts as unrelated to all.
type Outsider struct {
	Name      string // for the keeper; may be empty
	Species   string // that of a parent, or the only one asked about, when empty
	Sex       collection.Sex
	Line      string
	Sire, Dam string // ids of parents in the file, if they are from here
	// Inbreeding is its inbreeding coefficient, 0 to 1. With both parents it is known from
	// them, and has to be 0 here.
	Inbreeding float64
}

// settle fills in the species of an outsider, and refuses what makes no sense.
func (r *Room) settle(o *Outsider, w PairsWish) error {
	if o.Sex == "" {
		o.Sex = collection.UnknownSex
	}
	if !slices.Contains([]collection.Sex{collection.Male, collection.Female, collection.UnknownSex}, o.Sex) {
		return &PairsWishError{fmt.Sprintf("an animal from outside: sex %q is not male, female or unknown", o.Sex)}
	}
	for _, parent := range []struct {
		id  string
		not collection.Sex
		is  string
	}{{o.Sire, collection.Female, "sire"}, {o.Dam, collection.Male, "dam"}} {
		if parent.id == "" {
			continue
		}
		i, err := r.Ancestry.number(parent.id)
		if err != nil {
			return err
		}
		a := r.Ancestry.animal(i)
		switch {
		case a.Sex == parent.not:
			return &PairsWishError{fmt.Sprintf("an animal from outside: its %s %s is recorded as %s", parent.is, a.ID, a.Sex)}
		case o.Species == "":
			o.Species = a.Species
		case o.Species != a.Species:
			return &PairsWishError{fmt.Sprintf("an animal from outside: it is of species %s, and its %s %s is of %s", o.Species, parent.is, a.ID, a.Species)}
		}
	}
	if o.Species == "" {
		o.Species = w.Species
	}
	if o.Species == "" && len(r.Collection.Species) == 1 {
		o.Species = r.Collection.Species[0].ID
	}
	switch _, known := r.Collection.Profile(o.Species); {
	case o.Species == "":
		return &PairsWishError{"an animal from outside: say of which species it is"}
	case !known:
		return r.unknownSpecies(o.Species)
	case !(o.Inbreeding >= 0 && o.Inbreeding <= 1):
		return &PairsWishError{"an animal from outside: an inbreeding coefficient is from 0 to 1"}
	case o.Sire != "" && o.Dam != "" && o.Inbreeding > 0:
		return &PairsWishError{"an animal from outside: with both parents its inbreeding is known, so leave it out"}
	}
	return nil
}

// describe says in words what an outsider is.
func (l *line) describe(o Outsider) string {
	parts := []string{"described"}
	if o.Sex != collection.UnknownSex {
		parts = append(parts, string(o.Sex))
	}
	switch {
	case o.Sire != "" && o.Dam != "":
		parts = append(parts, o.Sire+" × "+o.Dam)
	case o.Sire != "":
		parts = append(parts, "sire "+o.Sire+", dam unrelated")
	case o.Dam != "":
		parts = append(parts, "dam "+o.Dam+", sire unrelated")
	default:
		parts = append(parts, "unrelated")
	}
	if f := 2*l.room.newcomer(o).self - 1; level(f) > 0 {
		parts = append(parts, "inbred to "+decimals(f))
	}
	if o.Line != "" {
		text := "line " + o.Line
		if !l.has(o.Line) {
			text += ", which is not here"
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, "; ")
}

// has reports whether a line is in the room.
func (l *line) has(name string) bool {
	return slices.ContainsFunc(l.here, func(i int) bool { return l.room.Ancestry.animal(i).Line == name })
}
