package kin

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/diversity"
)

// Square is the kinships of the living animals of one species with each other.
type Square struct {
	Species string         `json:"species,omitempty"` // empty for a plain table
	Animals []SquareAnimal `json:"animals"`           // in an order in which families stand together
	// Kinship has a row and a column for each animal, in their order.
	Kinship  [][]float64 `json:"kinship"`
	Expected bool        `json:"expected"` // some are means over possible parents
	// Warn and Refuse are the inbreeding coefficients of the young from which a
	// pairing is warned about and refused; both 0 where no rule is known.
	Warn   float64 `json:"warn_inbreeding,omitempty"`
	Refuse float64 `json:"max_inbreeding,omitempty"`
}

// SquareAnimal is what a row and a column of a square are called.
type SquareAnimal struct {
	ID   string         `json:"id"`
	Name string         `json:"name,omitempty"`
	Sex  collection.Sex `json:"sex"`
}

// MostInSquare is how many animals a square has at most.
const MostInSquare = 500

// SquareError says that a square would have too many animals.
type SquareError struct {
	Species string // empty for a plain table
	Living  int
}

func (e *SquareError) Error() string {
	of := ""
	if e.Species != "" {
		of = " of " + e.Species
	}
	return fmt.Sprintf("%d living animals%s are more than the %d that one picture shows", e.Living, of, MostInSquare)
}

// Squares gives a square for each species, of the living animals, whose
// numbers are given; nil stands for those that are in the room on that day, or
// for all of a plain table. The error is a *[SquareError].
func (a *Ancestry) Squares(on civil.Date, living []int) ([]Square, error) {
	squares := []Square{}
	for _, g := range a.members(on, living) {
		if len(g.living) > MostInSquare {
			return nil, &SquareError{g.species, len(g.living)}
		}
		kinship := a.Pedigree.Block(g.living, g.living)
		s := Square{Species: g.species, Animals: []SquareAnimal{}, Kinship: [][]float64{}, Warn: a.warn, Refuse: a.refuse}
		order := diversity.Order(kinship)
		for _, i := range order {
			x := a.Animal(g.living[i])
			s.Animals = append(s.Animals, SquareAnimal{x.ID, x.Name, x.Sex})
			s.Expected = s.Expected || a.Pedigree.Uncertain(g.living[i])
			row := make([]float64, len(order))
			for k, j := range order {
				row[k] = kinship[i][j]
			}
			s.Kinship = append(s.Kinship, row)
		}
		squares = append(squares, s)
	}
	return squares, nil
}

// Refused reports whether animals i and j could be paired but for the kinship,
// which is the inbreeding of their young.
func (s Square) Refused(i, j int) bool { return s.Refuse > 0 && s.reaches(i, j, s.Refuse) }

// Warned reports whether a pairing of animals i and j would be warned about, and
// is not refused.
func (s Square) Warned(i, j int) bool {
	return s.Warn > 0 && s.reaches(i, j, s.Warn) && !s.Refused(i, j)
}

// sameCoefficient is how far apart coefficients may be that differ by rounding alone.
const sameCoefficient = 1e-9

func (s Square) reaches(i, j int, limit float64) bool {
	a, b := s.Animals[i].Sex, s.Animals[j].Sex
	return i != j && (a != b || a == collection.UnknownSex) && s.Kinship[i][j] >= limit-sameCoefficient
}
