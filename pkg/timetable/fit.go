package timetable

import (
	"context"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/season"
)

// Options say how long to search.
type Options struct {
	// Effort is how many times the usual work is done; below 1 means 1. The usual
	// work is about a second for twenty pairings that are in each other's way.
	Effort int
	// Workers is how many processors may be used; below 1 means 1. The plan does not
	// depend on it.
	Workers int
	// Advise asks for Proof.Help, which takes some more searches.
	Advise bool
}

// The work of a search, in steps of package planner.
const (
	leastSteps  = 8000
	pairSteps   = 500
	mostSteps   = 40_000
	singleSteps = 200 // one pairing alone needs hardly any
)

func (o Options) steps(pairings int) int {
	return min(leastSteps+pairSteps*pairings, mostSteps) * max(o.Effort, 1)
}

// rules are how strictly the days away are kept free of work. Where no plan has
// all of it, less is asked for.
type rules int

const (
	allHands  rules = iota // the events of the young too
	adultsAll              // somebody is there on every day of the rain
	adults                 // animals are moved by somebody
	looser                 // no rules are left
)

// fitting is the course of Fit.
type fitting struct {
	Room
	ctx    context.Context
	o      Options
	on     civil.Date
	inputs []Pairing
	alone  season.Season // each as it would be without the others
	free   []int         // inputs that may be moved
	kept   []string
	base   planner.Problem // without chains
	single []single        // of those that are free
	held   map[string]string
}

// single is a pairing that may be moved, alone in the room.
type single struct {
	rules rules
	days  []civil.Date // none where it does not fit in even so
	cost  int
}

// Fit plans pairings together. from is today.
//
// What has begun goes on from the diary: until the rain has begun the phases ahead
// can still be moved. A pairing whose rain has begun, that is overdue, far ahead, or that
// cannot be as it is wished even without a room around it keeps the days that
// package season gives it, and what it holds is taken.
//
// Where no plan keeps all hands-on days off the days away, those of the young are
// given up first, for each pairing by itself and then for all, and then that
// somebody is there on every day of the rain. When ctx ends, the plan is the best
// that was found until then.
//
// Without a plan for all, those that found no place have the days that they would
// have alone, and Conflict says why. It panics as [season.Plan] does.
func Fit(ctx context.Context, room Room, pairings []Pairing, from civil.Date, o Options) Timetable {
	f := &fitting{Room: room, ctx: ctx, o: o, on: from, inputs: pairings}
	f.alone = season.Plan(room.Room, f.seasons(pairings), from)
	out, why := f.leaveOut()
	f.choose()
	f.pose()
	t := f.plan()
	t.LeftOut, t.WhyOut = append(out, t.LeftOut...), append(why, t.WhyOut...)
	t.Season.Unchecked = f.unchecked()
	t.Loads = loads(t.Problem, t.Plan)
	return t
}

func (f *fitting) seasons(pairings []Pairing) []season.Pairing {
	out := make([]season.Pairing, len(pairings))
	for i, p := range pairings {
		out[i] = p.Pairing
	}
	return out
}

// plan looks for a plan with all rules that can be kept.
func (f *fitting) plan() Timetable {
	if len(f.free) == 0 {
		return Timetable{Season: f.alone, Problem: f.base}
	}
	f.alones()
	var t Timetable
	for least := allHands; least < looser; least++ {
		if least > allHands && !f.eases(least) {
			continue
		}
		t.Problem = f.problem(least)
		t.Plan = planner.Solve(f.ctx, t.Problem, planner.Options{Steps: f.o.steps(len(f.free)), Workers: f.o.Workers, Hint: f.hint()})
		if t.Plan.Complete() {
			f.take(&t)
			if f.o.Advise {
				f.help(&t)
			}
			return t
		}
		if f.ctx.Err() != nil {
			break
		}
	}
	if f.ctx.Err() != nil {
		t.Conflict = f.stopped(t.Problem, t.Plan)
	} else {
		t.Conflict = f.conflict(t.Problem, t.Plan)
	}
	f.take(&t)
	t.Proof = nil
	return t
}

// eases reports whether fewer rules change anything.
func (f *fitting) eases(least rules) bool {
	for k := range f.free {
		if f.single[k].rules < least && len(f.Away) > 0 {
			return true
		}
	}
	return false
}

// alones plans each pairing by itself, with all rules that it can keep.
func (f *fitting) alones() {
	f.single = make([]single, len(f.free))
	for k, i := range f.free {
		s := &f.single[k]
		for s.rules = allHands; s.rules < looser; s.rules++ {
			p := f.base
			p.Chains = []planner.Chain{f.chain(i, s.rules)}
			hint := []planner.Cycle{{ID: f.inputs[i].ID, Days: f.first(i)}}
			plan := planner.Solve(f.ctx, p, planner.Options{Steps: singleSteps, Hint: hint})
			if plan.Complete() {
				s.days, s.cost = plan.Cycles[0].Days, plan.Cost
				break
			}
		}
		s.rules = min(s.rules, adults)
	}
}

// first gives the days to begin the search with: those announced, or those that
// package season has.
func (f *fitting) first(i int) []civil.Date {
	days := f.ahead(i)
	announced := make([]civil.Date, len(days))
	for k := range announced {
		announced[k] = f.inputs[i].Announced[f.boundary(i, k+f.skipped(i))]
		if k == 0 && f.begun(i) >= 0 {
			announced[k] = f.on
		}
		if !announced[k].Known() {
			return days
		}
	}
	return announced
}

// ahead gives the days that package season has for a chain: from today on.
func (f *fitting) ahead(i int) []civil.Date {
	days := daysOf(f.alone.Cycles[i])[f.skipped(i):]
	days[0] = max(days[0], f.on)
	return days
}

// boundary names the phase that begins at a boundary.
func (f *fitting) boundary(i, k int) string {
	if phases := f.inputs[i].Phases; k < len(phases) {
		return phases[k].Name
	}
	return planner.End
}

// hint gives the days of each pairing when it is alone.
func (f *fitting) hint() []planner.Cycle {
	var cycles []planner.Cycle
	for k, i := range f.free {
		cycles = append(cycles, planner.Cycle{ID: f.inputs[i].ID, Days: f.single[k].days})
	}
	return cycles
}

// daysOf gives the first day of each phase, and the day after the last.
func daysOf(c season.Cycle) []civil.Date {
	var days []civil.Date
	for _, ph := range c.Phases {
		days = append(days, ph.Span.First)
	}
	return append(days, c.Span().Last.Add(1))
}

// take fills in the season with the days of a plan.
func (f *fitting) take(t *Timetable) {
	moved := f.givingWay(t.Problem, t.Plan)
	proof := &Proof{Moved: moved, Best: t.Plan.Proven, Cost: t.Plan.Cost, Bound: t.Plan.Bound, Stopped: t.Plan.Stopped, Kept: f.kept}
	inputs := f.seasons(f.inputs)
	out := make(map[int]bool)
	for k, i := range f.free {
		days := t.Plan.Cycles[k].Days
		switch {
		case len(days) == 0 && f.inputs[i].LeaveOut > 0:
			out[i] = true
			t.LeftOut = append(t.LeftOut, inputs[i].ID)
			t.WhyOut = append(t.WhyOut, f.whyOut(*t, k))
		case len(days) == 0: // it found no place
			t.Plan.Cycles[k].Days = f.ahead(i)
		default:
			inputs[i].Days = append(daysOf(f.alone.Cycles[i])[:f.skipped(i)], f.whole(i, days)...)
		}
		if f.inputs[i].Start.Known() && f.begun(i) < 0 && !out[i] {
			proof.Started = append(proof.Started, inputs[i].ID)
		}
		proof.Changed = append(proof.Changed, f.changed(i, inputs[i].Days)...)
	}
	var planned []season.Pairing
	for i, in := range inputs {
		if !out[i] {
			planned = append(planned, in)
		}
	}
	t.Proof = proof
	t.Season = season.Plan(f.Room.Room, planned, f.on)
}

// whole gives the days of a chain with the day on which its first phase began.
func (f *fitting) whole(i int, days []civil.Date) []civil.Date {
	whole := append([]civil.Date(nil), days...)
	if k := f.skipped(i); f.alone.Cycles[i].Phases[k].Recorded {
		whole[0] = f.alone.Cycles[i].Phases[k].Span.First
	}
	return whole
}

// changed gives the announced days that are others now; days are none for a
// pairing that is left out.
func (f *fitting) changed(i int, days []civil.Date) []Changed {
	var out []Changed
	in := f.inputs[i]
	for k := f.begun(i) + 1; k <= len(in.Phases); k++ {
		name := f.boundary(i, k)
		was, told := in.Announced[name]
		var now civil.Date
		if len(days) > 0 {
			now = days[k]
		}
		if told && was != now {
			out = append(out, Changed{in.ID, name, was, now})
		}
	}
	return out
}

// costs gives what the days of a chain cost.
func costs(c planner.Chain, days []civil.Date) (cost int) {
	start := map[string]civil.Date{planner.End: days[len(days)-1]}
	for k, ph := range c.Phases {
		start[ph.Name] = days[k]
		length := days[k+1].Sub(days[k])
		cost += ph.Stretch * max(length-ph.Usual, ph.Usual-length)
	}
	for _, w := range c.Wishes {
		late := start[w.Phase].Sub(w.On)
		cost += max(w.Late*late, -w.Early*late)
	}
	return cost
}
