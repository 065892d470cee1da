package kin

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/lineage"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Direction says which relatives of an animal a graph shows.
type Direction int

// The directions.
const (
	Both        Direction = iota // ancestors and descendants
	Ancestors                    // ancestors only
	Descendants                  // descendants only
)

// LineageWish says what a picture of descent shows.
type LineageWish struct {
	IDs       []string  // whose relatives; none for all animals
	Direction Direction // which relatives
	// Pair shows the young that the two animals of IDs would have, one of them, with
	// all its ancestors. The direction makes no difference.
	Pair     bool
	Living   bool // without those that died or left
	Families bool // young that have no young themselves in one box for each mating
}

// Lineage gives the picture of these animals and their relatives, to be written
// for Graphviz or Mermaid. Those that died or left by on are drawn as gone; an
// unknown day stands for the end of the records, and in a plain table nobody is
// gone. It panics when there is no such direction, or when a pair is not two
// animals. The error is a *[collection.UnknownError].
func (a *Ancestry) Lineage(on civil.Date, w LineageWish) (*lineage.Drawing, error) {
	numbers := make([]int, len(w.IDs))
	for k, id := range w.IDs {
		i, err := a.Number(id)
		if err != nil {
			return nil, err
		}
		numbers[k] = i
	}
	animals := make([]lineage.Animal, a.Pedigree.Len())
	for i := range animals {
		animal := a.Animal(i)
		status := a.Status(i, on)
		animals[i] = lineage.Animal{
			Name: animal.Name, Sex: drawnSex(animal.Sex), Clutch: animal.Clutch, Line: animal.Line,
			Gone: status == collection.Died || status == collection.Left,
		}
	}
	p, view := a.Pedigree, w.Direction.of(numbers)
	switch {
	case w.Pair:
		p = a.withYoungOf(numbers)
		animals = append(animals, lineage.Animal{Expected: true})
		view = lineage.Ancestors(p.Len() - 1)
	case len(w.IDs) == 0:
		view = lineage.Everything()
	}
	if w.Living {
		view = view.Living()
	}
	if w.Families {
		view = view.Families()
	}
	return lineage.Draw(p, animals, view), nil
}

// withYoungOf gives the pedigree with a young of a pair. No id of a collection
// has a comma; in a plain table one is added until the name is free.
func (a *Ancestry) withYoungOf(pair []int) *pedigree.Pedigree {
	if len(pair) != 2 {
		panic(fmt.Sprintf("kin: a pair of %d animals", len(pair)))
	}
	one, other := a.Pedigree.ID(pair[0]), a.Pedigree.ID(pair[1])
	id := fmt.Sprintf("young of %s, %s", one, other)
	for _, taken := a.Pedigree.Index(id); taken; _, taken = a.Pedigree.Index(id) {
		id += ","
	}
	p, err := a.Pedigree.Grow([]pedigree.Record{{ID: id, Sire: one, Dam: other}})
	if err != nil {
		panic("kin: a young of two known animals does not fit into the pedigree: " + err.Error())
	}
	return p
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
	panic(fmt.Sprintf("kin: no such direction: %d", int(d)))
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
