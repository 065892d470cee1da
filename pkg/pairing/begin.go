package pairing

import (
	"math"
	"slices"
)

// begin looks for a good plan to compare others with: young are added one step
// at a time where they cost least and leave a plan, and then moved, and mates exchanged, as
// long as that helps.
func (s *search) begin(root *node) {
	n := root.clone()
	for {
		p, ok := s.cheapest(n)
		if !ok {
			break
		}
		more := n.clone()
		more.lo[p] = max(n.lo[p]+1, s.least[p])
		if s.tighten(more) {
			n = more
			continue
		}
		n.hi[p] = n.lo[p]
		if !s.tighten(n) {
			return
		}
	}
	y := n.lo
	if !s.keeps(y) {
		return
	}
	for range 1000 {
		s.offer(y)
		if !s.move(y) && !s.remate(y) {
			break
		}
	}
}

// cheapest gives the option of which another young, or its first ones, costs
// least for each.
func (s *search) cheapest(n *node) (best int32, ok bool) {
	z := make([]float64, len(n.lo))
	for p, lo := range n.lo {
		z[p] = float64(lo)
	}
	_, kc := s.scoring.carried(z)
	least := math.Inf(1)
	for i := range n.lo {
		p := int32(i)
		if n.lo[p] >= n.hi[p] {
			continue
		}
		more := 1.0
		if n.lo[p] == 0 {
			more = float64(s.least[p])
		}
		cost := s.scoring.slope(i, z[p], kc) + more*s.scoring.bend(i, i)
		if cost < least {
			best, least, ok = p, cost, true
		}
	}
	return best, ok
}

// bend gives half the change of the slope of option p with the young of option q.
func (s *scoring) bend(p, q int) float64 {
	sum := 0.0
	for _, a := range s.shares[p] {
		for _, b := range s.shares[q] {
			sum += a.part * b.part * s.kin[a.parent][b.parent]
		}
	}
	if p == q {
		sum += s.square[p]
	}
	return sum
}

// move gives young of one option to another, one of them or all, in the way that
// saves most, and reports whether there was one.
func (s *search) move(y []int32) bool {
	z := make([]float64, len(y))
	for p, n := range y {
		z[p] = float64(n)
	}
	_, kc := s.scoring.carried(z)
	used := s.used(y)
	type step struct{ from, to, young int32 }
	var best step
	most := slack
	for from := range y {
		if y[from] == 0 {
			continue
		}
		for to := range y {
			if to == from {
				continue
			}
			for _, young := range [2]int32{1, y[from]} {
				if !s.mayMove(y, used, int32(from), int32(to), young) {
					continue
				}
				h := float64(young)
				saved := h*(s.scoring.slope(from, z[from], kc)-s.scoring.slope(to, z[to], kc)) -
					h*h*(s.scoring.bend(from, from)+s.scoring.bend(to, to)-2*s.scoring.bend(from, to))
				if saved > most {
					best, most = step{int32(from), int32(to), young}, saved
				}
			}
		}
	}
	y[best.from] -= best.young
	y[best.to] += best.young
	return best.young > 0
}

// used gives how many options of each limit are chosen.
func (s *search) used(y []int32) []int {
	used := make([]int, len(s.limits))
	for l, limit := range s.limits {
		for _, p := range limit.options {
			if y[p] > 0 {
				used[l]++
			}
		}
	}
	return used
}

func (s *search) mayMove(y []int32, used []int, from, to, young int32) bool {
	left, had := y[from]-young, y[to]
	if left != 0 && left < s.least[from] || had+young < s.least[to] || had+young > s.most[to] {
		return false
	}
	if left > 0 && had > 0 {
		return true
	}
	if had == 0 {
		for _, l := range s.limitsOf[to] {
			both := left == 0 && slices.Contains(s.limitsOf[from], l)
			if !both && used[l] >= s.limits[l].most {
				return false
			}
		}
	}
	if left == 0 {
		for _, l := range s.limitsOf[from] {
			both := had == 0 && slices.Contains(s.limitsOf[to], l)
			if !both && used[l] <= s.limits[l].least {
				return false
			}
		}
	}
	return true
}
