package development

import (
	"cmp"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Care is something to do for a clutch about the time of a stage.
type Care struct {
	Stage    Stage
	LeadDays int // days before the stage; below 0 for days after it
	What     string
	Source   string
}

const (
	custom = "common practice, no source"
	gosner = "Gosner 1960, Herpetologica 16:183-190 (the stage); " + custom
)

// cares is what frogs of all kinds that grow up in water need. What is peculiar
// to a species stands in the notes and cautions of its profile.
var cares = []Care{
	{Laid, 0, "look at the eggs every day, take out white and mouldy ones, keep clutches above the water damp", custom},
	{Hatched, 3, "have tubs ready with aged water, free of chlorine, at the set temperature", custom},
	{Hatched, 0, "no food yet: hatchlings live on their yolk until they swim and graze", gosner},
	{Feeding, 0, "begin to feed: a little each day, leftovers taken out, water changed by part", gosner},
	{FrontLegs, 7, "a way out of the water: a slope, cork or plants, shallow water and a lid; the first may be a week before the rest", gosner},
	{FrontLegs, 0, "no food while the tail goes: the mouth is being rebuilt", gosner},
	{OutOfWater, 14, "start the first foods: fruit flies take 8 to 19 days from egg to fly at 25 to 18 °C, cricket eggs 11 to 14 days at 30 °C", "keeper article: terrain.net.nz (flies), zegaenterprises.com.au (crickets)"},
	{OutOfWater, 7, "bins for froglets: damp with moving air, a hide, and a small dish with stones or plants so that none drowns", "keeper article: Mailloux et al., Popular Tree Frogs; moving air from memory"},
	{OutOfWater, -3, "offer first food every day: dusted with calcium, and no longer than the gap between the eyes", "keeper article: biologyinsights.com (size, dusting); the day from memory"},
	{OutOfWater, -7, "see that each one eats: the smallest first, sorted by size", custom},
	{SaleReady, 7, "measure and weigh each, and note which were seen eating", custom},
}

// Cares gives what to do at each stage, in the order of the stages and of what
// comes first. It is general; the profile of a species has the rest. Local codes
// and a veterinarian come first.
func Cares() []Care { return slices.Clone(cares) }

// DatedCare is a care and the day it is due.
type DatedCare struct {
	Care
	On civil.Date
}

// Care gives the cares of a clutch by date. What has a lead before a stage, or
// is due with it, goes by the early end of its window, so that it is there for
// the first; what is due after it by the likely day. Those of stages without a
// date are left out.
func (o Outlook) Care() []DatedCare {
	var all []DatedCare
	for _, c := range cares {
		w := o.Laid
		if c.Stage != Laid {
			e, _ := o.Event(c.Stage)
			w = e.Window
		}
		switch {
		case !w.Known():
		case c.LeadDays < 0:
			all = append(all, DatedCare{c, w.Likely.Add(-c.LeadDays)})
		default:
			all = append(all, DatedCare{c, w.Early.Add(-c.LeadDays)})
		}
	}
	slices.SortStableFunc(all, func(a, b DatedCare) int { return cmp.Compare(a.On, b.On) })
	return all
}

// PreyLength gives how long the prey of a froglet may be, in mm, from small to
// large: about 0.2 to 0.3 of the length of the froglet from snout to vent, which
// is about the gap between its eyes (keeper article: biologyinsights.com; the
// shares from memory).
func PreyLength(frogletMM float64) (small, large float64) { return 0.2 * frogletMM, 0.3 * frogletMM }
