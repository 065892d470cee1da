package frogroom

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/season"
)

// Season is when each pairing runs, what it may bring, and what is in the way.
type Season struct {
	On        civil.Date       `json:"on"`
	Pairings  []PlannedPairing `json:"pairings"`
	Targets   []TargetOutlook  `json:"targets,omitempty"`
	Conflicts []Conflict       `json:"conflicts"`
	// Over are pairings of the file that are over by their dates, and not planned.
	Over []string `json:"over,omitempty"`
	// Unchecked says what the plan did not look at.
	Unchecked []string `json:"unchecked"`
	// Proof says how good the dates are; nil where nothing could be moved, or
	// where there is no plan that keeps all wishes.
	Proof *Proof `json:"proof,omitempty"`
}

// The kinds of conflict that come on top of those of [season.Conflict].
const (
	// NotPlanned: the profile of the species lacks what a plan needs. The
	// pairing is not among Season.Pairings.
	NotPlanned season.Kind = "not planned"
	// NoPlan: these pairings cannot all run as they are wished, and without any
	// one of them the rest could.
	NoPlan season.Kind = "no plan"
	// TooMany: there are more pairings than the keeper's rules allow.
	TooMany season.Kind = "too many pairings"
)

// Conflict is a reason why the plan does not work as it stands; see
// [season.Conflict].
type Conflict struct {
	Kind     season.Kind `json:"kind"`
	Pairings []string    `json:"pairings"`
	Place    string      `json:"place,omitempty"`
	Animals  []string    `json:"animals,omitempty"`
	Days     civil.Span  `json:"days,omitzero"`      // empty where no days are concerned
	Earliest civil.Date  `json:"earliest,omitempty"` // for a date that cannot be met: the first that can
	Message  string      `json:"message"`
}

// PlannedPairing is the plan of one pairing.
type PlannedPairing struct {
	ID       string         `json:"id"`
	Species  string         `json:"species"`
	Dams     []string       `json:"dams"`
	Sires    []string       `json:"sires"`
	Target   string         `json:"target,omitempty"`
	ReadyBy  civil.Date     `json:"ready_by,omitempty"`
	Young    YoungOfPairing `json:"young"`
	Phases   []PlannedPhase `json:"phases"`             // at least one, each from the day after the one before
	Stages   []PlannedStage `json:"stages"`             // of the young; without those that the profile says too little for
	Findings []string       `json:"findings,omitempty"` // why it should not be made, or what to think of first
	Refused  bool           `json:"refused"`            // a rule of the keeper or of welfare is against it
	Warnings []string       `json:"warnings,omitempty"`
}

// PlannedPhase is one phase with its days. LatestStart is known where the plan
// goes backward from a date: the last day on which the phase can begin.
type PlannedPhase struct {
	Name        string     `json:"name"`
	Place       string     `json:"place,omitempty"`
	Span        civil.Span `json:"span"`
	LatestStart civil.Date `json:"latest_start,omitempty"`
	Recorded    bool       `json:"recorded"`
}

// PlannedStage is when the young of a pairing are expected to reach a stage.
type PlannedStage struct {
	Stage  string       `json:"stage"`
	Window civil.Window `json:"window"`
}

// Season plans the pairings of the file that are not over: those whose last
// phase has not ended, or whose young are to be ready on a day that has not
// passed. A pairing that cannot be planned is a [NotPlanned] conflict.
//
// Where nothing is recorded of the rain and a clutch of the pairing was laid, the
// rain is taken to have begun the usual number of nights before, with a warning.
//
// With ids it plans those, over or not. The error is an *[UnknownPairingError],
// or a *[NoCycleError] for one that cannot be planned.
func (r *Room) Season(on civil.Date, ids ...string) (Season, error) {
	mustKnow(on)
	if len(ids) == 0 {
		return r.plan(on, r.allPairings()).current().season(), nil
	}
	var wanted []*collection.Pairing
	named := make(map[string]bool)
	for _, id := range ids {
		p, ok := r.Collection.Pairing(id)
		if !ok {
			all := r.Collection.Pairings
			return Season{}, &UnknownPairingError{ID: id, Nearest: nearest(id, len(all), func(i int) string { return all[i].ID })}
		}
		if !named[id] {
			named[id] = true
			wanted = append(wanted, p)
		}
	}
	return r.plan(on, wanted).whole()
}

func (r *Room) allPairings() []*collection.Pairing {
	all := make([]*collection.Pairing, len(r.Collection.Pairings))
	for i := range all {
		all[i] = &r.Collection.Pairings[i]
	}
	return all
}
