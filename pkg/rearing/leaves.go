package rearing

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
)

// Leaves says whether the young of a clutch, or an animal, may leave, and why not. A
// date alone is never enough: they are old enough, and long or heavy enough, and were
// seen eating; see [development.SaleReadiness].
type Leaves struct {
	Ready bool `json:"ready"`
	// OutOfWater is the first day on which all were seen to be out of the water,
	// or that of the animal.
	OutOfWater civil.Date `json:"out_of_water,omitempty"`
	LengthMM   float64    `json:"length_mm,omitempty"` // of the smallest, as measured last
	WeightG    float64    `json:"weight_g,omitempty"`
	SeenEating int        `json:"seen_eating"`
	Held       []string   `json:"held"`           // why they are held
	Ask        []string   `json:"ask"`            // what is not recorded and has to be before they leave
	From       civil.Date `json:"from,omitempty"` // the first day on which they are old enough
}

// Leaves holds what is recorded of a clutch up to a day against the profile.
func (r *Rearing) Leaves(c *collection.Clutch, on civil.Date) Leaves {
	young := development.Young{OutOfWater: r.leftWater(c.ID, on), SeenEating: r.sawEating(c.ID, on)}
	for _, e := range r.Collection.DiaryOf(c.ID) {
		if e.On > on {
			continue
		}
		if e.LengthMM > 0 {
			young.LengthMM = e.LengthMM
		}
		if e.WeightG > 0 {
			young.WeightG = e.WeightG
		}
	}
	return r.judged(c.Species, young, on)
}

// AnimalLeaves holds what is recorded of an animal up to a day against the profile. What
// was seen of all of its clutch was seen of it.
func (r *Rearing) AnimalLeaves(a *collection.Animal, on civil.Date) Leaves {
	young := development.Young{OutOfWater: a.OutOfWater}
	if a.OutOfWater > on {
		young.OutOfWater = 0
	}
	if m, ok := r.Collection.Length(a.ID, on); ok {
		young.LengthMM = m.Value
	}
	if m, ok := r.Collection.Weight(a.ID, on); ok {
		young.WeightG = m.Value
	}
	for _, e := range r.Collection.DiaryOf(a.ID) {
		if e.On <= on && e.Ate {
			young.SeenEating++
		}
	}
	if a.Clutch != "" {
		young.SeenEating += r.sawEating(a.Clutch, on)
	}
	return r.judged(a.Species, young, on)
}

func (r *Rearing) judged(species string, y development.Young, on civil.Date) Leaves {
	ready := development.SaleReadiness(r.Collection.MustProfile(species), y, on)
	return Leaves{
		Ready: ready.Ready, OutOfWater: y.OutOfWater, LengthMM: y.LengthMM, WeightG: y.WeightG, SeenEating: y.SeenEating,
		Held: copied(ready.Held), Ask: copied(ready.Ask), From: ready.From,
	}
}

// sawEating counts the looks at which all of a clutch were seen eating.
func (r *Rearing) sawEating(clutch string, on civil.Date) (times int) {
	for _, e := range r.Collection.DiaryOf(clutch) {
		if e.On <= on && e.Saw == development.Eating.String() && !e.Some {
			times++
		}
	}
	return times
}

// leftWater gives the first day by which all of a clutch were seen to have left
// the water, whatever was seen of it then.
func (r *Rearing) leftWater(clutch string, on civil.Date) civil.Date {
	var first civil.Date
	for _, l := range r.Looks(clutch, on) {
		if l.Stage >= development.OutOfWater && (l.Kind == development.Reached || l.Kind == development.By) && (!first.Known() || l.On < first) {
			first = l.On
		}
	}
	return first
}
