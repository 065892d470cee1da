package brood

import (
	"fmt"
	"math"

	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/rearing"
	"github.com/spawnwright/spawnwright/pkg/season"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// Breeding is the profile of a species in the terms of the packages that
// compute with it, worked out once.
type Breeding struct {
	Profile *species.Profile
	Model   *development.Model
	Phases  []season.Phase
	// Eggs is the nights of rain until there are some; unknown when nobody knows.
	Eggs development.Distribution
	// FromEach is how many froglets a middle clutch usually brings, 0 when the
	// profile does not say.
	FromEach int
}

// NewBreeding works out how a species is bred. The error is for days that make no
// distribution; see [rearing.ModelOf].
func NewBreeding(p *species.Profile) (*Breeding, error) {
	model, err := rearing.ModelOf(p)
	if err != nil {
		return nil, err
	}
	b := &Breeding{
		Profile: p, Model: model, Phases: phasesOf(p), FromEach: model.Froglets(p.Breeding.ClutchEggs),
	}
	nights := p.Breeding.EggsAfterNights
	if !nights.Known() {
		return b, nil
	}
	eggs, err := development.FromPercentiles(nights.P10, nights.P50, nights.P90)
	if err != nil {
		return nil, fmt.Errorf("%s: breeding: eggs_after_nights: %w", p.ID, err)
	}
	b.Eggs = eggs
	return b, nil
}

func phasesOf(p *species.Profile) []season.Phase {
	var phases []season.Phase
	for _, ph := range p.Cycle {
		if !ph.Days.Known() {
			continue
		}
		place := ph.Where()
		if place == species.OwnTank {
			place = "" // it cannot run short
		}
		phases = append(phases, season.Phase{
			Name: string(ph.Name), Min: ph.Days.Min, Usual: ph.Days.Usual, Max: ph.Days.Max, Place: place,
		})
	}
	return phases
}

// Survival gives the usual share that lives from one stage to another, 1 where it
// is not known.
func (b *Breeding) Survival(from, to development.Stage) float64 {
	if share, ok := b.Model.Survival(from, to); ok {
		return share
	}
	return 1
}

// Minutes gives the work of a step in whole minutes a day, 0 where it is not known.
func (b *Breeding) Minutes(name species.StepName) int {
	step, ok := b.Profile.Step(name)
	if !ok || !step.MinutesADay.Known() {
		return 0
	}
	return int(math.Ceil(step.MinutesADay.Value))
}

// Work gives the work of each phase in whole minutes a day.
func (b *Breeding) Work() map[string]int {
	work := make(map[string]int)
	for _, ph := range b.Profile.Cycle {
		if ph.MinutesADay.Known() {
			work[string(ph.Name)] = int(math.Ceil(ph.MinutesADay.Value))
		}
	}
	return work
}
