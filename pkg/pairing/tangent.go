package pairing

import (
	"cmp"
	"math"
	"slices"
)

// tangent is a linear function of the young y that no plan within the limits
// scores below. It touches the score, which is convex, at the point z; each limit
// stands in it with a price per pairing over it, which a plan within it never
// pays (Lagrange; Geoffrion 1974, Mathematical Programming Study 2:82). Any z and
// any prices not below 0 give a valid bound; climb looks for good ones.
type tangent struct {
	z        []float64
	price    []float64 // of each limit; of its AtLeast when negative
	constant float64
	slope    []float64
	order    []int32 // options by slope
}

// rate is what a young counts in a limit when each chosen option had its most
// young (for AtMost), or its least (for AtLeast): a plan counts at least, or at most,
// so much.
func (s *search) rate(p int32, price float64) float64 {
	if price < 0 {
		return 1 / float64(s.least[p])
	}
	return 1 / float64(s.most[p])
}

func (s *search) tangentAt(z, price []float64) *tangent {
	t := &tangent{z: z, price: price, slope: make([]float64, len(z)), order: make([]int32, len(z))}
	c, kc := s.scoring.carried(z)
	t.constant = s.scoring.base
	for a := range c {
		t.constant -= c[a] * kc[a]
	}
	for p := range z {
		t.slope[p] = s.scoring.slope(p, z[p], kc)
		t.constant -= s.scoring.square[p] * z[p] * z[p]
		t.order[p] = int32(p)
	}
	for l, limit := range s.limits {
		x := price[l]
		if x == 0 {
			continue
		}
		bound := limit.most
		if x < 0 {
			bound = limit.least
		}
		t.constant -= x * float64(bound)
		for _, p := range limit.options {
			t.slope[p] += x * s.rate(p, x)
		}
	}
	slices.SortFunc(t.order, func(a, b int32) int {
		return cmp.Or(cmp.Compare(t.slope[a], t.slope[b]), cmp.Compare(a, b))
	})
	return t
}

// least fills y with the young that make t smallest within a node's bounds, and
// gives that value and the slope of the dearest young that had a choice. Since every young
// costs its slope, the cheapest are taken.
func (t *tangent) least(n *node, young int, y []int32) (value, marginal float64) {
	left := int32(young)
	value = t.constant
	for p, lo := range n.lo {
		y[p] = lo
		left -= lo
		value += t.slope[p] * float64(lo)
	}
	marginal = math.Inf(-1)
	for _, p := range t.order {
		if left <= 0 {
			break
		}
		if more := min(left, n.hi[p]-n.lo[p]); more > 0 {
			y[p] += more
			left -= more
			value += t.slope[p] * float64(more)
			marginal = t.slope[p]
		}
	}
	if left != 0 {
		return math.Inf(1), marginal
	}
	return value, marginal
}

// climb gives a tangent that may bound better than t: it touches the score between t.z and
// y, where t is smallest, at the lowest point on the way (Frank and Wolfe 1956,
// Naval Research Logistics 3:95), and the prices follow what y has too much
// of (Held, Wolfe and Crowder 1974, Mathematical Programming 6:62), by a step that for that limit alone
// would just close the gap.
func (s *search) climb(t *tangent, y []int32, gap float64) *tangent {
	z := s.towards(t, y)
	price := slices.Clone(t.price)
	over := make([]float64, len(s.limits))
	norm := 0.0
	for l, limit := range s.limits {
		atMost, atLeast := -float64(limit.most), float64(limit.least)
		for _, p := range limit.options {
			n := 0.5*float64(y[p]) + 0.5*z[p]
			atMost += n / float64(s.most[p])
			atLeast -= n / float64(s.least[p])
		}
		switch {
		case atMost > 0 || price[l] > 0:
			over[l] = atMost
		case limit.least > 0 && (atLeast > 0 || price[l] < 0):
			over[l] = -atLeast
		}
		norm += over[l] * over[l]
	}
	if norm > 1e-9 {
		step := gap / norm
		for l, x := range over {
			before := price[l]
			price[l] = min(max(before+step*x, -s.dearest), s.dearest)
			if before*price[l] < 0 {
				price[l] = 0
			}
		}
	}
	return s.tangentAt(z, price)
}

// towards gives the point of least score, prices included, between t.z and y.
func (s *search) towards(t *tangent, y []int32) []float64 {
	step := make([]float64, len(t.z))
	down, curve := 0.0, 0.0
	for p := range step {
		step[p] = float64(y[p]) - t.z[p]
		down -= t.slope[p] * step[p]
		curve += s.scoring.square[p] * step[p] * step[p]
	}
	c, kc := s.scoring.carried(step)
	for a := range c {
		curve += c[a] * kc[a]
	}
	far := 1.0
	if curve > 0 {
		far = min(1, max(0, down/(2*curve)))
	}
	for p := range step {
		step[p] = t.z[p] + far*step[p]
	}
	return step
}
