package breedingplan

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// shownPlans is how many plans are looked for: the best, and the two next best.
const shownPlans = 3

// plan gives the best plan with so many pairings, and what there is to say
// about it.
func (l *line) plan(count int) SpeciesPlan {
	s := SpeciesPlan{
		Species: l.species, Living: len(l.pool), Promised: len(l.here) - len(l.pool),
		WithPromised: pairing.NewBreedingSet(l.stock.Terms.Pedigree, l.here).GeneDiversity(), Pairs: []ChosenPair{}, Others: []OtherPlan{}, OthersProven: true, Alike: [][]string{}, LeftOut: []LeftOut{},
		GeneDiversity: l.set.GeneDiversity(), WithYoung: l.set.GeneDiversity(), Proven: true,
		Allowed: len(l.options), Refused: len(l.pairs) - len(l.options),
	}
	var chosen []pairing.Pair
	if count > 0 {
		best := l.choice(count).Best(pairing.Effort{Plans: shownPlans, Nodes: l.nodes(), Stop: l.wish.Stop})
		if len(best.Plans) == 0 || l.sweep[count].Plans[0].Score < best.Plans[0].Score-1e-9 {
			best = l.sweep[count] // the search was ended before it got as far again
		}
		first := best.Plans[0]
		s.WithYoung, s.YoungInbreeding = 1-first.MeanKinship, first.YoungInbreeding
		s.Proven, s.Gap = best.Proven, best.Gap()
		for _, pick := range first.Picks {
			p := l.pairs[l.options[pick.Option]]
			chosen = append(chosen, p)
			s.Pairs = append(s.Pairs, l.chosenPair(p, pick.Young))
		}
		s.Others, s.OthersProven = l.others(best.Plans), best.OthersProven
		s.Alike = l.alike(best.Alike, chosen)
		s.Ceiling, s.CeilingProven = l.ceiling(count, first)
	} else {
		s.NoPlan = l.whyNone()
	}
	used := make(map[string]bool)
	for _, p := range chosen {
		used[p.Male], used[p.Female] = true, true
	}
	s.LeftOut = l.leftOut(used)
	return s
}

func (l *line) whyNone() string {
	if len(l.options) == 0 {
		return l.noPairs().why()
	}
	return "the line keeps more without young of these pairs, or the pairings of the season do more for another species"
}

func (l *line) chosenPair(p pairing.Pair, young int) ChosenPair {
	male, female := l.stock.number(p.Male), l.stock.number(p.Female)
	effect := l.set.Effect([]int{male}, []int{female}, young, pedigree.OneUnknown)
	c := ChosenPair{
		Male: p.Male, Female: p.Female, Young: young,
		MaleKinship: l.set.MeanKinship(male), FemaleKinship: l.set.MeanKinship(female),
		MaleSign: l.stock.animal(male).SexSign, FemaleSign: l.stock.animal(female).SexSign,
		Inbreeding: p.Verdict.YoungInbreeding,
		Expected:   l.stock.Terms.Pedigree.Uncertain(male) || l.stock.Terms.Pedigree.Uncertain(female),
		Change:     effect.Change(),
		Reason:     l.reason(p),
	}
	for _, f := range p.Verdict.Findings {
		if f.Severity >= pairing.Warn && f.Rule != pairing.RuleMalesPerFemale {
			c.Findings = append(c.Findings, thought(f))
		}
	}
	return c
}

// thought is what a finding gives the keeper to think of.
func thought(f pairing.Finding) string {
	if f.Relaxed {
		return f.Message + " (relaxed)"
	}
	return f.Message
}

// others says how the next best plans differ from the best.
func (l *line) others(plans []pairing.Plan) []OtherPlan {
	out := []OtherPlan{}
	for _, p := range plans[1:] {
		out = append(out, OtherPlan{
			Instead: l.only(p, plans[0]), Without: l.only(plans[0], p),
			WithYoung: 1 - p.MeanKinship, YoungInbreeding: p.YoungInbreeding,
		})
	}
	return out
}

// alike gives the ids of animals that are alike, where one is in the plan.
func (l *line) alike(places [][]int, chosen []pairing.Pair) [][]string {
	out := [][]string{}
	for _, class := range places {
		var ids []string
		for _, i := range class {
			ids = append(ids, l.stock.animal(i).ID)
		}
		if slices.ContainsFunc(chosen, func(p pairing.Pair) bool { return slices.Contains(ids, p.Male) || slices.Contains(ids, p.Female) }) {
			slices.Sort(ids)
			out = append(out, ids)
		}
	}
	return out
}

// only gives the pairs of one plan that another lacks.
func (l *line) only(one, other pairing.Plan) [][2]string {
	out := [][2]string{}
	for _, pick := range one.Picks {
		if !slices.ContainsFunc(other.Picks, func(o pairing.Pick) bool { return o.Option == pick.Option }) {
			p := l.pairs[l.options[pick.Option]]
			out = append(out, [2]string{p.Male, p.Female})
		}
	}
	return out
}

// ceiling gives the plan without a limit on inbreeding, when it is a better one.
func (l *line) ceiling(count int, best pairing.Plan) (cost *Ceiling, proven bool) {
	if l.wish.Apart {
		return nil, true // kin are sought, and without the limit any would do
	}
	free := *l
	free.choose(func(p pairing.Pair) bool {
		return !l.unwished(p) && !slices.ContainsFunc(refusals(p.Verdict), func(f pairing.Finding) bool { return f.Rule != pairing.RuleInbreeding })
	})
	if len(free.options) == len(l.options) {
		return nil, true
	}
	o := free.choice(count).Best(pairing.Effort{Nodes: free.nodes(), Stop: l.wish.Stop})
	if len(o.Plans) == 0 || o.Plans[0].Score >= best.Score-1e-9 {
		return nil, o.Proven
	}
	return &Ceiling{WithYoung: 1 - o.Plans[0].MeanKinship, YoungInbreeding: o.Plans[0].YoungInbreeding}, o.Proven
}

// leftOut says of every animal that a plan does not use why.
func (l *line) leftOut(used map[string]bool) []LeftOut {
	out := []LeftOut{}
	for _, i := range l.here {
		a := l.stock.animal(i)
		if used[a.ID] {
			continue
		}
		left := LeftOut{ID: a.ID, Name: a.Name, Sex: a.Sex, Sign: a.SexSign}
		l.whyNot(&left)
		out = append(out, left)
	}
	return out
}

// whyNot finds the reason for leaving an animal out: its sex, what a rule has against it
// whoever is its mate, what it has against each mate, or that others do more.
func (l *line) whyNot(left *LeftOut) {
	if left.Sex == pairing.SexUnknown {
		left.Reason = "its sex is not known"
		return
	}
	if l.wish.leavesOut(left.ID) {
		left.Reason = "left out, as asked"
		return
	}
	allowed, mates := 0, 0
	var own []pairing.Finding // against itself
	least, kin := 1.0, 0
	for _, p := range l.pairs {
		if p.Male != left.ID && p.Female != left.ID {
			continue
		}
		if l.unwished(p) {
			continue
		}
		mates++
		against := refusals(p.Verdict)
		if len(against) == 0 {
			allowed++
		}
		for _, f := range against {
			switch {
			case len(f.Animals) == 1 && f.Animals[0] == left.ID:
				if !slices.ContainsFunc(own, func(o pairing.Finding) bool { return o.Rule == f.Rule }) {
					own = append(own, f)
				}
			case f.Rule == pairing.RuleInbreeding:
				kin++
				least = min(least, p.Verdict.YoungInbreeding)
			}
		}
	}
	switch {
	case mates == 0:
		left.Reason = "no mate is left"
	case len(own) > 0:
		var messages []string
		for _, f := range own {
			messages = append(messages, f.Message)
		}
		left.Reason = strings.Join(messages, "; ")
		left.From, _ = pairing.Verdict{Findings: own}.AllowedFrom()
	case allowed > 0:
		self := l.stock.number(left.ID)
		left.Reason = fmt.Sprintf("others do more for the line: %s by rarity (mean kinship %s)", l.rank(self), decimals(l.set.MeanKinship(self)))
	case kin == mates:
		left.Reason = "too closely related to every mate: the young would be inbred to " + decimals(least) + " at least"
	default:
		left.Reason = "no mate may be paired"
		if kin > 0 {
			left.Reason += ": too closely related to " + counted(kin, "mate") + ", and the others are not ready or left out"
		}
	}
}

// counted writes "1 mate", "2 mates".
func counted(n int, what string) string {
	switch {
	case n == 1:
		return "1 " + what
	case what == "clutch":
		return fmt.Sprintf("%d clutches", n)
	}
	return fmt.Sprintf("%d %ss", n, what)
}
