package development

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// day gives the date n days after the laying of the clutches in these tests.
func day(n int) civil.Date { return civil.Of(2027, 2, 14).Add(n) }

// chainOf makes a model of five steps, each with its percentiles; nil is a step that
// is not known.
func chainOf(t *testing.T, steps ...[]float64) *Model {
	p := profile()
	for i, days := range steps {
		if days != nil {
			p.Development = append(p.Development, step(links[i].step, days[0], days[1], days[2], 1))
		}
	}
	return mustModel(t, p)
}

// outlookOf gives the outlook of a clutch laid on day 0.
func outlookOf(m *Model, looks ...Look) Outlook {
	return m.Outlook(Clutch{Laid: day(0), Looks: looks}, nil)
}

// triples gives the 10th, 50th and 90th percentile of each event in days after
// laid, and nil for one that is not known.
func triples(t *testing.T, f Outlook) [][]int {
	var out [][]int
	for _, e := range f.Events {
		if !e.Window.Known() {
			assert.False(t, e.Dist.Known())
			out = append(out, nil)
			continue
		}
		got := []int{e.Window.Early.Sub(day(0)), e.Window.Likely.Sub(day(0)), e.Window.Late.Sub(day(0))}
		assert.Equal(t, []int{e.Dist.Quantile(0.1), e.Dist.Quantile(0.5), e.Dist.Quantile(0.9)}, got)
		assert.False(t, math.IsNaN(e.Dist.Mean()))
		assert.Equal(t, e.Recorded, e.Recorded && e.Window.Certain())
		out = append(out, got)
	}
	return out
}

func TestLooks(t *testing.T) {
	three, ten := []float64{1, 2, 3}, []float64{8, 10, 12}
	m := chainOf(t, three, three, ten, three, ten)
	var unknown []float64
	for _, row := range []struct {
		name  string
		model *Model
		looks []Look
		want  [][]int
	}{
		{
			"nothing seen", m, nil,
			[][]int{{1, 2, 3}, {2, 4, 6}, {11, 14, 17}, {12, 16, 20}, {21, 26, 31}},
		},
		{
			"a record moves all that follows", m,
			[]Look{{Hatched, day(3), Reached}},
			[][]int{{3, 3, 3}, {4, 5, 6}, {14, 16, 19}, {15, 18, 21}, {25, 29, 33}},
		},
		{
			"a record tells of what came before", m,
			[]Look{{FrontLegs, day(18), Reached}}, // about 3, 3 and 12 days
			[][]int{{2, 3, 4}, {5, 6, 7}, {18, 18, 18}, {20, 21, 22}, {30, 32, 34}},
		},
		{
			"not yet moves what follows", m,
			[]Look{{Hatched, day(2), NotYet}},
			[][]int{{3, 3, 4}, {4, 5, 7}, {14, 16, 19}, {16, 19, 22}, {25, 29, 34}},
		},
		{
			"not yet of an earlier stage holds for the later ones", m,
			[]Look{{Feeding, day(5), NotYet}}, // so both steps took about 3 days
			[][]int{{2, 3, 4}, {6, 6, 7}, {15, 17, 20}, {18, 20, 23}, {28, 31, 36}},
		},
		{
			"by of a later stage holds for the earlier ones", m,
			[]Look{{FrontLegs, day(10), By}}, // so all steps were short
			[][]int{{1, 1, 2}, {2, 2, 3}, {9, 10, 10}, {10, 11, 12}, {17, 20, 22}},
		},
		{
			"a look within a step is by for the event before it", m,
			[]Look{{HindLegs, day(2), By}},
			[][]int{{0, 1, 1}, {1, 1, 2}, {7, 9, 11}, {8, 10, 13}, {16, 19, 22}},
		},
		{
			"a look within a step is not yet for the event after it", m,
			[]Look{{Toes, day(17), NotYet}},
			[][]int{{3, 4, 5}, {6, 7, 9}, {19, 20, 23}, {21, 23, 26}, {32, 35, 40}},
		},
		{
			"a record within a step is both", chainOf(t, []float64{1, 1, 1}, []float64{1, 3, 4}, []float64{1, 2, 3}, []float64{1, 1, 1}, []float64{1, 1, 1}),
			[]Look{{Toes, day(5), Reached}, {Feeding, day(4), NotYet}}, // feeding on 5, front legs from 5 on
			[][]int{{1, 1, 1}, {5, 5, 5}, {5, 5, 6}, {6, 6, 7}, {7, 7, 8}},
		},
		{
			"a record after by and not yet that agree with it", m,
			[]Look{{Hatched, day(1), NotYet}, {Hatched, day(3), By}, {Hatched, day(2), Reached}},
			[][]int{{2, 2, 2}, {3, 4, 5}, {12, 14, 16}, {13, 16, 19}, {22, 26, 30}},
		},
		{
			"everything recorded", m,
			[]Look{{SaleReady, day(26), Reached}, {OutOfWater, day(16), Reached}, {FrontLegs, day(14), Reached}, {Feeding, day(4), Reached}, {Hatched, day(2), Reached}},
			[][]int{{2, 2, 2}, {4, 4, 4}, {14, 14, 14}, {16, 16, 16}, {26, 26, 26}},
		},
		{
			"nothing is known after a step that is not", chainOf(t, three, three, unknown, three, ten), nil,
			[][]int{{1, 2, 3}, {2, 4, 6}, nil, nil, nil},
		},
		{
			"a record takes up again after it", chainOf(t, three, three, unknown, three, ten),
			[]Look{{FrontLegs, day(50), Reached}},
			[][]int{{1, 2, 3}, {2, 4, 6}, {50, 50, 50}, {51, 52, 53}, {59, 62, 65}},
		},
		{
			"what is recorded across it still bounds what went before", chainOf(t, three, three, unknown, three, ten),
			[]Look{{OutOfWater, day(2), Reached}},
			[][]int{{1, 1, 1}, {2, 2, 2}, nil, {2, 2, 2}, {9, 11, 13}},
		},
		{
			"the first step unknown, one of the others recorded", chainOf(t, unknown, three, ten, three, ten),
			[]Look{{Feeding, day(9), Reached}},
			[][]int{nil, {9, 9, 9}, {17, 19, 21}, {18, 21, 24}, {27, 31, 35}},
		},
		{
			"two unknown steps in turn", chainOf(t, three, unknown, unknown, three, ten),
			[]Look{{Feeding, day(9), Reached}},
			[][]int{{1, 2, 3}, {9, 9, 9}, nil, nil, nil},
		},
		{"nothing known", chainOf(t, unknown, unknown, unknown, unknown, unknown), nil, [][]int{nil, nil, nil, nil, nil}},
	} {
		t.Run(row.name, func(t *testing.T) {
			f := outlookOf(row.model, row.looks...)
			assert.Empty(t, cmp.Diff(row.want, triples(t, f)))
			for i, l := range links {
				assert.Equal(t, l.end, f.Events[i].Stage)
				recorded := false
				for _, look := range row.looks {
					recorded = recorded || look.Stage == l.end && look.Kind == Reached
				}
				assert.Equal(t, recorded, f.Events[i].Recorded, "%v", l.end)
			}
		})
	}
}

func TestOutlookWarnings(t *testing.T) {
	for _, row := range []struct {
		name  string
		looks []Look
		want  [][]int
		warn  []string
	}{
		{
			"front legs recorded before hatching",
			[]Look{{Hatched, day(70), Reached}, {FrontLegs, day(65), Reached}},
			// what lies between the two has no dates; what follows goes on from the front legs
			[][]int{{70, 70, 70}, nil, {65, 65, 65}, {70, 72, 75}, {111, 128, 149}},
			[]string{
				"hatched on 2027-04-25 contradicts front-legs on 2027-04-20: both dates are kept, but one must be wrong",
				"hatched came 70 days after laid, where the profile expects 6 to 9 days (10th to 90th percentile): " +
					"what was seen has a chance under 0.1 %, so the step lengths, the temperature or a date is in doubt",
			},
		},
		{
			"hatched before it was laid",
			[]Look{{Hatched, day(-1), Reached}},
			[][]int{{-1, -1, -1}, {0, 1, 2}, {49, 61, 81}, {55, 68, 90}, {99, 125, 159}},
			[]string{"hatched on 2027-02-13 contradicts laid on 2027-02-14: both dates are kept, but one must be wrong"},
		},
		{
			"laid on another day",
			[]Look{{Laid, day(1), Reached}},
			triples(t, outlookOf(leafFrog(t))),
			[]string{"laid on 2027-02-15 contradicts laid on 2027-02-14: it is left out"},
		},
		{
			"laid again, and seen as eggs later: nothing new",
			[]Look{{Laid, day(0), Reached}, {Laid, day(5), By}, {Hatched, day(-3), NotYet}},
			triples(t, outlookOf(leafFrog(t))),
			nil,
		},
		{
			"recorded twice: the first stands",
			[]Look{{Hatched, day(8), Reached}, {Hatched, day(7), Reached}},
			triples(t, outlookOf(leafFrog(t), []Look{{Hatched, day(7), Reached}}...)),
			[]string{"hatched on 2027-02-22 contradicts hatched on 2027-02-21: it is left out"},
		},
		{
			"the same look twice is one look",
			[]Look{{Hatched, day(7), Reached}, {Hatched, day(7), Reached}},
			triples(t, outlookOf(leafFrog(t), []Look{{Hatched, day(7), Reached}}...)),
			nil,
		},
		{
			"not yet on the day on which it is recorded: the record stands",
			[]Look{{Hatched, day(7), NotYet}, {Hatched, day(7), Reached}},
			triples(t, outlookOf(leafFrog(t), []Look{{Hatched, day(7), Reached}}...)),
			[]string{"hatched not yet on 2027-02-21 contradicts hatched on 2027-02-21: it is left out"},
		},
		{
			"the same wrong look twice is one warning",
			[]Look{{Hatched, day(9), NotYet}, {Hatched, day(7), Reached}, {Hatched, day(9), NotYet}},
			triples(t, outlookOf(leafFrog(t), []Look{{Hatched, day(7), Reached}}...)),
			[]string{"hatched not yet on 2027-02-23 contradicts hatched on 2027-02-21: it is left out"},
		},
		{
			"there before it is recorded: the record stands",
			[]Look{{Feeding, day(6), By}, {Hatched, day(7), Reached}},
			triples(t, outlookOf(leafFrog(t), []Look{{Hatched, day(7), Reached}}...)),
			[]string{"feeding by 2027-02-20 contradicts hatched on 2027-02-21: it is left out"},
		},
		{
			"two looks that record nothing: the one of the earlier day stands",
			[]Look{{Hatched, day(9), NotYet}, {Hatched, day(8), By}},
			triples(t, outlookOf(leafFrog(t), []Look{{Hatched, day(8), By}}...)),
			[]string{"hatched not yet on 2027-02-23 contradicts hatched by 2027-02-22: it is left out"},
		},
		{
			"a look of another century",
			[]Look{{Hatched, day(40000), NotYet}},
			triples(t, outlookOf(leafFrog(t))),
			[]string{"hatched not yet on 2136-08-21 is ten years or more after laid on 2027-02-14: it is left out"},
		},
		{
			"a record of another century",
			[]Look{{FrontLegs, day(40000), Reached}},
			[][]int{nil, nil, {40000, 40000, 40000}, {40005, 40007, 40010}, {40046, 40063, 40084}},
			[]string{"what was seen after laid reaches over more than ten years: no dates are given for it"},
		},
		{
			"front legs far too early: the tadpole step is the one that was short",
			[]Look{{FrontLegs, day(20), Reached}},
			[][]int{{6, 7, 9}, {8, 9, 11}, {20, 20, 20}, {25, 27, 30}, {66, 83, 104}},
			[]string{"front-legs came 20 days after laid, where the profile expects 56 to 90 days (10th to 90th percentile): " +
				"what was seen has a chance under 0.1 %, so the step lengths, the temperature or a date is in doubt, " +
				"and the dates between are rough"},
		},
		{
			"front legs on the day of laying: all in one day, and no worse",
			[]Look{{FrontLegs, day(0), Reached}},
			[][]int{{0, 0, 0}, {0, 0, 0}, {0, 0, 0}, {5, 7, 10}, {46, 63, 84}},
			[]string{"front-legs came 0 days after laid, where the profile expects 56 to 90 days (10th to 90th percentile): " +
				"what was seen has a chance under 0.1 %, so the step lengths, the temperature or a date is in doubt, " +
				"and the dates between are rough"},
		},
		{
			"seen feeding much too early, no record",
			[]Look{{Feeding, day(1), By}},
			nil,
			[]string{"feeding came within 1 day of laid, where the profile expects 7 to 12 days (10th to 90th percentile): " +
				"what was seen has a chance under 0.1 %, so the step lengths, the temperature or a date is in doubt, " +
				"and the dates that follow are rough"},
		},
		{
			"still eggs after ten weeks",
			[]Look{{Hatched, day(70), NotYet}},
			nil,
			[]string{"hatched did not come within 70 days of laid, where the profile expects 6 to 9 days (10th to 90th percentile): " +
				"what was seen has a chance under 0.1 %, so the step lengths, the temperature or a date is in doubt, " +
				"and the dates that follow are rough"},
		},
		{
			"unlikely, not impossible: a warning, and the model is still followed",
			[]Look{{FrontLegs, day(115), NotYet}},
			nil,
			[]string{
				"front-legs did not come within 115 days of laid, where the profile expects 56 to 90 days (10th to 90th percentile): " +
					"what was seen has a chance of 0.7 %, so the step lengths, the temperature or a date is in doubt",
				"the chance that the clutch has stalled, or will, is 74 %: look at temperature, food and water, and ask a veterinarian when animals look unwell",
			},
		},
		{
			"a day off is no cause for doubt", // no day at all for feeding, where 1 to 3 are usual
			[]Look{{Hatched, day(7), Reached}, {Feeding, day(7), Reached}, {OutOfWater, day(75), Reached}},
			nil,
			nil,
		},
		{
			"more days off are", // a length of 5 or more: ln(4.5/2)/0.3164 = 2.563, 0.0052 by the table, twice; less as the eggs were not slow
			[]Look{{Hatched, day(7), Reached}, {Feeding, day(13), Reached}},
			nil,
			[]string{"feeding came 6 days after hatched, where the profile expects 1 to 3 days (10th to 90th percentile): " +
				"what was seen has a chance of 0.5 %, so the step lengths, the temperature or a date is in doubt"},
		},
		{
			"doubt is about the step in which it lies",
			[]Look{{Hatched, day(7), Reached}, {Feeding, day(9), Reached}, {FrontLegs, day(70), Reached}, {OutOfWater, day(92), Reached}},
			[][]int{{7, 7, 7}, {9, 9, 9}, {70, 70, 70}, {92, 92, 92}, {144, 159, 178}},
			[]string{"out-of-water came 22 days after front-legs, where the profile expects 5 to 10 days (10th to 90th percentile): " +
				"what was seen has a chance under 0.1 %, so the step lengths, the temperature or a date is in doubt"},
		},
	} {
		t.Run(row.name, func(t *testing.T) {
			f := outlookOf(leafFrog(t), row.looks...)
			assert.Empty(t, cmp.Diff(row.warn, texts(f)))
			got := triples(t, f)
			if row.want != nil {
				assert.Empty(t, cmp.Diff(row.want, got))
			}
		})
	}
}

// Past what the model can say, dates still keep to what was seen and do not
// pile up on the next day.
func TestOutlookBeyondTheModel(t *testing.T) {
	for _, on := range []int{20, 70, 1000} { // on day 20 the model still gives 2 in a hundred million
		f := outlookOf(leafFrog(t), []Look{{Hatched, day(on), NotYet}}...)
		require.Len(t, f.Warnings, 1)
		hatched := f.Events[0].Dist
		assert.Equal(t, on+1, hatched.First())
		assert.Greater(t, hatched.Quantile(0.9), on+7, "%d: as wide as the step", on)
		assert.InDelta(t, hatched.Mean()+2, f.Events[1].Dist.Mean(), 0.5, "%d: the steps after it are as usual", on)
	}
	f := outlookOf(chainOf(t, nil, []float64{1, 1, 1}), Look{Hatched, day(1), Reached}, Look{Feeding, day(2500), NotYet})
	assert.Equal(t, 2501, f.Events[1].Dist.First(), "however short the step")

	f = outlookOf(leafFrog(t), []Look{{Feeding, day(1), By}}...)
	assert.LessOrEqual(t, f.Events[1].Dist.Last(), 1)
	assert.InDelta(t, f.Events[1].Dist.Mean()+63, f.Events[2].Dist.Mean(), 2)
}

// Records that run backward over a step that the profile lacks.
func TestOutlookBackwardOverAGap(t *testing.T) {
	m := chainOf(t, []float64{6, 7, 9}, []float64{1, 2, 3}, nil, []float64{5, 7, 10}, nil)
	f := outlookOf(m, Look{OutOfWater, day(5), Reached}, Look{Hatched, day(7), Reached})
	assert.Equal(t, [][]int{{7, 7, 7}, nil, nil, {5, 5, 5}, nil}, triples(t, f))
	assert.Equal(t, []string{
		"hatched on 2027-02-21 contradicts out-of-water on 2027-02-19: both dates are kept, but one must be wrong",
	}, texts(f))
}

func TestOutlookPanics(t *testing.T) {
	m := leafFrog(t)
	for name, f := range map[string]func(){
		"look without date":  func() { outlookOf(m, Look{Stage: Hatched}) },
		"no such stage":      func() { outlookOf(m, Look{Stage(99), day(3), Reached}) },
		"no such kind":       func() { outlookOf(m, Look{Hatched, day(3), LookKind(7)}) },
		"survival, no stage": func() { m.Survival(Laid, Stage(12)) },
	} {
		assert.Panics(t, f, name)
	}
}

func TestOutlookLeavesLooksAlone(t *testing.T) {
	looks := []Look{{FrontLegs, day(70), By}, {Hatched, day(7), Reached}}
	outlookOf(leafFrog(t), looks...)
	assert.Equal(t, []Look{{FrontLegs, day(70), By}, {Hatched, day(7), Reached}}, looks)
}

func TestOutlookEvent(t *testing.T) {
	f := outlookOf(leafFrog(t))
	e, ok := f.Event(FrontLegs)
	assert.True(t, ok)
	assert.Equal(t, FrontLegs, e.Stage)
	e, ok = f.Event(Toes)
	assert.True(t, ok)
	assert.Equal(t, Toes, e.Stage)
	_, ok = f.Event(Laid)
	assert.False(t, ok)
}
