package frogroom

import (
	"math"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/rearing"
)

// chances gives the chance that enough young are ready for a target, and the same
// with one more clutch as early as the latest pairing; nil where a profile says
// too little, or nothing counts.
func (p *plan) chances(t collection.Target, counts []string) (met, oneMore *int) {
	sum, ok := noYield(t.Froglets), true
	b := p.room.brood(t.Species, p.on)
	latest := civil.Date(0)
	for _, one := range p.planned {
		if one.Target != t.Name || !slices.Contains(counts, one.ID) {
			continue
		}
		if n, _ := upTo(p.on, p.room.laid[one.ID]); n > 0 {
			for _, k := range p.clutches {
				if c, found := p.room.Collection.Clutch(k.ID); found && c.Pairing == one.ID {
					sum = sum.and(p.room.runningYield(k, c, t))
				}
			}
			continue
		}
		latest = max(latest, one.cycle.RainStart)
		y, known := b.clutchYield(t.Froglets, p.raised(one.Pairing), t.On.Sub(one.cycle.RainStart))
		if ok = ok && known; !ok {
			return nil, nil
		}
		for range one.Dams {
			sum = sum.and(y)
		}
	}
	if len(counts) == 0 {
		return nil, nil
	}
	met = percent(sum.enough())
	if latest.Known() {
		if y, known := b.clutchYield(t.Froglets, 0, t.On.Sub(latest)); known {
			oneMore = percent(sum.and(y).enough())
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

// runningYield gives the young of a clutch that is there which are ready for a
// target: normally distributed about what is expected.
func (r *Room) runningYield(k rearing.Tended, c *collection.Clutch, t collection.Target) yield {
	y := noYield(t.Froglets)
	counts := r.rearing.Counts(c, k.Outlook, k.SeenOn)
	if len(counts) == 0 || k.Died() {
		return y
	}
	heads, _ := k.Outlook.Heads(counts, civil.Span{First: t.On, Last: t.On})
	ready := heads[0].Stages[len(heads[0].Stages)-1]
	const between = 2 * 1.2815515655446004 // standard deviations from the 10th to the 90th percentile
	sd := float64(ready.High-ready.Low) / between
	y.chance[0] = 0
	for i := range sizePoints {
		z := math.Sqrt2 * math.Erfinv(2*(float64(i)+0.5)/sizePoints-1)
		y.add(math.Round(ready.Expected+z*sd), 1.0/sizePoints)
	}
	return y
}

// raised gives how many tadpoles of each clutch of a pairing are kept, 0 for all:
// what the keeper says, or what the target needs at its certainty when all are
// ready in time and each of its pairings has its clutches.
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
	p.needed[t.Name] = p.room.neededFor(t, p.on)
	return p.needed[t.Name]
}

func (r *Room) neededFor(t *collection.Target, on civil.Date) int {
	b := r.brood(t.Species, on)
	clutches := 0
	for i := range r.Collection.Pairings {
		if p := &r.Collection.Pairings[i]; p.Target == t.Name {
			clutches += len(p.Dams)
		}
	}
	enough := func(raise int) bool {
		y, ok := b.clutchYield(t.Froglets, raise, inTime)
		sum := noYield(t.Froglets)
		for range min(clutches, mostBuckets) {
			sum = sum.and(y)
		}
		return ok && sum.enough() >= float64(t.CertaintyPct)/100
	}
	most := int(b.profile.Breeding.ClutchEggs.P90 * b.survival(development.Laid, development.Hatched))
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
