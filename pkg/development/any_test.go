package development

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// anyClutch draws a clutch of whatever a diary may hold, wrong or right.
func anyClutch(t *rapid.T) Clutch {
	var c Clutch
	if rapid.IntRange(0, 4).Draw(t, "laid") > 0 {
		c.Laid = day(0)
	}
	for range rapid.IntRange(0, 6).Draw(t, "looks") {
		c.Looks = append(c.Looks, Look{
			Stage(rapid.IntRange(int(Laid), int(SaleReady)).Draw(t, "stage")),
			day(rapid.SampledFrom([]int{-1, 0, 1, 2, 3, 5, 20, 24, 27, 30, 33, 40, 60, 70, 80, 400}).Draw(t, "on")),
			LookKind(rapid.IntRange(0, int(Some)).Draw(t, "kind")),
		})
	}
	for range rapid.IntRange(0, 3).Draw(t, "readings") {
		r := Reading{day(rapid.IntRange(-30, 200).Draw(t, "from")), rapid.Float64Range(8, 38).Draw(t, "c")}
		c.Water = append(c.Water, r)
		c.Air = append(c.Air, Reading{r.From, 46 - r.C})
	}
	return c
}

// Any looks whatever: no panic, whole windows or none, records as they are,
// nothing that hangs on the order.
func TestOutlookOfAnything(t *testing.T) {
	m := builtin(t, "ceratophrys-cranwelli")
	rapid.Check(t, func(t *rapid.T) {
		c := anyClutch(t)
		var r *Room
		if rapid.Bool().Draw(t, "room") {
			r = m.Learn([]Clutch{c, anyClutch(t)})
			r.Without(c)
		}
		o := m.Outlook(c, r)
		for _, e := range o.All() {
			w := e.Window
			if w.Known() != e.Dist.Known() || w.Early > w.Likely || w.Likely > w.Late {
				t.Fatalf("%v: %v", e.Stage, w)
			}
			if e.Dist.Known() && math.IsNaN(e.Dist.Mean()) {
				t.Fatalf("%v has no mean", e.Stage)
			}
			recorded := slices.ContainsFunc(c.Looks, func(l Look) bool {
				return l.Kind == Reached && l.Stage == e.Stage && (!e.Recorded || l.On == w.Likely)
			})
			if _, within := stepAround(e.Stage); within && contradictory(o) {
				continue // such a look may have been left out
			}
			if recorded != e.Recorded {
				t.Fatalf("%v: recorded %v, want %v", e.Stage, e.Recorded, recorded)
			}
		}
		if !(o.Stall >= 0 && o.Stall <= 1) || math.IsNaN(o.Pace) || !(o.PaceSD >= 0) {
			t.Fatalf("stall %v, pace %v, %v", o.Stall, o.Pace, o.PaceSD)
		}
		o.Siblings(10)
		o.Care()
		for _, d := range first(o.Heads([]Count{{day(0), 40}, {day(30), 30}}, civil.Span{First: day(-2), Last: day(60)})) {
			if !(d.Living.Expected >= 0 && d.Living.Expected <= 40) || d.Living.Low > d.Living.High {
				t.Fatalf("%v: %+v", d.On, d.Living)
			}
		}
		c.Looks = rapid.Permutation(c.Looks).Draw(t, "shuffled")
		again := m.Outlook(c, r)
		if !slices.Equal(texts(again), texts(o)) || !slices.EqualFunc(again.All(), o.All(), func(a, b Event) bool { return a.Window == b.Window }) {
			t.Fatal("another order of looks gives another outlook")
		}
	})
}

func first[A, B any](a A, _ B) A { return a }

// A clutch that was not seen being laid is dated by what was seen of it, with
// the width that this has.
func TestOutlookWithoutLaying(t *testing.T) {
	m := leafFrog(t)
	whole := m.Outlook(Clutch{Laid: day(0), Looks: []Look{{FrontLegs, day(70), Reached}}}, nil)
	seen := m.Outlook(Clutch{Looks: []Look{{FrontLegs, day(70), Reached}}}, nil)
	for _, s := range []Stage{OutOfWater, SaleReady} {
		a, _ := whole.Event(s)
		b, _ := seen.Event(s)
		assert.InDelta(t, a.Window.Likely.Sub(day(0)), b.Window.Likely.Sub(day(0)), 3, "%v is as well known", s)
	}
	assert.InDelta(t, until(m, FrontLegs).Quantile(0.5), day(70).Sub(seen.Laid.Likely), 3)
	assert.InDelta(t, until(m, FrontLegs).Quantile(0.9), day(70).Sub(seen.Laid.Early), 5)
	assert.Empty(t, seen.Warnings)

	tadpoles := m.Outlook(Clutch{Looks: []Look{{HindLegs, day(0), By}, {FrontLegs, day(0), NotYet}}}, nil)
	legs, _ := tadpoles.Event(FrontLegs)
	assert.Greater(t, legs.Window.Early, day(0))
	assert.Less(t, legs.Window.Late, day(80))
	assert.Greater(t, legs.Window.Late.Sub(legs.Window.Early), 35, "who buys tadpoles does not know how old they are")

	nothing := m.Outlook(Clutch{}, nil)
	assert.Equal(t, []string{"neither the date of laying nor anything seen is known: no dates are given"}, texts(nothing))
	require.Len(t, nothing.Events, 5)
	assert.False(t, nothing.Events[0].Window.Known())
}

// The longer nothing comes, the likelier it never will.
func TestStall(t *testing.T) {
	m := leafFrog(t)
	at := func(n int) Outlook {
		return m.Outlook(Clutch{Laid: day(0), Looks: []Look{{Feeding, day(9), Reached}, {FrontLegs, day(n), NotYet}}}, nil)
	}
	last := 0.0
	for _, n := range []int{10, 60, 80, 100, 120, 150} {
		o := at(n)
		assert.Greater(t, o.Stall, last, "day %d", n)
		last = o.Stall
		told := says(o, "stalled")
		assert.Equal(t, o.Stall > 0.1, told, "day %d: %v", n, o.Warnings)
	}
	assert.Greater(t, last, 0.95)
	// By hand: it has stalled with 0.02, or goes on and is late with 0.98 S.
	o := m.Outlook(Clutch{Laid: day(0), Looks: []Look{{Feeding, day(9), Reached}}}, nil)
	late := 1 - o.Events[2].Dist.CDF(90)
	assert.InDelta(t, 0.02/(0.02+0.98*late), at(90).Stall, 0.002)
	through := m.Outlook(Clutch{Laid: day(0), Looks: []Look{{FrontLegs, day(120), By}}}, nil)
	assert.Zero(t, through.Stall, "tadpoles with front legs have not stalled as tadpoles")
}

// What is nearly impossible is said, and the dates go on from what was seen.
func TestOutlookInDoubt(t *testing.T) {
	m := leafFrog(t)
	for _, c := range []struct {
		name, says string
		looks      []Look
	}{
		{
			"unlikely", "hatched came 13 days after laid, where the profile expects 6 to 9 days (10th to 90th percentile): what was seen has a chance of 1.1 %, so the step lengths, the temperature or a date is in doubt",
			[]Look{{Hatched, day(13), Reached}},
		},
		{
			"next to impossible, and open", "front-legs did not come within 300 days of laid, where the profile expects 56 to 90 days (10th to 90th percentile): what was seen has a chance under 0.1 %, so the step lengths, the temperature or a date is in doubt, and the dates that follow are rough",
			[]Look{{FrontLegs, day(300), NotYet}},
		},
		{
			"next to impossible, between two dates", "front-legs came 10 days after laid, where the profile expects 56 to 90 days (10th to 90th percentile): what was seen has a chance under 0.1 %, so the step lengths, the temperature or a date is in doubt, and the dates between are rough",
			[]Look{{FrontLegs, day(10), Reached}},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			o := m.Outlook(Clutch{Laid: day(0), Looks: c.looks}, nil)
			require.NotEmpty(t, o.Warnings)
			assert.Equal(t, c.says, o.Warnings[0].Text)
			for _, e := range o.Events {
				assert.True(t, e.Window.Known(), "%v", e.Stage)
			}
		})
	}
	o := m.Outlook(Clutch{Laid: day(0), Looks: []Look{{FrontLegs, day(300), NotYet}}}, nil)
	legs, _ := o.Event(FrontLegs)
	assert.Greater(t, legs.Window.Early, day(300))
	assert.Greater(t, legs.Window.Late.Sub(legs.Window.Early), 10, "it widens")
}

// Some are there: half of them not much later, and not long ago.
func TestSomeWereSeen(t *testing.T) {
	m := leafFrog(t)
	before := m.Outlook(Clutch{Laid: day(0)}, nil)
	early := m.Outlook(Clutch{Laid: day(0), Looks: []Look{{FrontLegs, day(55), Some}}}, nil)
	a, _ := before.Event(FrontLegs)
	b, _ := early.Event(FrontLegs)
	assert.False(t, b.Recorded)
	assert.Less(t, b.Window.Likely, a.Window.Likely, "front legs on some so early move all dates")
	assert.Less(t, b.Window.Late.Sub(b.Window.Early), a.Window.Late.Sub(a.Window.Early)/2, "and narrow them")
	assert.LessOrEqual(t, b.Dist.Last(), int(55*math.Exp(2*m.siblings)))
	assert.GreaterOrEqual(t, b.Dist.First(), int(55*math.Exp(-2*m.siblings)))
	ready, _ := early.Event(SaleReady)
	was, _ := before.Event(SaleReady)
	assert.Less(t, ready.Window.Late, was.Window.Late)
}
