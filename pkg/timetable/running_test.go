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

// TestRunning goes on from what has begun.
func TestRunning(t *testing.T) {
	began := func(phase string, days int) func(*timetable.Pairing) {
		return func(p *timetable.Pairing) {
			p.Began = append(p.Began, season.Began{Phase: phase, On: today.Add(-days)})
		}
	}
	room := timetable.Room{Room: season.Room{Capacity: []season.Capacity{have("rain chamber", 1), have("cooling place", 2)}}}
	for _, row := range []struct {
		name     string
		pairings []timetable.Pairing
		rains    map[string]int
		kept     []string
	}{
		{
			"cooling for 12 days: its rain can come in 3 to 13, usually in 8",
			[]timetable.Pairing{start("P", -22, began("cooling", 12))},
			map[string]int{"P": 8},
			nil,
		},
		{
			"a chamber for two of them: one cools 5 days less, or more, which is as good",
			[]timetable.Pairing{start("P", -22, began("cooling", 12)), start("Q", -22, began("cooling", 12))},
			map[string]int{"P": 8, "Q": 3},
			nil,
		},
		{
			"one is in the rain for 2 days: it stays, and the other waits 3",
			[]timetable.Pairing{start("P", -33, began(season.Rain, 2)), start("Q", -28, began("cooling", 18))},
			map[string]int{"P": -2, "Q": 3},
			[]string{"P"},
		},
		{
			"one that was to begin is overdue and stays",
			[]timetable.Pairing{start("P", -1), readyBy("Q", 29)},
			map[string]int{"P": 29, "Q": 29},
			[]string{"P"},
		},
	} {
		t.Run(row.name, func(t *testing.T) {
			if row.name == "one that was to begin is overdue and stays" {
				row.pairings[1].ReadyBy = today.Add(100 + 34) // when the chamber is free again
				row.rains["Q"] = 34
			}
			got := timetable.Fit(context.Background(), room, row.pairings, today, timetable.Options{Advise: true})
			require.Nil(t, got.Conflict)
			assert.Equal(t, row.rains, rains(got))
			if got.Proof != nil {
				assert.Equal(t, row.kept, got.Proof.Kept)
				assert.Empty(t, planner.Check(got.Problem, got.Plan))
			}
			for i, c := range got.Season.Cycles {
				for _, b := range row.pairings[i].Began {
					for _, ph := range c.Phases {
						assert.False(t, ph.Name == b.Phase && (ph.Span.First != b.On || !ph.Recorded), "%s of %s", ph.Name, c.Pairing)
					}
				}
			}
		})
	}
}

// TestAnnounced keeps days that others know.
func TestAnnounced(t *testing.T) {
	told := func(p *timetable.Pairing, rain int) {
		p.Announced = map[string]civil.Date{
			"conditioning": today.Add(rain - 30), "cooling": today.Add(rain - 20), season.Rain: today.Add(rain),
			season.Rest: today.Add(rain + 5), planner.End: today.Add(rain + 15),
		}
	}
	p, q := readyBy("P", 60), readyBy("Q", 60)
	room := timetable.Room{Room: season.Room{Capacity: []season.Capacity{have("rain chamber", 2)}}}

	told(&p, 58)
	told(&q, 50)
	got := timetable.Fit(context.Background(), room, []timetable.Pairing{p, q}, today, timetable.Options{Advise: true})
	assert.Equal(t, map[string]int{"P": 58, "Q": 50}, rains(got), "2 and 10 days nearer to the wish are not worth 5 days that move")
	assert.Empty(t, got.Proof.Changed)

	room.Capacity[0].Count = 1
	told(&p, 60)
	told(&q, 58)
	got = timetable.Fit(context.Background(), room, []timetable.Pairing{p, q}, today, timetable.Options{Advise: true})
	assert.Equal(t, map[string]int{"P": 60, "Q": 55}, rains(got), "one chamber broke, and one of them is told new days")
	require.Len(t, got.Proof.Changed, 3, "conditioning and cooling begin on their days")
	assert.Equal(t, timetable.Changed{Pairing: "Q", Phase: season.Rain, From: today.Add(58), To: today.Add(55)}, got.Proof.Changed[0])

	q.LeaveOut = 1
	got = timetable.Fit(context.Background(), room, []timetable.Pairing{p, q}, today, timetable.Options{Advise: true})
	assert.Equal(t, []string{"Q"}, got.LeftOut)
	require.Len(t, got.Proof.Changed, 5)
	assert.Equal(t, timetable.Changed{Pairing: "Q", Phase: planner.End, From: today.Add(73)}, got.Proof.Changed[4])
}

// TestConflict names what is short, when, and what would do.
func TestConflict(t *testing.T) {
	one := season.Room{Capacity: []season.Capacity{have("rain chamber", 1), have("cooling place", 3)}}
	for _, row := range []struct {
		name     string
		pairings []timetable.Pairing
		want     timetable.Conflict
	}{
		{
			"two that start on one day",
			[]timetable.Pairing{start("P", 0), start("Q", 0), start("R", 40)},
			timetable.Conflict{
				Conflict: planner.Conflict{
					Chains: []string{"P", "Q"}, Proven: true,
					Cures: []planner.Cure{{Resource: "rain chamber", More: 1}},
				},
				Resource: "rain chamber", Count: 1, Days: civil.Span{First: today.Add(30), Last: today.Add(34)},
			},
		},
		{
			"one animal",
			[]timetable.Pairing{start("P", 0), start("Q", 20, func(p *timetable.Pairing) { p.Animals = []string{"she", "he of P"} })},
			timetable.Conflict{
				Conflict: planner.Conflict{Chains: []string{"P", "Q"}, Proven: true}, Animals: []string{"he of P"},
			},
		},
		{
			"one more than that",
			[]timetable.Pairing{start("P", 0, func(p *timetable.Pairing) { p.Work = map[string]int{"cooling": 76} })},
			timetable.Conflict{
				Conflict: planner.Conflict{Chains: []string{"P"}, Proven: true, Cures: []planner.Cure{{Resource: planner.Minutes, More: 46}}},
				Resource: planner.Minutes, Count: 30, Days: civil.Span{First: today.Add(10), Last: today.Add(29)},
			},
		},
		{
			"much more than a few",
			[]timetable.Pairing{start("P", 0, func(p *timetable.Pairing) { p.Work = map[string]int{"cooling": 75} })},
			timetable.Conflict{
				Conflict: planner.Conflict{Chains: []string{"P"}, Proven: true, Cures: []planner.Cure{{Resource: planner.Minutes, More: 45}}},
				Resource: planner.Minutes, Count: 30, Days: civil.Span{First: today.Add(10), Last: today.Add(29)},
			},
		},
	} {
		t.Run(row.name, func(t *testing.T) {
			room := timetable.Room{Room: one}
			for i := range row.pairings { // no choice of lengths
				for k := range row.pairings[i].Phases {
					ph := &row.pairings[i].Phases[k]
					ph.Min, ph.Max = ph.Usual, ph.Usual
				}
			}
			room.Capacity = append(room.Capacity[:2:2], have(planner.Minutes, 30))
			got := timetable.Fit(context.Background(), room, row.pairings, today, timetable.Options{Advise: true})
			require.NotNil(t, got.Conflict)
			assert.Nil(t, got.Proof)
			cures := got.Conflict.Cures
			got.Conflict.Cures = nil
			for _, c := range cures {
				if c.Resource != "" {
					got.Conflict.Cures = append(got.Conflict.Cures, c)
				}
			}
			assert.Equal(t, row.want, *got.Conflict)
		})
	}
}

// TestStopped: who stops the search gets what was found.
func TestStopped(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	room := timetable.Room{Room: season.Room{Capacity: []season.Capacity{have("rain chamber", 1)}}}
	got := timetable.Fit(ctx, room, []timetable.Pairing{readyBy("P", 60), readyBy("Q", 60)}, today, timetable.Options{Advise: true})
	assert.Len(t, got.Season.Cycles, 2)
	if got.Proof == nil {
		require.NotNil(t, got.Conflict)
		assert.True(t, got.Conflict.Unplaced)
	} else {
		assert.True(t, got.Proof.Stopped)
		assert.False(t, got.Proof.Best)
	}
}
