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
// there. Days before it was laid, or first seen when that is not known, and after
// it ended are left out.
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
	for _, stay := range c.stays(k) {
		for _, e := range c.DiaryAt(stay.place) {
			if e.On >= stay.from && (!stay.to.Known() || e.On < stay.to) {
				add(e)
			}
		}
	}
	slices.SortStableFunc(found, func(a, b Temperature) int {
		return cmp.Or(cmp.Compare(a.On, b.On), cmp.Compare(a.At.Line, b.At.Line), cmp.Compare(a.At.Column, b.At.Column))
	})
	return found
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
