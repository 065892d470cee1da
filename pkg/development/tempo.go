package development

import "math"

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

// stalls are the chances that are given to a step to take a length that keeps to
// nothing that the profile knows: the least with which all that was seen is possible.
var stalls = [...]float64{1e-6, 1e-3, 0.2}

// widened gives t with a chance, stall, of any length up to reach, and more. The
// days from begin to reach all get their mean rate: what is so far out is rough
// in any case, and a clock that is even keeps the work small.
func (t tempo) widened(stall float64, begin, reach int) tempo {
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
