package frogroom

import (
	"fmt"

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
// with no animals, of all. Those that died or left by on are drawn as gone. It
// panics when there is no such direction. The error is an *[UnknownAnimalError].
func (r *Room) Lineage(on civil.Date, direction Direction, ids ...string) (string, error) {
	return r.Ancestry.Lineage(on, direction, ids...)
}

// Lineage is [Room.Lineage] for any pedigree. An unknown day stands for the end
// of the records; in a plain table nobody is gone.
func (a *Ancestry) Lineage(on civil.Date, direction Direction, ids ...string) (string, error) {
	numbers := make([]int, len(ids))
	for k, id := range ids {
		i, err := a.number(id)
		if err != nil {
			return "", err
		}
		numbers[k] = i
	}
	view := direction.of(numbers)
	if len(ids) == 0 {
		view = lineage.Everything()
	}
	animals := make([]lineage.Animal, a.Pedigree.Len())
	for i := range animals {
		animal := a.animal(i)
		status := a.status(i, on)
		animals[i] = lineage.Animal{
			Name: animal.Name, Sex: drawnSex(animal.Sex), Clutch: animal.Clutch, Line: animal.Line,
			Gone: status == collection.Died || status == collection.Left,
		}
	}
	return lineage.DOT(a.Pedigree, animals, view), nil
}

func (d Direction) of(animals []int) lineage.View {
	switch d {
	case Both:
		return lineage.Around(animals...)
	case Ancestors:
		return lineage.Ancestors(animals...)
	case Descendants:
		return lineage.Descendants(animals...)
	}
	panic(fmt.Sprintf("frogroom: no such direction: %d", int(d)))
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
