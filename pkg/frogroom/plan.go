package frogroom

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/season"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// plan is pairings with their cycles, before it is told what of them a keeper
// wants to see.
type plan struct {
	room      *Room
	on        civil.Date
	wanted    []*collection.Pairing // all that were asked for
	planned   []planned
	missing   []missing
	conflicts []season.Conflict
	unchecked []string
	proof     *Proof    // nil where there is nothing to choose, or no plan
	stuck     *Conflict // why there is no plan
	over      []planned // those that are history, once they have been taken out
}

// planned is a pairing with its cycle.
type planned struct {
	*collection.Pairing
	cycle   season.Cycle
	verdict pairing.Verdict
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

// plan plans pairings together.
func (r *Room) plan(on civil.Date, wanted []*collection.Pairing) *plan {
	p := &plan{room: r, on: on, wanted: wanted}
	var inputs []season.Pairing
	for _, w := range wanted {
		in, err := r.cycleOf(w, on)
		if err != nil {
			p.missing = append(p.missing, missing{w, err})
			continue
		}
		inputs = append(inputs, in)
		p.planned = append(p.planned, planned{Pairing: w})
	}
	s := season.Plan(r.places(), inputs, on)
	arranged, proof, conflict := arrange(r.places(), inputs, s, on)
	if proof != nil && len(proof.Moved) > 0 {
		s = season.Plan(r.places(), arranged, on)
	}
	p.proof = proof
	if conflict != nil {
		p.stuck = r.noPlan(*conflict)
	}
	for i := range p.planned {
		p.planned[i].cycle = s.Cycles[i]
		p.planned[i].verdict = r.judge(p.planned[i].Pairing, s.Cycles[i].RainStart, on)
	}
	p.conflicts, p.unchecked = s.Conflicts, s.Unchecked
	return p
}

func (r *Room) places() season.Room {
	e := r.Collection.Equipment
	return season.Room{
		Capacity: []season.Capacity{
			{Place: species.RainChamber, Count: e.RainChambers.Value, Known: e.RainChambers.Known},
			{Place: species.CoolingPlace, Count: e.CoolingPlaces.Value, Known: e.CoolingPlaces.Known},
		},
		Away: r.Collection.Away,
	}
}

// cycleOf turns a pairing and the profile of its species into a chain of phases.
func (r *Room) cycleOf(p *collection.Pairing, on civil.Date) (season.Pairing, *NoCycleError) {
	b := r.of(p.Species)
	out := season.Pairing{
		ID: p.ID, Animals: slices.Concat(p.Sires, p.Dams),
		Start: p.Start, ReadyBy: p.ReadyBy, Target: p.Target,
		Phases: b.phases, Stages: b.stages,
	}
	if len(out.Phases) == 0 {
		return out, &NoCycleError{p.Species, "phases under cycle"}
	}
	if p.ReadyBy.Known() {
		switch {
		case b.ready.Known():
			out.ReadyAfter = b.ready.Quantile(float64(p.CertaintyPct) / 100)
		case len(b.stages) == 0:
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
	c.conflicts = nil
	for _, conflict := range p.conflicts {
		if !slices.ContainsFunc(conflict.Pairings, func(id string) bool { return past[id] }) {
			c.conflicts = append(c.conflicts, conflict)
		}
	}
	return &c
}

// whole gives the season, and the error of the first pairing that is missing.
func (p *plan) whole() (Season, error) {
	if len(p.missing) > 0 {
		return Season{}, p.missing[0].err
	}
	return p.season(), nil
}
