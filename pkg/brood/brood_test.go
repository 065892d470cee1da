package brood_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/brood"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/internal/clockwork"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/rearing"
	"github.com/spawnwright/spawnwright/pkg/season"
	"github.com/spawnwright/spawnwright/pkg/timetable"
)

// nursery is the clockwork species with two tadpoles in a litre, of a room with tubs of
// ten litres and bins for five froglets, and with more below.
func nursery(t testing.TB, more string) (*brood.Broods, *rearing.Rearing) {
	t.Helper()
	text := strings.Replace(clockwork.Spelled(clockwork.Basic), "    maturity:", "    tadpoles_per_litre: 2\n    maturity:", 1)
	return roomOf(t, text+"equipment: {tadpole_tubs: {count: 3, litres: 10}, froglet_bins: {count: 9, froglets: 5}}\n"+more)
}

func roomOf(t testing.TB, text string) (*brood.Broods, *rearing.Rearing) {
	t.Helper()
	c, problems := collection.Read("room.yaml", []byte(text))
	require.NotNil(t, c, "%v", problems)
	a, err := kin.Of(c)
	require.NoError(t, err)
	breeding, models := make(map[string]*brood.Breeding), make(map[string]*development.Model)
	for _, p := range c.Species {
		b, err := brood.NewBreeding(p)
		require.NoError(t, err)
		breeding[p.ID], models[p.ID] = b, b.Model
	}
	r := rearing.New(c, a, models)
	return brood.New(r, breeding), r
}

func day(text string) civil.Date {
	d, err := civil.Parse(text)
	if err != nil {
		panic(err)
	}
	return d
}

// TestOf counts from the first night of rain: two nights until there are eggs, then the
// days of the steps.
func TestOf(t *testing.T) {
	l, _ := nursery(t, "")
	b := l.Of("clockwork", day("2027-01-01"))
	want := []season.StageOffset{}
	for _, s := range []struct {
		name string
		day  int
	}{{"laid", 2}, {"hatched", 7}, {"feeding", 9}, {"front-legs", 49}, {"out-of-water", 55}, {"sale-ready", 105}} {
		want = append(want, season.StageOffset{Stage: s.name, Early: s.day, Likely: s.day, Late: s.day})
	}
	assert.Equal(t, want, b.Stages)
	assert.Equal(t, 105, b.Ready.Quantile(0.5))
	assert.Equal(t, 20, b.FromEach, "half of 40")
	assert.Same(t, b, l.Of("clockwork", day("2027-02-01")), "the diary teaches nothing in between")
	assert.PanicsWithValue(t, `brood: the collection has no species "hyla-cinerea"`, func() { l.Breeding("hyla-cinerea") })
}

// TestYield: half of 40 live on average, as a beta distribution with 5 and 5, which is as
// often above one half as below.
func TestYield(t *testing.T) {
	l, _ := nursery(t, "")
	b := l.Of("clockwork", day("2027-01-01"))
	of := func(wanted, raise, days int) float64 {
		y, ok := b.Yield(wanted, raise, days)
		require.True(t, ok)
		return y.Enough()
	}
	assert.InDelta(t, 0.5, of(20, 0, brood.InTime), 0.05)
	assert.Zero(t, of(41, 0, brood.InTime), "there are 40 eggs")
	assert.Zero(t, of(11, 10, brood.InTime), "10 are raised")
	assert.Less(t, of(20, 0, 104), of(20, 0, 120), "half of them are ready on day 105")
	assert.Zero(t, of(1, 0, 2), "eggs")
	assert.Zero(t, of(1, 0, -1), "nothing is ready on the day before the rain begins")

	none := brood.NoYield(20)
	assert.Zero(t, none.Enough())
	assert.Equal(t, 1.0, brood.NoYield(0).Enough(), "nobody is wanted")
	one, _ := b.Yield(20, 0, brood.InTime)
	assert.InDelta(t, one.Enough(), one.And(none).Enough(), 1e-12, "no clutch adds nothing")
	assert.Greater(t, one.And(one).Enough(), 0.9, "two bring 40")
	assert.PanicsWithValue(t, "brood: yields for targets of different numbers", func() { one.And(brood.NoYield(21)) })
}

// TestHolds: 40 tadpoles want 20 litres, two tubs, and 20 froglets four bins.
func TestHolds(t *testing.T) {
	l, _ := nursery(t, "")
	on := day("2027-01-01")
	h := l.Holds(&collection.Pairing{Species: "clockwork", Dams: []string{"D"}}, on, 0)
	assert.Equal(t, []planner.Hold{
		{Resource: timetable.Tub, Amount: 2, From: 7, To: 55},
		{Resource: timetable.Bin, Amount: 4, From: 55, To: 105},
	}, h.Space)
	assert.Equal(t, []planner.Visit{{Day: 2}, {Day: 49}, {Day: 55}}, h.Hands, "eggs, front legs, out of the water")
	assert.Empty(t, h.Doubts)

	two := l.Holds(&collection.Pairing{Species: "clockwork", Dams: []string{"D", "E"}}, on, 0)
	assert.Equal(t, 3, two.Space[0].Amount, "all that there are")
	require.Len(t, two.Doubts, 1)
	assert.Contains(t, two.Doubts[0], "about 80 tadpoles are more than all tubs hold")
	few := l.Holds(&collection.Pairing{Species: "clockwork", Dams: []string{"D", "E"}}, on, 10)
	assert.Equal(t, 1, few.Space[0].Amount, "ten of each are raised")
}

// TestRunning: what is there is known better than what is usual.
func TestRunning(t *testing.T) {
	l, r := nursery(t, `
clutches:
  - {id: C, laid: 2027-02-10, dam: D, sire: A, eggs: 40}
  - {id: dead, laid: 2027-02-10, dam: D, sire: A}
diary:
  - {on: 2027-02-15, clutch: C, saw: hatched, count: 12}
  - {on: 2027-02-16, clutch: dead, count: 0}
`)
	on := day("2027-02-20")
	all := r.Tended(on)
	require.Len(t, all, 2)
	run := l.Running(all, on)
	require.Len(t, run, 1, "of the other nobody is left")
	h := run[0]
	tadpoles, froglets := h.Heads()
	assert.Equal(t, 12.0, tadpoles)
	assert.InDelta(t, 6, froglets, 0.5)
	assert.Equal(t, day("2027-04-04"), h.Day(development.OutOfWater, 0.5))
	assert.Equal(t, []planner.Taken{
		{Resource: timetable.Tub, Amount: 1, Span: civil.Span{First: on, Last: day("2027-04-03")}},
		{Resource: timetable.Bin, Amount: 2, Span: civil.Span{First: day("2027-04-04"), Last: day("2027-05-23")}},
	}, h.Taken())
	assert.Zero(t, h.Yield(13, day("2027-06-30")).Enough(), "12 hatched")
	assert.Equal(t, day("2027-05-24"), h.BinsFree(0.9))
	ready := day("2027-05-24")
	assert.Equal(t, ready.Add(28), l.Running(r.Tended(ready), ready)[0].BinsFree(0.9), "who is sale-ready and still counted stays some weeks")
	assert.Greater(t, h.Yield(2, day("2027-06-30")).Enough(), 0.8)
}

// TestForAShow: bins are kept until the day for which a pairing wants its young.
func TestForAShow(t *testing.T) {
	l, r := nursery(t, `
pairings:
  - {id: P, dam: D, sire: A, ready_by: 2027-08-01}
clutches:
  - {id: C, laid: 2027-02-10, dam: D, sire: A, pairing: P}
diary:
  - {on: 2027-02-15, clutch: C, saw: hatched, count: 12}
`)
	p, _ := r.Collection.Pairing("P")
	on := day("2027-02-20")
	space := l.Holds(p, on, 0).Space
	assert.Equal(t, timetable.Bin, space[1].Resource)
	assert.Equal(t, day("2027-08-01"), space[1].Until)
	assert.Equal(t, day("2027-08-02"), l.Running(r.Tended(on), on)[0].BinsFree(0.9), "the day after, for they are sale-ready on 2027-05-24")
}

// TestTubsSetTooWarm: the species is safe up to 28 °C.
func TestTubsSetTooWarm(t *testing.T) {
	outside := func(water collection.Given[float64]) bool {
		l, r := nursery(t, "")
		r.Collection.Equipment.TadpoleTubs.WaterC = water
		return slices.ContainsFunc(l.Of("clockwork", day("2027-01-01")).Doubts, func(d string) bool {
			return strings.Contains(d, "outside the safe range of 18 to 28 °C")
		})
	}
	assert.False(t, outside(collection.Given[float64]{}), "not known")
	assert.False(t, outside(collection.Given[float64]{Known: true, Value: 28}))
	assert.True(t, outside(collection.Given[float64]{Known: true, Value: 28.5}))
}

// TestOfAStep: a clutch in four stops as tadpoles, and these are fed for 5 minutes a day.
func TestOfAStep(t *testing.T) {
	text := strings.Replace(clockwork.Spelled(clockwork.Basic), "stall: 0}", "stall: 0.25, minutes_a_day: 4.5}", 1)
	l, _ := roomOf(t, text)
	on := day("2027-01-01")
	y, ok := l.Of("clockwork", on).Yield(1, 0, brood.InTime)
	require.True(t, ok)
	assert.InDelta(t, 0.75, y.Enough(), 1e-9)
	h := l.Holds(&collection.Pairing{Species: "clockwork", Dams: []string{"D", "E"}}, on, 0)
	assert.Contains(t, h.Space, planner.Hold{Resource: planner.Minutes, Amount: 10, From: 9, To: 49}, "two clutches, in whole minutes")
}
