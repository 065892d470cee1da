package season_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/season"
)

// TestPlanOfDays takes days that somebody else has planned as they are, and
// counts places and animals with them.
func TestPlanOfDays(t *testing.T) {
	room := season.Room{Capacity: []season.Capacity{known("rain chamber", 1), known("cooling place", 2)}}
	one, two := forward(t, "P-1", "2027-02-01", "Bram"), forward(t, "P-2", "2027-02-01", "Ida")
	clash := season.Plan(room, []season.Pairing{one, two}, date(t, "2027-01-01"))
	require.Len(t, clash.Conflicts, 1, "both are in the one rain chamber")
	days := func(from civil.Date, lengths ...int) []civil.Date {
		out := []civil.Date{from}
		for _, n := range lengths {
			from = from.Add(n)
			out = append(out, from)
		}
		return out
	}
	two.Days = days(two.Start, 28, 47, 10, 5, 49) // 5 days longer in the cold
	s := season.Plan(room, []season.Pairing{one, two}, date(t, "2027-01-01"))
	assert.Empty(t, s.Conflicts)
	assert.Equal(t, "2027-02-01..2027-06-19", s.Cycles[1].Span().String())
	assert.Equal(t, s.Cycles[0].RainStart.Add(5), s.Cycles[1].RainStart)
	two.Days = days(two.Start, 28, 46, 10, 5, 49)
	s = season.Plan(room, []season.Pairing{one, two}, date(t, "2027-01-01"))
	require.Len(t, s.Conflicts, 1, "a day too few")
	assert.Equal(t, season.PlaceFull, s.Conflicts[0].Kind)
}
