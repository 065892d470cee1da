package breedingplan

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/pairing"
)

// Outsider is an animal from outside that is described and not recorded. What is
// not known of its ancestry counts as unrelated to all.
type Outsider struct {
	Name      string // for the keeper; may be empty
	Species   string // that of a parent, or the only one asked about, when empty
	Sex       pairing.Sex
	Line      string
	Sire, Dam string // ids of parents that are recorded, if they are from here
	// Inbreeding is its inbreeding coefficient, 0 to 1. With both parents it is known from
	// them, and has to be 0 here.
	Inbreeding float64
}

// settle fills in the species of an outsider, and refuses what makes no sense.
func (s *Stock) settle(o *Outsider, w Wish) error {
	for _, parent := range []struct {
		id  string
		not pairing.Sex
		is  string
	}{{o.Sire, pairing.Female, "sire"}, {o.Dam, pairing.Male, "dam"}} {
		if parent.id == "" {
			continue
		}
		i, err := s.find(parent.id)
		if err != nil {
			return err
		}
		a := s.animal(i)
		switch {
		case a.Sex == parent.not:
			return &WishError{fmt.Sprintf("an animal from outside: its %s %s is recorded as %s", parent.is, a.ID, a.Sex)}
		case o.Species == "":
			o.Species = a.Species
		case o.Species != a.Species:
			return &WishError{fmt.Sprintf("an animal from outside: it is of species %s, and its %s %s is of %s", o.Species, parent.is, a.ID, a.Species)}
		}
	}
	if o.Species == "" {
		o.Species = w.Species
	}
	if o.Species == "" && len(s.Species) == 1 {
		o.Species = s.Species[0]
	}
	switch {
	case o.Species == "":
		return &WishError{"an animal from outside: say of which species it is"}
	case !slices.Contains(s.Species, o.Species):
		return noSpecies(o.Species)
	case !(o.Inbreeding >= 0 && o.Inbreeding <= 1):
		return &WishError{"an animal from outside: an inbreeding coefficient is from 0 to 1"}
	case o.Sire != "" && o.Dam != "" && o.Inbreeding > 0:
		return &WishError{"an animal from outside: with both parents its inbreeding is known, so leave it out"}
	}
	return nil
}

// describe says in words what an outsider is.
func (l *line) describe(o Outsider) string {
	parts := []string{"described"}
	if o.Sex != pairing.SexUnknown {
		parts = append(parts, o.Sex.String())
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
	if f := 2*l.stock.newcomer(o).self - 1; level(f) > 0 {
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
	return slices.ContainsFunc(l.here, func(i int) bool { return l.stock.animal(i).Line == name })
}
