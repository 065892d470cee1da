package season_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/season"
)

// TestMayBeLate plans cycles of 20 to 40 days before the rain, with young 100
// days after that, for a day that leaves too little time: 110 days.
func TestMayBeLate(t *testing.T) {
	today := date(t, "2027-03-01")
	for _, row := range []struct {
		name      string
		late      bool
		notBefore civil.Date
		began     []season.Began
		rain      civil.Date
		message   string // of the conflict, or the warning
	}{
		{
			"in time only", false, 0, nil, today.Add(10),
			"P: too late for 2027-06-19: cooling would have had to begin by 2027-02-19, and today is 2027-03-01; young can be ready by 2027-06-29 at the earliest",
		},
		{"or late: as early as can be", true, 0, nil, today.Add(20), "young are ready 10 days after 2027-06-19"},
		{"released later still", true, today.Add(5), nil, today.Add(25), "young are ready 15 days after 2027-06-19"},
		{
			"released too late", false, today.Add(5), nil, today.Add(10),
			"P: too late for 2027-06-19: cooling would have to begin by 2027-02-19, and may not begin before 2027-03-06; young can be ready by 2027-07-04 at the earliest",
		},
		{"begun, and late", true, 0, []season.Began{{Phase: "cooling", On: today.Add(-5)}}, today.Add(15), "young are ready 5 days after 2027-06-19"},
		{"in the rain, and late", true, 0, []season.Began{{Phase: season.Rain, On: today.Add(12)}}, today.Add(12), "young are ready 2 days after 2027-06-19"},
	} {
		t.Run(row.name, func(t *testing.T) {
			s := season.Plan(season.Room{}, []season.Pairing{{
				ID: "P", ReadyBy: today.Add(110), ReadyAfter: 100, MayBeLate: row.late, NotBefore: row.notBefore, Began: row.began,
				Phases: []season.Phase{{Name: "cooling", Min: 20, Usual: 30, Max: 40}, {Name: season.Rain, Min: 5, Usual: 5, Max: 5}},
			}}, today)
			assert.Equal(t, row.rain.String(), s.Cycles[0].RainStart.String())
			if row.late {
				assert.Empty(t, s.Conflicts)
				assert.Contains(t, s.Cycles[0].Warnings, row.message)
				return
			}
			require.Len(t, s.Conflicts, 1)
			assert.Equal(t, row.message, s.Conflicts[0].Message)
		})
	}
}

// TestDaysBesideRecords: the days count, and what is recorded stays marked.
func TestDaysBesideRecords(t *testing.T) {
	on := date(t, "2027-03-01")
	s := season.Plan(season.Room{}, []season.Pairing{{
		ID: "P", Start: on, Began: []season.Began{{Phase: "cooling", On: on}},
		Phases: []season.Phase{{Name: "cooling", Min: 20, Usual: 30, Max: 40}, {Name: season.Rain, Min: 5, Usual: 5, Max: 5}},
		Days:   []civil.Date{on, on.Add(33), on.Add(38)},
	}}, on.Add(2))
	assert.Equal(t, on.Add(33), s.Cycles[0].RainStart)
	assert.True(t, s.Cycles[0].Phases[0].Recorded)
	assert.False(t, s.Cycles[0].Phases[1].Recorded)
}
