// Package brood says what young to come will be: when those of a planned pairing reach
// each stage, how many a clutch brings and how likely that is enough, and what they, and
// the clutches that run, hold of tubs, bins and working time.
//
//	broods := brood.New(rearing, breeding)
//	b := broods.Of("agalychnis-callidryas", today)
//	last := b.Ready.Quantile(0.9) // days after the first night of rain
package brood

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

// A Brood is when the young of a pairing that is only planned reach each stage,
// counted from the first night of rain: at the set-point of the tubs, and in the
// light of what the clutches of the room have taught by a day.
type Brood struct {
	*Breeding
	// Stages is empty when nobody knows when there are eggs, and Ready, the same
	// of sale-ready, also when a step of development is not known.
	Stages  []season.StageOffset
	Ready   development.Distribution
	After   map[development.Stage]development.Distribution // the same of each stage as chances of each day
	RestsOn map[string]rearing.RestsOn                     // by stage; without laying
	Doubts  []string
}

// Broods are those of a collection. They can be asked for by several goroutines at
// once; those of the day that was asked for last are kept, each worked out when it is
// first asked for.
type Broods struct {
	rearing  *rearing.Rearing
	breeding map[string]*Breeding // by species

	mu sync.Mutex
	on civil.Date
	of map[string]func() *Brood
}

// New takes how each species of the collection of r is bred, see [NewBreeding]. The
// models are those that r was made with; [Broods.Of] panics for others.
func New(r *rearing.Rearing, breeding map[string]*Breeding) *Broods {
	return &Broods{rearing: r, breeding: breeding}
}

// Breeding gives how a species is bred; it panics for one that the collection does not
// have.
func (l *Broods) Breeding(species string) *Breeding {
	b, ok := l.breeding[species]
	if !ok {
		panic(fmt.Sprintf("brood: the collection has no species %q", species))
	}
	return b
}

// Of gives the brood of a species by a day. It panics for a species that the collection
// does not have.
func (l *Broods) Of(species string, on civil.Date) *Brood {
	on = l.rearing.Taught(on)
	l.mu.Lock()
	if l.of == nil || l.on != on {
		l.on, l.of = on, make(map[string]func() *Brood)
	}
	if l.of[species] == nil {
		l.of[species] = sync.OnceValue(func() *Brood { return l.foresee(species, l.rearing.Lesson(species, on)) })
	}
	one := l.of[species]
	l.mu.Unlock()
	return one()
}

// Begin begins to work out the broods of these pairings beside what the caller does
// next, and gives what waits for them.
func (l *Broods) Begin(pairings []*collection.Pairing, on civil.Date) (wait func()) {
	var all sync.WaitGroup
	begun := make(map[string]bool)
	for _, p := range pairings {
		if !begun[p.Species] {
			begun[p.Species] = true
			all.Go(func() { l.Of(p.Species, on) })
		}
	}
	return all.Wait
}

func (l *Broods) foresee(species string, room *development.Room) *Brood {
	b := &Brood{Breeding: l.Breeding(species), After: make(map[development.Stage]development.Distribution), RestsOn: make(map[string]rearing.RestsOn)}
	if !b.Eggs.Known() {
		return b
	}
	const day0 civil.Date = 1 // any will do: there is one temperature, and nothing seen
	k := development.Clutch{Laid: day0}
	if set := l.rearing.Collection.Equipment.TadpoleTubs.WaterC; set.Known {
		k.Water = development.Temperatures{{From: day0, C: set.Value}}
		if safe := b.Profile.Safe; safe.Known() && rearing.Outside(set, safe) {
			b.Doubts = append(b.Doubts, fmt.Sprintf("the tadpole tubs are set to %s, outside the safe range of %s: give the young a place of their own",
				figures.Degrees(set.Value, set.Value), figures.Degrees(safe.Low, safe.High)))
		}
	}
	o := b.Model.Ends(k, room)
	for _, w := range o.Warnings {
		b.Doubts = append(b.Doubts, "the young: "+w.Text)
	}
	for _, stage := range development.Milestones() {
		d := b.Eggs
		if stage != development.Laid {
			e, _ := o.Event(stage)
			if !e.Dist.Known() {
				continue
			}
			d = b.Eggs.Plus(e.Dist)
			b.RestsOn[stage.String()] = rearing.RestingOn(e.Basis)
		}
		b.After[stage] = d
		b.Stages = append(b.Stages, season.StageOffset{
			Stage: stage.String(), Early: d.Quantile(0.1), Likely: d.Quantile(0.5), Late: d.Quantile(0.9),
		})
		if stage == development.SaleReady {
			b.Ready = d
		}
	}
	return b
}
