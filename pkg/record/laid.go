package record

import (
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
)

// Laying is a clutch that was laid. All but one of Pairing, Dams, Sires and
// Species may be left out.
type Laying struct {
	ID      string // the next free one in the pattern of the file when empty
	Pairing string
	Dams    []string // those of the pairing when empty
	Sires   []string // likewise
	SireMix collection.Mix
	Species string // only needed when neither parent is known
	Eggs    int    // 0 when they were not counted
	Line    string
	Place   string
	Note    string // of the clutch
}

// laidNote marks the entry that came with a clutch, for [Book.Undo].
const laidNote = "laid"

// Laid is a clutch that was laid on a day. The clutch gets an entry in the list
// of clutches, and one in the diary.
func (b *Book) Laid(on civil.Date, l Laying) (Edit, error) {
	if l.Pairing != "" {
		if _, err := b.pairing(l.Pairing); err != nil {
			return Edit{}, err
		}
	}
	for _, id := range append(append([]string{}, l.Dams...), l.Sires...) {
		if _, err := b.animal(id); err != nil {
			return Edit{}, err
		}
	}
	species := b.speciesOf(l)
	if species == "" {
		return Edit{}, refuse("name the dam, the pairing or the species", "it is not said whose eggs these are")
	}
	if l.ID == "" {
		l.ID = b.nextClutch(species, on)
	}
	if err := b.free(l.ID); err != nil {
		return Edit{}, err
	}
	return Edit{
		Clutch: &collection.Clutch{
			ID: l.ID, Laid: on, Pairing: l.Pairing, Dams: l.Dams, Sires: l.Sires, SireMix: l.SireMix,
			Species: l.Species, Eggs: l.Eggs, Line: l.Line, Place: l.Place, Note: l.Note,
		},
		Entry: Entry{Entry: collection.Entry{On: on, Clutch: l.ID, Note: laidNote}},
	}, nil
}

// speciesOf gives the species of the young, as far as the file knows it.
func (b *Book) speciesOf(l Laying) string {
	if l.Species != "" {
		return l.Species
	}
	parents := append(append([]string{}, l.Dams...), l.Sires...)
	if p, ok := b.Collection.Pairing(l.Pairing); ok {
		parents = append(parents, p.Dams...)
	}
	for _, id := range parents {
		if a, ok := b.Collection.Animal(id); ok {
			return a.Species
		}
	}
	return ""
}

// heldNote begins the note of the entry that came with young that were held
// back, for [Book.Undo]: it names them.
func heldNote(ids []string) string { return "as " + strings.Join(ids, ", ") }

// Holding is young of a clutch that become animals of the file.
type Holding struct {
	Clutch string   // the only one that is running when empty
	Count  int      // the number of IDs when 0
	IDs    []string // the next free ones in the pattern of the file when empty
	Sex    collection.Sex
	Place  string
}

// HeldBack is young of a clutch that are held back. Each gets an entry in the
// list of animals, and all of them one in the diary.
func (b *Book) HeldBack(on civil.Date, h Holding) (Edit, error) {
	k, err := b.clutch(h.Clutch, on)
	if err != nil {
		return Edit{}, err
	}
	const most = 1000
	switch {
	case h.Count == 0:
		h.Count = len(h.IDs)
	case len(h.IDs) > 0 && len(h.IDs) != h.Count:
		return Edit{}, refuse("correct the one or the other", "%d are held back, but %d ids are given", h.Count, len(h.IDs))
	}
	if h.Count < 1 || h.Count > most {
		return Edit{}, refuse("say how many, from 1 to 1000", "it is not clear how many of %s are held back", k.ID)
	}
	if len(h.IDs) == 0 {
		h.IDs = b.nextAnimals(k.Species, h.Count)
	}
	if h.Sex == "" {
		h.Sex = collection.UnknownSex
	}
	e := Edit{Entry: Entry{Entry: collection.Entry{On: on, Clutch: k.ID, HeldBack: h.Count, Note: heldNote(h.IDs)}}}
	for _, id := range h.IDs {
		if err := b.free(id); err != nil {
			return Edit{}, err
		}
		e.Animals = append(e.Animals, collection.Animal{ID: id, Sex: h.Sex, Clutch: k.ID, Place: h.Place})
	}
	return e, nil
}
