package occupancy

import (
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Load is how much is needed of one resource on one day.
type Load struct {
	On            civil.Date
	Mean          float64
	P10, P50, P90 int     // percentiles: the least number that is enough with this chance
	Over          float64 // chance that more is needed than there is
	chances       []float64
}

// Above gives the chance that more than n are needed.
func (l Load) Above(n int) float64 {
	sum := 0.0
	for k := len(l.chances) - 1; k > n && k >= 0; k-- { // the smallest first
		sum += l.chances[k]
	}
	return min(sum, 1)
}

// Loads gives the load of each resource, in their order, on each day: exactly,
// by convolution; see the package comment. The error is a *[SeasonError].
//
// The cost is O(n) for what is held, added up over courses and days, and for
// each day O(m²) for the m places that the clutches of that day can need
// together.
func Loads(s Season) ([][]Load, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	return s.loads(), nil
}

func (s *Season) loads() [][]Load {
	needs := s.needs()
	all := make([][]Load, len(s.Resources))
	sum := newSum()
	for r, resource := range s.Resources {
		all[r] = make([]Load, s.Days)
		for d := range all[r] {
			sum.clear()
			for _, n := range needs[r] {
				if n.from <= d && d < n.to() {
					sum.add(n.days[d-n.from])
				}
			}
			all[r][d] = newLoad(s.First.Add(d), slices.Clone(sum.chances), resource.Count)
		}
	}
	return all
}

// newLoad sums up a distribution.
func newLoad(on civil.Date, chances []float64, count int) Load {
	l := Load{On: on, chances: chances}
	for n, p := range chances {
		l.Mean += float64(n) * p
	}
	l.P10, l.P50, l.P90 = l.quantile(0.1), l.quantile(0.5), l.quantile(0.9)
	l.Over = l.Above(count)
	return l
}

// quantile gives the least n that is enough with chance p.
func (l Load) quantile(p float64) int {
	sum := 0.0
	for n, q := range l.chances {
		if sum += q; sum >= p-rounding {
			return n
		}
	}
	return len(l.chances) - 1
}
