package development

import "math"

// taught is what a clutch tells of its steps: the days between which each ended,
// for all that is known, and which steps it teaches.
type taught struct {
	model   *Model
	ev      evidence
	dated   bool
	clocks  [len(links)]clock
	lo, hi  [len(links)]int
	teaches [len(links)]bool
}

// lengths gives what a clutch tells of each step; count is 0 where it tells
// nothing. A step teaches when something was seen of its begin and of its end. Where
// only the end of a run of steps was seen, its longest step teaches: it took what
// the profile leaves for it, with the others at their 10th to 90th percentile.
func (m *Model) lengths(c Clutch) [len(links)]length {
	for _, look := range c.Looks {
		look.mustBeValid()
	}
	var all [len(links)]length
	laid, _, ok := m.laying(c)
	if !ok {
		return all
	}
	t := taught{model: m, ev: sift(laid, m.halves(laid, c.Looks)), dated: c.Laid.Known()}
	for i := range links {
		t.clocks[i] = m.clock(i, c, laid)
		t.lo[i], t.hi[i], t.teaches[i] = t.ev.lo[i], t.ev.hi[i], m.known[i]
		if t.ev.recorded[i] {
			t.lo[i], t.hi[i] = t.ev.day[i], t.ev.day[i]
		}
	}
	t.runs()
	for i := range links {
		begin, known := t.begin(i)
		if known && t.teaches[i] && begin[0] <= begin[1] {
			end := [2]int{max(t.lo[i], begin[0]), t.hi[i]}
			if end[0] <= end[1] {
				all[i] = m.length(i, t.clocks[i], begin, end)
			}
		}
	}
	return all
}

// begin gives the days between which a step began; known is false when nothing was
// seen of that.
func (t *taught) begin(step int) (_ [2]int, known bool) {
	switch {
	case step == 0:
		return [2]int{0, 0}, t.dated
	case !t.dated && t.lo[step-1] == ever:
		return [2]int{}, false
	}
	first := t.lo[step-1]
	for i := step - 2; i >= 0; i-- {
		first = max(first, t.lo[i])
	}
	if t.dated {
		first = max(first, 0)
	}
	return [2]int{first, t.hi[step-1]}, t.hi[step-1] != never
}

// runs looks at the steps between one recorded event and the next.
func (t *taught) runs() {
	from, day := -1, 0
	for i := range links {
		if !t.ev.recorded[i] {
			continue
		}
		switch {
		case from < 0 && !t.dated:
			// Nobody saw where this run began.
		case i > from+1 && t.unseen(from, i, day):
			t.share(from, i, day)
		}
		from, day = i, t.ev.day[i]
	}
}

// unseen reports whether an event between two recorded ones was not looked for
// from both sides: what the end of the run says of it is not seen.
func (t *taught) unseen(from, to, day int) bool {
	for i := from + 1; i < to; i++ {
		if t.lo[i] <= day || t.hi[i] >= t.ev.day[to] {
			return true
		}
	}
	return false
}

// share gives each event between two recorded ones the days that the profile leaves
// for it, and lets the longest step teach.
func (t *taught) share(from, to, day int) {
	long, known := from+1, true
	for i := from + 1; i <= to; i++ {
		known = known && t.model.known[i]
		if t.model.shapes[i].mu > t.model.shapes[long].mu {
			long = i
		}
	}
	for i := from + 1; i <= to; i++ {
		t.teaches[i] = known && i == long
	}
	if !known {
		return
	}
	lo, hi := day, day
	for i := from + 1; i < to; i++ {
		lo = t.clocks[i].reaches(lo, t.model.shapes[i].days(-z90))
		hi = t.clocks[i].reaches(hi, t.model.shapes[i].days(z90))
		t.lo[i], t.hi[i] = max(t.lo[i], lo), min(t.hi[i], hi)
	}
	lo, hi = t.ev.day[to], t.ev.day[to]
	for i := to; i > from+1; i-- {
		lo = t.clocks[i].before(lo, t.model.shapes[i].days(z90))
		hi = t.clocks[i].before(hi, t.model.shapes[i].days(-z90))
		t.lo[i-1], t.hi[i-1] = max(t.lo[i-1], lo), min(t.hi[i-1], hi)
	}
}

// length gives what is told by a step that began and ended between days.
func (m *Model) length(step int, clock clock, begin, end [2]int) length {
	from := 0.0
	if end[0] > begin[1] {
		from = clock.end(end[0]-1) - clock.at(begin[1])
	}
	to := math.Inf(1)
	until := max(end[0], begin[1])
	if end[1] != never {
		to = clock.end(end[1]) - clock.at(begin[0])
		until = end[1]
	}
	n := length{m.shapes[step].z(from), m.shapes[step].z(to), 1}
	if math.IsInf(n.from, -1) && math.IsInf(n.to, 1) || !(n.from < n.to) || clock.outside(begin[0], until) > farOutside {
		return length{}
	}
	return n
}
