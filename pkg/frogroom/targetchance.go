package frogroom

import (
	"math"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/brood"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
)

// chances gives the chance that enough young are ready for a target, and the same
// with one more clutch as early as the latest pairing; nil where a profile says
// too little, or nothing counts.
func (p *plan) chances(t collection.Target, counts []string) (met, oneMore *int) {
	sum, ok := brood.NoYield(t.Froglets), true
	b := p.room.broods.Of(t.Species, p.on)
	latest := civil.Date(0)
	for _, one := range p.planned {
		if one.Target != t.Name || !slices.Contains(counts, one.ID) {
			continue
		}
		if n, _ := upTo(p.on, p.room.laid[one.ID]); n > 0 {
			for _, h := range p.running {
				if h.Pairing == one.ID {
					sum = sum.And(h.Yield(t.Froglets, t.On))
				}
			}
			continue
		}
		latest = max(latest, one.cycle.RainStart)
		y, known := b.Yield(t.Froglets, p.raised(one.Pairing), t.On.Sub(one.cycle.RainStart))
		if ok = ok && known; !ok {
			return nil, nil
		}
		for range one.Dams {
			sum = sum.And(y)
		}
	}
	if len(counts) == 0 {
		return nil, nil
	}
	met = percent(sum.Enough())
	if latest.Known() {
		if y, known := b.Yield(t.Froglets, 0, t.On.Sub(latest)); known {
			oneMore = percent(sum.And(y).Enough())
		}
	}
	return met, oneMore
}

// percent gives a chance in whole per cent; what is neither sure nor impossible is
// not said to be.
func percent(chance float64) *int {
	p := int(math.Round(100 * chance))
	switch {
	case p == 0 && chance > 1e-9:
		p = 1
	case p == 100 && chance < 1-1e-9:
		p = 99
	}
	return &p
}

// raised gives how many tadpoles of each clutch of a pairing are kept, 0 for all:
// what the keeper says, or what the target needs at its certainty when all are
// ready in time and each of its pairings that has not lost its clutches has them.
func (p *plan) raised(w *collection.Pairing) int {
	if w.Raise.Known {
		return w.Raise.Value
	}
	t, ok := p.room.Collection.Target(w.Target)
	if !ok || w.Target == "" {
		return 0
	}
	if n, known := p.needed[t.Name]; known {
		return n
	}
	p.needed[t.Name] = p.neededFor(t)
	return p.needed[t.Name]
}

func (p *plan) neededFor(t *collection.Target) int {
	b := p.room.broods.Of(t.Species, p.on)
	clutches := 0
	for i := range p.room.Collection.Pairings {
		if w := &p.room.Collection.Pairings[i]; w.Target == t.Name && !p.bereft(w) {
			clutches += len(w.Dams)
		}
	}
	enough := func(raise int) bool {
		y, ok := b.Yield(t.Froglets, raise, brood.InTime)
		sum := brood.NoYield(t.Froglets)
		for range min(clutches, brood.MostBuckets) {
			sum = sum.And(y)
		}
		return ok && sum.Enough() >= float64(t.CertaintyPct)/100
	}
	most := int(b.Profile.Breeding.ClutchEggs.P90 * b.Survival(development.Laid, development.Hatched))
	if most < 1 || !enough(most) {
		return 0
	}
	least := 1
	for least < most {
		if half := (least + most) / 2; enough(half) {
			most = half
		} else {
			least = half + 1
		}
	}
	return most
}
