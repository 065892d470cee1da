package frogroom

import (
	"context"

	"github.com/spawnwright/spawnwright/pkg/almanac"
	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/rearing"
	"github.com/spawnwright/spawnwright/pkg/season"
	"github.com/spawnwright/spawnwright/pkg/timetable"
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
	// LeftOut are pairings that are not planned, at their leave_out_cost, and
	// WhyLeftOut says why, of each of them.
	LeftOut    []string `json:"left_out,omitempty"`
	WhyLeftOut []string `json:"why_left_out,omitempty"`
	// Proof says how good the dates are; nil where nothing could be moved, or
	// where there is no plan that keeps all wishes.
	Proof *Proof `json:"proof,omitempty"`
	// Peaks are the most of each kind that is in use at once, and Weeks the season
	// by week.
	Peaks []PlaceLoad `json:"peaks"`
	Weeks []Week      `json:"weeks"`
	// Food has for each species and age the week in which it eats most.
	Food []WeekFood `json:"food"`
	// Risks say how likely tubs and bins are to run out.
	Risks []Risk `json:"risks,omitempty"`
	// Solved is the problem that was solved, with the answer; without one where
	// there was nothing to choose. It has a JSON form of its own.
	Solved planner.Document `json:"-"`
}

// Proof says how good a plan is.
type Proof = timetable.Proof

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
	Young    kin.Young      `json:"young"`
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

// PlannedStage is when the young of a pairing are expected to reach a stage: at the
// set-point of the tubs, and in the light of what the clutches of the room have
// taught.
type PlannedStage struct {
	Stage   string          `json:"stage"`
	Window  civil.Window    `json:"window"`
	RestsOn rearing.RestsOn `json:"rests_on,omitzero"` // nothing for laying, which goes by the profile
}

// Season plans the pairings of the file that are not over: those whose last
// phase has not ended, or whose young are to be ready on a day that has not
// passed. A pairing that cannot be planned is a [NotPlanned] conflict.
//
// Where nothing is recorded of the rain and a clutch of the pairing was laid, the
// rain is taken to have begun the usual number of nights before, with a warning.
//
// With ids it plans those, over or not. The error is a *[collection.UnknownError],
// or a *[NoCycleError] for one that cannot be planned.
func (r *Room) Season(on civil.Date, ids ...string) (Season, error) {
	return r.PlanSeason(context.Background(), on, Planning{Pairings: ids})
}

// Planning says what is planned, and how.
type Planning struct {
	// Pairings are ids of the file; none stand for all that are not over.
	Pairings []string
	// Wish is planned instead, when there is one; see [Room.SeasonOf].
	Wish *Wish
	// Effort is how many times the usual work is done to find a better plan and to
	// prove it; below 1 means 1. The same effort gives the same plan.
	Effort int
	// Announced are the days of an earlier calendar. The plan keeps those of the
	// phases where that costs less than moving them.
	Announced calendar.Announced

	advise bool // also work out what one more place would do
}

// PlanSeason is [Room.Season] and [Room.SeasonOf] with more to say about the
// planning. When ctx ends the season is the best that was found until then, and
// its Proof says so.
func (r *Room) PlanSeason(ctx context.Context, on civil.Date, o Planning) (Season, error) {
	o.advise = true
	p, err := r.planFor(ctx, on, o)
	if err != nil {
		return Season{}, err
	}
	return p.season(), nil
}

// planFor gives the plan that is asked for. Pairings that are named, or wished,
// cannot be missing.
func (r *Room) planFor(ctx context.Context, on civil.Date, o Planning) (*plan, error) {
	mustKnow(on)
	switch {
	case o.Wish != nil:
		if err := r.possible(*o.Wish); err != nil {
			return nil, err
		}
		return r.planWith(ctx, on, o, []*collection.Pairing{r.wished(*o.Wish)}).whole()
	case len(o.Pairings) == 0:
		return r.planWith(ctx, on, o, r.allPairings()).current(), nil
	}
	var wanted []*collection.Pairing
	named := make(map[string]bool)
	for _, id := range o.Pairings {
		p, ok := r.Collection.Pairing(id)
		if !ok {
			return nil, r.Collection.Unknown("pairing", id)
		}
		if !named[id] {
			named[id] = true
			wanted = append(wanted, p)
		}
	}
	return r.planWith(ctx, on, o, wanted).whole()
}

// announced gives the days of the phases of a pairing that others were told.
func (o Planning) announced(r *Room, p *collection.Pairing) map[string]civil.Date {
	if !r.written(p) {
		return nil
	}
	told := make(map[string]civil.Date)
	look := func(name, event string) {
		if day, ok := o.Announced.Day(calendar.UID(r.Calendar().ID, almanac.Key("pairing", p.ID, event))); ok {
			told[name] = day
		}
	}
	for _, ph := range r.of(p.Species).Phases {
		look(ph.Name, ph.Name)
	}
	look(planner.End, "over")
	return told
}

func (r *Room) allPairings() []*collection.Pairing {
	all := make([]*collection.Pairing, len(r.Collection.Pairings))
	for i := range all {
		all[i] = &r.Collection.Pairings[i]
	}
	return all
}
