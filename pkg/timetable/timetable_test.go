package timetable_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/season"
	"github.com/spawnwright/spawnwright/pkg/timetable"
)

var today = date("2027-01-01")

func date(text string) civil.Date {
	d, err := civil.Parse(text)
	if err != nil {
		panic(err)
	}
	return d
}

// pairing is a cycle of 10 days of conditioning, 15 to 25 of cooling, 5 of rain and
// 10 of rest, with young 100 days after the first night of rain.
func pairing(id string) timetable.Pairing {
	return timetable.Pairing{
		Early: 1,
		Pairing: season.Pairing{
			ID: id, Animals: []string{"he of " + id, "she of " + id}, ReadyAfter: 100,
			Phases: []season.Phase{
				{Name: "conditioning", Min: 10, Usual: 10, Max: 10},
				{Name: "cooling", Min: 15, Usual: 20, Max: 25, Place: "cooling place"},
				{Name: season.Rain, Min: 5, Usual: 5, Max: 5, Place: "rain chamber"},
				{Name: season.Rest, Min: 10, Usual: 10, Max: 10},
			},
		},
	}
}

// readyBy gives a pairing for a day that is the hundredth after its rain on day n
// from today.
func readyBy(id string, n int, change ...func(*timetable.Pairing)) timetable.Pairing {
	p := pairing(id)
	p.ReadyBy = today.Add(n + 100)
	for _, f := range change {
		f(&p)
	}
	return p
}

func start(id string, n int, change ...func(*timetable.Pairing)) timetable.Pairing {
	p := readyBy(id, 0, change...)
	p.Start, p.ReadyBy = today.Add(n), 0
	return p
}

func have(place string, n int) season.Capacity {
	return season.Capacity{Place: place, Count: n, Known: true}
}

// rains gives the days from today to the rain of each pairing.
func rains(t timetable.Timetable) map[string]int {
	out := make(map[string]int)
	for _, c := range t.Season.Cycles {
		out[c.Pairing] = c.RainStart.Sub(today)
	}
	return out
}

// TestFit has one wish for each row. Rains are counted from today.
func TestFit(t *testing.T) {
	holds := func(resource string, amount, from, to int, until civil.Date) func(*timetable.Pairing) {
		return func(p *timetable.Pairing) {
			p.Young = append(p.Young, planner.Hold{Resource: resource, Amount: amount, From: from, To: to, Until: until})
		}
	}
	long := func(p *timetable.Pairing) { // the rest, of the same male
		p.Animals[0] = "he"
		p.Phases[3].Min, p.Phases[3].Usual, p.Phases[3].Max = 150, 150, 150
	}
	chambers := season.Room{Capacity: []season.Capacity{have("rain chamber", 1)}}
	for _, row := range []struct {
		name     string
		room     timetable.Room
		pairings []timetable.Pairing
		rains    map[string]int
		cost     int
		leftOut  []string
	}{
		{
			"nothing in the way: as late as is in time",
			timetable.Room{Room: chambers},
			[]timetable.Pairing{readyBy("P", 60)},
			map[string]int{"P": 60},
			0, nil,
		},
		{
			"one chamber: one of them 5 days earlier, at 10 a day",
			timetable.Room{Room: chambers},
			[]timetable.Pairing{readyBy("P", 60), readyBy("Q", 60)},
			map[string]int{"P": 60, "Q": 55},
			50, nil,
		},
		{
			"one may be late by 5 days at 2 a day, which costs less than to be early",
			timetable.Room{Room: chambers},
			[]timetable.Pairing{
				readyBy("P", 60, func(p *timetable.Pairing) { p.Early = 100 }),
				readyBy("Q", 60, func(p *timetable.Pairing) { p.MayBeLate, p.Early, p.Late = true, 9, 2 }),
			},
			map[string]int{"P": 60, "Q": 65},
			100, nil,
		},
		{
			"one may be late, and waits for its male however long he is busy: 155 days from the rain, 10 and 15 before the next",
			timetable.Room{Room: chambers},
			[]timetable.Pairing{
				readyBy("P", 60, long, func(p *timetable.Pairing) { p.Early = 100 }),
				readyBy("Q", 60, long, func(p *timetable.Pairing) { p.MayBeLate, p.Late = true, 1 }),
			},
			map[string]int{"P": 60, "Q": 240},
			1805, nil,
		},
		{
			"a chamber free from day 70 on, and days that cost nothing: the nearest all the same",
			timetable.Room{Room: chambers, Taken: []planner.Taken{{Resource: "rain chamber", Amount: 1, Span: civil.Span{First: today, Last: today.Add(69)}}}},
			[]timetable.Pairing{readyBy("P", 60, func(p *timetable.Pairing) { p.MayBeLate, p.Early = true, 0 })},
			map[string]int{"P": 70},
			10, nil,
		},
		{
			"leaving one out is cheaper than 5 days",
			timetable.Room{Room: chambers},
			[]timetable.Pairing{readyBy("P", 60), readyBy("Q", 60, func(p *timetable.Pairing) { p.LeaveOut = 4 })},
			map[string]int{"P": 60},
			40,
			[]string{"Q"},
		},
		{
			"and dearer",
			timetable.Room{Room: chambers},
			[]timetable.Pairing{readyBy("P", 60), readyBy("Q", 60, func(p *timetable.Pairing) { p.LeaveOut = 6 })},
			map[string]int{"P": 60, "Q": 55},
			50, nil,
		},
		{
			"a second attempt 3 days after the rain keeps the chamber for 5 more",
			timetable.Room{Room: chambers, Retry: true, RetryAfter: 3},
			[]timetable.Pairing{readyBy("P", 60), readyBy("Q", 60)},
			map[string]int{"P": 60, "Q": 47},
			130, nil,
		},
		{
			"but none is needed when there are eggs",
			timetable.Room{Room: chambers, Retry: true, RetryAfter: 3},
			[]timetable.Pairing{
				readyBy("P", 60, func(p *timetable.Pairing) { p.Laid = true }),
				readyBy("Q", 60, func(p *timetable.Pairing) { p.Laid = true }),
			},
			map[string]int{"P": 60, "Q": 55},
			50, nil,
		},
		{
			"tubs for two at once, one after the other from day 10 to day 30",
			timetable.Room{Room: season.Room{Capacity: []season.Capacity{have(timetable.Tub, 5)}}},
			[]timetable.Pairing{readyBy("P", 80, holds(timetable.Tub, 3, 10, 30, 0)), readyBy("Q", 80, holds(timetable.Tub, 3, 10, 30, 0))},
			map[string]int{"P": 80, "Q": 60},
			200, nil,
		},
		{
			"bins are kept until the day of the show: moving would not help, and one is left out",
			timetable.Room{Room: season.Room{Capacity: []season.Capacity{have(timetable.Bin, 5)}}},
			[]timetable.Pairing{
				readyBy("P", 60, holds(timetable.Bin, 3, 50, 90, today.Add(160))),
				readyBy("Q", 60, holds(timetable.Bin, 3, 50, 90, today.Add(160)), func(p *timetable.Pairing) { p.LeaveOut = 1000 }),
			},
			map[string]int{"P": 60},
			10000,
			[]string{"Q"},
		},
		{
			"what clutches hold already is taken",
			timetable.Room{
				Room:  season.Room{Capacity: []season.Capacity{have(timetable.Tub, 5)}},
				Taken: []planner.Taken{{Resource: timetable.Tub, Amount: 3, Span: civil.Span{First: today, Last: today.Add(89)}}},
			},
			[]timetable.Pairing{readyBy("P", 80, holds(timetable.Tub, 3, 10, 12, 0), func(p *timetable.Pairing) { p.MayBeLate, p.Late = true, 1 })},
			map[string]int{"P": 80},
			0, nil,
		},
		{
			"minutes a day: the work of the rain for one at a time",
			timetable.Room{Room: season.Room{Capacity: []season.Capacity{have(planner.Minutes, 50)}}},
			[]timetable.Pairing{
				readyBy("P", 60, func(p *timetable.Pairing) { p.Work = map[string]int{season.Rain: 30} }),
				readyBy("Q", 60, func(p *timetable.Pairing) { p.Work = map[string]int{season.Rain: 30} }),
			},
			map[string]int{"P": 60, "Q": 55},
			50, nil,
		},
		{
			"hands of the young keep off the days away: 3 days after the rain begins",
			timetable.Room{Room: season.Room{Away: []civil.Span{{First: today.Add(63), Last: today.Add(63)}}}},
			[]timetable.Pairing{readyBy("P", 70, func(p *timetable.Pairing) {
				p.ReadyBy, p.Hands = today.Add(160), []planner.Visit{{Day: 3}}
			})},
			// The rain of 5 days is attended too, so it has to end before day 63.
			map[string]int{"P": 57},
			30, nil,
		},
		{
			"except where a start leaves no choice: the rain is over, and the hands come on day 70",
			timetable.Room{Room: season.Room{Away: []civil.Span{{First: today.Add(53), Last: today.Add(90)}}}},
			[]timetable.Pairing{start("P", 10, func(p *timetable.Pairing) { p.Hands = []planner.Visit{{Day: 30}} })},
			map[string]int{"P": 40},
			0, nil,
		},
		{
			"what cannot be in time is left out when it may be",
			timetable.Room{Room: chambers},
			[]timetable.Pairing{readyBy("P", 60), readyBy("Q", 10, func(p *timetable.Pairing) { p.LeaveOut = 4 })},
			map[string]int{"P": 60},
			0,
			[]string{"Q"},
		},
		{
			"not before day 40: the cycle needs 25 days at least until the rain",
			timetable.Room{},
			[]timetable.Pairing{readyBy("P", 68, func(p *timetable.Pairing) { p.NotBefore = today.Add(40) })},
			map[string]int{"P": 68},
			2, nil,
		},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := timetable.Fit(context.Background(), row.room, row.pairings, today, timetable.Options{Advise: true})
			require.Nil(t, got.Conflict)
			assert.Equal(t, row.rains, rains(got))
			require.NotNil(t, got.Proof)
			assert.True(t, got.Proof.Best)
			assert.Equal(t, row.cost, got.Proof.Cost)
			assert.Equal(t, row.leftOut, got.LeftOut)
			assert.Empty(t, planner.Check(got.Problem, got.Plan))
		})
	}
}
