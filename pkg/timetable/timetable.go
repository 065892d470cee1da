// Package timetable fits the breeding cycles of a season into a room: chambers,
// cooling places, tubs, bins, minutes of work, and days on which nobody is there.
//
// [Fit] takes what package season says of each pairing by itself, lets package
// planner move the pairings against each other where that leaves a choice, and
// gives the days of all with a proof of how good they are, what the room holds
// on each day, or the smallest reason why there is no plan. How a pairing becomes
// a chain of package planner is written down in docs/season-model.md.
package timetable

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/season"
)

// What can run short beside the places of the phases. Work is [planner.Minutes].
const (
	Tub = "tadpole tub"
	Bin = "froglet bin"
)

// Room is what all pairings share.
type Room struct {
	season.Room // with the capacity of places, of [Tub], [Bin] and [planner.Minutes]

	// Taken is what clutches and others hold that are no pairings here.
	Taken []planner.Taken
	// Retry: RetryAfter days after the rain its place is kept free again, for the
	// greatest number of nights, in case there were no eggs.
	Retry      bool
	RetryAfter int
}

// Pairing is a cycle that is to be fitted in.
type Pairing struct {
	season.Pairing

	Early    int // cost of each day that the young are ready before ReadyBy, 0 to 1000
	Late     int // and after it, 0 to 1000; counts where MayBeLate
	LeaveOut int // cost of not planning it, to 10000; 0: it must be planned

	// Young are tubs and bins, counted from the day on which the rain begins; their
	// Phase is not looked at. The same goes for Hands, days on which somebody has
	// to be there.
	Young []planner.Hold
	Hands []planner.Visit
	Work  map[string]int // minutes a day in a phase, by its name
	// Laid: there are eggs, or none are waited for, so that no second attempt is needed.
	Laid bool
	// Announced are first days of phases, by name, or of [planner.End], that
	// others were told: each is kept where that costs less than moving it.
	Announced map[string]civil.Date
}

// Timetable is the plan of a season.
type Timetable struct {
	// Season has the pairings that are planned, in the order given, and what is in
	// the way. Its Unchecked is that of this package.
	Season  season.Season
	LeftOut []string  // pairings that are left out, at their cost
	WhyOut  []LeftOut // why, for each of them
	// Proof says how good the days are; nil where nothing could be moved, or where
	// there is no plan.
	Proof *Proof
	// Conflict is why there is no plan; nil where there is one.
	Conflict *Conflict
	// Problem is what was solved, and Plan the answer. The plan has no cycles where
	// nothing could be moved; beside a Conflict, pairings without a place have the
	// days there that they would have alone.
	Problem planner.Problem
	Plan    planner.Plan
	// Loads are what the room holds by day, in the order of Problem.Resources,
	// animals left aside.
	Loads []Load
}

// Proof says how good a plan is. In what a plan costs count, for each pairing,
// 10 times its Early or Late (1 where that is 0) for each day that the young are
// early or late, 1 for each day that a phase is longer or shorter than usual, 10 for each day that an
// announced day is moved by, and 10 times LeaveOut where it is left out.
type Proof struct {
	// Best: no plan that keeps the wishes and the room costs less.
	Best bool `json:"best"`
	// Cost is what the plan costs, and Bound what every plan costs at least.
	Cost  int `json:"cost"`
	Bound int `json:"bound"`
	// Stopped: the search was ended before its work was done.
	Stopped bool `json:"stopped,omitempty"`
	// Moved are the pairings that give way to others: alone in the room they would
	// come nearer to their wishes.
	Moved []string `json:"moved,omitempty"`
	// Started are pairings with a start of their own, which is never moved: only
	// what comes after it is.
	Started []string `json:"started,omitempty"`
	// Kept are pairings that were not moved, as their rain has begun, they are
	// overdue, or cannot be as they are wished.
	Kept []string `json:"kept,omitempty"`
	// Help is what one more of a place would do where pairings give way to others:
	// the place that helps most. It is nil where none does, and in a large season.
	Help *Help `json:"help,omitempty"`
	// Changed are the announced days that are others now.
	Changed []Changed `json:"changed,omitempty"`
}

// Help is what one more of a place would do.
type Help struct {
	Resource string `json:"resource"`
	Cost     int    `json:"cost"` // of the plan with it
	// Moved are the pairings that would still give way.
	Moved []string `json:"moved,omitempty"`
}

// Changed is an announced day that was moved.
type Changed struct {
	Pairing string     `json:"pairing"`
	Phase   string     `json:"phase"` // or "end", the day after the last phase
	From    civil.Date `json:"from"`
	To      civil.Date `json:"to,omitzero"` // unknown where the pairing is left out
}

// Weights of a plan, see [Proof].
const (
	dayWeight       = 10
	tieWeight       = 1 // of a day that costs nothing: nearer is better all the same
	stretchWeight   = 1
	announcedWeight = 10
)
