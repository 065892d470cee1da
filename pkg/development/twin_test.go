package development

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/species"
)

// A path is the days of the five ends of steps of one clutch.
type path [len(links)]int

// agrees reports whether a look is so on the path, as far as the ends of steps
// tell. A stage within a step lies anywhere between the events on either side of it.
func (p path) agrees(l Look) bool {
	seen := l.On.Sub(day(0))
	before, after := 0, math.MaxInt // days of the events next to the stage
	for i, link := range links {
		if link.end <= l.Stage {
			before = p[i]
		}
		if link.end >= l.Stage && after == math.MaxInt {
			after = p[i]
		}
	}
	switch l.Kind {
	case Reached:
		return before <= seen && seen <= after
	case NotYet:
		return seen < after
	}
	return before <= seen
}

// until gives the days from laid to a stage when steps are independent.
func until(m *Model, s Stage) Distribution {
	sum := Point(0)
	for i, l := range links {
		if l.end > s {
			break
		}
		var p []float64
		below, shape := 0.0, m.shapes[i]
		for n := 0; below < 1-1e-12 && n < 3*longest; n++ {
			upTo := shape.cdf(float64(n) + 0.5)
			p, below = append(p, upTo-below), upTo
		}
		sum = sum.Plus(FromMasses(0, p))
	}
	return sum
}

// inner gives the chance of each day of an event within a step from begin to end, at
// one day a day, worked out from what stands in midway.go.
func inner(which, begin, end int, at species.Percentiles) map[int]float64 {
	logit := func(pct float64) float64 { return math.Log(pct / (100 - pct)) }
	curve := logit
	if midways[which].step == growOut {
		curve = math.Log
	}
	by := func(x float64) float64 {
		d := curve(x) - curve(at.P50)
		sd := (curve(at.P90) - curve(at.P50)) / z90
		if d < 0 {
			sd = (curve(at.P50) - curve(at.P10)) / z90
		}
		return math.Erfc(-d/sd/math.Sqrt2) / 2
	}
	days := map[int]float64{}
	below := 0.0
	for day := begin; day <= end; day++ {
		upTo := 1.0
		if day < end {
			passed := float64(day-begin) + 0.5
			if midways[which].step == growOut {
				upTo = by(passed)
			} else {
				upTo = by(100 * passed / (float64(end-begin) + 0.5))
			}
		}
		days[day], below = upTo-below, upTo
	}
	return days
}

// agreesWithin reports whether a look at a stage within a step is so of another one
// of the same step that comes on a day.
func agreesWithin(which, on int, l Look) bool {
	step, ok := stepAround(l.Stage)
	if !ok || step != midways[which].step {
		return true
	}
	seen, stage := l.On.Sub(day(0)), midways[which].stage
	if l.Kind == NotYet {
		return stage < l.Stage || on > seen
	}
	return (stage > l.Stage || on <= seen) && (l.Kind != Reached || stage < l.Stage || on >= seen)
}

// twin is the slow twin of [Model.Outlook]: all paths there are, for many paces.
type twin struct {
	m         *Model
	c         Clutch
	at        [len(midways)]species.Percentiles
	marginals [len(links)]map[int]float64
	within    [len(midways)]map[int]float64
	total     float64
	memo      map[[3]int]map[[2]int]float64
}

const twinPoints, twinHorizon = 25, 26

func enumeratePaces(m *Model, c Clutch, at [len(midways)]species.Percentiles) *twin {
	w := &twin{m: m, c: c, at: at, memo: map[[3]int]map[[2]int]float64{}}
	for i := range w.marginals {
		w.marginals[i] = map[int]float64{}
	}
	for i := range w.within {
		w.within[i] = map[int]float64{}
	}
	phi := func(x float64) float64 { return math.Erfc(-x/math.Sqrt2) / 2 }
	for k := range twinPoints {
		p := (float64(k) - (twinPoints-1)/2) / 2.4
		weight := math.Exp(-p*p/2) / (2.4 * rootTwoPi)
		var masses [len(links)][twinHorizon][twinHorizon]float64 // of each end, by step and begin
		for i := range links {
			clock := m.clock(i, c, c.Laid)
			for begin := range twinHorizon {
				below := 0.0
				for end := begin; end < twinHorizon; end++ {
					z := m.shapes[i].z(clock.end(end) - clock.at(begin))
					upTo := phi((z - math.Sqrt(paceShare)*p) / math.Sqrt(1-paceShare))
					masses[i][begin][end], below = upTo-below, upTo
				}
			}
		}
		var walk func(p path, step, at int, chance float64)
		walk = func(p path, step, at int, chance float64) {
			switch {
			case chance < 1e-12:
			case step < len(links):
				for end := at; end < twinHorizon; end++ {
					p[step] = end
					walk(p, step+1, end, chance*masses[step][at][end])
				}
			default:
				w.add(p, chance)
			}
		}
		walk(path{}, 0, 0, weight)
	}
	return w
}

// add adds a path, if it agrees with all looks.
func (w *twin) add(p path, chance float64) {
	if slices.ContainsFunc(w.c.Looks, func(l Look) bool { return !p.agrees(l) }) {
		return
	}
	legs, legsSum := w.agreeing(tadpole, p[1], p[2])
	food, foodSum := w.agreeing(growOut, p[3], p[4])
	chance *= legsSum * foodSum
	if chance == 0 {
		return
	}
	w.total += chance
	for i := range links {
		w.marginals[i][p[i]] += chance
	}
	for which, days := range map[int]map[[2]int]float64{0: legs, 2: food} {
		sum := legsSum
		if which == 2 {
			sum = foodSum
		}
		for on, x := range days {
			w.within[which][on[0]] += chance * x / sum
			if which == 0 {
				w.within[1][on[1]] += chance * x / sum
			}
		}
	}
}

// agreeing gives the chances of the days of the events within a step, hind legs and
// toes or the first food twice, that agree with all looks, and their sum.
func (w *twin) agreeing(step, begin, end int) (map[[2]int]float64, float64) {
	key := [3]int{step, begin, end}
	if w.memo[key] == nil {
		days := map[[2]int]float64{}
		if step == growOut {
			for on, x := range inner(2, begin, end, w.at[2]) {
				days[[2]int{on, on}] = x
			}
		} else {
			for hind, x := range inner(0, begin, end, w.at[0]) {
				for on, y := range inner(1, begin, end, w.at[1]) {
					days[[2]int{hind, max(hind, on)}] += x * y
				}
			}
		}
		for on := range days {
			if slices.ContainsFunc(w.c.Looks, func(l Look) bool {
				if step == growOut {
					return !agreesWithin(2, on[0], l)
				}
				return !agreesWithin(0, on[0], l) || !agreesWithin(1, on[1], l)
			}) {
				delete(days, on)
			}
		}
		w.memo[key] = days
	}
	sum := 0.0
	for _, x := range w.memo[key] {
		sum += x
	}
	return w.memo[key], sum
}

// trueLooks draws looks that agree with the path.
func trueLooks(t *rapid.T, p path) []Look {
	var looks []Look
	for range rapid.IntRange(0, 5).Draw(t, "looks") {
		look := Look{
			Stage: Stage(rapid.IntRange(int(Hatched), int(SaleReady)).Draw(t, "stage")),
			On:    day(rapid.IntRange(0, p[4]+2).Draw(t, "on")),
			Kind:  LookKind(rapid.IntRange(0, 2).Draw(t, "kind")),
		}
		if p.agrees(look) {
			looks = append(looks, look)
		}
	}
	return looks
}

// contradictory reports whether o left a look out: looks within a step may
// agree with a path one by one but not with each other.
func contradictory(o Outlook) bool { return says(o, "contradicts") }

func rough(o Outlook) bool { return says(o, "rough") || says(o, "do not go by it") }

func says(o Outlook, what string) bool {
	return slices.ContainsFunc(o.Warnings, func(w Warning) bool { return strings.Contains(w.Text, what) })
}

func texts(o Outlook) []string {
	var all []string
	for _, w := range o.Warnings {
		all = append(all, w.Text)
	}
	return all
}

// Knowing that a stage is not yet there never moves it, or what comes after
// it, earlier; nor a day later does than a day before.
func TestNotYetNeverMovesEarlier(t *testing.T) {
	m := leafFrog(t)
	rapid.Check(t, func(t *rapid.T) {
		i := rapid.IntRange(0, len(links)-1).Draw(t, "event")
		first := rapid.IntRange(0, 140).Draw(t, "first")
		later := first + rapid.IntRange(0, 5).Draw(t, "more")
		before := m.Outlook(Clutch{Laid: day(0)}, nil)
		at := m.Outlook(Clutch{Laid: day(0), Looks: []Look{{links[i].end, day(first), NotYet}}}, nil)
		after := m.Outlook(Clutch{Laid: day(0), Looks: []Look{{links[i].end, day(later), NotYet}}}, nil)
		for j := i; j < len(links) && !rough(after); j++ {
			neverEarlier(t, before.Events[j], at.Events[j])
			neverEarlier(t, at.Events[j], after.Events[j])
		}
	})
}

func neverEarlier(t *rapid.T, was, is Event) {
	for x := 0; x <= 300; x++ {
		if is.Dist.CDF(x) > was.Dist.CDF(x)+1e-5 {
			t.Fatalf("%v by day %d: chance %v, before %v", is.Stage, x, is.Dist.CDF(x), was.Dist.CDF(x))
		}
	}
}
