package frogroom

import (
	"context"
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/brood"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/rearing"
	"github.com/spawnwright/spawnwright/pkg/season"
	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/timetable"
)

// plan is pairings with their cycles, before it is told what of them a keeper
// wants to see.
type plan struct {
	room      *Room
	on        civil.Date
	kin       *pedigree.Pedigree    // the ancestry of all parents
	wanted    []*collection.Pairing // all that were asked for
	planned   []planned
	missing   []missing
	leftOut   []string // at their cost
	conflicts []season.Conflict
	stuck     *Conflict // why there is no plan
	fitted    timetable.Timetable
	clutches  []rearing.Tended // those that run
	alive     map[string]bool  // pairings with a clutch that runs and of which somebody is alive
	running   []*brood.Running // of them those of which somebody is alive
	needed    map[string]int   // tadpoles of each clutch, by target
	over      []planned        // those that are history, once they have been taken out
}

// planned is a pairing with its cycle.
type planned struct {
	*collection.Pairing
	cycle   season.Cycle
	verdict pairing.Verdict
	doubts  []string // about the space for the young
}

// missing is a pairing without a cycle.
type missing struct {
	*collection.Pairing
	err *NoCycleError
}

// NoCycleError is a species whose profile does not say enough to plan with.
type NoCycleError struct {
	Species string // id
	Lacks   string // what the profile does not have
}

func (e *NoCycleError) Error() string {
	return fmt.Sprintf("no season can be planned for %s, whose profile has no %s; add it under species", e.Species, e.Lacks)
}

// plan plans pairings together, with the usual effort.
func (r *Room) plan(on civil.Date, wanted []*collection.Pairing) *plan {
	return r.planWith(context.Background(), on, Planning{}, wanted)
}

// planWith plans pairings together.
func (r *Room) planWith(ctx context.Context, on civil.Date, o Planning, wanted []*collection.Pairing) *plan {
	foreseen := r.broods.Begin(wanted, on)
	var parents []string
	for _, w := range wanted {
		parents = append(append(parents, w.Sires...), w.Dams...)
	}
	p := &plan{room: r, on: on, kin: r.Ancestry.Above(parents), wanted: wanted, clutches: r.rearing.Tended(on), alive: make(map[string]bool), needed: make(map[string]int)}
	for _, c := range r.broods.Running(p.clutches, on) {
		p.alive[c.Pairing] = true
	}
	p.running = r.broods.Running(p.clutches, on)
	foreseen()
	var inputs []timetable.Pairing
	of := make(map[string]*collection.Pairing)
	doubts := make(map[string][]string)
	for _, w := range wanted {
		in, err := r.cycleOf(w, on)
		if err != nil {
			p.missing = append(p.missing, missing{w, err})
			continue
		}
		fit, young := p.fit(w, in, o)
		inputs = append(inputs, fit)
		of[w.ID], doubts[w.ID] = w, young.Doubts
	}
	p.fitted = timetable.Fit(ctx, r.places(p.running), inputs, on, timetable.Options{Effort: o.Effort, Workers: 2, Advise: o.advise})
	p.leftOut, p.conflicts = p.fitted.LeftOut, p.fitted.Season.Conflicts
	if p.fitted.Conflict != nil {
		p.stuck = r.noPlan(*p.fitted.Conflict)
	}
	for _, c := range p.fitted.Season.Cycles {
		w := of[c.Pairing]
		p.planned = append(p.planned, planned{w, c, r.breeders.Judge(p.kin, w, c.RainStart, on), doubts[w.ID]})
	}
	return p
}

// places gives what there is, and what the clutches that run hold of it.
func (r *Room) places(running []*brood.Running) timetable.Room {
	e := r.Collection.Equipment
	var taken []planner.Taken
	for _, h := range running {
		taken = append(taken, h.Taken()...)
	}
	return timetable.Room{
		Room: season.Room{
			Capacity: []season.Capacity{
				{Place: species.RainChamber, Count: e.RainChambers.Value, Known: e.RainChambers.Known},
				{Place: species.CoolingPlace, Count: e.CoolingPlaces.Value, Known: e.CoolingPlaces.Known},
				{Place: timetable.Tub, Count: e.TadpoleTubs.Count.Value, Known: e.TadpoleTubs.Count.Known},
				{Place: timetable.Bin, Count: e.FrogletBins.Count.Value, Known: e.FrogletBins.Count.Known},
				{Place: planner.Minutes, Count: e.MinutesADay.Value, Known: e.MinutesADay.Known},
			},
			Away: r.Collection.Away,
		},
		Taken: taken,
		Retry: e.RetryAfterDays.Known, RetryAfter: e.RetryAfterDays.Value,
	}
}

// fit gives a pairing as it is fitted into the room. Once it has a clutch that
// holds what the young need; one that rests without a clutch needs nothing for them.
func (p *plan) fit(w *collection.Pairing, in season.Pairing, o Planning) (timetable.Pairing, brood.Holds) {
	r := p.room
	out := timetable.Pairing{
		Pairing: in, Early: earlyCost, LeaveOut: w.LeaveOutCost.Value, Work: r.of(w.Species).Work(), Announced: o.announced(r, w),
	}
	if t, ok := r.Collection.Target(w.Target); ok && w.Target != "" {
		out.MayBeLate, out.Late = t.LateCost.Known, t.LateCost.Value
		if t.EarlyCost.Known {
			out.Early = t.EarlyCost.Value
		}
	}
	if r.written(w) && !r.awaits(w, p.on) {
		out.Laid = true
		return out, brood.Holds{}
	}
	young := r.broods.Holds(w, p.on, p.raised(w))
	out.Young, out.Hands = young.Space, young.Hands
	return out, young
}

// earlyCost is what a day early costs where the keeper says nothing.
const earlyCost = 1

// cycleOf turns a pairing and the profile of its species into a chain of phases.
func (r *Room) cycleOf(p *collection.Pairing, on civil.Date) (season.Pairing, *NoCycleError) {
	b := r.broods.Of(p.Species, on)
	out := season.Pairing{
		ID: p.ID, Animals: slices.Concat(p.Sires, p.Dams),
		Start: p.Start, ReadyBy: p.ReadyBy, Target: p.Target, NotBefore: p.NotBefore,
		Phases: b.Phases, Stages: b.Stages,
	}
	if len(out.Phases) == 0 {
		return out, &NoCycleError{p.Species, "phases under cycle"}
	}
	if p.ReadyBy.Known() {
		switch {
		case b.Ready.Known():
			out.ReadyAfter = b.Ready.Quantile(float64(p.CertaintyPct) / 100)
		case len(b.Stages) == 0:
			return out, &NoCycleError{p.Species, "eggs_after_nights under breeding"}
		default:
			return out, &NoCycleError{p.Species, "days for every step of development"}
		}
	}
	out.Began = r.began(p, on)
	return out, nil
}

// over reports whether a pairing is history: its cycle has ended, and no young
// of it are to be ready on a day to come.
func (p planned) over(on civil.Date) bool {
	return p.cycle.Span().Last < on && p.ReadyBy < on
}

// current gives the plan without the pairings that are over. What was asked for
// stays, as clutches of these may still grow.
func (p *plan) current() *plan {
	c := *p
	past := make(map[string]bool)
	c.planned = nil
	for _, one := range p.planned {
		if one.over(p.on) {
			past[one.ID] = true
			c.over = append(c.over, one)
			continue
		}
		c.planned = append(c.planned, one)
	}
	if proof := p.fitted.Proof; proof != nil {
		now := *proof
		now.Kept = slices.DeleteFunc(slices.Clone(proof.Kept), func(id string) bool { return past[id] })
		c.fitted.Proof = &now
	}
	c.conflicts = nil
	for _, conflict := range p.conflicts {
		if !slices.ContainsFunc(conflict.Pairings, func(id string) bool { return past[id] }) {
			c.conflicts = append(c.conflicts, conflict)
		}
	}
	return &c
}

// whole gives the plan, or the error of the first pairing that is missing.
func (p *plan) whole() (*plan, error) {
	if len(p.missing) > 0 {
		return nil, p.missing[0].err
	}
	return p, nil
}

// solved gives the problem with its answer, where something was to be chosen.
func (p *plan) solved() planner.Document {
	d := planner.Document{Problem: p.fitted.Problem, Solver: "spawnwright"}
	if p.fitted.Proof != nil {
		d.Plan = &p.fitted.Plan
	}
	return d
}
