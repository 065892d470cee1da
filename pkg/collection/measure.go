package collection

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Measure is a weight in g or a length in mm, and when it was taken.
type Measure struct {
	Value float64
	On    civil.Date          // unknown for a value of the list of animals
	At    strictyaml.Position // where it stands
}

// Weight gives the newest weight in g of an animal on a day, and false when
// none is recorded. The value of the list of animals has no date and counts as
// older than the diary. An unknown day stands for the end of the diary.
func (c *Collection) Weight(animal string, on civil.Date) (Measure, bool) {
	return c.measure(animal, on,
		func(a *Animal) float64 { return a.WeightG },
		func(e *Entry) float64 { return e.WeightG })
}

// Length gives the newest length in mm, snout to vent, like [Collection.Weight].
func (c *Collection) Length(animal string, on civil.Date) (Measure, bool) {
	return c.measure(animal, on,
		func(a *Animal) float64 { return a.LengthMM },
		func(e *Entry) float64 { return e.LengthMM })
}

func (c *Collection) measure(animal string, on civil.Date, listed func(*Animal) float64, noted func(*Entry) float64) (Measure, bool) {
	a, ok := c.Animal(animal)
	if !ok {
		return Measure{}, false
	}
	found := Measure{Value: listed(a), At: a.At}
	for _, e := range c.DiaryOf(animal) {
		if v := noted(e); v > 0 && past(e.On, on) {
			found = Measure{Value: v, On: e.On, At: e.At}
		}
	}
	return found, found.Value > 0
}
