package frogroom

import (
	"fmt"
	"io"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Ancestry is a pedigree together with what is known of the animals in it.
type Ancestry struct {
	Pedigree *pedigree.Pedigree

	animals []collection.Animal // by number in the pedigree; none for a plain table
}

// ReadPedigree reads a plain table of parents: see [pedigree.ReadCSV] for what
// is accepted and for the errors, and [pedigree.New] for those of the parents.
func ReadPedigree(r io.Reader) (*Ancestry, error) {
	records, err := pedigree.ReadCSV(r)
	if err != nil {
		return nil, err
	}
	p, err := pedigree.New(records)
	if err != nil {
		return nil, err
	}
	return &Ancestry{Pedigree: p}, nil
}

// ancestryOf builds the pedigree of a collection. Young of one clutch whose
// parent is one of several share a group, so that they share the parent.
func ancestryOf(c *collection.Collection) (*Ancestry, error) {
	a := &Ancestry{animals: c.Animals}
	records := make([]pedigree.Record, len(c.Animals))
	var groups []pedigree.Group
	made := make(map[string]bool)
	parent := func(of, side string, ids []string, mix collection.Mix) string {
		switch len(ids) {
		case 0:
			return ""
		case 1:
			return ids[0]
		}
		name := of + ", " + side // no id has a comma
		if !made[name] {
			made[name] = true
			groups = append(groups, groupOf(name, ids, mix))
		}
		return name
	}
	for i := range c.Animals {
		animal := &c.Animals[i]
		of, sireMix, damMix := animal.ID, collection.One, collection.One
		if clutch, ok := c.Clutch(animal.Clutch); ok {
			of, sireMix, damMix = clutch.ID, clutch.SireMix, clutch.DamMix
		}
		records[i] = pedigree.Record{
			ID:   animal.ID,
			Sire: parent(of, "sire", animal.Sires, sireMix),
			Dam:  parent(of, "dam", animal.Dams, damMix),
		}
	}
	p, err := pedigree.New(records, groups...)
	if err != nil {
		return nil, err
	}
	a.Pedigree = p
	return a, nil
}

func groupOf(name string, ids []string, mix collection.Mix) pedigree.Group {
	g := pedigree.Group{ID: name, Kind: pedigree.OneUnknown}
	if mix == collection.Several {
		g.Kind = pedigree.Several
	}
	for _, id := range ids {
		g.Candidates = append(g.Candidates, pedigree.Candidate{ID: id})
	}
	return g
}

// number gives the number of an animal, or an *[UnknownAnimalError].
func (a *Ancestry) number(id string) (int, error) {
	i, ok := a.Pedigree.Index(id)
	if !ok {
		return 0, &UnknownAnimalError{ID: id, known: a.ids}
	}
	return i, nil
}

func (a *Ancestry) ids() []string {
	ids := make([]string, a.Pedigree.Len())
	for i := range ids {
		ids[i] = a.Pedigree.ID(i)
	}
	return ids
}

// animal gives what the collection says of animal i; only its id for a plain table.
func (a *Ancestry) animal(i int) collection.Animal {
	if len(a.animals) == 0 {
		return collection.Animal{ID: a.Pedigree.ID(i), Sex: collection.UnknownSex}
	}
	return a.animals[i]
}

// UnknownAnimalError is an id that no animal has.
type UnknownAnimalError struct {
	ID    string
	known func() []string
}

func (e *UnknownAnimalError) Error() string {
	return withCure(fmt.Sprintf("there is no animal %q", e.ID), e.ID, e.known())
}
