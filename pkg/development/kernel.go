package development

import "slices"

// A kernel gives the chances of the day of the end of a step for each day of
// its begin.
type kernel struct {
	even       bool
	firstBegin int
	rows       []masses
}

func (k kernel) row(begin int) masses {
	if k.even {
		return masses{k.rows[0].first + begin, k.rows[0].p}
	}
	return k.rows[begin-k.firstBegin]
}

// faint is a chance that is passed over.
const faint = negligible / 1000

// forward puts into out, which has the days of the ends that are allowed, their chances
// from those of the begins, and gives it.
func (k kernel) forward(begins, out masses) masses {
	clear(out.p)
	for i := 0; i < len(begins.p); i++ {
		x := begins.p[i]
		if x < faint {
			continue
		}
		row := k.row(begins.first + i)
		part := row.within(out.first, out.first+len(out.p)-1)
		if len(part.p) == 0 {
			continue
		}
		to := out.p[part.first-out.first:]
		if k.four(begins, i, len(row.p)) && len(part.p) == len(row.p) && len(to) >= len(row.p)+3 {
			addFour(to, begins.p[i:i+4], row.p)
			i += 3
			continue
		}
		to = to[:len(part.p)]
		for j, y := range part.p {
			to[j] += x * y
		}
	}
	return out
}

// four reports whether this begin and the three after it can be taken at once: they have
// the same row, of so many days, and none is passed over.
func (k kernel) four(begins masses, i, days int) bool {
	return k.even && days > 3 && i+3 < len(begins.p) && slices.Min(begins.p[i:i+4]) >= faint
}

// addFour adds p to a list four times, each a place farther on than the one before and
// times the next of x: to the last bit what one after the other comes to.
func addFour(to, x, p []float64) {
	a, b, c, d := x[0], x[1], x[2], x[3]
	n := len(p)
	to[0] += a * p[0]
	to[1] = to[1] + a*p[1] + b*p[0]
	to[2] = to[2] + a*p[2] + b*p[1] + c*p[0]
	p0, p1, p2, p3, mid := p[:n-3], p[1:][:n-3], p[2:][:n-3], p[3:][:n-3], to[3:][:n-3]
	for j := range mid {
		mid[j] = mid[j] + a*p3[j] + b*p2[j] + c*p1[j] + d*p0[j]
	}
	to[n] = to[n] + b*p[n-1] + c*p[n-2] + d*p[n-3]
	to[n+1] = to[n+1] + c*p[n-1] + d*p[n-2]
	to[n+2] += d * p[n-1]
}

// backward gives, for each of the begins, the chance of what was seen later,
// from that of each end.
func (k kernel) backward(begins, later masses) []float64 {
	chances := make([]float64, len(begins.p))
	for i := 0; i < len(chances); i++ {
		if begins.p[i] < faint {
			continue
		}
		row := k.row(begins.first + i)
		part := row.within(later.first, later.first+len(later.p)-1)
		if len(part.p) == 0 {
			continue
		}
		from := later.p[part.first-later.first:]
		if k.four(begins, i, len(row.p)) && len(part.p) == len(row.p) && len(from) >= len(row.p)+3 {
			chances[i], chances[i+1], chances[i+2], chances[i+3] = fourSums(row.p, from)
			i += 3
			continue
		}
		sum := 0.0
		for j, y := range part.p {
			sum += y * from[j]
		}
		chances[i] = sum
	}
	return chances
}

// fourSums gives the sums of the products of p and from, from its first to its fourth
// number on. One sum waits for each of its additions, so that four take as long.
func fourSums(p, from []float64) (a, b, c, d float64) {
	f0, f1, f2, f3 := from[:len(p)], from[1:][:len(p)], from[2:][:len(p)], from[3:][:len(p)]
	for j, y := range p {
		a += y * f0[j]
		b += y * f1[j]
		c += y * f2[j]
		d += y * f3[j]
	}
	return a, b, c, d
}

// sums gives, for each of the begins, the chance of any of the ends: what backward
// gives where nothing was seen later.
func (k kernel) sums(begins masses, ends [2]int) []float64 {
	chances := make([]float64, len(begins.p))
	whole := -1.0
	for i, x := range begins.p {
		if x < faint {
			continue
		}
		row := k.row(begins.first + i)
		part := row.within(ends[0], ends[1])
		if !k.even || len(part.p) < len(row.p) {
			chances[i] = part.sum()
			continue
		}
		if whole < 0 {
			whole = row.sum()
		}
		chances[i] = whole
	}
	return chances
}

// weighed gives the kernel for begins with the chance of what was seen within the
// step.
func (k kernel) weighed(begins masses, w *weights) kernel {
	out := kernel{firstBegin: begins.first, rows: make([]masses, len(begins.p))}
	for i, x := range begins.p {
		if x < faint {
			continue
		}
		row := k.row(begins.first+i).within(w.ends[0], w.ends[1])
		p := make([]float64, len(row.p))
		by := w.of(begins.first + i)
		for j, y := range row.p {
			p[j] = y * by[row.first-w.ends[0]+j]
		}
		out.rows[i] = masses{row.first, p}
	}
	return out
}
