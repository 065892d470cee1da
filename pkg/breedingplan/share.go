package breedingplan

import (
	"math"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/pairing"
)

// share gives each line a number of pairings, most in all, so that the sum of
// the scores is lowest. Species have nothing in common but that number, so that
// the best plan of each for each number is all that has to be known; and of most
// numbers a bound says enough. Those with which the sum could be lowest are searched. There
// is at least one pairing, for whoever asks wants to breed, and no more than help.
//
// It is proven when no other way to share can have a lower sum, though some of the
// plans that it takes for the best may not be.
func share(lines []*line, most int) (counts []int, proven bool, err error) {
	for _, l := range lines {
		if err := l.sweepCounts(most); err != nil {
			return nil, false, err
		}
	}
	for {
		best, low := cheapest(lines, most, found), cheapest(lines, most, possibly)
		if best.counts != nil && low.sum >= best.sum-1e-9 {
			return best.counts, true, nil
		}
		again := false
		for i, count := range low.counts {
			again = !lines[i].stopped() && lines[i].search(count) || again
		}
		switch {
		case again:
		case best.counts == nil:
			return nil, false, tooFew(lines, most)
		default:
			return best.counts, false, nil
		}
	}
}

// found is what the best plan that is known is worth.
func found(o pairing.Outcome) (float64, bool) {
	if len(o.Plans) == 0 {
		return 0, false
	}
	return o.Plans[0].Score, true
}

// possibly is what a plan can be worth at best.
func possibly(o pairing.Outcome) (float64, bool) {
	if o.Proven && len(o.Plans) > 0 {
		return o.Plans[0].Score, true
	}
	return o.Bound, !math.IsInf(o.Bound, 1)
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

// room gives how many pairings the animals of some options can have at most.
func (l *line) room(fit func(pairing.Pair) bool) int {
	males, females := 0, 0
	seen := make(map[string]bool)
	for _, at := range l.optionsThat(fit) {
		p := l.pairs[l.options[at]]
		if !seen[p.Male] {
			seen[p.Male] = true
			males += l.maleUses(p.Male).AtMost
		}
		if !seen[p.Female] {
			seen[p.Female] = true
			females += l.femaleUses(p.Female).AtMost
		}
	}
	return min(males, females)
}

// short reports whether a goal asks for more pairings than its animals can have.
func (l *line) short() bool {
	return slices.ContainsFunc(l.wish.Goals, func(g Goal) bool {
		return l.concerns(g) && l.room(func(p pairing.Pair) bool { return l.serves(p, g) }) < g.Pairings
	})
}

// alwaysSwept are the numbers of pairings that are looked at also when the search is ended:
// so many take no time, but where there are very many animals.
const alwaysSwept = 8

// sweepCounts finds a plan and a bound for every number of pairings.
func (l *line) sweepCounts(season int) error {
	if l.short() {
		return l.blocked(season)
	}
	most := min(season, len(l.options), l.room(func(pairing.Pair) bool { return true }))
	needed := slices.ContainsFunc(l.limits, func(x pairing.Limit) bool { return x.AtLeast > 0 })
	none := pairing.Outcome{Proven: true, Bound: math.Inf(1)}
	if !needed {
		none.Plans = []pairing.Plan{{Score: 1 - l.set.GeneDiversity(), MeanKinship: 1 - l.set.GeneDiversity()}}
	}
	l.sweep, l.searched = append(l.sweep[:0], none), map[int]bool{0: true}
	found := false
	for count := 1; count <= most; count++ {
		if found && count > alwaysSwept && l.stopped() {
			l.sweep, l.searched[count] = append(l.sweep, pairing.Outcome{Bound: math.Inf(-1)}), true
			break // nothing is known of so many pairings, and of more
		}
		l.sweep = append(l.sweep, l.choice(count).Best(pairing.Effort{Nodes: 1, Stop: l.wish.Stop}))
		if len(l.sweep[count].Plans) == 0 {
			l.search(count)
		}
		o := l.sweep[count]
		if len(o.Plans) == 0 && o.Proven && found {
			break // no more pairings fit
		}
		found = found || len(o.Plans) > 0
	}
	if needed && !found {
		return l.blocked(season)
	}
	return nil
}

// search looks for the best plan with so many pairings, and reports whether that was not
// done before.
func (l *line) search(count int) bool {
	o := l.sweep[count]
	if o.Proven || l.searched[count] {
		return false
	}
	l.searched[count] = true
	more := l.choice(count).Best(pairing.Effort{Nodes: l.nodes() / 4, Stop: l.wish.Stop})
	more.Bound = max(more.Bound, o.Bound)
	l.sweep[count] = more
	return true
}

// stopped reports whether whoever asked wants no more than what is found by now.
func (l *line) stopped() bool { return l.wish.Stop != nil && l.wish.Stop() }

// nodes is the effort for one number of pairings: with many pairs a partial plan takes
// longer.
func (l *line) nodes() int {
	const usual = 50 // pairs
	return max(4, l.wish.Nodes*usual/max(usual, len(l.options)))
}
