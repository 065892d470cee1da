package frogroom

import (
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/season"
)

// TargetOutlook holds what the pairings for a target may bring against what is wanted.
type TargetOutlook struct {
	Name    string     `json:"name"`
	On      civil.Date `json:"on"`
	Species string     `json:"species"`
	Wanted  int        `json:"wanted"`
	// Pairings are those that count. LeftOut are pairings for the target that
	// cannot be ready in time at the wished certainty, should not be made, could not
	// be planned, have lost their clutches, or rest without one. Once the rain has begun, of others only
	// those are left out whose young are more likely late than in time.
	Pairings []string `json:"pairings"`
	LeftOut  []string `json:"left_out,omitempty"`
	// FromEach is a usual number of froglets from one clutch of the species:
	// the middle clutch, less the usual losses. 0 when the profile does not say.
	FromEach int `json:"from_each"`
	// Clutches is one for each dam of the pairings, and Outlook what they usually
	// bring together, of the tadpoles that are raised.
	Clutches int `json:"clutches"`
	Outlook  int `json:"outlook"`
	// ChancePct is the chance in per cent that enough are sale-ready on the day,
	// if every pairing that has no clutch yet lays its eggs, by the spread of clutch
	// sizes, of survivors and of their pace. CertaintyPct is what the keeper wants,
	// and OneMorePct the chance with one more clutch of the species beside the latest
	// pairing. They are nil where the profile says too little.
	ChancePct    *int `json:"chance_pct,omitempty"`
	CertaintyPct int  `json:"certainty_pct"`
	OneMorePct   *int `json:"one_more_pct,omitempty"`
	// LastShipping is the last day on which a parcel can be handed over so that
	// it arrives by the date; unknown when there is none.
	LastShipping civil.Date `json:"last_shipping,omitempty"`
}

// outlooks holds the pairings that were asked for against the targets to come
// that they are for. Targets for which only a part of the pairings was asked for
// are left out.
func (p *plan) outlooks() []TargetOutlook {
	counts := p.counting()
	pairings := make(map[string][]*collection.Pairing)
	for _, w := range p.wanted {
		pairings[w.Target] = append(pairings[w.Target], w)
	}
	for i := range p.room.Collection.Pairings {
		if w := &p.room.Collection.Pairings[i]; !slices.Contains(pairings[w.Target], w) {
			delete(pairings, w.Target) // of a part of its pairings nothing can be said
		}
	}
	var out []TargetOutlook
	for _, t := range p.room.Collection.Targets {
		if t.On < p.on || len(pairings[t.Name]) == 0 {
			continue
		}
		o := TargetOutlook{
			Name: t.Name, On: t.On, Species: t.Species, Wanted: t.Froglets,
			Pairings: []string{}, FromEach: p.room.of(t.Species).FromEach, CertaintyPct: t.CertaintyPct,
		}
		for _, w := range pairings[t.Name] {
			if !counts[w.ID] {
				o.LeftOut = append(o.LeftOut, w.ID)
				continue
			}
			o.Pairings = append(o.Pairings, w.ID)
			o.Clutches += len(w.Dams)
			o.Outlook += p.usualYoung(w) * len(w.Dams)
		}
		o.ChancePct, o.OneMorePct = p.chances(t, o.Pairings)
		o.LastShipping, _ = p.room.shipping().LastToArrive(t.On)
		out = append(out, o)
	}
	return out
}

// usualYoung gives the froglets of one usual clutch of a pairing, or of the
// tadpoles that the keeper raises.
func (p *plan) usualYoung(w *collection.Pairing) int {
	b := p.room.of(w.Species)
	if !w.Raise.Known {
		return b.FromEach
	}
	return min(b.FromEach, int(float64(w.Raise.Value)*b.Survival(development.Hatched, development.SaleReady)+1e-9))
}

// counting gives the pairings that can be expected to bring young in time. A
// refusal comes too late for those that have a clutch.
func (p *plan) counting() map[string]bool {
	late := make(map[string]bool)
	for _, c := range p.conflicts {
		if c.Kind == season.TooLate {
			late[c.Pairings[0]] = true
		}
	}
	counts := make(map[string]bool)
	for _, one := range p.planned {
		clutches, _ := upTo(p.on, p.room.laid[one.ID])
		counts[one.ID] = !late[one.ID] && !p.bereft(one.Pairing) && (clutches > 0 || one.verdict.Allowed() && !p.lost(one))
	}
	return counts
}

// bereft reports whether a pairing has lost all of its clutches, or rests without one.
func (p *plan) bereft(w *collection.Pairing) bool {
	clutches, _ := upTo(p.on, p.room.laid[w.ID])
	_, rested := p.room.rested(w, p.on)
	return rested || clutches > 0 && !p.alive[w.ID]
}

// lost reports whether the rain of a pairing that has no clutch began so late that
// its young are more likely late than in time, where they may not be.
func (p *plan) lost(one planned) bool {
	t, found := p.room.Collection.Target(one.Target)
	chance, known := p.room.chanceInTime(one, p.on)
	return known && chance < 0.5 && !(found && t.LateCost.Known)
}

// chanceInTime gives the chance that a clutch of a pairing that has a day is
// sale-ready by then; known is false before the rain has begun, and where nobody
// knows.
func (r *Room) chanceInTime(p planned, on civil.Date) (chance float64, known bool) {
	ready := r.broods.Of(p.Species, on).Ready
	if !p.raining() || !p.ReadyBy.Known() || !ready.Known() {
		return 0, false
	}
	return ready.CDF(p.ReadyBy.Sub(p.cycle.RainStart)), true
}
