package development

import (
	"math"

	"github.com/spawnwright/spawnwright/pkg/species"
)

// A midway is an event that lies within a step.
type midway struct {
	stage Stage
	step  int // the place of the step in links
}

// midways are in the order of their stages.
var midways = [...]midway{{HindLegs, tadpole}, {Toes, tadpole}, {Eating, growOut}}

// The places of events in midways.
const (
	hindLegs = iota
	toes
	eating
)

// stepAround gives the place of the step that a stage lies within; ok is false
// for the ends of steps.
func stepAround(s Stage) (_ int, ok bool) {
	for _, w := range midways {
		if w.stage == s {
			return w.step, true
		}
	}
	return 0, false
}

// The places of steps in links.
const (
	tadpole = 2
	growOut = 4
)

// Usual times of the events within a step, where the profile does not say.
//
// In Xenopus laevis at 22 to 24 °C (Nieuwkoop and Faber 1994) tadpoles feed from
// day 4 and have front legs on day 44. Stages 48 to 50 are of days 7.5 to 15 and 54
// to 56 of days 26 to 38; that hind legs begin to bud in the first (Gosner 26) and
// the toes come free in the second (Gosner 37) is from memory.
//
// Froglets take their first food 3 to 7 days after the tail is gone (from memory).
var (
	usualHindLegs = species.Percentiles{P10: 9, P50: 18, P90: 27} // % of the step
	usualToes     = species.Percentiles{P10: 55, P50: 70, P90: 85}
	usualEating   = species.Percentiles{P10: 3, P50: 5, P90: 7}
)

// A course is when an event within a step comes, by how much of the step has
// passed: a share of it for hind legs and toes, days for the first food.
type course struct {
	share       []float64 // chance to have come, at the shares 0, 1/shareSteps, … 1; none where it goes by days
	days        twoPiece
	first, last float64 // the shares, or days, before and after which it hardly ever comes
}

// coursesOf gives those of midways in a profile. Errors are *[StepError].
func coursesOf(p *species.Profile) (courses [len(midways)]course, _ error) {
	within, _ := p.Step(species.Tadpole)
	after, _ := p.Step(species.GrowOut)
	hind, toe, eats := usualHindLegs, usualToes, usualEating
	if within.HindLegsPct.Known() {
		hind = within.HindLegsPct
	}
	if within.ToesPct.Known() {
		toe = within.ToesPct
	}
	if after.EatingDays.Known() {
		eats = after.EatingDays
	}
	for i, pct := range [...]species.Percentiles{hind, toe} {
		if !(0 < pct.P10 && pct.P10 <= pct.P50 && pct.P50 <= pct.P90 && pct.P90 < 100) {
			return courses, &StepError{p.ID, species.Tadpole, &PercentilesError{pct.P10, pct.P50, pct.P90, "parts of a step rise between 0 and 100 %"}}
		}
		courses[i] = shareOf(species.Percentiles{P10: pct.P10 / 100, P50: pct.P50 / 100, P90: pct.P90 / 100})
	}
	if _, err := FromPercentiles(eats.P10, eats.P50, eats.P90); err != nil {
		return courses, &StepError{p.ID, species.GrowOut, err}
	}
	courses[eating] = daysOf(eats)
	return courses, nil
}

// shareSteps is how finely the chances of shares are written down; between them
// they run straight. The error is below 1e-5.
const shareSteps = 1024

// shareOf gives the course of an event at a share of a step. The logarithm of the
// odds of the share is normal, with one spread on either side of the median.
func shareOf(p species.Percentiles) course {
	logit := func(x float64) float64 { return math.Log(x / (1 - x)) }
	middle := logit(p.P50)
	below, above := (middle-logit(p.P10))/z90, (logit(p.P90)-middle)/z90
	c := course{share: make([]float64, shareSteps+1)}
	for i := range c.share {
		x := logit(float64(i)/shareSteps) - middle
		sd := max(above, leastSpread)
		if x < 0 {
			sd = max(below, leastSpread)
		}
		c.share[i] = normalCDF(x / sd)
		if c.share[i] < rareDay {
			c.first = float64(i) / shareSteps
		}
		if c.share[i] < 1-rareDay {
			c.last = float64(i+1) / shareSteps
		}
	}
	return c
}

// rareDay is the chance that is passed over before the first and after the last day
// of an event within a step.
const rareDay = 1e-7

// daysOf gives the course of an event that comes so many days after the step
// began.
func daysOf(p species.Percentiles) course {
	days := newTwoPiece(p.P10, p.P50, p.P90).standardised()
	return course{days: days, first: days.days(-tails), last: days.days(tails)}
}

// by gives the chance that the event has come when a share of the step has
// passed, and days of it.
func (c course) by(share, days float64) float64 {
	switch {
	case days <= 0:
		return 0
	case share >= 1:
		return 1
	case c.share == nil:
		return normalCDF(c.days.z(days))
	}
	at := share * shareSteps
	i := int(at)
	return c.share[i] + (at-float64(i))*(c.share[i+1]-c.share[i])
}

// timing tells how far a step is on a day, when it begins and ends on days.
type timing struct {
	course
	after   *timing   // of the event that it does not come before; nil where there is none
	even    bool      // all days are as long on the clock
	at, end []float64 // what the clock shows in the middle and at the end of each day
	first   int       // day of at[0]
}

func newTiming(c course, k clock, first, last int) timing {
	t := timing{course: c, even: k.even(), first: first, at: make([]float64, last-first+1), end: make([]float64, last-first+1)}
	for i := range t.at {
		t.at[i], t.end[i] = k.at(first+i), k.end(first+i)
	}
	return t
}

// chance gives that of the event having come by the end of day, within a step that
// begins on one day and ends on another.
func (t *timing) chance(day, begin, end int) float64 {
	if t.after != nil {
		return t.alone(day, begin, end) * t.after.alone(day, begin, end)
	}
	return t.alone(day, begin, end)
}

// alone gives the same whatever else has come.
func (t *timing) alone(day, begin, end int) float64 {
	switch {
	case day < begin:
		return 0
	case day >= end:
		return 1
	}
	since := t.at[begin-t.first]
	return t.by((t.end[day-t.first]-since)/(t.end[end-t.first]-since), float64(day-begin)+0.5)
}

// between gives the chance of an event that comes from lo to hi, both included.
func (t *timing) between(lo, hi, begin, end int) float64 {
	chance := 1.0
	if hi < end {
		chance = t.chance(hi, begin, end)
	}
	if lo > begin {
		chance -= t.chance(lo-1, begin, end)
	}
	return max(chance, 0)
}

// span gives the first and the last day on which the event comes, but for what
// is rare.
func (t *timing) span(begin, end int) (first, last int) {
	if t.share == nil {
		return begin + int(t.course.first), min(begin+int(t.course.last)+1, end)
	}
	since := t.at[begin-t.first]
	whole := t.end[end-t.first] - since
	first, last = begin, end
	for first < end && t.end[first-t.first] < since+t.course.first*whole {
		first++
	}
	for last > first && t.end[last-1-t.first] > since+t.course.last*whole {
		last--
	}
	return first, last
}

// spread adds x to the days on which an event comes that lies in v, within a step
// that begins on one day and ends on another; the first of sum is the first day of t.
func (t *timing) spread(sum []float64, x float64, begin, end int, v interval) {
	first, last := t.span(begin, end)
	lo, hi := max(v.lo, begin), min(v.hi, end)
	whole := 0.0
	if lo <= hi {
		whole = t.between(lo, hi, begin, end)
	}
	if whole < negligible {
		sum[v.nearest(begin, end)-t.first] += x
		return
	}
	lo, hi = max(lo, min(first, hi)), min(hi, max(last, lo))
	below := 0.0
	if lo > begin && lo == v.lo {
		below = t.chance(lo-1, begin, end)
	}
	upTo := below
	for day := lo; day < hi; day++ {
		upTo = t.chance(day, begin, end)
		sum[day-t.first] += x * max(upTo-below, 0) / whole
		below = upTo
	}
	left := 1.0
	if hi < end && hi == v.hi {
		left = t.chance(hi, begin, end)
	}
	sum[hi-t.first] += x * max(left-below, 0) / whole
}
