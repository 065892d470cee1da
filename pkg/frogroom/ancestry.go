package frogroom

import (
	"cmp"
	"io"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/parentage"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Ancestry is a pedigree together with what is known of the animals in it.
type Ancestry struct {
	Pedigree *pedigree.Pedigree
	// Table is the plain table of parents that it was read from, with the doubts
	// about it; nil for a collection.
	Table *parentage.Table

	animals []collection.Animal // by number in the pedigree; none for a plain table
	since   []civil.Date        // likewise, the first day in the room; unknown for always
	species []string            // of the collection, in its order

	warn, refuse float64 // inbreeding of young, by the rules of the collection
}

// ReadPedigree reads a plain table of parents: see [parentage.Read] for what is
// accepted. The error is a *[parentage.Error], that of a loop too, when the table
// cannot be used.
func ReadPedigree(r io.Reader, options parentage.Options) (*Ancestry, error) {
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

// ancestryOf builds the pedigree of a collection. Young of one clutch whose
// parent is one of several share a group, so that they share the parent.
func ancestryOf(c *collection.Collection) (*Ancestry, error) {
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
	var err error
	a.Pedigree, err = pedigree.Linked(records, sets.list...) // many a question needs no inbreeding
	return a, err
}

// parentSets are the parents that are one of several, each made once.
type parentSets struct {
	list []pedigree.Group
	made map[string]bool
}

// parent gives the name of a parent in the pedigree: its id, or that of a group.
func (g *parentSets) parent(name string, ids []string, mix collection.Mix) string {
	switch {
	case len(ids) == 0:
		return ""
	case len(ids) == 1:
		return ids[0]
	case g.made[name]:
		return name
	case g.made == nil:
		g.made = make(map[string]bool)
	}
	g.made[name] = true
	group := pedigree.Group{ID: name, Kind: pedigree.OneUnknown}
	if mix == collection.Several {
		group.Kind = pedigree.Several
	}
	for _, id := range ids {
		group.Candidates = append(group.Candidates, pedigree.Candidate{ID: id})
	}
	g.list = append(g.list, group)
	return name
}

// number gives the number of an animal, or an *[UnknownAnimalError].
func (a *Ancestry) number(id string) (int, error) {
	if i, ok := a.Pedigree.Index(id); ok {
		return i, nil
	}
	return 0, &UnknownAnimalError{ID: id, Nearest: nearest(id, a.Pedigree.Len(), a.Pedigree.ID)}
}

// numbers gives the numbers of animals that are known.
func (r *Room) numbers(ids []string) []int {
	out := make([]int, len(ids))
	for i, id := range ids {
		out[i] = r.number(id)
	}
	return out
}

// number gives the number of an animal that is known.
func (r *Room) number(id string) int {
	n, ok := r.Ancestry.Pedigree.Index(id)
	if !ok {
		panic("frogroom: " + noSuch("animal", id, ""))
	}
	return n
}

// animal gives what the collection says of animal i; only its id for a plain table.
func (a *Ancestry) animal(i int) collection.Animal {
	if len(a.animals) == 0 {
		return collection.Animal{ID: a.Pedigree.ID(i), Sex: collection.UnknownSex}
	}
	return a.animals[i]
}

// NotYet is the status of an animal that hatches, or comes to the room, after
// the day that is asked for.
const NotYet collection.Status = "not yet"

// status gives whether animal i is in the room on a day. An unknown day stands
// for the end of the records. In a plain table all animals are there.
func (a *Ancestry) status(i int, on civil.Date) collection.Status {
	if len(a.animals) == 0 {
		return collection.Here
	}
	if on.Known() && a.since[i] > on {
		return NotYet
	}
	status, _ := a.animals[i].Status(on)
	return status
}
