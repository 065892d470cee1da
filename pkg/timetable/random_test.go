package timetable_test

import (
	"context"
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/season"
	"github.com/spawnwright/spawnwright/pkg/timetable"
)

func drawPairing(t *rapid.T, id string) timetable.Pairing {
	n := func(label string, least, most int) int { return rapid.IntRange(least, most).Draw(t, id+" "+label) }
	p := pairing(id)
	p.Animals = []string{fmt.Sprint("he ", n("he", 0, 5)), fmt.Sprint("she ", n("she", 0, 5))}
	if day := n("day", -40, 150); n("forward", 0, 2) == 0 {
		p.Start = today.Add(day)
	} else {
		p.ReadyBy = today.Add(day + 100)
		p.MayBeLate, p.Late = n("may be late", 0, 1) == 1, n("late", 0, 20)
		p.Early = n("early", 0, 3)
		if n("released", 0, 3) == 0 {
			p.NotBefore = today.Add(n("not before", -10, 60))
		}
	}
	if n("may be left out", 0, 2) == 0 {
		p.LeaveOut = n("leave out", 1, 300)
	}
	if k := n("began", -2, 3); k >= 0 {
		p.Began = []season.Began{{Phase: p.Phases[k].Name, On: today.Add(-n("ago", 0, 30))}}
	}
	p.Young = []planner.Hold{
		{Resource: timetable.Tub, Amount: n("tubs", 0, 3), From: 8, To: n("tubs to", 20, 40)},
		{Resource: timetable.Bin, Amount: n("bins", 0, 3), From: 30, To: 60, Until: p.ReadyBy},
	}
	p.Hands = []planner.Visit{{Day: n("hands", 0, 40)}}
	p.Work = map[string]int{season.Rain: n("work", 0, 30)}
	if n("told", 0, 2) == 0 {
		p.Announced = map[string]civil.Date{season.Rain: today.Add(n("told rain", 0, 150))}
	}
	return p
}

func drawRoom(t *rapid.T) timetable.Room {
	n := func(label string, most int) int { return rapid.IntRange(0, most).Draw(t, label) }
	room := timetable.Room{Room: season.Room{Capacity: []season.Capacity{
		have("rain chamber", n("chambers", 3)), have("cooling place", n("cooling", 4)),
		have(timetable.Tub, n("tubs", 8)), have(timetable.Bin, n("bins", 8)), have(planner.Minutes, n("minutes", 90)),
	}}}
	for i := range n("aways", 3) {
		first := today.Add(n(fmt.Sprint("away ", i), 150))
		room.Away = append(room.Away, civil.Span{First: first, Last: first.Add(n(fmt.Sprint("days ", i), 12))})
	}
	if n("a clutch", 1) == 1 {
		room.Taken = []planner.Taken{{Resource: timetable.Tub, Amount: n("taken", 9), Span: civil.Span{First: today.Add(-5), Last: today.Add(n("until", 90))}}}
	}
	room.Retry, room.RetryAfter = n("retry", 2) == 0, n("after", 15)
	return room
}

// TestRandom holds every plan against the checker that shares nothing with the
// solver, and what is told of it against the plan.
func TestRandom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := drawRoom(t)
		var pairings []timetable.Pairing
		for i := range rapid.IntRange(0, 5).Draw(t, "pairings") {
			pairings = append(pairings, drawPairing(t, fmt.Sprint("P", i)))
		}
		got := timetable.Fit(context.Background(), room, pairings, today, timetable.Options{Advise: true})
		if again := timetable.Fit(context.Background(), room, pairings, today, timetable.Options{Workers: 2, Advise: true}); !cmp.Equal(got, again) {
			t.Fatalf("two runs differ: %s", cmp.Diff(got, again))
		}
		if len(got.Season.Cycles)+len(got.LeftOut) != len(pairings) {
			t.Fatalf("%d pairings, %d planned, %v left out", len(pairings), len(got.Season.Cycles), got.LeftOut)
		}
		if got.Conflict != nil && (got.Proof != nil || len(got.Conflict.Chains) == 0) {
			t.Fatalf("conflict %+v", got.Conflict)
		}
		if got.Proof == nil {
			return
		}
		if faults := planner.Check(got.Problem, got.Plan); len(faults) > 0 {
			t.Fatalf("%v", faults)
		}
		checkDays(t, got)
		checkLoads(t, got)
	})
}

// checkDays holds the season against the plan: chains end with their cycles.
func checkDays(t *rapid.T, got timetable.Timetable) {
	for _, chain := range got.Plan.Cycles {
		for _, c := range got.Season.Cycles {
			if c.Pairing != chain.ID || len(chain.Days) == 0 {
				continue
			}
			from := len(c.Phases) + 1 - len(chain.Days)
			for k, d := range chain.Days[1:] {
				if k += from + 1; k == len(c.Phases) && d != c.Span().Last.Add(1) || k < len(c.Phases) && d != c.Phases[k].Span.First {
					t.Fatalf("%s: the plan has %v and the season %+v", c.Pairing, chain.Days, c.Phases)
				}
			}
			if c.Phases[from].Span.First != chain.Days[0] && !(c.Phases[from].Recorded && chain.Days[0] == today) {
				t.Fatalf("%s begins on %s and not on %s", c.Pairing, c.Phases[from].Span.First, chain.Days[0])
			}
		}
	}
}

// checkLoads: a plan uses no more than there is, except where that is taken already.
func checkLoads(t *rapid.T, got timetable.Timetable) {
	for _, load := range got.Loads {
		for d, used := range load.Used {
			taken := 0
			for _, x := range got.Problem.Taken {
				if x.Resource == load.Resource && x.Span.Contains(got.Problem.First.Add(d)) {
					taken += x.Amount
				}
			}
			if used > max(load.Count, taken) || used < taken {
				t.Fatalf("day %d: %d of %d %ss, %d taken", d, used, load.Count, load.Resource, taken)
			}
		}
	}
}
