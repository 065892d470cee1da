package frogroom

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/rearing"
	"github.com/spawnwright/spawnwright/pkg/season"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// breeding is the profile of a species in the terms of the packages that
// compute with it, worked out once.
type breeding struct {
	profile *species.Profile
	model   *development.Model
	phases  []season.Phase
	// eggs is the nights of rain until there are some; unknown when nobody knows.
	eggs development.Distribution
	// fromEach is how many froglets a middle clutch usually brings, 0 when the
	// profile does not say.
	fromEach int
}

// newBreeding gives an error for days that make no distribution.
func newBreeding(p *species.Profile) (*breeding, error) {
	model, err := rearing.ModelOf(p)
	if err != nil {
		return nil, err
	}
	b := &breeding{
		profile: p, model: model, phases: phasesOf(p), fromEach: model.Froglets(p.Breeding.ClutchEggs),
	}
	nights := p.Breeding.EggsAfterNights
	if !nights.Known() {
		return b, nil
	}
	eggs, err := development.FromPercentiles(nights.P10, nights.P50, nights.P90)
	if err != nil {
		return nil, fmt.Errorf("%s: breeding: eggs_after_nights: %w", p.ID, err)
	}
	b.eggs = eggs
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
