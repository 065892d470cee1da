package record

import (
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// clutch gives the clutch of that id; of an empty id, the only one that is
// running.
func (b *Book) clutch(id string, on civil.Date) (*collection.Clutch, error) {
	if id == "" {
		return b.running(on)
	}
	k, ok := b.Collection.Clutch(id)
	if !ok {
		return nil, unknown("clutch", id, b.clutchIDs(), "`spawnwright clutch` lists those that are running")
	}
	return k, nil
}

func (b *Book) clutchIDs() []string {
	var ids []string
	for i := range b.Collection.Clutches {
		ids = append(ids, b.Collection.Clutches[i].ID)
	}
	return ids
}

// Running gives the ids of the clutches that were laid by a day and have not
// ended, in the order of the file. One whose day of laying is not known counts.
func (b *Book) Running(on civil.Date) []string {
	var ids []string
	for i := range b.Collection.Clutches {
		if k := &b.Collection.Clutches[i]; k.Laid <= on && (!k.Ended.Known() || k.Ended > on) {
			ids = append(ids, k.ID)
		}
	}
	return ids
}

func (b *Book) running(on civil.Date) (*collection.Clutch, error) {
	const shown = 12
	ids := b.Running(on)
	switch {
	case len(ids) == 0:
		return nil, refuse("name one", "no clutch is running on %s", on)
	case len(ids) == 1:
		k, _ := b.Collection.Clutch(ids[0])
		return k, nil
	case len(ids) > shown:
		return nil, refuse("name one of them", "%d clutches are running", len(ids))
	}
	return nil, refuse("name one of "+strings.Join(ids, ", "), "%d clutches are running", len(ids))
}

func (b *Book) animal(id string) (*collection.Animal, error) {
	a, ok := b.Collection.Animal(id)
	if !ok {
		return nil, b.unknownAnimal("animal", id, b.animalIDs())
	}
	return a, nil
}

func (b *Book) animalIDs() []string {
	var ids []string
	for i := range b.Collection.Animals {
		ids = append(ids, b.Collection.Animals[i].ID)
	}
	return ids
}

// unknownAnimal refuses an id that is not among candidates; it may be a name.
func (b *Book) unknownAnimal(what, id string, candidates []string) error {
	for i := range b.Collection.Animals {
		if a := &b.Collection.Animals[i]; a.Name == id && id != "" {
			return refuse("write its id, "+a.ID, "%q is the name of an animal", id)
		}
	}
	return unknown(what, id, candidates, "`spawnwright kin --all` lists the animals")
}

// living makes an entry about an animal or a clutch.
func (b *Book) living(on civil.Date, id string) (Edit, error) {
	e := Edit{Entry: Entry{Entry: collection.Entry{On: on}}}
	if _, ok := b.Collection.Animal(id); ok {
		e.Entry.Animal = id
		return e, nil
	}
	if _, ok := b.Collection.Clutch(id); ok {
		e.Entry.Clutch = id
		return e, nil
	}
	return e, b.unknownAnimal("animal or clutch", id, append(b.animalIDs(), b.clutchIDs()...))
}

// subject makes an entry about an animal, a clutch, a pairing or a place that
// the file knows, or about a new place.
func (b *Book) subject(on civil.Date, id string, isNew bool) (Edit, error) {
	e := Edit{Entry: Entry{Entry: collection.Entry{On: on}}}
	_, animal := b.Collection.Animal(id)
	_, clutch := b.Collection.Clutch(id)
	_, pairing := b.Collection.Pairing(id)
	places := b.places()
	switch {
	case animal:
		e.Entry.Animal = id
	case clutch:
		e.Entry.Clutch = id
	case pairing:
		e.Entry.Pairing = id
	case id != "" && (isNew || slices.Contains(places, id)):
		e.Entry.Place = id
	default:
		cure := "say that the place is a new one with --new"
		if near := strictyaml.DidYouMean(id, append(b.ids(), places...)); near != "" {
			cure = near + " --new says that the place is a new one"
		}
		return e, refuse(cure, "there is no animal, clutch, pairing or place %q in the file", id)
	}
	return e, nil
}

// places gives all places that the file names, each once, in the order of the
// alphabet.
func (b *Book) places() []string {
	c := b.Collection
	seen := make(map[string]bool)
	for i := range c.Animals {
		seen[c.Animals[i].Place] = true
	}
	for i := range c.Clutches {
		seen[c.Clutches[i].Place] = true
	}
	for i := range c.Diary {
		seen[c.Diary[i].Place], seen[c.Diary[i].MovedTo] = true, true
	}
	delete(seen, "")
	list := make([]string, 0, len(seen))
	for p := range seen {
		list = append(list, p)
	}
	slices.Sort(list)
	return list
}
