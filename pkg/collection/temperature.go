package collection

import (
	"cmp"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Temperature is what a thermometer showed, °C.
type Temperature struct {
	On           civil.Date
	WaterC, AirC Given[float64]
	At           strictyaml.Position
}

// Temperatures gives what was measured in a clutch, by date: the entries about
// the clutch itself, and those about a place on days on which the clutch was
// there. A clutch that is moved meets what was measured last in the new place, in
// the 30 days before, unless something is measured on that day. Days before it was laid, or first seen when that is not known, and after it ended are
// left out.
func (c *Collection) Temperatures(clutch string) []Temperature {
	k, ok := c.Clutch(clutch)
	if !ok {
		return nil
	}
	var found []Temperature
	add := func(e *Entry) {
		if e.WaterC.Known || e.AirC.Known {
			found = append(found, Temperature{On: e.On, WaterC: e.WaterC, AirC: e.AirC, At: e.At})
		}
	}
	for _, e := range c.lived(clutch) {
		add(e)
	}
	for i, stay := range c.stays(k) {
		for _, e := range c.DiaryAt(stay.place) {
			if e.On >= stay.from && (!stay.to.Known() || e.On < stay.to) {
				add(e)
			}
		}
		if i > 0 {
			found = append(found, c.met(stay, found)...)
		}
	}
	slices.SortStableFunc(found, func(a, b Temperature) int {
		return cmp.Or(cmp.Compare(a.On, b.On), cmp.Compare(a.At.Line, b.At.Line), cmp.Compare(a.At.Column, b.At.Column))
	})
	return found
}

// stillHolds is for how many days a measurement tells how warm a place is for a
// clutch that comes there; from memory.
const stillHolds = 30

// met gives how warm a place was when a clutch came there, where nothing was
// measured on that day.
func (c *Collection) met(s stay, measured []Temperature) (found []Temperature) {
	if s.to.Known() && s.to <= s.from {
		return nil // it went on the same day
	}
	water, air := c.lastAt(s.place, s.from)
	for _, t := range measured {
		if t.On == s.from && t.WaterC.Known {
			water = nil
		}
		if t.On == s.from && t.AirC.Known {
			air = nil
		}
	}
	if water != nil {
		found = append(found, Temperature{On: s.from, WaterC: water.WaterC, At: water.At})
	}
	if air != nil {
		found = append(found, Temperature{On: s.from, AirC: air.AirC, At: air.At})
	}
	return found
}

// lastAt gives what was last measured in a place before a day, as far as it still
// holds; nil for nothing.
func (c *Collection) lastAt(place string, day civil.Date) (water, air *Entry) {
	for _, e := range c.DiaryAt(place) {
		if e.On >= day || e.On < day.Add(-stillHolds) {
			continue
		}
		if e.WaterC.Known {
			water = e
		}
		if e.AirC.Known {
			air = e
		}
	}
	return water, air
}

// stay is a place and the days from from to the one before to.
type stay struct {
	place    string
	from, to civil.Date
}

// stays gives where k was, in order. Of two moves on one day only the later
// one in the file counts.
func (c *Collection) stays(k *Clutch) []stay {
	all := []stay{{place: k.Place, from: c.Since(k.ID)}}
	for _, e := range c.DiaryOf(k.ID) {
		if e.MovedTo != "" {
			all[len(all)-1].to = e.On
			all = append(all, stay{place: e.MovedTo, from: e.On})
		}
	}
	if k.Ended.Known() {
		all[len(all)-1].to = k.Ended.Add(1)
	}
	return all
}
