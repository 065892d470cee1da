package pairing

import "slices"

// climb improves a tangent until it cuts the node off or the effort is spent, and gives the
// best one with where it is lowest. It goes from the best tangent so far, by
// what the mean of the plans that were lowest before breaks, which is steadier than
// what the last of them does (Barahona and Anbil 2000, Mathematical Programming 87:385).
func (s *search) climb(n *node, t *tangent, orbit []int32, effort effortPerNode) (*tangent, lowest) {
	low := s.lowest(t, n)
	last, y := t, low.at.even(orbit)
	pace := effort.pace
	for range effort.steps {
		if low.value >= s.cutoff() {
			break
		}
		z := last.z.towards(y, s.way(last, y))
		last = s.step(t, z, pace*s.gap(low.value))
		now := s.lowest(last, n)
		s.offer(now.plan)
		y = now.at.even(orbit)
		if now.value > low.value {
			t, low = last, now
			pace *= faster
		} else {
			pace *= slower
		}
	}
	return t, low
}

// effortPerNode is how often the bound of a node is improved, and by what part of
// the way that would just close the gap the prices follow at first.
type effortPerNode struct {
	steps int
	pace  float64
}

// The root is where all other bounds begin: many steps. Below it a few do (found by
// trial on random choices, as is how the pace changes when a step helps or not).
var (
	atRoot = effortPerNode{300, 0.5}
	below  = effortPerNode{8, 0.7}
)

const faster, slower = 1.2, 0.95

// gap is how far a bound is from the score from which plans are of no interest.
func (s *search) gap(value float64) float64 {
	if len(s.plans) < s.effort.Plans {
		return max(slack, 0.01*max(value, -value))
	}
	return max(slack, s.cutoff()-value)
}

// way gives how far from t.z to y the score, prices included, is least (Frank and
// Wolfe 1956, Naval Research Logistics 3:95).
func (s *search) way(t *tangent, y point) float64 {
	step := make([]float64, len(y.young))
	down := 0.0
	for p := range step {
		step[p] = y.young[p] - t.z.young[p]
		down -= t.slope[p]*step[p] + t.entry[p]*(y.chosen[p]-t.z.chosen[p]) + t.bend[p]*(y.square[p]-t.z.square[p])
	}
	c, kc := s.scoring.carried(step)
	curve := 0.0
	for a := range c {
		curve += c[a] * (kc[a] - t.moved[a]*c[a])
	}
	if curve <= 0 {
		return 1
	}
	return min(1, max(0, down/(2*curve)))
}

// step gives the tangent at z. Prices and shares follow what z has too much of, from
// those of t, by a step that would just close the gap (Held, Wolfe and Crowder
// 1974, Mathematical Programming 6:62).
func (s *search) step(t *tangent, z point, gap float64) *tangent {
	price, over := slices.Clone(t.price), s.over(t, z)
	if norm := dot(over, over); norm > rounding {
		for l, x := range over {
			before := price[l]
			price[l] = min(max(before+gap/norm*x, -s.dearest), s.dearest)
			if before*price[l] < 0 {
				price[l] = 0
			}
		}
	}
	moved, short := slices.Clone(t.moved), s.short(z)
	if norm := dot(short, short); norm > rounding {
		for a, x := range short {
			moved[a] = min(max(0, moved[a]+gap/norm*x), s.squares.own[a])
		}
	}
	return s.tangentAt(z, price, moved)
}

// over gives how many pairings z has too many in each limit, or too few, as a negative number.
func (s *search) over(t *tangent, z point) []float64 {
	over := make([]float64, len(s.limits))
	for l, limit := range s.limits {
		sum := 0.0
		for _, p := range limit.options {
			sum += z.chosen[p]
		}
		switch {
		case sum > float64(limit.most) || t.price[l] > 0:
			over[l] = sum - float64(limit.most)
		case limit.least > 0 && (sum < float64(limit.least) || t.price[l] < 0):
			over[l] = sum - float64(limit.least)
		}
	}
	return over
}

// short gives by how much the chord of the square of what each parent gives at z is
// short of the sum of the squares by option.
func (s *search) short(z point) []float64 {
	short := make([]float64, len(s.squares.own))
	given := make([]float64, len(short))
	for p, shares := range s.scoring.shares {
		for _, a := range shares {
			short[a.parent] += a.part * a.part * z.square[p]
			given[a.parent] += a.part * z.young[p]
		}
	}
	for a, c := range given {
		short[a] -= c*c + s.squares.chord(a, c)
	}
	return short
}

func dot(x, y []float64) float64 {
	sum := 0.0
	for i := range x {
		sum += x[i] * y[i]
	}
	return sum
}
