package pairing

import (
	"fmt"
	"slices"
)

// bestThenOthers proves the best plan first, and then looks for others. Where
// animals are alike the best is soon proven, for all its images are one plan; the
// next best that is another can take far longer. Of the steps that are allowed it may take
// as many as the best took, or a sixth of all.
func (s *search) bestThenOthers() Outcome {
	wanted, allowed := s.effort.Plans, s.effort.Nodes
	s.effort.Plans = 1
	o := s.run()
	if len(o.Plans) == 0 {
		return o
	}
	o.Alike = s.alike()
	s.effort.Plans = wanted
	if allowed > 0 {
		s.effort.Nodes = min(allowed, s.nodes+max(s.nodes, allowed/6))
	}
	s.stopped = false
	root := s.root()
	s.tighten(root)
	s.begin(root) // which passes by others
	s.vary()
	left := s.tree(root)
	o.Plans, o.Nodes, o.OthersProven = s.plans, s.nodes, !s.stopped
	o.Proven = o.Proven || !s.stopped
	o.Bound = min(max(o.Bound, left), s.plans[0].Score)
	return o
}

// alike gives the animals that are interchangeable.
func (s *search) alike() (out [][]int) {
	for _, class := range s.twins.classes {
		var places []int
		for _, a := range class {
			places = append(places, s.scoring.parents[a])
		}
		out = append(out, places)
	}
	return out
}

// vary looks at the plans that differ from the best in one pairing, those that look
// alike once, so that there are soon others to compare with.
func (s *search) vary() {
	const most = 1000 // plans
	best := s.plans[0]
	y := make([]int32, len(s.most))
	for _, pick := range best.Picks {
		y[pick.Option] = int32(pick.Young)
	}
	looks := s.twins.looks(options(best))
	look := func(a int32) string {
		if l, used := looks[a]; used {
			return fmt.Sprint("used ", l)
		}
		if c := s.twins.class[a]; c >= 0 {
			return fmt.Sprint("class ", c)
		}
		return fmt.Sprint(a)
	}
	pair := func(p int32) string {
		return fmt.Sprint(look(s.twins.sire[p]), " × ", look(s.twins.dam[p]))
	}
	used := s.used(y)
	tried := make(map[string]bool)
	for _, from := range options(best) {
		for to := range int32(len(y)) {
			kind := fmt.Sprint(pair(from), " to ", pair(to))
			if y[to] > 0 || tried[kind] || !s.mayMove(y, used, from, to, y[from]) {
				continue
			}
			if tried[kind] = true; len(tried) > most {
				return
			}
			other := slices.Clone(y)
			other[from], other[to] = 0, y[from]
			s.offer(other)
		}
	}
}
