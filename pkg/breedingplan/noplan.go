package breedingplan

import (
	"fmt"
	"math/bits"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/pairing"
)

// possible looks for wishes that no plan can grant, and for a room in which no
// pair is left at all.
func possible(lines []*line, w Wish) error {
	for _, want := range w.Want {
		if err := grantable(lines, want); err != nil {
			return err
		}
	}
	if slices.ContainsFunc(lines, func(l *line) bool { return len(l.options) > 0 }) {
		return attainable(lines, w)
	}
	if len(lines) == 0 {
		return &NoPlanError{Blocking: []string{"no animal is in the room"}}
	}
	if len(lines) == 1 {
		return lines[0].noPairs()
	}
	all := &NoPlanError{}
	for _, l := range lines {
		all.Blocking = append(all.Blocking, l.species+": "+l.noPairs().why())
	}
	return all
}

// attainable gives an error for a goal that no two animals in the room serve.
func attainable(lines []*line, w Wish) error {
	for _, g := range w.Goals {
		if !slices.ContainsFunc(lines, func(l *line) bool { return l.concerns(g) }) {
			return &NoPlanError{Blocking: []string{g.String(), "no male and female in the room serve it"}}
		}
	}
	return nil
}

// grantable gives an error for a wanted pair that a rule refuses.
func grantable(lines []*line, want [2]string) error {
	wanted := want[0] + " × " + want[1] + " is wanted"
	for _, l := range lines {
		for _, p := range l.pairs {
			if !isPair(p, want) {
				continue
			}
			if l.unwished(p) {
				return &NoPlanError{Species: l.species, Blocking: []string{wanted, "and left out"}}
			}
			if against := refusals(p.Verdict); len(against) > 0 {
				e := &NoPlanError{Species: l.species, Blocking: []string{wanted, against[0].Message}}
				if len(against) > 1 {
					e.Most = fmt.Sprintf("%d more rules refuse it too", len(against)-1)
				}
				return e
			}
			return nil
		}
	}
	return &NoPlanError{Blocking: []string{wanted, "they are not a male and a female of one species that are both in the room"}}
}

// unwished stands among the rules for what is left out.
const unwished = pairing.Rule("left out as asked")

// noPairs says why a line has no pair: the smallest set of rules of which each
// pair breaks one, and the rule that most pairs break.
func (l *line) noPairs() *NoPlanError {
	e := &NoPlanError{Species: l.species}
	if len(l.pairs) == 0 {
		e.Blocking = []string{l.noSexes()}
		return e
	}
	var rules []pairing.Rule // in the order in which they are met
	broken := make([]uint, len(l.pairs))
	for i, p := range l.pairs {
		var by []pairing.Rule
		if l.unwished(p) {
			by = append(by, unwished)
		}
		for _, f := range refusals(p.Verdict) {
			by = append(by, f.Rule)
		}
		for _, rule := range by {
			at := slices.Index(rules, rule)
			if at < 0 {
				at = len(rules)
				rules = append(rules, rule)
			}
			broken[i] |= 1 << at
		}
	}
	e.Blocking = words(fewest(rules, broken))
	most, rule := 0, 0
	for at := range rules {
		n := 0
		for _, b := range broken {
			n += int(b >> at & 1)
		}
		if n > most {
			most, rule = n, at
		}
	}
	e.Most = fmt.Sprintf("%s alone refuses %d of %d pairs", rules[rule], most, len(l.pairs))
	return e
}

// fewest gives the smallest set of rules of which each pair breaks at least one.
func fewest(rules []pairing.Rule, broken []uint) []pairing.Rule {
	best := uint(1)<<len(rules) - 1
	for set := range uint(1) << len(rules) {
		if bits.OnesCount(set) < bits.OnesCount(best) && !slices.ContainsFunc(broken, func(b uint) bool { return b&set == 0 }) {
			best = set
		}
	}
	var out []pairing.Rule
	for at, rule := range rules {
		if best>>at&1 == 1 {
			out = append(out, rule)
		}
	}
	return out
}

// noSexes says which sex is missing.
func (l *line) noSexes() string {
	males, females := 0, 0
	for _, i := range l.here {
		switch l.stock.animal(i).Sex {
		case pairing.Male:
			males++
		case pairing.Female:
			females++
		}
	}
	return fmt.Sprintf("of %d in the room %d are known to be male and %d female, and a pairing takes one of each", len(l.here), males, females)
}

// blocked names the smallest set of rules and wishes that leave no plan.
func (l *line) blocked(season int) error {
	e := &NoPlanError{Species: l.species}
	if len(l.pairs) == 0 {
		e.Blocking = append(l.wishes(), l.noSexes())
		return e
	}
	all := *l
	all.choose(func(pairing.Pair) bool { return true })
	all.limits = append(l.ruledOut(), all.limits...)
	c := all.choice(1)
	last := len(c.Limits) - 1
	c.Limits[last] = pairing.Limit{Name: "at most " + pairings(season), Options: c.Limits[last].Options, AtMost: season}
	for o := range c.Options {
		c.Options[o].MaxYoung = pairing.NoLimit
	}
	c.Young = max(1, len(c.Options)) // room for one from each
	limits, ok := c.Blocking()
	if !ok || len(limits) == 0 {
		e.Blocking = append(l.wishes(), "the animals and rules do not leave so many pairings, or not these")
		return e
	}
	for _, at := range limits {
		e.Blocking = append(e.Blocking, c.Limits[at].Name)
	}
	e.Blocking = together(e.Blocking)
	return e
}

// together puts limits that say the same of many animals into one.
func together(names []string) []string {
	const some = 4
	split := func(name string) (who, what string, ok bool) { return strings.Cut(name, " is used at most ") }
	like := make(map[string][]string)
	for _, name := range names {
		if who, what, ok := split(name); ok {
			like[what] = append(like[what], who)
		}
	}
	var out []string
	for _, name := range names {
		_, what, ok := split(name)
		all := like[what]
		switch {
		case !ok || len(all) <= some:
			out = append(out, name)
		case name == all[0]+" is used at most "+what:
			out = append(out, fmt.Sprintf("%s and %d more are used at most %s each", strings.Join(all[:some-1], ", "), len(all)-some+1, what))
		}
	}
	return out
}

// wishes names what has to be in a plan.
func (l *line) wishes() []string {
	var out []string
	for _, x := range l.limits {
		if x.AtLeast > 0 {
			out = append(out, x.Name)
		}
	}
	return out
}

// tooFew is for wishes that can be granted for each species, but not with so many pairings
// for all. A species is not named when the others alone need too many.
func tooFew(lines []*line, most int) *NoPlanError {
	needs := make([]int, len(lines))
	total := 0
	for i, l := range lines {
		needs[i] = slices.IndexFunc(l.sweep, func(o pairing.Outcome) bool { return len(o.Plans) > 0 })
		total += needs[i]
	}
	e := &NoPlanError{Blocking: []string{"at most " + pairings(most)}}
	for i, l := range lines {
		if total-needs[i] > most {
			total -= needs[i]
			continue
		}
		e.Blocking = append(e.Blocking, l.wishes()...)
	}
	return e
}

// ruledOut gives a limit for each rule, on the pairs that it refuses, and one for the pairs
// that are left out as asked.
func (l *line) ruledOut() []pairing.Limit {
	var out []pairing.Limit
	place := make(map[pairing.Rule]int)
	add := func(rule pairing.Rule, pair int) {
		at, known := place[rule]
		if !known {
			at = len(out)
			place[rule] = at
			out = append(out, pairing.Limit{})
		}
		if n := len(out[at].Options); n == 0 || out[at].Options[n-1] != pair {
			out[at].Options = append(out[at].Options, pair)
		}
	}
	for i, p := range l.pairs {
		for _, f := range refusals(p.Verdict) {
			add(f.Rule, i)
		}
		if l.unwished(p) {
			add(unwished, i)
		}
	}
	for rule, at := range place {
		out[at].Name = fmt.Sprintf("%s, which refuses %d of %d pairs", rule, len(out[at].Options), len(l.pairs))
	}
	return out
}
