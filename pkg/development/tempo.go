package development

import (
	"math"
	"sort"
)

// A tempo is how long a step takes one clutch. Its standardised length, in
// standard deviations of ln days about the median of the profile and with the
// days counted by the clock, is
//
//	room + spread·(√paceShare·pace + √(1-paceShare)·chance) + what the warmth adds
//
// with pace and chance standard normal. The book alone has a room of 0 and a
// spread of 1, so that the length keeps to the percentiles of the profile.
type tempo struct {
	shape twoPiece
	clock clock
	rooms []room  // what the room may be like, and how likely
	extra float64 // variance that the warmth adds
}

// room is one way in which a room may differ from the book, in standard
// deviations of the book: its own middle, with the variance that is left in it,
// and its own spread.
type room struct{ weight, mean, variance, spread float64 }

// book is the room of whoever has no records.
var book = []room{{1, 0, 0, 1}}

// at gives the standardised length of a clutch of pace p.
func (t tempo) at(p float64) blend {
	b := make(blend, len(t.rooms))
	for i, r := range t.rooms {
		variance := r.spread*r.spread*(1-paceShare) + r.variance + t.extra
		b[i] = normal{r.weight, r.mean + r.spread*math.Sqrt(paceShare)*p, math.Sqrt(variance)}
	}
	return b
}

// z gives the standardised length of a step from the middle of the day begin to
// the end of the day end.
func (t tempo) z(begin, end int) float64 {
	if end < begin {
		return math.Inf(-1)
	}
	return t.shape.z(t.clock.end(end) - t.clock.at(begin))
}

// reach gives where the standardised lengths of all paces lie.
func (t tempo) reach() (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, p := range paces {
		for _, n := range t.at(p.at) {
			out := tails*tails + 2*math.Log(n.weight*p.weight) // so rare a room and pace need not be followed so far
			far := math.Sqrt(max(out, 1)) * n.sd
			low, high = min(low, n.mean-far), max(high, n.mean+far)
		}
	}
	return low, high
}

// usual gives the usual day of the end of a step that begins on a day.
func (t tempo) usual(begin int) int {
	mean := 0.0
	for _, r := range t.rooms {
		mean += r.weight * r.mean
	}
	return t.clock.reaches(begin, t.shape.days(mean))
}

// widened gives t with a small chance of any length up to reach, and more. The
// days from begin to reach all get their mean rate: what is so far out is rough
// in any case, and a clock that is even keeps the work small.
func (t tempo) widened(begin, reach int) tempo {
	w := t
	passed := t.clock.end(max(reach, begin)) - t.clock.at(begin)
	if !t.clock.even() {
		w.clock = clock{[]run{{from: begin, rate: passed / (float64(max(reach, begin)-begin) + 0.5)}}}
	}
	far, near := t.shape.z(passed), t.shape.z(0.5)
	w.rooms = []room{{stall, 0, 0, max(4, math.Abs(far)/2, math.Abs(near)/2) / math.Sqrt(1-paceShare)}}
	for _, r := range t.rooms {
		r.weight *= 1 - stall
		w.rooms = append(w.rooms, r)
	}
	return w
}

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

// A curve is a blend written down at close points, for when it is asked often.
type curve struct {
	low   float64
	nodes []normalNode
}

const curveSteps = 16 // to a standard deviation of the book; the error is below 1e-7

// curve writes b down from low to high.
func (b blend) curve(low, high float64) curve {
	c := curve{low, make([]normalNode, int((high-low)*curveSteps)+2)}
	for i := range c.nodes {
		z := low + float64(i)/curveSteps
		for _, n := range b {
			p, density := normalBoth((z - n.mean) / n.sd)
			c.nodes[i].p += n.weight * p
			c.nodes[i].slope += n.weight * density / (n.sd * curveSteps)
		}
	}
	return c
}

func (c curve) cdf(z float64) float64 {
	at := (z - c.low) * curveSteps
	switch {
	case !(at > 0):
		return 0
	case at >= float64(len(c.nodes)-1):
		return 1
	}
	i := int(at)
	return between(c.nodes[i], c.nodes[i+1], at-float64(i))
}
