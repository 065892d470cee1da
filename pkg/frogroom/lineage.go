package frogroom

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/lineage"
)

// Direction says which relatives of an animal a graph shows.
type Direction int

// The directions.
const (
	Both        Direction = iota // ancestors and descendants
	Ancestors                    // ancestors only
	Descendants                  // descendants only
)

// Lineage gives the graph of these animals and their relatives as Graphviz DOT;
// with no animals, of all. The error is an *[UnknownAnimalError].
func (r *Room) Lineage(on civil.Date, direction Direction, ids ...string) (string, error) {
	return r.Ancestry.Lineage(on, direction, ids...)
}

// Lineage is the same for any pedigree; on only matters for who is gone.
func (a *Ancestry) Lineage(on civil.Date, direction Direction, ids ...string) (string, error) {
	numbers := make([]int, len(ids))
	for k, id := range ids {
		i, err := a.number(id)
		if err != nil {
			return "", err
		}
		numbers[k] = i
	}
	view := lineage.Everything()
	if len(ids) > 0 {
		switch direction {
		case Ancestors:
			view = lineage.Ancestors(numbers...)
		case Descendants:
			view = lineage.Descendants(numbers...)
		default:
			view = lineage.Around(numbers...)
		}
	}
	animals := make([]lineage.Animal, a.Pedigree.Len())
	for i := range animals {
		animal := a.animal(i)
		status, _ := animal.Status(on)
		animals[i] = lineage.Animal{
			Name: animal.Name, Sex: drawnSex(animal.Sex), Clutch: animal.Clutch, Line: animal.Line,
			Gone: status != collection.Here,
		}
	}
	return lineage.DOT(a.Pedigree, animals, view), nil
}

func drawnSex(s collection.Sex) lineage.Sex {
	switch s {
	case collection.Male:
		return lineage.Male
	case collection.Female:
		return lineage.Female
	}
	return lineage.SexUnknown
}
