package breedingplan

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/pairing"
)

// line is the animals of a species that are in the room, and the pairs that
// they make.
type line struct {
	stock   *Stock
	species string
	wish    Wish
	here    []int          // numbers of the animals, in the order of the file
	pool    []int          // those that are promised to nobody
	pairs   []pairing.Pair // of all males with all females, once they are judged
	set     *pairing.BreedingSet

	males, females []string

	options []int // of pairs: those that may be chosen
	limits  []pairing.Limit
	sweep   []pairing.Outcome // by number of pairings, from 0; without plans where there are none
	// searched are the numbers of pairings for which more was done than a first bound.
	searched map[int]bool
}

func (s *Stock) line(species string, w Wish) *line {
	l := &line{stock: s, species: species, wish: w}
	for i := range s.Animals {
		a := s.animal(i)
		if a.Species != species || !a.Here {
			continue
		}
		l.here = append(l.here, i)
		if a.Promised == "" {
			l.pool = append(l.pool, i)
		}
		switch a.Sex {
		case pairing.Male:
			l.males = append(l.males, a.ID)
		case pairing.Female:
			l.females = append(l.females, a.ID)
		}
	}
	l.set = pairing.NewBreedingSet(s.Terms.Pedigree, l.pool)
	return l
}

// mostPairs is how many pairs of a species are judged at most: each takes about 3 kB.
const mostPairs = 200_000

// judge judges every male with every female.
func (l *line) judge() error {
	s := l.stock
	if n := len(l.males) * len(l.females); n > mostPairs {
		return &WishError{fmt.Sprintf("%d males and %d females of %s make %d pairs, and %d can be looked at", len(l.males), len(l.females), l.species, n, mostPairs)}
	}
	l.pairs = pairing.Rank(l.stock.terms(l.wish), l.set, s.breeders(l.males...), s.breeders(l.females...))
	slices.SortStableFunc(l.pairs, func(a, b pairing.Pair) int { // the options in the order of the file
		if c := s.number(a.Female) - s.number(b.Female); c != 0 {
			return c
		}
		return s.number(a.Male) - s.number(b.Male)
	})
	l.choose(func(p pairing.Pair) bool { return p.Verdict.Allowed() && !l.unwished(p) })
	return nil
}

// choose takes some of the pairs as options, and the limits on them.
func (l *line) choose(fit func(pairing.Pair) bool) {
	l.options, l.limits = nil, nil
	for i, p := range l.pairs {
		if fit(p) {
			l.options = append(l.options, i)
		}
	}
	l.limits = append(l.limits, l.uses(func(p pairing.Pair) string { return p.Male }, l.maleUses)...)
	l.limits = append(l.limits, l.uses(func(p pairing.Pair) string { return p.Female }, l.femaleUses)...)
	for _, want := range l.wish.Want {
		if at := l.optionsThat(func(p pairing.Pair) bool { return isPair(p, want) }); len(at) > 0 {
			l.limits = append(l.limits, pairing.Limit{Name: want[0] + " × " + want[1] + " is wanted", Options: at, AtLeast: 1, AtMost: 1})
		}
	}
	for _, g := range l.wish.Goals {
		if l.concerns(g) {
			at := l.optionsThat(func(p pairing.Pair) bool { return l.serves(p, g) })
			l.limits = append(l.limits, pairing.Limit{Name: g.String(), Options: at, AtLeast: g.Pairings, AtMost: pairing.NoLimit})
		}
	}
}

// concerns reports whether a goal is about pairs of this line, be they allowed or not.
func (l *line) concerns(g Goal) bool {
	return l.species == g.Of || slices.ContainsFunc(l.pairs, func(p pairing.Pair) bool { return l.serves(p, g) })
}

// serves reports whether a pair counts for a goal.
func (l *line) serves(p pairing.Pair, g Goal) bool {
	return g.Of == l.species || g.Of == l.stock.animal(l.stock.number(p.Female)).Line
}

func (l *line) optionsThat(fits func(pairing.Pair) bool) []int {
	var at []int
	for o, i := range l.options {
		if fits(l.pairs[i]) {
			at = append(at, o)
		}
	}
	return at
}

func (l *line) unwished(p pairing.Pair) bool {
	return l.wish.leavesOut(p.Male) || l.wish.leavesOut(p.Female) ||
		slices.ContainsFunc(l.wish.Without, func(out [2]string) bool { return isPair(p, out) })
}

// leavesOut reports whether an animal is not to be used at all.
func (w Wish) leavesOut(id string) bool { return slices.Contains(w.Without, [2]string{id, ""}) }

func isPair(p pairing.Pair, ids [2]string) bool {
	return p.Male == ids[0] && p.Female == ids[1] || p.Male == ids[1] && p.Female == ids[0]
}

// maleUses limits how often a male is used.
func (l *line) maleUses(id string) pairing.Limit {
	return pairing.Limit{Name: id + " is used at most " + times(l.wish.MaleUses), AtMost: l.wish.MaleUses}
}

// femaleUses limits how often a female is used, by the clutches too that she may still lay.
func (l *line) femaleUses(id string) pairing.Limit {
	most, rules := l.wish.FemaleUses, l.stock.terms(l.wish).Rules
	if rules.ClutchesASeason > 0 && !slices.Contains(rules.Relaxed, pairing.RuleClutches) {
		laid := len(l.stock.animal(l.stock.number(id)).Recent(l.stock.Terms.On))
		if left := rules.ClutchesASeason - laid; left > 0 && left < most {
			return pairing.Limit{Name: fmt.Sprintf("%s laid %s within 12 months and may lay %d", id, counted(laid, "clutch"), rules.ClutchesASeason), AtMost: left}
		}
	}
	return pairing.Limit{Name: id + " is used at most " + times(most), AtMost: most}
}

// uses limits how often each animal is used.
func (l *line) uses(id func(pairing.Pair) string, most func(string) pairing.Limit) []pairing.Limit {
	var out []pairing.Limit
	place := make(map[string]int)
	for o, i := range l.options {
		who := id(l.pairs[i])
		at, known := place[who]
		if !known {
			at = len(out)
			place[who] = at
			out = append(out, most(who))
		}
		out[at].Options = append(out[at].Options, o)
	}
	return out
}

// refusals gives what refuses a pair.
func refusals(v pairing.Verdict) []pairing.Finding {
	var out []pairing.Finding
	for _, f := range v.Findings {
		if f.Severity == pairing.Refuse {
			out = append(out, f)
		}
	}
	return out
}

// choice is what there is to choose from, with exactly so many pairings.
func (l *line) choice(count int) pairing.Choice {
	young := max(1, count*l.wish.Young)
	c := pairing.Choice{Pool: l.set, Young: young, Weight: l.weight(young)}
	all := make([]int, len(l.options))
	for o, i := range l.options {
		all[o] = o
		p := l.pairs[i]
		c.Options = append(c.Options, pairing.Option{
			Sires: []int{l.stock.number(p.Male)}, Dams: []int{l.stock.number(p.Female)},
			MinYoung: 1, MaxYoung: l.wish.mostYoung(),
		})
	}
	c.Limits = append(slices.Clone(l.limits), pairing.Limit{Name: pairings(count), Options: all, AtLeast: count, AtMost: count})
	return c
}

// weight gives what the inbreeding of so many young weighs.
func (l *line) weight(young int) float64 {
	if l.wish.Apart {
		return pairing.Ahead(len(l.pool)+young, young)
	}
	return l.wish.Weight
}
