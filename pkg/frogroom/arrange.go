package frogroom

import (
	"context"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/season"
)

// Proof says how good a plan is. What counts are the days by which the rain of a
// pairing begins earlier than its wish needs, and far behind that the days by
// which phases are longer or shorter than usual.
type Proof struct {
	// Best: no plan that keeps the wishes and the room counts less.
	Best bool `json:"best"`
	// Cost and Bound are what the plan counts and what every plan counts at
	// least: 1000 for each day that a rain is early, 1 for each day that a phase
	// is longer or shorter.
	Cost  int `json:"cost"`
	Bound int `json:"bound"`
	// Moved are the pairings that run on other days than they would alone.
	Moved []string `json:"moved,omitempty"`
	// Kept are pairings that were not moved, as they have begun, are overdue, or
	// cannot be as they are wished.
	Kept []string `json:"kept,omitempty"`
}

// Weights of a plan, see [Proof].
const (
	earlyWeight   = 1000
	stretchWeight = 1
)

// animalResource begins the name of an animal as a resource.
const animalResource = "animal "

// mostDays is how far ahead pairings are moved against each other.
const mostDays = 1500

// mostStretch is the most days by which a phase is made longer than usual.
const mostStretch = 366

// mostDelay is room at the end of a season for pairings that begin later than
// wished, when that is looked at as a cure.
const mostDelay = 130

// steps limits the work, to about a second for twenty pairings that are in
// each other's way.
func (a *arrangement) steps() int { return 1000 + 500*len(a.free) }

// arrangement moves the pairings of a season against each other.
type arrangement struct {
	room    season.Room
	on      civil.Date
	inputs  []season.Pairing
	alone   season.Season // each as it would be without the others
	free    []int         // inputs that may be moved
	problem planner.Problem
	proof   Proof
}

// arrange gives the pairings with the days on which they fit into the room
// together, where the wishes leave them a choice, and says how good that is.
// Where there is no such plan they stay as they are, with the smallest conflict.
func arrange(room season.Room, inputs []season.Pairing, alone season.Season, on civil.Date) ([]season.Pairing, *Proof, *planner.Conflict) {
	a := &arrangement{room: room, on: on, inputs: inputs, alone: alone}
	a.choose()
	if len(a.free) == 0 {
		return inputs, nil, nil
	}
	for _, attended := range []bool{true, false} {
		a.pose(attended)
		plan := planner.Solve(context.Background(), a.problem, planner.Options{Steps: a.steps(), Workers: 2, Hint: a.hint()})
		if plan.Complete() {
			return a.take(plan), &a.proof, nil
		}
	}
	conflict, _ := planner.Smallest(context.Background(), a.problem, planner.Options{Steps: a.steps() / 5, Workers: 2})
	return inputs, nil, &conflict
}

// choose finds the pairings that may be moved: those of which nothing is
// recorded, that begin neither in the past nor far ahead, and that can be as
// they are wished when they are alone.
func (a *arrangement) choose() {
	stuck := make(map[string]bool)
	for _, c := range a.alone.Conflicts {
		if c.Kind == season.TooLate || c.Kind == season.Away {
			stuck[c.Pairings[0]] = true
		}
	}
	for i, p := range a.inputs {
		whole := a.alone.Cycles[i].Span()
		if stuck[p.ID] || len(p.Began) > 0 || whole.First < a.on || whole.Last.Sub(a.on) > mostDays || anchor(p) == planner.End {
			a.proof.Kept = append(a.proof.Kept, p.ID)
			continue
		}
		a.free = append(a.free, i)
	}
}

// pose writes the problem down. What is kept counts as taken.
func (a *arrangement) pose(attended bool) {
	p := planner.Problem{First: a.on, Days: 1, Away: a.room.Away, Chains: []planner.Chain{}}
	for _, c := range a.room.Capacity {
		if c.Known {
			p.Resources = append(p.Resources, planner.Resource{Name: c.Place, Count: c.Count})
		}
	}
	taken := a.taken(&p)
	for _, i := range a.free {
		p.Chains = append(p.Chains, chainOf(a.inputs[i], taken, attended))
		p.Days = max(p.Days, a.alone.Cycles[i].Span().Last.Sub(a.on)+1+slack(a.inputs[i])+mostDelay)
	}
	a.problem = p
}

// slack is by how many days a chain can end later than planned alone.
func slack(p season.Pairing) (days int) {
	for _, ph := range p.Phases {
		days += ph.Max - ph.Min
	}
	return min(days, mostStretch)
}

// taken books what the pairings hold that are kept, and gives the names of their
// animals as resources.
func (a *arrangement) taken(p *planner.Problem) map[string]string {
	animals := make(map[string]string)
	for i, in := range a.inputs {
		if slices.Contains(a.free, i) {
			continue
		}
		for _, ph := range a.alone.Cycles[i].Phases {
			if ph.Place != "" && ph.Span.Days() > 0 {
				p.Taken = append(p.Taken, planner.Taken{Resource: ph.Place, Span: ph.Span, Amount: 1})
			}
		}
		for _, id := range in.Animals {
			if animals[id] == "" {
				animals[id] = animalResource + id
				p.Resources = append(p.Resources, planner.Resource{Name: animals[id], Count: 1})
			}
			p.Taken = append(p.Taken, planner.Taken{Resource: animals[id], Span: a.alone.Cycles[i].Span(), Amount: 1})
		}
	}
	return animals
}

// chainOf gives a pairing in the terms of the planner. The days with hands on
// the animals are those of [season.Plan].
func chainOf(p season.Pairing, taken map[string]string, attended bool) planner.Chain {
	c := planner.Chain{ID: p.ID, Animals: p.Animals}
	for k, ph := range p.Phases {
		q := planner.Phase{
			Name: ph.Name, Min: ph.Min, Usual: ph.Usual, Max: min(ph.Max, ph.Usual+mostStretch), Stretch: stretchWeight,
			Attended: attended && ph.Name == season.Rain,
		}
		if ph.Place != "" {
			q.Uses = append(q.Uses, planner.Use{Resource: ph.Place, Amount: 1})
		}
		for _, id := range p.Animals {
			if name, known := taken[id]; known {
				q.Uses = append(q.Uses, planner.Use{Resource: name, Amount: 1})
			}
		}
		switch {
		case k == 0 && p.Start.Known():
			q.Earliest, q.Latest = p.Start, p.Start
		case p.ReadyBy.Known() && ph.Name == anchor(p):
			q.Latest = p.ReadyBy.Add(-p.ReadyAfter)
			c.Wishes = append(c.Wishes, planner.Wish{Phase: ph.Name, On: q.Latest, Early: earlyWeight})
		}
		if k > 0 || moved(ph) {
			c.Visits = append(c.Visits, planner.Visit{Phase: ph.Name})
		}
		c.Phases = append(c.Phases, q)
	}
	if moved(p.Phases[len(p.Phases)-1]) {
		c.Visits = append(c.Visits, planner.Visit{Phase: planner.End})
	}
	return c
}

// moved reports whether animals are moved into and out of a phase.
func moved(ph season.Phase) bool { return ph.Name == season.Rain || ph.Place != "" }

// anchor gives the phase from which the young are counted.
func anchor(p season.Pairing) string {
	for _, name := range []string{season.Rain, season.Rest} {
		if slices.ContainsFunc(p.Phases, func(ph season.Phase) bool { return ph.Name == name }) {
			return name
		}
	}
	return planner.End
}

// hint gives the days of each pairing when it is alone.
func (a *arrangement) hint() []planner.Cycle {
	var cycles []planner.Cycle
	for _, i := range a.free {
		cycles = append(cycles, planner.Cycle{ID: a.inputs[i].ID, Days: daysOf(a.alone.Cycles[i])})
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

// take gives the pairings with the days of a plan.
func (a *arrangement) take(plan planner.Plan) []season.Pairing {
	a.proof.Best, a.proof.Cost, a.proof.Bound = plan.Proven, plan.Cost, plan.Bound
	inputs := slices.Clone(a.inputs)
	for k, i := range a.free {
		if days := plan.Cycles[k].Days; !slices.Equal(days, daysOf(a.alone.Cycles[i])) {
			inputs[i].Days = days
			a.proof.Moved = append(a.proof.Moved, inputs[i].ID)
		}
	}
	return inputs
}
