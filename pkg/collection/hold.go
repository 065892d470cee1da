package collection

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// HoldKind says why an animal is held.
type HoldKind string

// The kinds of a hold, and the word of the diary that ends all that run.
const (
	Quarantine HoldKind = "quarantine"
	Health     HoldKind = "health"
	Lifted     HoldKind = "lifted"
)

// Hold is a time in which an animal is neither paired nor given away.
type Hold struct {
	Kind  HoldKind   // [Quarantine] or [Health]
	From  civil.Date // first day; unknown when it was always so
	Until civil.Date // last day; unknown until it is lifted
	Note  string

	At strictyaml.Position // where it begins in the list of animals or the diary
}

// runs reports whether h runs on a day. An unknown day stands for the end of
// the records.
func (h Hold) runs(on civil.Date) bool {
	if !on.Known() {
		return !h.Until.Known()
	}
	return h.From <= on && (!h.Until.Known() || on <= h.Until)
}

// HoldsAt gives the holds of an animal that run on a day: those of its list in
// their order, then those of the diary by date. An entry of the diary takes the
// place of the holds of its kind that run on its day, and one that lifts ends
// all that run, so that the animal is free on that day. An unknown day stands
// for the end of the diary.
func (c *Collection) HoldsAt(animal string, on civil.Date) []Hold {
	return running(c.HoldsOf(animal, on), on)
}

// HoldsOf gives the holds of an animal that are known by a day, in the order of
// [Collection.HoldsAt]: also those that are over, and those of its list that are to
// come. One that was lifted ends on the day before. An unknown day stands for the
// end of the diary.
func (c *Collection) HoldsOf(animal string, on civil.Date) []Hold {
	a, ok := c.Animal(animal)
	if !ok {
		return nil
	}
	holds := append([]Hold(nil), a.Holds...)
	for _, e := range c.DiaryOf(animal) {
		if e.Hold != "" && past(e.On, on) {
			holds = changed(holds, e)
		}
	}
	return holds
}

// changed gives holds as they are after e.
func changed(holds []Hold, e *Entry) []Hold {
	for i := range holds {
		if h := &holds[i]; h.runs(e.On) && (e.Hold == Lifted || e.Hold == h.Kind) {
			h.Until = e.On.Add(-1)
		}
	}
	if e.Hold == Lifted {
		return holds
	}
	return append(holds, Hold{Kind: e.Hold, From: e.On, Until: e.Until, Note: e.Note, At: e.At})
}

// running gives those of holds that run on a day, in their own order.
func running(holds []Hold, on civil.Date) []Hold {
	var found []Hold
	for _, h := range holds {
		if h.runs(on) {
			found = append(found, h)
		}
	}
	return found
}
