// Package planner finds the days on which the breeding cycles of a season run
// inside the room that there is, and proves how good they are.
//
// A [Problem] is a chain of phases for each pairing, with lengths, held places,
// work and wishes, and what all share: how many of each place there are, and the
// days on which nobody is in the room. [Solve] gives a [Plan]: the days of every
// chain, what they cost against the wishes, and a bound that no plan can be
// below. When the two are equal the plan is proven best.
//
//	plan := planner.Solve(ctx, problem, planner.Options{})
//	if plan.Proven { … }
//
// [Check] verifies any plan day by day, by code that shares nothing with the
// solver. [Smallest] names pairings that cannot run together, when there is no
// plan for all. The model is written out as formulae in docs/season-model.md.
//
// All costs are whole numbers in a unit that the caller chooses, and all
// computing is on whole numbers: the same problem gives the same plan on every
// machine and for any number of workers.
package planner

import "github.com/spawnwright/spawnwright/pkg/civil"

// End names the day after the last phase, where a phase is named.
const End = "end"

// Minutes is the resource that Phase.Minutes and Visit.Minutes are counted in.
const Minutes = "minutes"

// Problem is a season to be planned. Only days from First on, Days of them, are
// planned and counted.
type Problem struct {
	First     civil.Date   `json:"first"`
	Days      int          `json:"days"` // at least 1
	Resources []Resource   `json:"resources"`
	Taken     []Taken      `json:"taken,omitempty"`
	Away      []civil.Span `json:"away,omitempty"` // nobody in the room; in any order, may overlap
	Chains    []Chain      `json:"chains"`
}

// Resource is something that can run short: a kind of place, minutes a day. What
// is not listed is not counted.
type Resource struct {
	Name  string `json:"name"`
	Count int    `json:"count"` // on every day
}

// Taken is a part of a resource that is in use already. More than there is
// counts as all of it.
type Taken struct {
	Resource string     `json:"resource"`
	Span     civil.Span `json:"span"`
	Amount   int        `json:"amount"`
}

// Chain is one pairing.
type Chain struct {
	ID      string   `json:"id"`
	Animals []string `json:"animals,omitempty"` // held from the first phase to the last, each in one chain at a time
	Phases  []Phase  `json:"phases"`            // one after another, at least one
	Holds   []Hold   `json:"holds,omitempty"`
	Visits  []Visit  `json:"visits,omitempty"`
	Wishes  []Wish   `json:"wishes,omitempty"`
	// LeaveOut is what it costs not to plan the chain; with 0 it must be planned.
	LeaveOut int `json:"leave_out,omitempty"`
}

// Phase is one part of a cycle. A phase of 0 days is passed over.
type Phase struct {
	Name    string `json:"name"` // unique in its chain, and not End
	Min     int    `json:"min"`  // days
	Usual   int    `json:"usual"`
	Max     int    `json:"max"`
	Stretch int    `json:"stretch,omitempty"` // cost of each day longer or shorter than usual
	// Attended: somebody has to be in the room on every day of it.
	Attended bool       `json:"attended,omitempty"`
	Uses     []Use      `json:"uses,omitempty"`    // on every day of it
	Minutes  int        `json:"minutes,omitempty"` // of work, on every day of it
	Earliest civil.Date `json:"earliest,omitzero"` // of its first day; unknown: free
	Latest   civil.Date `json:"latest,omitzero"`
}

// Use is an amount of a resource.
type Use struct {
	Resource string `json:"resource"`
	Amount   int    `json:"amount"`
}

// Hold is an amount of a resource that is held over days counted from the start
// of a phase: tubs from the early hatch to the last metamorph, bins, a chamber
// for a second attempt.
type Hold struct {
	Phase string `json:"phase"` // or End
	From  int    `json:"from"`  // days after the start of the phase, 0 or more
	To    int    `json:"to"`    // the first day on which it is not held any more
	// Until, when known, is a day up to which it is held in any case, once it
	// has begun: young that are ready keep their bins until the show.
	Until    civil.Date `json:"until,omitzero"`
	Resource string     `json:"resource"`
	Amount   int        `json:"amount"`
}

// Visit is a day on which hands are needed, counted from the start of a phase.
// It does not fall on a day away.
type Visit struct {
	Phase   string `json:"phase"` // or End
	Day     int    `json:"day"`   // days after the start of the phase, 0 or more
	Minutes int    `json:"minutes,omitempty"`
}

// Wish is a day on which a phase is best begun, and the cost of each day that it
// begins earlier or later. A target is a wish for the rain; an announced day is
// a wish with a small cost on both sides.
type Wish struct {
	Phase string     `json:"phase"` // or End
	On    civil.Date `json:"on"`
	Early int        `json:"early"`
	Late  int        `json:"late"`
}

// Plan is a planned season.
type Plan struct {
	Cycles []Cycle `json:"cycles"` // one for each chain, in order
	// Cost is what the plan costs against the wishes, and Bound what every plan
	// costs at least. Each chain that must be planned and is not counts Missing.
	Cost    int  `json:"cost"`
	Bound   int  `json:"bound"`
	Missing int  `json:"missing"`
	Proven  bool `json:"proven"`          // no plan costs less
	Steps   int  `json:"steps,omitempty"` // work done, in computations of one chain
	Stopped bool `json:"stopped,omitempty"`
}

// Cycle is the plan of one chain.
type Cycle struct {
	ID string `json:"id"`
	// Days has the first day of each phase, and the day after the last. It is
	// empty when the chain is left out.
	Days []civil.Date `json:"days"`
}

// Complete reports whether every chain that must be planned is.
func (p Plan) Complete() bool { return p.Cost < p.Missing }

// Gap is how far the plan may be from the best possible, as a part of its cost:
// 0 when it is proven best, 0.02 for within 2 %.
func (p Plan) Gap() float64 {
	if p.Cost <= p.Bound {
		return 0
	}
	return float64(p.Cost-p.Bound) / float64(p.Cost)
}
