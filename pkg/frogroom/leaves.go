package frogroom

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
)

// Leaves says whether the young of a clutch may leave, and why not. A date alone
// is never enough: they are old enough, and long or heavy enough, and were seen
// eating; see [development.SaleReadiness].
type Leaves struct {
	Ready bool `json:"ready"`
	// OutOfWater is the first day on which all were seen to be out of the water.
	OutOfWater civil.Date `json:"out_of_water,omitempty"`
	LengthMM   float64    `json:"length_mm,omitempty"` // of the smallest, as measured last
	WeightG    float64    `json:"weight_g,omitempty"`
	SeenEating int        `json:"seen_eating"`
	Held       []string   `json:"held"`           // why they are held
	Ask        []string   `json:"ask"`            // what is not recorded and has to be before they leave
	From       civil.Date `json:"from,omitempty"` // the first day on which they are old enough
}

// leaves holds what is recorded of a clutch against the profile.
func (r *Room) leaves(c *collection.Clutch, on civil.Date) Leaves {
	out := Leaves{OutOfWater: r.leftWater(c.ID, on)}
	for _, e := range r.Collection.DiaryOf(c.ID) {
		if e.On > on {
			continue
		}
		if e.LengthMM > 0 {
			out.LengthMM = e.LengthMM
		}
		if e.WeightG > 0 {
			out.WeightG = e.WeightG
		}
		if e.Saw == development.Eating.String() && !e.Some {
			out.SeenEating++
		}
	}
	ready := development.SaleReadiness(r.of(c.Species).profile, development.Young{
		OutOfWater: out.OutOfWater, LengthMM: out.LengthMM, WeightG: out.WeightG, SeenEating: out.SeenEating,
	}, on)
	out.Ready, out.From = ready.Ready, ready.From
	out.Held, out.Ask = copied(ready.Held), copied(ready.Ask)
	return out
}

// leftWater gives the first day by which all of a clutch were seen to have left
// the water, whatever was seen of it then.
func (r *Room) leftWater(clutch string, on civil.Date) civil.Date {
	var first civil.Date
	for _, l := range r.looks(clutch, on) {
		if l.Stage >= development.OutOfWater && (l.Kind == development.Reached || l.Kind == development.By) && (!first.Known() || l.On < first) {
			first = l.On
		}
	}
	return first
}
