package breedingplan

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/pairing"
)

// Wish is what the keeper asks of the pairings of a season. The zero value
// asks for nothing in particular.
type Wish struct {
	Species  string // only this one; all when empty
	Pairings int    // most pairings of the season; 0 is what the file says
	Young    int    // held back for each pairing, on average; 0 is 2
	Rounds   int    // how often each rain chamber is filled; 0 does not count chambers
	// MaleUses and FemaleUses are how many pairings an animal has at most; 0 is
	// 2 for a male and 1 for a female.
	MaleUses, FemaleUses int
	// Weight is what the mean inbreeding of the young weighs against the mean
	// kinship of those that are bred from.
	Weight float64
	// Apart seeks mates among kin whom the rules allow, so that lines stay apart and less is lost
	// when the young breed; Weight has to be 0 then. See [pairing.Ahead].
	Apart bool
	// Want and Without are pairs, male and female in any order, that have to be
	// in the plan or out of it. An animal alone in Without, with "" beside it,
	// is left out altogether.
	Want, Without [][2]string
	Goals         []Goal
	Relax         []pairing.Rule // rules to set aside, beside those of the file; see [pairing.Relaxable]
	// Nodes bounds the search for each species, less so the more pairs above 50
	// there are; 0 is 20,000. Stop ends it when it gives true, and may be nil.
	Nodes int
	Stop  func() bool
}

// Goal asks for a number of pairings of a species, or with a dam of a line.
type Goal struct {
	Of       string // a species or a line
	Pairings int
}

func (g Goal) String() string { return "at least " + pairings(g.Pairings) + " of " + g.Of }

// Plan is the best set of pairings for a season.
type Plan struct {
	On      civil.Date    `json:"on"`
	Weight  float64       `json:"inbreeding_weight"`
	Apart   bool          `json:"apart,omitempty"` // kin are sought; see [Wish]
	Relaxed []RelaxedRule `json:"relaxed,omitempty"`
	Limits  []string      `json:"limits"` // what bounds the plan, in words
	Species []SpeciesPlan `json:"species"`
	// Proven is false when the search was ended, so that there may be better.
	Proven   bool     `json:"proven"`
	Warnings []string `json:"warnings,omitempty"`
}

// SpeciesPlan is the plan for one species.
type SpeciesPlan struct {
	Species string       `json:"species"`
	Living  int          `json:"living"` // in the room and promised to nobody: the line as it is
	Pairs   []ChosenPair `json:"pairs"`
	// Promised are in the room and promised: they will leave, and do not count as the line.
	Promised int `json:"promised"`
	// WithPromised is the gene diversity of all that are in the room, as it is told elsewhere.
	WithPromised float64 `json:"gene_diversity_with_promised"`
	// GeneDiversity is that of the line as it is, and WithYoung that of the line
	// with the young that are held back.
	GeneDiversity   float64 `json:"gene_diversity"`
	WithYoung       float64 `json:"gene_diversity_with_young"`
	YoungInbreeding float64 `json:"young_inbreeding"` // the mean of those held back
	Proven          bool    `json:"proven"`
	// Gap is the share of the score that could still be saved at most; 0 when proven.
	Gap    float64     `json:"gap"`
	Others []OtherPlan `json:"others"` // the next best plans that differ by more than an exchange of Alike
	// OthersProven says that there are none better, nor more where they are fewer than two.
	OthersProven bool `json:"others_proven"`
	// Alike are animals of the line of which any can stand for any other in the plan, by
	// their ids; only where one of them is in it.
	Alike   [][]string `json:"alike"`
	Ceiling *Ceiling   `json:"ceiling,omitempty"` // what the greatest inbreeding allowed costs; nil when nothing
	// CeilingProven says that the search for a plan without that limit went to its end.
	CeilingProven bool      `json:"ceiling_proven"`
	LeftOut       []LeftOut `json:"left_out"`          // all other animals in the room
	NoPlan        string    `json:"no_plan,omitempty"` // why there is no pairing
	Refused       int       `json:"pairs_refused"`     // of all males with all females
	Allowed       int       `json:"pairs_allowed"`     // likewise
}

// ChosenPair is a pairing of the plan.
type ChosenPair struct {
	Male          string   `json:"male"`
	Female        string   `json:"female"`
	MaleSign      string   `json:"male_sex_sign,omitempty"` // how its sex is known; empty when nobody wrote it down
	FemaleSign    string   `json:"female_sex_sign,omitempty"`
	MaleKinship   float64  `json:"male_mean_kinship"` // with the line
	FemaleKinship float64  `json:"female_mean_kinship"`
	Young         int      `json:"young"` // to hold back
	Inbreeding    float64  `json:"inbreeding"`
	Expected      bool     `json:"expected"` // a mean over possible parents
	Change        float64  `json:"change"`   // of the gene diversity, if only these young joined
	Reason        string   `json:"reason"`
	Findings      []string `json:"findings,omitempty"` // what to think of first
}

// OtherPlan is a plan that is not the best one.
type OtherPlan struct {
	Instead         [][2]string `json:"instead"` // pairs that the best plan lacks, male first
	Without         [][2]string `json:"without"` // pairs of the best plan that it lacks
	WithYoung       float64     `json:"gene_diversity_with_young"`
	YoungInbreeding float64     `json:"young_inbreeding"`
}

// Ceiling is the best plan when no pair is refused for its inbreeding.
type Ceiling struct {
	WithYoung       float64 `json:"gene_diversity_with_young"`
	YoungInbreeding float64 `json:"young_inbreeding"`
}

// LeftOut is an animal that the plan does not use.
type LeftOut struct {
	ID     string      `json:"id"`
	Name   string      `json:"name,omitempty"`
	Sex    pairing.Sex `json:"sex"`
	Sign   string      `json:"sex_sign,omitempty"` // how its sex is known; empty when nobody wrote it down
	Reason string      `json:"reason"`
	From   civil.Date  `json:"from,omitempty"` // the day from which time cures it
}

// Plan plans the pairings of a season: for each species the set of pairs, and
// the young to hold back from each, after which the line has the lowest mean
// kinship with the wished weight on the inbreeding of the young. The pairings of the
// season are shared out among the species so that the sum over them is lowest.
//
// The error is a *[WishError] for a wish that makes no sense, or a *[NoPlanError] when
// nothing is left to plan.
func (s *Stock) Plan(w Wish) (Plan, error) {
	w, err := s.whole(w)
	if err != nil {
		return Plan{}, err
	}
	out := Plan{On: s.Terms.On, Weight: w.Weight, Apart: w.Apart, Relaxed: s.relaxed(w), Limits: w.limits(s), Species: []SpeciesPlan{}, Proven: true}
	var lines []*line
	for _, species := range s.Species {
		if w.Species == "" || w.Species == species {
			l := s.line(species, w)
			if len(l.here) == 0 {
				continue
			}
			if err := l.judge(); err != nil {
				return Plan{}, err
			}
			lines = append(lines, l)
		}
	}
	out.Warnings = ancestryWarnings(lines...)
	if err := possible(lines, w); err != nil {
		return Plan{}, err
	}
	counts, proven, err := share(lines, w.most(s))
	if err != nil {
		return Plan{}, err
	}
	out.Proven = proven
	for i, l := range lines {
		s := l.plan(counts[i])
		out.Proven = out.Proven && s.Proven
		out.Species = append(out.Species, s)
	}
	if slices.ContainsFunc(out.Species, func(s SpeciesPlan) bool {
		return slices.ContainsFunc(s.Pairs, func(p ChosenPair) bool { return p.Expected && p.Inbreeding > 0 })
	}) {
		out.Warnings = append(out.Warnings, "inbreeding marked ~ is an expectation: a parent or ancestor is one of several")
	}
	return out, nil
}

// whole fills in what a wish leaves open and refuses what makes no sense.
func (s *Stock) whole(w Wish) (Wish, error) {
	if w.Species != "" {
		if !slices.Contains(s.Species, w.Species) {
			return w, noSpecies(w.Species)
		}
	}
	for _, n := range []struct {
		what  string
		value int
	}{
		{"pairings", w.Pairings},
		{"young to hold back", w.Young},
		{"rounds of a rain chamber", w.Rounds},
		{"pairings of one male", w.MaleUses},
		{"pairings of one female", w.FemaleUses},
		{"plans to look at", w.Nodes},
	} {
		if n.value < 0 {
			return w, &WishError{fmt.Sprintf("the number of %s is %d, below 0", n.what, n.value)}
		}
	}
	if !(w.Weight >= 0 && w.Weight <= 1000) {
		return w, &WishError{"the weight of inbreeding has to be from 0 to 1000"}
	}
	if w.Apart && (w.Weight != 0 || slices.Contains(s.terms(w).Rules.Relaxed, pairing.RuleInbreeding)) {
		return w, &WishError{"lines are kept apart among kin below max_inbreeding: that leaves inbreeding no other weight, and the rule cannot be relaxed"}
	}
	orElse(&w.Young, 2)
	orElse(&w.MaleUses, 2)
	orElse(&w.FemaleUses, 1)
	orElse(&w.Nodes, 20_000)
	if w.Rounds > 0 { // nobody is in two chambers at once
		w.MaleUses, w.FemaleUses = min(w.MaleUses, w.Rounds), min(w.FemaleUses, w.Rounds)
	}
	if w.Young > 1000 {
		return w, &WishError{"more than 1000 young from a pairing"}
	}
	for _, rule := range w.Relax {
		if can := pairing.Relaxable(); !slices.Contains(can, rule) {
			return w, &WishError{fmt.Sprintf("the rule %q cannot be relaxed; these can: %s", rule, joined(words(can)))}
		}
	}
	for _, pair := range slices.Concat(w.Want, w.Without) {
		for _, id := range pair {
			if _, err := s.find(id); err != nil && id != "" {
				return w, err
			}
		}
	}
	return w, s.knownGoals(w)
}

func (s *Stock) knownGoals(w Wish) error {
	for _, g := range w.Goals {
		if !slices.Contains(s.Species, g.Of) && !slices.ContainsFunc(s.Animals, func(a Animal) bool { return a.Line == g.Of }) {
			return &WishError{fmt.Sprintf("there is no species or line %q", g.Of)}
		}
	}
	return nil
}

func orElse(n *int, usual int) {
	if *n == 0 {
		*n = usual
	}
}

// most gives the greatest number of pairings of the season.
func (w Wish) most(s *Stock) int {
	most := pairing.NoLimit
	switch {
	case w.Pairings > 0:
		most = w.Pairings
	case s.PairingsASeason.Known:
		most = s.PairingsASeason.Value
	}
	if c := s.RainChambers; w.Rounds > 0 && c.Known {
		most = min(most, w.Rounds*c.Value)
	}
	return most
}

// limits says in words what bounds the plan.
func (w Wish) limits(s *Stock) []string {
	var out []string
	switch {
	case w.Pairings > 0:
		out = append(out, fmt.Sprintf("at most %s, as asked", pairings(w.Pairings)))
	case s.PairingsASeason.Known:
		out = append(out, fmt.Sprintf("at most %s a season, as the file says", pairings(s.PairingsASeason.Value)))
	}
	if w.Rounds > 0 {
		if c := s.RainChambers; c.Known {
			out = append(out, fmt.Sprintf("rain chambers: %d, each filled at most %s", c.Value, times(w.Rounds)))
		} else {
			out = append(out, "rain chambers are not counted: the file does not say how many there are")
		}
	}
	out = append(out, fmt.Sprintf("a male at most %s, a female at most %s", times(w.MaleUses), times(w.FemaleUses)))
	out = append(out, fmt.Sprintf("%d young held back for each pairing on average, 1 to %d from each", w.Young, w.mostYoung()))
	if w.Apart {
		out = append(out, s.apart())
	}
	for _, g := range w.Goals {
		out = append(out, g.String()+", as asked")
	}
	for _, p := range w.Want {
		out = append(out, fmt.Sprintf("with %s × %s, as asked", p[0], p[1]))
	}
	for _, p := range w.Without {
		if p[1] == "" {
			out = append(out, fmt.Sprintf("without %s, as asked", p[0]))
		} else {
			out = append(out, fmt.Sprintf("without %s × %s, as asked", p[0], p[1]))
		}
	}
	return out
}

// apart says how lines are kept apart.
func (s *Stock) apart() string {
	return fmt.Sprintf("lines are kept apart, as asked: of mates that do as much for the line kin are taken, below %v", s.Terms.Rules.MaxInbreeding)
}

// mostYoung is how many young of one pairing are held back at most: half as many
// again as on average, for a line needs many families more than large ones.
func (w Wish) mostYoung() int { return w.Young + (w.Young+1)/2 }

func pairings(n int) string {
	if n == 1 {
		return "1 pairing"
	}
	return fmt.Sprintf("%d pairings", n)
}

func times(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return fmt.Sprintf("%d times", n)
}
