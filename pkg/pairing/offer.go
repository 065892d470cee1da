package pairing

import (
	"cmp"
	"slices"
)

// offer takes a plan up among the best if it keeps all limits and is good
// enough. Plans with the same pairings but for twins are one: the better of them
// stays.
func (s *search) offer(y []int32) {
	if !s.keeps(y) {
		return
	}
	young := make([]int, len(y))
	for p, n := range y {
		young[p] = int(n)
	}
	plan := s.scoring.plan(young)
	if plan.Score >= s.cutoff() {
		return
	}
	same := slices.IndexFunc(s.plans, func(other Plan) bool { return s.same(plan, other) })
	switch {
	case same >= 0 && plan.Score >= s.plans[same].Score-slack:
		return
	case same >= 0:
		s.plans[same] = plan
	default:
		s.plans = append(s.plans, plan)
	}
	slices.SortStableFunc(s.plans, func(a, b Plan) int { return cmp.Compare(a.Score, b.Score) })
	s.plans = s.plans[:min(len(s.plans), s.effort.Plans)]
}

func samePairings(a, b Plan) bool {
	return slices.EqualFunc(a.Picks, b.Picks, func(x, y Pick) bool { return x.Option == y.Option })
}

// keeps reports whether a plan keeps all limits and has the young that it should.
func (s *search) keeps(y []int32) bool {
	sum := 0
	for p, n := range y {
		if n != 0 && (n < s.least[p] || n > s.most[p]) {
			return false
		}
		sum += int(n)
	}
	if sum != s.young {
		return false
	}
	for _, l := range s.limits {
		chosen := 0
		for _, p := range l.options {
			if y[p] > 0 {
				chosen++
			}
		}
		if chosen < l.least || chosen > l.most {
			return false
		}
	}
	return true
}
