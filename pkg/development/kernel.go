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

// forward gives the chances of the ends from those of the begins; ends are the
// first and the last that are allowed.
func (k kernel) forward(begins masses, ends [2]int) masses {
	out := masses{ends[0], make([]float64, max(ends[1]-ends[0]+1, 0))}
	for i, x := range begins.p {
		if x < faint {
			continue
		}
		row := k.row(begins.first+i).within(ends[0], ends[1])
		if len(row.p) == 0 {
			continue
		}
		to := out.p[row.first-out.first:][:len(row.p)]
		for j, y := range row.p {
			to[j] += x * y
		}
	}
	return out
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
		if k.even && len(part.p) == len(row.p) && len(from) >= len(row.p)+3 && i+3 < len(chances) && slices.Min(begins.p[i:i+4]) >= faint {
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
