package development

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// A path is the days of the five events of one clutch.
type path [len(links)]int

// agrees reports whether a look is so on the path. A stage within a step lies
// anywhere between the events on either side of it.
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

// enumerate is the slow twin of [Model.Forecast]: it walks every path there
// is, and sums the chance of those that agree with all looks.
func enumerate(m *Model, looks []Look) (marginals [len(links)]map[int]float64, total float64) {
	for i := range marginals {
		marginals[i] = map[int]float64{}
	}
	var walk func(p path, step int, at int, chance float64)
	walk = func(p path, step, at int, chance float64) {
		if step < len(links) {
			d := m.steps[step]
			for day := d.First(); day <= d.Last(); day++ {
				p[step] = at + day
				walk(p, step+1, at+day, chance*d.Mass(day))
			}
			return
		}
		if slices.ContainsFunc(looks, func(l Look) bool { return !p.agrees(l) }) {
			return
		}
		total += chance
		for i := range links {
			marginals[i][p[i]] += chance
		}
	}
	walk(path{}, 0, 0, 1)
	return marginals, total
}

// chains draws a small model and a path that it may take.
func chains(t *rapid.T) (*Model, path) {
	var steps [len(links)]Distribution
	var p path
	at := 0
	for i := range steps {
		steps[i] = distributions().Draw(t, "step")
		days := rapid.IntRange(steps[i].First(), steps[i].Last()).Filter(func(n int) bool { return steps[i].Mass(n) > 0 })
		at += days.Draw(t, "days")
		p[i] = at
	}
	return modelOf(steps[0], steps[1], steps[2], steps[3], steps[4]), p
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

// contradictory reports whether f left a look out: looks within a step may
// agree with a path one by one but not with each other.
func contradictory(f Forecast) bool {
	return slices.ContainsFunc(f.Warnings, func(w string) bool { return strings.Contains(w, "contradicts") })
}

func rough(f Forecast) bool {
	return slices.ContainsFunc(f.Warnings, func(w string) bool { return strings.Contains(w, "rough") })
}

func TestForecastAgainstEnumeration(t *testing.T) {
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		m, p := chains(t)
		looks := trueLooks(t, p)
		f := m.Forecast(day(0), looks)
		if contradictory(f) || rough(f) {
			return
		}
		compared++
		marginals, total := enumerate(m, looks)
		for i, e := range f.Events {
			if !e.Dist.Known() {
				t.Fatalf("%v is unknown", e.Stage)
			}
			for day := 0; day <= 50; day++ {
				want := marginals[i][day] / total
				if math.Abs(e.Dist.Mass(day)-want) > 1e-8 {
					t.Fatalf("%v on day %d: %v, want %v", e.Stage, day, e.Dist.Mass(day), want)
				}
			}
		}
	})
	if compared < 50 {
		t.Errorf("only %d forecasts could be compared", compared)
	}
}

// Any looks whatever: no panic, nothing but whole windows or none, records as
// they are, the rest within their order.
func TestForecastOfAnyLooks(t *testing.T) {
	kinds := []LookKind{Reached, NotYet, By}
	rapid.Check(t, func(t *rapid.T) {
		m := treeFrog()
		for i := range m.steps {
			if rapid.IntRange(0, 5).Draw(t, "unknown") == 0 {
				m.steps[i] = Distribution{}
			}
		}
		var looks []Look
		for range rapid.IntRange(0, 6).Draw(t, "looks") {
			looks = append(looks, Look{
				Stage(rapid.IntRange(int(Laid), int(SaleReady)).Draw(t, "stage")),
				day(rapid.IntRange(-20, 150).Draw(t, "on")),
				rapid.SampledFrom(kinds).Draw(t, "kind"),
			})
		}
		f := m.Forecast(day(0), looks)
		for _, e := range f.Events {
			w := e.Window
			if w.Known() != e.Dist.Known() || w.Early > w.Likely || w.Likely > w.Late {
				t.Fatalf("%v: %v", e.Stage, w)
			}
			recorded := slices.ContainsFunc(looks, func(l Look) bool {
				return l.Kind == Reached && l.Stage == e.Stage && (!e.Recorded || l.On == w.Likely)
			})
			if recorded != e.Recorded {
				t.Fatalf("%v: recorded %v, want %v", e.Stage, e.Recorded, recorded)
			}
		}
		shuffled := rapid.Permutation(looks).Draw(t, "shuffled")
		if again := m.Forecast(day(0), shuffled); !slices.Equal(again.Warnings, f.Warnings) ||
			!slices.EqualFunc(again.Events, f.Events, func(a, b Event) bool { return a.Window == b.Window }) {
			t.Fatalf("another order of looks gives another forecast")
		}
	})
}

// Knowing that a stage is not yet there never moves it, or what comes after
// it, earlier; nor a day later does than a day before.
func TestNotYetNeverMovesEarlier(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, _ := chains(t)
		i := rapid.IntRange(0, len(links)-1).Draw(t, "event")
		first := rapid.IntRange(0, 25).Draw(t, "first")
		later := first + rapid.IntRange(0, 5).Draw(t, "more")
		before := m.Forecast(day(0), nil)
		at := m.Forecast(day(0), []Look{{links[i].end, day(first), NotYet}})
		after := m.Forecast(day(0), []Look{{links[i].end, day(later), NotYet}})
		for j := i; j < len(links); j++ {
			neverEarlier(t, before.Events[j], at.Events[j])
			if !rough(after) {
				neverEarlier(t, at.Events[j], after.Events[j])
			}
		}
	})
}

// neverEarlier allows for the small chance of any length that a step has where
// the looks are impossible.
func neverEarlier(t *rapid.T, was, is Event) {
	for x := 0; x <= 60; x++ {
		if is.Dist.CDF(x) > was.Dist.CDF(x)+10*stall {
			t.Fatalf("%v by day %d: chance %v, before %v", is.Stage, x, is.Dist.CDF(x), was.Dist.CDF(x))
		}
	}
}

func TestForecastWithoutLooksIsUntil(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, _ := chains(t)
		for _, e := range m.Forecast(day(0), nil).Events {
			sameDistribution(t, m.Until(e.Stage), e.Dist)
		}
	})
}
