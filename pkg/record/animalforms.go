package record

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Weight is what an animal, or the smallest of a clutch, weighed, such as 12.4g
// or 0.44oz. The unit must be there: g, kg, mg or oz.
func (b *Book) Weight(on civil.Date, id, amount string) (Edit, error) {
	e, err := b.living(on, id)
	if err != nil {
		return Edit{}, err
	}
	e.Entry.WeightG, e.Entry.Weight, err = parse("weight", amount, strictyaml.Grams(), "12.4g")
	if err == nil && e.Entry.WeightG == 0 {
		err = refuse("measure again", "%s weighs nothing", id)
	}
	return e, err
}

// Length is the length from snout to vent of an animal, or of the smallest of a
// clutch, such as 69mm. The unit must be there: mm, cm or in.
func (b *Book) Length(on civil.Date, id, amount string) (Edit, error) {
	e, err := b.living(on, id)
	if err != nil {
		return Edit{}, err
	}
	e.Entry.LengthMM, e.Entry.Length, err = parse("length", amount, strictyaml.Millimetres(), "69mm")
	if err == nil && e.Entry.LengthMM == 0 {
		err = refuse("measure again", "%s has no length", id)
	}
	return e, err
}

// Moved is an animal or a clutch that got another place.
func (b *Book) Moved(on civil.Date, id, place string) (Edit, error) {
	e, err := b.living(on, id)
	e.Entry.MovedTo = place
	return e, err
}

// Died is an animal that died, or so many dead ones of a clutch that were found.
func (b *Book) Died(on civil.Date, id string, count int) (Edit, error) {
	e, err := b.living(on, id)
	switch {
	case err != nil:
	case e.Entry.Clutch == "" && count > 1:
		err = refuse("record each by its own id", "%s is one animal", id)
	case e.Entry.Clutch == "":
		e.Entry.Status = collection.Died
	case count < 1:
		err = refuse("say how many were found dead, with --count", "%s is a clutch", id)
	default:
		e.Entry.Losses = count
	}
	return e, err
}

// Sold is an animal that left the room, or so many young of a clutch. To whom
// may be left out.
func (b *Book) Sold(on civil.Date, id string, count int, to string) (Edit, error) {
	e, err := b.living(on, id)
	e.Entry.To = to
	switch {
	case err != nil:
	case e.Entry.Clutch == "" && count > 1:
		err = refuse("record each by its own id", "%s is one animal", id)
	case e.Entry.Clutch == "":
		e.Entry.Status = collection.Left
	case count < 1:
		err = refuse("say how many left, with --count", "%s is a clutch", id)
	default:
		e.Entry.Sold = count
	}
	return e, err
}

// Ate is an animal that was seen eating by itself, or a clutch of which half of
// the froglets were.
func (b *Book) Ate(on civil.Date, id string) (Edit, error) {
	e, err := b.living(on, id)
	if e.Entry.Clutch != "" {
		e.Entry.Saw = "eating"
	} else {
		e.Entry.Ate = true
	}
	return e, err
}

// Hold is a hold that begins, or that all are lifted. Until is the last day,
// unknown for a hold that lasts until it is lifted.
func (b *Book) Hold(on civil.Date, animal string, kind collection.HoldKind, until civil.Date) (Edit, error) {
	if _, err := b.animal(animal); err != nil {
		return Edit{}, err
	}
	return Edit{Entry: Entry{Entry: collection.Entry{On: on, Animal: animal, Hold: kind, Until: until}}}, nil
}
