package frogroom

import (
	"fmt"
	"sync"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/internal/figures"
	"github.com/spawnwright/spawnwright/pkg/rearing"
	"github.com/spawnwright/spawnwright/pkg/season"
)

// A brood is when the young of a pairing that is only planned reach each stage,
// counted from the first night of rain: at the set-point of the tubs, and in the
// light of what the clutches of the room have taught by a day.
type brood struct {
	*breeding
	// stages is empty when nobody knows when there are eggs, and ready, the same
	// of sale-ready, also when a step of development is not known.
	stages  []season.StageOffset
	ready   development.Distribution
	after   map[development.Stage]development.Distribution // the same of each stage as chances of each day
	restsOn map[string]rearing.RestsOn                     // by stage; without laying
	doubts  []string
}

// broods are those of the day that was asked for last, by species, each worked out
// when it is first asked for.
type broods struct {
	mu sync.Mutex
	on civil.Date
	of map[string]func() *brood
}

// brood gives that of a species by a day.
func (r *Room) brood(species string, on civil.Date) *brood {
	on = r.rearing.Taught(on)
	l := &r.broods
	l.mu.Lock()
	if l.of == nil || l.on != on {
		l.on, l.of = on, make(map[string]func() *brood)
	}
	if l.of[species] == nil {
		l.of[species] = sync.OnceValue(func() *brood { return r.newBrood(species, r.rearing.Lesson(species, on)) })
	}
	one := l.of[species]
	l.mu.Unlock()
	return one()
}

// foresee begins to work out the broods of these pairings, so that they are there, or
// nearly so, when they are asked for.
func (r *Room) foresee(pairings []*collection.Pairing, on civil.Date) {
	begun := make(map[string]bool)
	for _, p := range pairings {
		if !begun[p.Species] {
			begun[p.Species] = true
			go r.brood(p.Species, on)
		}
	}
}

func (r *Room) newBrood(species string, room *development.Room) *brood {
	b := &brood{breeding: r.of(species), after: make(map[development.Stage]development.Distribution), restsOn: make(map[string]rearing.RestsOn)}
	if !b.eggs.Known() {
		return b
	}
	const day0 civil.Date = 1 // any will do: there is one temperature, and nothing seen
	k := development.Clutch{Laid: day0}
	if set := r.Collection.Equipment.TadpoleTubs.WaterC; set.Known {
		k.Water = development.Temperatures{{From: day0, C: set.Value}}
		if safe := b.profile.Safe; safe.Known() && rearing.Outside(set, safe) {
			b.doubts = append(b.doubts, fmt.Sprintf("the tadpole tubs are set to %s, outside the safe range of %s: give the young a place of their own",
				figures.Degrees(set.Value, set.Value), figures.Degrees(safe.Low, safe.High)))
		}
	}
	o := b.model.Ends(k, room)
	for _, w := range o.Warnings {
		b.doubts = append(b.doubts, "the young: "+w.Text)
	}
	for _, stage := range development.Milestones() {
		d := b.eggs
		if stage != development.Laid {
			e, _ := o.Event(stage)
			if !e.Dist.Known() {
				continue
			}
			d = b.eggs.Plus(e.Dist)
			b.restsOn[stage.String()] = rearing.RestingOn(e.Basis)
		}
		b.after[stage] = d
		b.stages = append(b.stages, season.StageOffset{
			Stage: stage.String(), Early: d.Quantile(0.1), Likely: d.Quantile(0.5), Late: d.Quantile(0.9),
		})
		if stage == development.SaleReady {
			b.ready = d
		}
	}
	return b
}
