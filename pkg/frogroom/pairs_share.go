package frogroom

import (
	"fmt"
	"math"
	"math/bits"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/pairing"
)

// possible looks for wishes that no plan can grant, and for a room in which no
// pair is left at all.
func possible(lines []*line, w PairsWish) error {
	for _, want := range w.Want {
		if err := grantable(lines, want); err != nil {
			return err
		}
	}
	if slices.ContainsFunc(lines, func(l *line) bool { return len(l.options) > 0 }) {
		return attainable(lines, w)
	}
	if len(lines) == 0 {
		return &NoPairsError{Blocking: []string{"no animal is in the room"}}
	}
	if len(lines) == 1 {
		return lines[0].noPairs()
	}
	all := &NoPairsError{}
	for _, l := range lines {
		all.Blocking = append(all.Blocking, l.species+": "+joined(l.noPairs().Blocking))
	}
	return all
}

// attainable gives an error for a goal that no two animals in the room serve.
func attainable(lines []*line, w PairsWish) error {
	for _, g := range w.Goals {
		if !slices.ContainsFunc(lines, func(l *line) bool { return l.concerns(g) }) {
			return &NoPairsError{Blocking: []string{g.String(), "no male and female in the room serve it"}}
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
				return &NoPairsError{Species: l.species, Blocking: []string{wanted, "and left out"}}
			}
			if against := refusals(p.Verdict); len(against) > 0 {
				e := &NoPairsError{Species: l.species, Blocking: []string{wanted, against[0].Message}}
				if len(against) > 1 {
					e.Most = fmt.Sprintf("%d more rules refuse it too", len(against)-1)
				}
				return e
			}
			return nil
		}
	}
	return &NoPairsError{Blocking: []string{wanted, "they are not a male and a female of one species that are both in the room"}}
}

// unwished stands among the rules for what is left out.
const unwished = pairing.Rule("left out as asked")

// noPairs says why a line has no pair: the smallest set of rules of which each
// pair breaks one, and the rule that most pairs break.
func (l *line) noPairs() *NoPairsError {
	e := &NoPairsError{Species: l.species}
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
		switch sexOf(l.room.Ancestry.animal(i).Sex) {
		case pairing.Male:
			males++
		case pairing.Female:
			females++
		}
	}
	return fmt.Sprintf("of %d in the room %d are known to be male and %d female, and a pairing takes one of each", len(l.here), males, females)
}

// share gives each line a number of pairings, most in all, so that the sum of
// the scores is lowest. Species have nothing in common but that number, so that
// the best plan of each for each number is all that has to be known. There is at
// least one pairing, for whoever asks wants to breed, and no more than help.
//
// It is proven when no other way to share can have a lower sum, though some of the
// plans that it takes for the best may not be.
func share(lines []*line, most int) (counts []int, proven bool, err error) {
	for _, l := range lines {
		if err := l.sweepCounts(most); err != nil {
			return nil, false, err
		}
	}
	best := cheapest(lines, most, func(o pairing.Outcome) (float64, bool) {
		if len(o.Plans) == 0 {
			return 0, false
		}
		return o.Plans[0].Score, true
	})
	if best.counts == nil {
		return nil, false, &NoPairsError{Blocking: []string{"together the wishes need more than " + pairings(most)}}
	}
	low := cheapest(lines, most, func(o pairing.Outcome) (float64, bool) {
		if o.Proven && len(o.Plans) > 0 {
			return o.Plans[0].Score, true
		}
		return o.Bound, !math.IsInf(o.Bound, 1)
	})
	return best.counts, low.sum >= best.sum-1e-9, nil
}

// sharing is the pairings of each line, and the sum of what they are worth.
type sharing struct {
	sum    float64
	total  int
	counts []int
}

// cheapest gives the sharing with the lowest sum, line by line: for each number of
// pairings so far only the best way counts.
func cheapest(lines []*line, most int, worth func(pairing.Outcome) (float64, bool)) sharing {
	ways := map[int]sharing{0: {}} // by pairings so far
	for _, l := range lines {
		next := make(map[int]sharing)
		for _, before := range sortedKeys(ways) {
			w := ways[before]
			for count, outcome := range l.sweep {
				x, ok := worth(outcome)
				total := before + count
				if !ok || total > most {
					continue
				}
				if old, known := next[total]; !known || w.sum+x < old.sum-1e-12 {
					next[total] = sharing{w.sum + x, total, append(slices.Clone(w.counts), count)}
				}
			}
		}
		ways = next
	}
	var best sharing
	for _, total := range sortedKeys(ways) {
		if w := ways[total]; best.counts == nil || best.total == 0 || w.sum < best.sum-1e-12 {
			best = w
		}
	}
	return best
}

func sortedKeys[V any](m map[int]V) []int {
	keys := make([]int, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

// sweepCounts finds the best plan for every number of pairings.
func (l *line) sweepCounts(season int) error {
	most := min(season, len(l.options))
	needed := slices.ContainsFunc(l.limits, func(x pairing.Limit) bool { return x.AtLeast > 0 })
	none := pairing.Outcome{Proven: true, Bound: math.Inf(1)}
	if !needed {
		none.Plans = []pairing.Plan{{Score: 1 - l.set.GeneDiversity(), MeanKinship: 1 - l.set.GeneDiversity()}}
	}
	l.sweep = append(l.sweep[:0], none)
	found := false
	for count := 1; count <= most; count++ {
		o := l.choice(count).Best(pairing.Effort{Nodes: l.wish.Nodes / 4, Stop: l.wish.Stop})
		l.sweep = append(l.sweep, o)
		if len(o.Plans) == 0 && found {
			break // no more pairings fit
		}
		found = found || len(o.Plans) > 0
	}
	if needed && !found {
		return l.blocked(season)
	}
	return nil
}

// blocked names the smallest set of rules and wishes that leave no plan.
func (l *line) blocked(season int) error {
	e := &NoPairsError{Species: l.species}
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
		e.Blocking = []string{"the number of young to hold back does not fit the pairings"}
		return e
	}
	for _, at := range limits {
		e.Blocking = append(e.Blocking, c.Limits[at].Name)
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
