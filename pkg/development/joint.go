package development

import "slices"

// A joint is how the begin and the end of a step hang together under one pace. It
// is kept as what it is made of: the pairs are many, and few are ever asked for.
type joint struct {
	begins masses // given all that was seen later, but for that: 0 where they are passed over
	kernel kernel
	later  masses    // the chance of what was seen later, of each end
	sums   []float64 // the same of all ends of each begin
}

// addTo adds the chances of all begins and ends to s, times a weight.
func (j *joint) addTo(s *pairs, weight float64) {
	for i, x := range j.begins.p {
		if x == 0 {
			continue
		}
		begin := j.begins.first + i
		row := j.kernel.row(begin)
		if row.first-begin >= s.most { // no length matters
			s.of(begin)[s.most-s.least] += weight * (x * j.sums[i])
			continue
		}
		s.add(begin, weight, x, row, j.later)
	}
}

// kept gives a copy of the rows of k that these begins have, which outlasts the next
// pace.
func (k kernel) kept(begins masses) kernel {
	out := kernel{k.even, k.firstBegin, make([]masses, len(k.rows))}
	for i, row := range k.rows {
		if k.even || begins.p[i] > 0 {
			out.rows[i] = masses{row.first, slices.Clone(row.p)}
		}
	}
	return out
}
