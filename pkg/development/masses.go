package development

// bounds are what was seen of a run of steps, in days from laying.
type bounds struct {
	lo, hi []int // of the day on which each step ends
	closed bool  // the last step ended on the day end
	end    int
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
