// Package kin says how the animals of a collection, or of a plain table of parents,
// are related: inbreeding and mean kinship of all ([Ancestry.List]), what two have
// in common ([Ancestry.Pair]), the relatives of one, the living against each other
// ([Ancestry.Squares]), what is left of the founders ([Ancestry.Diversity]), and
// the family tree ([Ancestry.Lineage]).
//
//	ancestry, err := kin.Of(collection) // or kin.ReadTable
//	pair, err := ancestry.Pair("AC-14", "AC-21")
//
// It knows the animals by their ids and who is in the room on which day; the numbers
// are those of pedigree and diversity, the drawing is that of lineage. Kinship
// counts from the founders: [pedigree.FounderWarning] goes with every result.
package kin

import (
	"cmp"
	"io"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/parentage"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Ancestry is a pedigree together with what is known of the animals in it, from [Of] or
// [ReadTable]. It does not change, and can be used by several goroutines at once.
// Animals are asked for by their numbers in the pedigree, from 0 on: a number that none
// has panics.
type Ancestry struct {
	Pedigree *pedigree.Pedigree
	// Table is the plain table of parents that it was read from, with the doubts
	// about it; nil for a collection.
	Table *parentage.Table

	animals []collection.Animal // by number in the pedigree; none for a plain table
	since   []civil.Date        // likewise, the first day in the room; unknown for always
	species []string            // of the collection, in its order

	sets map[string]bool // names of the sets of possible parents

	warn, refuse float64 // inbreeding of young, by the rules of the collection
}

// ReadTable reads a plain table of parents: see [parentage.Read] for what is
// accepted. The error is a *[parentage.Error], that of a loop too, when the table
// cannot be used.
func ReadTable(r io.Reader, options parentage.Options) (*Ancestry, error) {
	table, err := parentage.Read(r, options)
	if err != nil {
		return nil, err
	}
	p, err := pedigree.New(table.Records)
	if err != nil {
		return nil, table.Locate(err)
	}
	return &Ancestry{Pedigree: p, Table: table}, nil
}

// Of builds the pedigree of a collection, in which animals have the numbers of
// their places in the file. Young of one clutch whose parent is one of several
// share a group, so that they share the parent. The error is that of [pedigree.Linked].
func Of(c *collection.Collection) (*Ancestry, error) {
	a := &Ancestry{
		animals: c.Animals, since: make([]civil.Date, len(c.Animals)),
		warn: c.Rules.WarnInbreeding, refuse: c.Rules.MaxInbreeding,
	}
	records := make([]pedigree.Record, len(c.Animals))
	for _, s := range c.Species {
		a.species = append(a.species, s.ID)
	}
	var sets parentSets
	for i := range c.Animals {
		animal := &c.Animals[i]
		of, sireMix, damMix := animal.ID, collection.One, collection.One
		var laid civil.Date
		if k, ok := c.Clutch(animal.Clutch); ok {
			of, sireMix, damMix, laid = k.ID, k.SireMix, k.DamMix, c.Since(k.ID)
		}
		records[i] = pedigree.Record{
			ID:   animal.ID,
			Sire: sets.parent(of+", sire", animal.Sires, sireMix), // no id has a comma
			Dam:  sets.parent(of+", dam", animal.Dams, damMix),
		}
		a.since[i] = cmp.Or(animal.Acquired, animal.Hatched, laid, animal.OutOfWater)
	}
	a.sets = sets.made
	p, err := pedigree.Linked(records, sets.list...) // many a question needs no inbreeding
	if err != nil {
		return nil, err
	}
	a.Pedigree = p
	return a, nil
}

// Number gives the number of an animal in the pedigree, from 0 on. The error is a
// *[collection.UnknownError].
func (a *Ancestry) Number(id string) (int, error) {
	if i, ok := a.Pedigree.Index(id); ok {
		return i, nil
	}
	return 0, a.unknown(id)
}

// MustNumber is [Ancestry.Number] for an animal that is known; it panics for another.
func (a *Ancestry) MustNumber(id string) int {
	i, err := a.Number(id)
	if err != nil {
		panic("kin: " + err.Error())
	}
	return i
}

func (a *Ancestry) unknown(id string) *collection.UnknownError {
	ids := make([]string, a.Pedigree.Len())
	for i := range ids {
		ids[i] = a.Pedigree.ID(i)
	}
	return &collection.UnknownError{Kind: "animal", ID: id, Nearest: strictyaml.Nearest(id, ids)}
}

// Animal gives what the collection says of animal i; only its id for a plain table.
func (a *Ancestry) Animal(i int) collection.Animal {
	if len(a.animals) == 0 {
		return collection.Animal{ID: a.Pedigree.ID(i), Sex: collection.UnknownSex}
	}
	return a.animals[i]
}

// NotYet is the status of an animal that hatches, or comes to the room, after
// the day that is asked for.
const NotYet collection.Status = "not yet"

// Status gives whether animal i is in the room on a day. An unknown day stands
// for the end of the records. In a plain table all animals are there.
func (a *Ancestry) Status(i int, on civil.Date) collection.Status {
	if len(a.animals) == 0 {
		return collection.Here
	}
	if on.Known() && a.since[i] > on {
		return NotYet
	}
	status, _ := a.animals[i].Status(on)
	return status
}
