package frogroom

import (
	"fmt"
	"math"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/season"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// Season is when each pairing runs, what it may bring, and what is in the way.
type Season struct {
	On        civil.Date       `json:"on"`
	Pairings  []PlannedPairing `json:"pairings"`
	Targets   []TargetOutlook  `json:"targets,omitempty"`
	Conflicts []Conflict       `json:"conflicts"`
	// Unchecked says what the plan did not look at.
	Unchecked []string `json:"unchecked"`
}

// Conflict is a reason why the plan does not work as it stands; see
// [season.Conflict].
type Conflict struct {
	Kind     season.Kind `json:"kind"`
	Pairings []string    `json:"pairings"`
	Place    string      `json:"place,omitempty"`
	Animals  []string    `json:"animals,omitempty"`
	Days     civil.Span  `json:"days"`
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
	Phases   []PlannedPhase `json:"phases"`
	Stages   []PlannedStage `json:"stages"`
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

// TargetOutlook holds what the pairings for a target may bring against what is wanted.
type TargetOutlook struct {
	Name     string     `json:"name"`
	On       civil.Date `json:"on"`
	Species  string     `json:"species"`
	Wanted   int        `json:"wanted"`
	Pairings []string   `json:"pairings"`
	// FromEach is a usual number of froglets from one clutch of the species:
	// the middle clutch, less the usual losses. 0 when the profile does not say.
	FromEach int `json:"from_each"`
	// Clutches is one for each dam of the pairings, and Outlook what they bring
	// together, FromEach times Clutches.
	Clutches int `json:"clutches"`
	Outlook  int `json:"outlook"`
	// LastShipping is the last day on which a parcel arrives before the date;
	// unknown when there is none.
	LastShipping civil.Date `json:"last_shipping,omitempty"`
}

// Wish is a pairing that does not stand in the file. Exactly one of Start and
// ReadyBy is known.
type Wish struct {
	Dams, Sires    []string
	Start, ReadyBy civil.Date
	CertaintyPct   int // for ReadyBy, 50 to 95
}

// Season plans the pairings of the file; with ids only those. The error is an
// *[UnknownPairingError], or a *[NoCycleError] for a species whose profile has
// no phases.
func (r *Room) Season(on civil.Date, ids ...string) (Season, error) {
	var wanted []collection.Pairing
	for _, id := range ids {
		p, ok := r.Collection.Pairing(id)
		if !ok {
			return Season{}, &UnknownPairingError{ID: id, known: r.pairingIDs()}
		}
		wanted = append(wanted, *p)
	}
	if len(ids) == 0 {
		wanted = r.Collection.Pairings
	}
	return r.plan(on, wanted)
}

// SeasonOf plans one pairing that does not stand in the file. The error is an
// *[UnknownAnimalError], a *[WishError] or a *[NoCycleError].
func (r *Room) SeasonOf(on civil.Date, w Wish) (Season, error) {
	p := collection.Pairing{ID: "this pairing", Dams: w.Dams, Sires: w.Sires, Start: w.Start, ReadyBy: w.ReadyBy, CertaintyPct: w.CertaintyPct}
	for _, id := range slices.Concat(w.Sires, w.Dams) {
		if _, err := r.Ancestry.number(id); err != nil {
			return Season{}, err
		}
	}
	switch {
	case len(w.Dams) == 0 || len(w.Sires) == 0:
		return Season{}, &WishError{"a pairing needs at least one dam and one sire"}
	case w.Start.Known() == w.ReadyBy.Known():
		return Season{}, &WishError{"give either a start or a date by which young are to be ready"}
	case w.ReadyBy.Known() && (w.CertaintyPct < 50 || w.CertaintyPct > 95):
		return Season{}, &WishError{fmt.Sprintf("a certainty of %d %% is not from 50 to 95", w.CertaintyPct)}
	}
	dam, _ := r.Collection.Animal(w.Dams[0])
	p.Species = dam.Species
	return r.plan(on, []collection.Pairing{p})
}

// WishError says why a wish cannot be planned.
type WishError struct{ Reason string }

func (e *WishError) Error() string { return e.Reason }

// NoCycleError is a species whose profile does not say how it is bred.
type NoCycleError struct{ Species, Lacks string }

func (e *NoCycleError) Error() string {
	return fmt.Sprintf("the profile of %s has no %s, so no season can be planned; add it under species", e.Species, e.Lacks)
}

// UnknownPairingError is an id that no pairing has.
type UnknownPairingError struct {
	ID    string
	known []string
}

func (e *UnknownPairingError) Error() string {
	return withCure(fmt.Sprintf("there is no pairing %q", e.ID), e.ID, e.known)
}

func (r *Room) pairingIDs() []string {
	ids := make([]string, len(r.Collection.Pairings))
	for i, p := range r.Collection.Pairings {
		ids[i] = p.ID
	}
	return ids
}

func (r *Room) plan(on civil.Date, wanted []collection.Pairing) (Season, error) {
	inputs := make([]season.Pairing, len(wanted))
	for i := range wanted {
		in, err := r.cycleOf(&wanted[i], on)
		if err != nil {
			return Season{}, err
		}
		inputs[i] = in
	}
	planned := season.Plan(r.places(), inputs, on)
	out := Season{On: on, Conflicts: []Conflict{}, Unchecked: planned.Unchecked}
	for _, c := range planned.Conflicts {
		out.Conflicts = append(out.Conflicts, Conflict{c.Kind, c.Pairings, c.Place, c.Animals, c.Days, c.Earliest, c.Message})
	}
	for i := range wanted {
		out.Pairings = append(out.Pairings, r.planned(&wanted[i], planned.Cycles[i]))
	}
	out.Targets = r.outlooks(wanted)
	if most := r.Collection.Rules.PairingsASeason; most.Known && len(wanted) > most.Value {
		out.Unchecked = append(out.Unchecked, fmt.Sprintf("%d pairings are planned, more than the %d that rules.pairings_a_season allows", len(wanted), most.Value))
	}
	return out, nil
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
func (r *Room) cycleOf(p *collection.Pairing, on civil.Date) (season.Pairing, error) {
	profile := r.profile(p.Species)
	out := season.Pairing{
		ID: p.ID, Animals: slices.Concat(p.Sires, p.Dams),
		Start: p.Start, ReadyBy: p.ReadyBy, Target: p.Target,
	}
	for _, ph := range profile.Cycle {
		if !ph.Days.Known() {
			continue
		}
		place := ph.Where()
		if place == species.OwnTank {
			place = ""
		}
		out.Phases = append(out.Phases, season.Phase{
			Name: string(ph.Name), Min: ph.Days.Min, Usual: ph.Days.Usual, Max: ph.Days.Max, Place: place,
		})
	}
	if len(out.Phases) == 0 {
		return out, &NoCycleError{p.Species, "phases under cycle"}
	}
	eggs, err := development.FromPercentiles(profile.Breeding.EggsAfterNights.P10, profile.Breeding.EggsAfterNights.P50, profile.Breeding.EggsAfterNights.P90)
	if err != nil {
		return out, &NoCycleError{p.Species, "breeding: eggs_after_nights"}
	}
	model := r.models[p.Species]
	for _, stage := range forecastStages {
		until := model.Until(stage)
		if !until.Known() {
			continue
		}
		d := eggs.Plus(until)
		out.Stages = append(out.Stages, season.StageOffset{
			Stage: stage.String(), Early: d.Quantile(0.1), Likely: d.Quantile(0.5), Late: d.Quantile(0.9),
		})
		if stage == development.SaleReady && p.ReadyBy.Known() {
			out.ReadyAfter = d.Quantile(float64(p.CertaintyPct) / 100)
		}
	}
	if p.ReadyBy.Known() && out.ReadyAfter == 0 {
		return out, &NoCycleError{p.Species, "days for every step of development"}
	}
	for _, b := range r.Collection.Began(p.ID) {
		if b.On <= on {
			out.Began = append(out.Began, season.Began{Phase: string(b.Phase), On: b.On})
		}
	}
	return out, nil
}

// forecastStages are the stages that have dates in a plan.
var forecastStages = []development.Stage{
	development.Laid, development.Hatched, development.Feeding, development.FrontLegs, development.OutOfWater, development.SaleReady,
}

// planned puts what is known of a pairing beside its dates.
func (r *Room) planned(p *collection.Pairing, c season.Cycle) PlannedPairing {
	out := PlannedPairing{
		ID: p.ID, Species: p.Species, Dams: p.Dams, Sires: p.Sires,
		Target: p.Target, ReadyBy: p.ReadyBy,
		Young: r.youngOf(p.Sires, p.Dams), Warnings: c.Warnings,
	}
	for _, ph := range c.Phases {
		out.Phases = append(out.Phases, PlannedPhase{ph.Name, ph.Place, ph.Span, ph.LatestStart, ph.Recorded})
	}
	for _, s := range c.Stages {
		out.Stages = append(out.Stages, PlannedStage{s.Stage, s.Window})
	}
	out.Warnings = append(out.Warnings, r.awayDoubts(out.Stages)...)
	verdict := r.judge(p, c.RainStart)
	for _, f := range verdict.Findings {
		if f.Severity >= pairing.Warn {
			out.Findings = append(out.Findings, f.Message)
		}
	}
	out.Refused = !verdict.Allowed()
	return out
}

// awayDoubts says which stages that ask for hands can fall on days away.
func (r *Room) awayDoubts(stages []PlannedStage) []string {
	var out []string
	for _, s := range stages {
		if s.Stage != "laid" && s.Stage != "front-legs" && s.Stage != "out-of-water" {
			continue
		}
		for _, away := range r.Collection.Away {
			if away.Overlaps(whole(s.Window)) {
				out = append(out, fmt.Sprintf("%s can come while nobody is in the room (%s): arrange for somebody to look", plannedWords(s.Stage), away))
			}
		}
	}
	return out
}

// judge holds a pairing against the rules on the day on which its rain begins.
func (r *Room) judge(p *collection.Pairing, rain civil.Date) pairing.Verdict {
	return pairing.Judge(r.terms(rain), r.breeders(p.Sires, rain), r.breeders(p.Dams, rain))
}

// outlooks holds the pairings for each target against the wish.
func (r *Room) outlooks(wanted []collection.Pairing) []TargetOutlook {
	var out []TargetOutlook
	for _, t := range r.Collection.Targets {
		o := TargetOutlook{Name: t.Name, On: t.On, Species: t.Species, Wanted: t.Froglets, FromEach: r.fromEach(t.Species)}
		for _, p := range wanted {
			if p.Target == t.Name {
				o.Pairings = append(o.Pairings, p.ID)
				o.Clutches += len(p.Dams)
			}
		}
		if len(o.Pairings) == 0 {
			continue
		}
		o.Outlook = o.FromEach * o.Clutches
		ship := r.shipping()
		o.LastShipping, _ = ship.LastBefore(t.On.Add(1 - max(ship.TransitDays, 1)))
		out = append(out, o)
	}
	return out
}

// fromEach is the froglets that a middle clutch usually brings.
func (r *Room) fromEach(id string) int {
	eggs := r.profile(id).Breeding.ClutchEggs
	share, ok := r.models[id].Survival(development.Laid, development.SaleReady)
	if !ok || !eggs.Known() {
		return 0
	}
	return int(math.Floor(eggs.P50 * share))
}
