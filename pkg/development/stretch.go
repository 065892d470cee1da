package development

import "math"

// A stretch is a run of known steps that begins on a day for certain, with
// what was seen of it. Days are counted from its begin. Given that day, what
// went before tells nothing about what comes after; so stretches are solved one
// by one, each exactly.
type stretch struct {
	steps []Distribution
	bounds
}

// bounds are what was seen of a run of steps, in days from its begin.
type bounds struct {
	lo, hi []int // of the day on which each step ends
	closed bool  // the last step ended on the day end
	end    int
}

// masses are chances of days that need not add up to 1; first is the day of
// p[0]. Empty masses mean that nothing is possible.
type masses struct {
	first int
	p     []float64
}

func (m masses) sum() float64 {
	sum := 0.0
	for _, x := range m.p {
		sum += x
	}
	return sum
}

// within gives the part of m from lo to hi, both included.
func (m masses) within(lo, hi int) masses {
	lo, hi = max(lo, m.first), min(hi, m.first+len(m.p)-1)
	if lo > hi {
		return masses{}
	}
	return masses{lo, m.p[lo-m.first : hi-m.first+1]}
}

// forward gives for each step the chance that it ends on each day and that it
// and those before it keep to their bounds.
func (s stretch) forward() []masses {
	ends := make([]masses, len(s.steps))
	begin := masses{0, []float64{1}}
	for i, step := range s.steps {
		if len(begin.p) > 0 {
			sums := masses{begin.first + step.first, convolve(begin.p, step.p)}
			ends[i] = sums.within(s.lo[i], s.hi[i])
		}
		begin = ends[i]
	}
	return ends
}

// backward gives, for each day that ends has for each step, the chance that
// the steps after it keep to theirs.
func (s stretch) backward(ends []masses) [][]float64 {
	chances := make([][]float64, len(ends))
	for i := len(ends) - 1; i >= 0; i-- {
		chances[i] = make([]float64, len(ends[i].p))
		for j := range chances[i] {
			if i == len(ends)-1 {
				chances[i][j] = 1
				continue
			}
			step, next := s.steps[i+1], ends[i+1]
			from := ends[i].first + j + step.first - next.first // of step.p[0], in next.p
			for k := max(0, -from); k < min(len(step.p), len(next.p)-from); k++ {
				chances[i][j] += step.p[k] * chances[i+1][from+k]
			}
		}
	}
	return chances
}

// chance gives how likely it is, before anything was seen, that what was seen
// is at least as far out as it is. For a step that ended on a recorded day this
// is twice the chance of its smaller tail, or of what is within offByOne of it.
func (s stretch) chance(ends []masses) float64 {
	last := ends[len(ends)-1]
	if !s.closed {
		return last.sum()
	}
	early := last.within(ever, s.end+offByOne).sum()
	late := last.within(s.end-offByOne, never).sum()
	return min(1, 2*min(early, late))
}

// solve gives the distribution of the day on which each step ended or will
// end, given all that was seen, and the chance of what was seen. ok is false
// when the steps cannot have gone so; there are no distributions then.
func (s stretch) solve() (days []Distribution, chance float64, ok bool) {
	ends := s.forward()
	chance = s.chance(ends)
	last := len(ends) - 1
	if s.closed {
		ends[last] = ends[last].within(s.end, s.end)
	}
	if ends[last].sum() == 0 {
		return nil, chance, false
	}
	days = make([]Distribution, len(ends))
	for i, later := range s.backward(ends) {
		for j, x := range ends[i].p {
			later[j] *= x
		}
		days[i] = FromMasses(ends[i].first, later)
	}
	return days, chance, true
}

// stall is the chance that [stretch.widened] gives to a step that keeps to
// nothing that the profile knows.
const stall = 1e-6

// widened gives the stretch with a small chance that a step takes any number
// of days, falling off slowly. Whatever order of days was seen is possible
// then, and what has not yet happened spreads as wide as the whole step.
func (s stretch) widened() stretch {
	reach := s.reach()
	w := s
	w.steps = make([]Distribution, len(s.steps))
	for i, step := range s.steps {
		scale := max(step.Mean(), float64(reach)/20, 1)
		p := make([]float64, max(reach+int(5*scale), step.Last())+1)
		total := 0.0
		for day := range p {
			p[day] = math.Exp(-float64(day) / scale)
			total += p[day]
		}
		for day := range p {
			p[day] = (1-stall)*step.Mass(day) + stall*p[day]/total
		}
		w.steps[i] = Distribution{first: 0, p: p, cum: sums(p)} // untrimmed: its far days are what it is for
	}
	return w
}

// reach is the latest day that what was seen has a step end on or after.
func (b bounds) reach() int {
	reach := 0
	for _, lo := range b.lo {
		reach = max(reach, lo)
	}
	if b.closed {
		reach = max(reach, b.end)
	}
	return reach
}
