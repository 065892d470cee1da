package timetable_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/season"
	"github.com/spawnwright/spawnwright/pkg/timetable"
)

// TestLoads counts the days of everything: the rain is on days 60 to 64.
func TestLoads(t *testing.T) {
	room := timetable.Room{Retry: true, RetryAfter: 3, Room: season.Room{Capacity: []season.Capacity{
		have("rain chamber", 1), have("cooling place", 2), have(timetable.Bin, 5), have(planner.Minutes, 60),
	}}}
	p := readyBy("P", 60, func(p *timetable.Pairing) {
		p.Work = map[string]int{season.Rain: 20}
		p.Young = []planner.Hold{{Resource: timetable.Bin, Amount: 3, From: 50, To: 90, Until: today.Add(160)}}
		p.Hands = []planner.Visit{{Day: 62, Minutes: 7}}
	})
	got := timetable.Fit(context.Background(), room, []timetable.Pairing{p}, today, timetable.Options{Advise: true})
	require.NotNil(t, got.Proof)
	want := map[string]map[int]int{ // by first day of a run, until the next
		"rain chamber":  {0: 0, 60: 1, 65: 0, 68: 1, 73: 0},
		"cooling place": {0: 0, 40: 1, 60: 0},
		timetable.Bin:   {0: 0, 110: 3, 161: 0},
		planner.Minutes: {0: 0, 60: 20, 65: 0, 122: 7, 123: 0},
	}
	require.Len(t, got.Loads, 4)
	for _, load := range got.Loads {
		runs := map[int]int{}
		for d, n := range load.Used {
			if d == 0 || n != load.Used[d-1] {
				runs[d] = n
			}
		}
		assert.Equal(t, want[load.Resource], runs, load.Resource)
	}
}
