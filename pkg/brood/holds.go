package brood

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/timetable"
)

// Holds is what the young of a planned pairing hold, counted from the first night of
// rain, and what is doubtful about it.
type Holds struct {
	Space  []planner.Hold
	Hands  []planner.Visit // somebody has to be there
	Doubts []string
}

// handsOn are the stages on whose likely day somebody has to be there: the clutch
// is taken, tubs get a way out of the water, froglets are moved.
var handsOn = []development.Stage{development.Laid, development.FrontLegs, development.OutOfWater}

// steps of development with the stages at their ends.
var steps = []struct {
	name     species.StepName
	from, to development.Stage
}{
	{species.Egg, development.Laid, development.Hatched},
	{species.Hatchling, development.Hatched, development.Feeding},
	{species.Tadpole, development.Feeding, development.FrontLegs},
	{species.Metamorph, development.FrontLegs, development.OutOfWater},
	{species.GrowOut, development.OutOfWater, development.SaleReady},
}

// Tadpoles gives how many are to be raised of a usual clutch of each dam; raised is how
// many of a clutch are kept, 0 for all.
func (b *Breeding) Tadpoles(dams, raised int) (n float64, known bool) {
	eggs := b.Profile.Breeding.ClutchEggs
	if !eggs.Known() && raised == 0 {
		return 0, false
	}
	n = eggs.P50 * b.Survival(development.Laid, development.Hatched)
	if raised > 0 && (!eggs.Known() || n > float64(raised)) {
		n = float64(raised)
	}
	return n * float64(dams), true
}

// Holds works out what a usual clutch of each dam of a pairing will hold; raised is how
// many tadpoles of a clutch are kept, 0 for all. Space is held from the early to the
// late percentile of the keeper's rules, and work counts from the likely day of a step
// to that of the next. It panics for a species that the collection does not have.
func (l *Broods) Holds(p *collection.Pairing, on civil.Date, raised int) Holds {
	b := l.Of(p.Species, on)
	var y Holds
	for _, stage := range handsOn {
		if d, known := b.After[stage]; known {
			y.Hands = append(y.Hands, planner.Visit{Day: d.Quantile(0.5)})
		}
	}
	for _, s := range steps {
		from, to := b.After[s.from], b.After[s.to]
		if n := b.Minutes(s.name) * len(p.Dams); n > 0 && from.Known() && to.Known() {
			y.hold(planner.Minutes, n, from.Quantile(0.5), to.Quantile(0.5))
		}
	}
	if tadpoles, known := b.Tadpoles(len(p.Dams), raised); known {
		y.places(l, b, p, tadpoles)
	}
	return y
}

func (y *Holds) hold(resource string, amount, from, to int) {
	if amount > 0 && from < to {
		y.Space = append(y.Space, planner.Hold{Resource: resource, Amount: amount, From: from, To: to})
	}
}

// places adds tubs and bins.
func (y *Holds) places(l *Broods, b *Brood, p *collection.Pairing, tadpoles float64) {
	s, pct := l.Space(b.Profile), l.rearing.Collection.Rules.SpacePct
	early, late := float64(pct[0])/100, float64(pct[1])/100
	hatched, out, ready := b.After[development.Hatched], b.After[development.OutOfWater], b.After[development.SaleReady]
	if n, tooMany, ok := s.TubsFor(tadpoles); ok && hatched.Known() && out.Known() {
		y.hold(timetable.Tub, n, hatched.Quantile(early), out.Quantile(late))
		y.full(tooMany, tadpoles, "tadpoles", "tubs")
	}
	froglets := tadpoles * b.Survival(development.Hatched, development.OutOfWater)
	if n, tooMany, ok := s.BinsFor(froglets); ok && out.Known() && ready.Known() {
		y.hold(timetable.Bin, n, out.Quantile(early), ready.Quantile(late))
		if n > 0 {
			y.Space[len(y.Space)-1].Until = p.ReadyBy
		}
		y.full(tooMany, froglets, "froglets", "bins")
	}
}

func (y *Holds) full(tooMany bool, young float64, who, where string) {
	if tooMany {
		y.Doubts = append(y.Doubts, fmt.Sprintf("about %.0f %s are more than all %s hold: all are kept free for them, and the rest needs another place; raise: beside the pairing says how many are raised", young, who, where))
	}
}
