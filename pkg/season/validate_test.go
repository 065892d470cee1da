package season_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/season"
)

func TestCallerBugsPanic(t *testing.T) {
	today := date(t, "2027-01-10")
	phase := func(least, usual, most int) season.Pairing {
		return season.Pairing{ID: "P-1", Start: today, Phases: []season.Phase{{Name: "rain", Min: least, Usual: usual, Max: most}}}
	}
	tests := []struct {
		name     string
		room     season.Room
		pairings []season.Pairing
		today    civil.Date
		want     string
	}{
		{name: "no today", today: 0, want: "season: today is not given"},
		{name: "no id", today: today, pairings: []season.Pairing{{Start: today}}, want: `season: the id of a pairing is empty or stands twice: ""`},
		{name: "same id", today: today, pairings: []season.Pairing{{ID: "P-1", Start: today}, {ID: "P-1", Start: today}}, want: `season: the id of a pairing is empty or stands twice: "P-1"`},
		{name: "neither start nor date", today: today, pairings: []season.Pairing{{ID: "P-1"}}, want: "season: pairing P-1 needs either a start or a day to be ready by"},
		{name: "start and date", today: today, pairings: []season.Pairing{{ID: "P-1", Start: today, ReadyBy: today}}, want: "season: pairing P-1 needs either a start or a day to be ready by"},
		{name: "ready before the rain", today: today, pairings: []season.Pairing{{ID: "P-1", ReadyBy: today, ReadyAfter: -1}}, want: "season: pairing P-1 has young that are ready before the rain: -1 days after"},
		{name: "negative length", today: today, pairings: []season.Pairing{phase(-1, 2, 3)}, want: "season: pairing P-1 has rain of -1, usually 2, at most 3 days"},
		{name: "usual below the least", today: today, pairings: []season.Pairing{phase(3, 2, 4)}, want: "season: pairing P-1 has rain of 3, usually 2, at most 4 days"},
		{name: "usual above the most", today: today, pairings: []season.Pairing{phase(3, 5, 4)}, want: "season: pairing P-1 has rain of 3, usually 5, at most 4 days"},
		{name: "a phase twice", today: today, pairings: []season.Pairing{{ID: "P-1", Start: today, Phases: []season.Phase{{Name: "rest"}, {Name: "rest"}}}}, want: `season: pairing P-1 has a phase without a name or twice: "rest"`},
		{name: "stages out of order", today: today, pairings: []season.Pairing{{ID: "P-1", Start: today, Stages: []season.StageOffset{{Stage: "hatched", Early: 4, Likely: 3, Late: 5}}}}, want: "season: pairing P-1 has hatched after 4, 3, 5 days"},
		{name: "days planned elsewhere, one too few", today: today, pairings: []season.Pairing{{ID: "P-1", Start: today, Phases: []season.Phase{{Name: "rain"}}, Days: []civil.Date{today}}}, want: "season: pairing P-1 has 1 days for 1 phases, or days out of order"},
		{name: "days planned elsewhere, out of order", today: today, pairings: []season.Pairing{{ID: "P-1", Start: today, Phases: []season.Phase{{Name: "rain"}}, Days: []civil.Date{today, today.Add(-1)}}}, want: "season: pairing P-1 has 2 days for 1 phases, or days out of order"},
		{name: "started before it may", today: today, pairings: []season.Pairing{{ID: "P-1", Start: today, NotBefore: today.Add(1)}}, want: "season: pairing P-1 starts on 2027-01-10, before 2027-01-11"},
		{name: "a record without a date", today: today, pairings: []season.Pairing{{ID: "P-1", Start: today, Began: []season.Began{{Phase: "rain"}}}}, want: "season: pairing P-1 has a record of rain without a date"},
		{name: "a capacity below none", today: today, room: season.Room{Capacity: []season.Capacity{known("rain chamber", -1)}}, want: `season: the capacity of place "rain chamber" is negative: -1`},
		{name: "a capacity twice", today: today, room: season.Room{Capacity: []season.Capacity{known("rain chamber", 1), known("rain chamber", 1)}}, want: `season: the capacity of place "rain chamber" is given twice, or without its name`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			assert.PanicsWithValue(t, tt.want, func() { season.Plan(tt.room, tt.pairings, tt.today) })
		})
	}
}

// A slip in a keeper's file, such as a wrong century, neither panics nor takes
// long.
func TestDatesFarOff(t *testing.T) {
	today := date(t, "2027-01-10")
	long := treeFrog()
	long[0].Max = 730
	for _, day := range []civil.Date{civil.First, date(t, "1027-03-01"), date(t, "9227-03-01"), civil.Last} {
		for _, spans := range []string{"", "0001-01-01..2027-12-31", "2027-01-01..9999-12-31", "0001-01-01..9999-12-31"} {
			for _, phases := range [][]season.Phase{treeFrog(), long} {
				room := season.Room{Away: away(t, spans)}
				pairings := []season.Pairing{
					{ID: "P-1", Start: day, Phases: phases},
					{ID: "P-2", ReadyBy: day, ReadyAfter: 140, Phases: phases},
					{ID: "P-3", Start: today, Phases: phases, Began: []season.Began{{Phase: "conditioning", On: day}, {Phase: "rest", On: today}}},
					{ID: "P-4", ReadyBy: today.Add(90), ReadyAfter: 140, Phases: phases, Began: []season.Began{{Phase: "cooling", On: day}}},
				}
				s := season.Plan(room, pairings, today)
				assert.Len(t, s.Cycles, 4)
				for _, c := range s.Conflicts {
					assert.NotContains(t, c.Message, "ready by 9999-12-31")
					assert.NotContains(t, c.Message, "9999-12-31, avoids it")
				}
			}
		}
	}
}
