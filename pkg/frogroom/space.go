package frogroom

import (
	"math"

	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// space is what there is room for: tadpoles in a tub and froglets in a bin. 0 is
// not known.
type space struct {
	tadpoles float64
	froglets int
	tubs     int // in the room; 0 where it is not given
	bins     int
}

// space gives the room for young of a species.
func (r *Room) space(p *species.Profile) space {
	e := r.Collection.Equipment
	s := space{froglets: e.FrogletBins.Froglets.Value, tubs: e.TadpoleTubs.Count.Value, bins: e.FrogletBins.Count.Value}
	if p.TadpolesPerLitre.Known() {
		s.tadpoles = p.TadpolesPerLitre.Value * e.TadpoleTubs.Litres.Value
	}
	return s
}

// tubsFor gives the tubs for a number of tadpoles, and whether that is more than
// there are: then it is all of them. ok is false where nothing can be said.
func (s space) tubsFor(tadpoles float64) (n int, tooMany, ok bool) {
	return fitted(tadpoles, s.tadpoles, s.tubs)
}

// binsFor does the same for bins.
func (s space) binsFor(froglets float64) (n int, tooMany, ok bool) {
	return fitted(froglets, float64(s.froglets), s.bins)
}

func fitted(young, each float64, there int) (n int, tooMany, ok bool) {
	if each <= 0 || there <= 0 {
		return 0, false, false
	}
	n = int(math.Ceil(min(young/each, 1e6) - 1e-9))
	return min(n, there), n > there, true
}

// survival gives the usual share that lives from one stage to another, 1 where it
// is not known.
func (b *breeding) survival(from, to development.Stage) float64 {
	if share, ok := b.model.Survival(from, to); ok {
		return share
	}
	return 1
}

// steps of development with the stages at their ends.
var stepStages = []struct {
	step     species.StepName
	from, to development.Stage
}{
	{species.Egg, development.Laid, development.Hatched},
	{species.Hatchling, development.Hatched, development.Feeding},
	{species.Tadpole, development.Feeding, development.FrontLegs},
	{species.Metamorph, development.FrontLegs, development.OutOfWater},
	{species.GrowOut, development.OutOfWater, development.SaleReady},
}

// minutes gives the work of a step in whole minutes a day, 0 where it is not known.
func (b *breeding) minutes(name species.StepName) int {
	step, ok := b.profile.Step(name)
	if !ok || !step.MinutesADay.Known() {
		return 0
	}
	return int(math.Ceil(step.MinutesADay.Value))
}

// work gives the work of each phase in whole minutes a day.
func (b *breeding) work() map[string]int {
	work := make(map[string]int)
	for _, ph := range b.profile.Cycle {
		if ph.MinutesADay.Known() {
			work[string(ph.Name)] = int(math.Ceil(ph.MinutesADay.Value))
		}
	}
	return work
}
