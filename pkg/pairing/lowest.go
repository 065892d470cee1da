package pairing

import (
	"math"
	"slices"
)

// lowest is where a tangent is lowest in a node.
type lowest struct {
	value    float64 // +Inf when the node has too few young
	marginal float64 // cost of the last young; -Inf when there was no choice
	at       point
	plan     []int32 // the same in whole young; the last option may have too few
}

// lowest finds the mixture of plans with the right number of young, and apart from
// prices whatever the limits say, at which t is smallest in a node.
func (s *search) lowest(t *tangent, n *node) lowest {
	low := lowest{value: t.constant, marginal: math.Inf(-1), at: newPoint(len(n.lo)), plan: slices.Clone(n.lo)}
	left := int32(s.young)
	for i, lo := range n.lo {
		if lo > 0 {
			left -= lo
			low.value += t.of(int32(i), lo)
			low.at.set(i, float64(lo), 1)
		}
	}
	for _, x := range s.stretches(t, n, int(left)) {
		if left <= 0 {
			break
		}
		young := min(left, x.to-x.from)
		left -= young
		part := float64(young) / float64(x.to-x.from)
		low.plan[x.option] += young
		low.value += float64(young) * x.cost
		low.marginal = x.cost
		low.at.young[x.option] += float64(young)
		low.at.square[x.option] += part * (float64(x.to)*float64(x.to) - float64(x.from)*float64(x.from))
		if x.from == 0 {
			low.at.chosen[x.option] = part
		}
	}
	if left != 0 {
		low.value = math.Inf(1)
	}
	return low
}

// stretch is from so many young of an option to so many more, and what each of these
// costs. Stretches of an option follow each other with rising cost.
type stretch struct {
	option, from, to int32
	cost             float64
}

// stretches gives the so many cheapest of all options in a node, the cheapest first: the
// lower edge of what an option may cost. They are good until the next call.
func (s *search) stretches(t *tangent, n *node, most int) []stretch {
	all := s.room[:0]
	for i := range n.lo {
		p := int32(i)
		v := n.lo[p]
		if n.undecided(p) {
			first := stretch{p, 0, s.least[p], math.Inf(1)}
			for to := s.least[p]; to <= n.hi[p]; to++ {
				if cost := t.of(p, to) / float64(to); cost < first.cost {
					first.to, first.cost = to, cost
				}
			}
			all = append(all, first)
			v = first.to
		}
		for ; v < n.hi[p]; v++ {
			all = append(all, stretch{p, v, v + 1, t.slope[p] + t.bend[p]*float64(2*v+1)})
		}
	}
	s.room = all
	all = cheapest(all, most)
	slices.SortFunc(all, func(a, b stretch) int {
		if a.before(b) {
			return -1
		}
		return 1
	})
	return all
}

// before is the order of cost, and else that of the options; no two stretches are the same.
func (x stretch) before(y stretch) bool {
	if x.cost != y.cost {
		return x.cost < y.cost
	}
	if x.option != y.option {
		return x.option < y.option
	}
	return x.from < y.from
}

// cheapest moves the so many cheapest to the front and gives these, in no order (Hoare
// 1961, Communications of the ACM 4:321).
func cheapest(all []stretch, most int) []stretch {
	for low, high := 0, len(all); low < most && most < high; {
		middle := all[low+(high-low)/2]
		i, j := low, high-1
		for i <= j {
			for all[i].before(middle) {
				i++
			}
			for middle.before(all[j]) {
				j--
			}
			if i <= j {
				all[i], all[j] = all[j], all[i]
				i, j = i+1, j-1
			}
		}
		switch {
		case most <= j+1:
			high = j + 1
		case most >= i:
			low = i
		default:
			return all[:most]
		}
	}
	return all[:min(max(0, most), len(all))]
}
