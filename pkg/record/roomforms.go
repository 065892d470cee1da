package record

import (
	"cmp"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Temperature is what a thermometer showed in a place, a clutch or with an
// animal, such as 23.5C or 74F: of the water, or of the air. A place that the
// file does not name yet must be said to be new.
func (b *Book) Temperature(on civil.Date, subject, amount string, air, isNew bool) (Edit, error) {
	e, err := b.subject(on, subject, isNew)
	switch {
	case err != nil:
		return Edit{}, err
	case e.Entry.Pairing != "":
		return Edit{}, refuse("name a place, a clutch or an animal", "%s is a pairing, which has no temperature", subject)
	}
	value, as, err := parse("temperature", amount, strictyaml.Celsius(), "23.5C")
	if air {
		e.Entry.AirC, e.Entry.Air = collection.Given[float64]{Value: value, Known: true}, as
	} else {
		e.Entry.WaterC, e.Entry.Water = collection.Given[float64]{Value: value, Known: true}, as
	}
	return e, err
}

// Note is free text about an animal, a clutch, a pairing or a place. A place
// that the file does not name yet must be said to be new.
func (b *Book) Note(on civil.Date, subject, text string, isNew bool) (Edit, error) {
	e, err := b.subject(on, subject, isNew)
	if err == nil && text == "" {
		err = refuse("write what is to be remembered", "the note is empty")
	}
	e.Entry.Note = text
	return e, err
}

// Began is a phase of a pairing that began.
func (b *Book) Began(on civil.Date, pairing string, phase species.PhaseName) (Edit, error) {
	if _, err := b.pairing(pairing); err != nil {
		return Edit{}, err
	}
	if words := collection.Phases(); !slices.Contains(words, string(phase)) {
		cure := strictyaml.DidYouMean(string(phase), words)
		return Edit{}, refuse(cmp.Or(cure, "write one of "+strings.Join(words, ", ")), "there is no phase %q", phase)
	}
	return Edit{Entry: Entry{Entry: collection.Entry{On: on, Pairing: pairing, Began: phase}}}, nil
}

func (b *Book) pairing(id string) (*collection.Pairing, error) {
	p, ok := b.Collection.Pairing(id)
	if !ok {
		var ids []string
		for i := range b.Collection.Pairings {
			ids = append(ids, b.Collection.Pairings[i].ID)
		}
		return nil, unknown("pairing", id, ids, "`spawnwright season` lists the pairings")
	}
	return p, nil
}
