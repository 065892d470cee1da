package development

import "sort"

// A lattice holds, for each day on which a step may begin, the standardised
// length up to the end of each day on which it may end.
type lattice struct {
	even       bool // one row is good for all begins
	firstBegin int
	rows       []latticeRow
	cells      int // of all rows

	scratch []float64
	kernel  kernel
}

type latticeRow struct {
	start int // the first day on which it may end; of an even lattice, after begin
	z     []float64
}

// lattice gives that of t for begins from first to last. No day is later
// than limit.
func (t tempo) lattice(first, last, limit int) lattice {
	l := lattice{even: t.clock.even(), firstBegin: first}
	low, high := t.reach()
	least, most := t.shape.days(low), t.shape.days(high)
	for begin := first; begin <= last; begin++ {
		start := min(t.clock.reaches(begin, least), limit)
		stop := min(t.clock.reaches(begin, most), limit)
		row := latticeRow{start, make([]float64, stop-start+1)}
		since := t.clock.at(begin)
		for i := range row.z {
			row.z[i] = t.shape.z(t.clock.end(start+i) - since)
		}
		l.cells += len(row.z)
		if l.even {
			row.start -= begin
			l.rows = append(l.rows, row)
			break
		}
		l.rows = append(l.rows, row)
	}
	return l
}

// ends gives the first and the last day on which a step may end that begins
// from the first to the last of the days.
func (l lattice) ends(first, last int) (int, int) {
	if l.even {
		r := l.rows[0]
		return first + r.start, last + r.start + len(r.z) - 1
	}
	a, b := l.rows[first-l.firstBegin], l.rows[last-l.firstBegin]
	return a.start, b.start + len(b.z) - 1
}

// negligible is the chance of a day that is passed over at either end of a row.
const negligible = 1e-12

// under gives the chances of the days of the end, for each begin, when the
// standardised length is b. They are good until the next call.
func (l *lattice) under(b blend) kernel {
	cdf := b.cdf
	low, high := b.reach()
	if float64(l.cells) > 2*(high-low)*curveSteps && len(b) > 1 {
		cdf = b.curve(low, high).cdf
	}
	if l.scratch == nil {
		l.scratch = make([]float64, l.cells)
		l.kernel = kernel{l.even, l.firstBegin, make([]masses, len(l.rows))}
	}
	free := l.scratch
	for i, row := range l.rows {
		from := max(sort.SearchFloat64s(row.z, low)-1, 0)
		to := min(sort.SearchFloat64s(row.z, high)+1, len(row.z))
		p := free[:to-from]
		free = free[to-from:]
		below := 0.0
		for j, z := range row.z[from:to] {
			upTo := cdf(z)
			p[j] = max(upTo-below, 0)
			below = upTo
		}
		l.kernel.rows[i] = masses{row.start + from, p}.trimmed()
	}
	return l.kernel
}

// trimmed gives m without the negligible days at its ends.
func (m masses) trimmed() masses {
	for len(m.p) > 1 && m.p[0] < negligible {
		m.first, m.p = m.first+1, m.p[1:]
	}
	for len(m.p) > 1 && m.p[len(m.p)-1] < negligible {
		m.p = m.p[:len(m.p)-1]
	}
	return m
}
