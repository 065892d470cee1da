package frogroom

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/internal/words"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// season tells a plan to a keeper.
func (p *plan) season() Season {
	s := Season{On: p.on, Pairings: []PlannedPairing{}, Targets: p.outlooks(), Conflicts: p.clashes(), Unchecked: p.fitted.Season.Unchecked, LeftOut: p.leftOut, WhyLeftOut: p.whyLeftOut(), Proof: p.fitted.Proof, Solved: p.solved()}
	s.Peaks = peaks(p.fitted.Loads, p.on, civil.Span{First: p.on, Last: p.on.Add(p.fitted.Problem.Days - 1)})
	var unchecked string
	if s.Risks, unchecked = p.risks(); unchecked != "" {
		s.Unchecked = append(s.Unchecked[:len(s.Unchecked):len(s.Unchecked)], unchecked)
	}
	s.Weeks = p.weeks()
	s.Food = p.foodPeaks(s.Weeks)
	for _, one := range p.over {
		s.Over = append(s.Over, one.ID)
	}
	for _, one := range p.planned {
		s.Pairings = append(s.Pairings, p.room.tell(p.kin, one, p.on))
	}
	return s
}

// clashes gives all that is in the way of a plan.
func (p *plan) clashes() []Conflict {
	all := []Conflict{}
	for _, c := range p.conflicts {
		all = append(all, Conflict{c.Kind, c.Pairings, c.Place, c.Animals, c.Days, c.Earliest, c.Message})
	}
	if p.stuck != nil {
		all = append(all, *p.stuck)
	}
	for _, m := range p.missing {
		all = append(all, Conflict{Kind: NotPlanned, Pairings: []string{m.ID}, Message: m.ID + ": " + m.err.Error()})
	}
	if c, ok := p.tooMany(); ok {
		all = append(all, c)
	}
	return all
}

// tooMany is the conflict of a plan with more pairings than the rules allow.
func (p *plan) tooMany() (Conflict, bool) {
	most := p.room.Collection.Rules.PairingsASeason
	if !most.Known || len(p.planned) <= most.Value {
		return Conflict{}, false
	}
	c := Conflict{
		Kind:    TooMany,
		Message: fmt.Sprintf("%d pairings are planned, and rules.pairings_a_season allows %d", len(p.planned), most.Value),
	}
	for _, one := range p.planned {
		c.Pairings = append(c.Pairings, one.ID)
	}
	return c, true
}

// tell puts what is known of a pairing beside its dates. The pedigree has the ancestry
// of both sides.
func (r *Room) tell(in *pedigree.Pedigree, p planned, on civil.Date) PlannedPairing {
	out := PlannedPairing{
		ID: p.ID, Species: p.Species, Dams: slices.Clone(p.Dams), Sires: slices.Clone(p.Sires),
		Target: p.Target, ReadyBy: p.ReadyBy,
		Young:    kin.YoungOf(in, p.Sires, p.Dams),
		Stages:   []PlannedStage{},
		Refused:  !p.verdict.Allowed(),
		Warnings: slices.Clone(p.cycle.Warnings),
	}
	for _, ph := range p.cycle.Phases {
		out.Phases = append(out.Phases, PlannedPhase{ph.Name, ph.Place, ph.Span, ph.LatestStart, ph.Recorded})
	}
	young := r.broods.Of(p.Species, on)
	stages := p.cycle.Stages
	if _, rested := r.rested(p.Pairing, on); rested {
		stages = nil
	}
	for _, s := range stages {
		out.Stages = append(out.Stages, PlannedStage{s.Stage, s.Window, young.RestsOn[s.Stage]})
	}
	out.Warnings = append(out.Warnings, young.Doubts...)
	for _, f := range p.verdict.Findings {
		if f.Severity >= pairing.Warn {
			out.Findings = append(out.Findings, f.Message)
		}
	}
	if rain, laid, ok := r.presumedRain(p.Pairing, on); ok {
		out.Warnings = append(out.Warnings, fmt.Sprintf("the rain is taken to have begun on %s, because a clutch was laid on %s: record the day on which it began", rain, laid))
	}
	out.Warnings = append(out.Warnings, r.lessSure(p, on)...)
	if k := r.unnamed(p, on); k != nil {
		out.Warnings = append(out.Warnings, unnamedText(k, p)+": if it is that one's, write pairing: "+p.ID+" beside it")
	}
	if _, text := r.noEggs(p, on); text != "" {
		out.Warnings = append(out.Warnings, text+": record the clutch, or plan another attempt")
	}
	if len(p.cycle.Stages) == 0 {
		out.Warnings = append(out.Warnings, fmt.Sprintf("when there will be young is not known: the profile of %s has no eggs_after_nights under breeding", p.Species))
	}
	out.Warnings = append(out.Warnings, p.doubts...)
	out.Warnings = append(out.Warnings, awayDoubts(r.Collection, out.Stages)...)
	return out
}

// lessSure gives the chance that young are ready in time, once the rain has begun
// too late for the wished one. A clutch that is laid speaks for itself.
func (r *Room) lessSure(p planned, on civil.Date) []string {
	chance, known := r.chanceInTime(p, on)
	if !known || !r.awaits(p.Pairing, on) || chance >= float64(p.CertaintyPct)/100 {
		return nil
	}
	return []string{fmt.Sprintf("the chance that a clutch is sale-ready by %s is %d %%; wished: %d %%", p.ReadyBy, *percent(chance), p.CertaintyPct)}
}

// awayDoubts says which stages that ask for hands can fall on days away.
func awayDoubts(c *collection.Collection, stages []PlannedStage) []string {
	var out []string
	for _, s := range stages {
		out = append(out, awayAt(c.Away, s.Stage, s.Window)...)
	}
	return out
}

// awayAt says so for one stage, if it asks for hands: eggs to be caught, first
// food, a way out of the water, froglets to be moved.
func awayAt(away []civil.Span, stage string, w civil.Window) []string {
	switch stage {
	case "laid", "feeding", "front-legs", "out-of-water":
	default:
		return nil
	}
	var out []string
	for _, days := range away {
		if days.Overlaps(w.Span()) {
			out = append(out, fmt.Sprintf("%s can come while nobody is in the room (%s): arrange for somebody to look", words.Planned(stage), days))
		}
	}
	return out
}
