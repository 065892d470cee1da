package frogroom

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/timetable"
)

// youngSpace is what the young of a planned pairing hold, counted from the first
// night of rain, and what is doubtful about it.
type youngSpace struct {
	holds  []planner.Hold
	hands  []planner.Visit
	doubts []string
}

// handsOn are the stages on whose likely day somebody has to be there: the clutch
// is taken, tubs get a way out of the water, froglets are moved.
var handsOn = []development.Stage{development.Laid, development.FrontLegs, development.OutOfWater}

// youngSpace works out what a usual clutch of each dam will hold. Space is held
// from the early to the late percentile of the keeper's rules, and work counts
// from the likely day of a step to that of the next.
func (p *plan) youngSpace(w *collection.Pairing) youngSpace {
	b := p.room.brood(w.Species, p.on)
	var y youngSpace
	for _, stage := range handsOn {
		if d, known := b.after[stage]; known {
			y.hands = append(y.hands, planner.Visit{Day: d.Quantile(0.5)})
		}
	}
	for _, s := range stepStages {
		from, to := b.after[s.from], b.after[s.to]
		if n := b.minutes(s.step) * len(w.Dams); n > 0 && from.Known() && to.Known() {
			y.hold(planner.Minutes, n, from.Quantile(0.5), to.Quantile(0.5))
		}
	}
	if tadpoles, known := p.tadpoles(w); known {
		y.space(p.room, b, w, tadpoles)
	}
	return y
}

// tadpoles gives how many of a pairing are to be raised.
func (p *plan) tadpoles(w *collection.Pairing) (n float64, known bool) {
	b := p.room.of(w.Species)
	eggs, raised := b.profile.Breeding.ClutchEggs, p.raised(w)
	if !eggs.Known() && raised == 0 {
		return 0, false
	}
	n = eggs.P50 * b.survival(development.Laid, development.Hatched)
	if raised > 0 && (!eggs.Known() || n > float64(raised)) {
		n = float64(raised)
	}
	return n * float64(len(w.Dams)), true
}

func (y *youngSpace) hold(resource string, amount, from, to int) {
	if amount > 0 && from < to {
		y.holds = append(y.holds, planner.Hold{Resource: resource, Amount: amount, From: from, To: to})
	}
}

// space adds tubs and bins.
func (y *youngSpace) space(r *Room, b *brood, p *collection.Pairing, tadpoles float64) {
	s, pct := r.space(b.profile), r.Collection.Rules.SpacePct
	early, late := float64(pct[0])/100, float64(pct[1])/100
	hatched, out, ready := b.after[development.Hatched], b.after[development.OutOfWater], b.after[development.SaleReady]
	if n, tooMany, ok := s.tubsFor(tadpoles); ok && hatched.Known() && out.Known() {
		y.hold(timetable.Tub, n, hatched.Quantile(early), out.Quantile(late))
		y.full(tooMany, tadpoles, "tadpoles", "tubs")
	}
	froglets := tadpoles * b.survival(development.Hatched, development.OutOfWater)
	if n, tooMany, ok := s.binsFor(froglets); ok && out.Known() && ready.Known() {
		y.hold(timetable.Bin, n, out.Quantile(early), ready.Quantile(late))
		if n > 0 {
			y.holds[len(y.holds)-1].Until = p.ReadyBy
		}
		y.full(tooMany, froglets, "froglets", "bins")
	}
}

func (y *youngSpace) full(tooMany bool, young float64, who, where string) {
	if tooMany {
		y.doubts = append(y.doubts, fmt.Sprintf("about %.0f %s are more than all %s hold: all are kept free for them, and the rest needs another place; raise: beside the pairing says how many are raised", young, who, where))
	}
}
