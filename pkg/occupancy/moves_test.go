package occupancy_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/occupancy"
)

// one is a clutch that certainly holds so many tubs from day to day.
func one(first, last, amount int) occupancy.Clutch {
	from := date("2027-03-01")
	return occupancy.Clutch{Courses: []occupancy.Course{
		{Chance: 1, Holds: []occupancy.Hold{{First: from.Add(first), Last: from.Add(last), Amount: amount}}},
	}}
}

func TestTryMoves(t *testing.T) {
	for _, row := range []struct {
		name           string
		clutches       []occupancy.Clutch
		days           int // by which the first is moved
		spared, spoilt int // of ten seasons, all of which go the same way
		short          bool
	}{
		{"out of the way", []occupancy.Clutch{one(4, 6, 1), one(6, 8, 1)}, -1, 10, 0, false},
		{"not far enough", []occupancy.Clutch{one(4, 6, 1), one(5, 8, 1)}, -1, 0, 0, true},
		{"into the way", []occupancy.Clutch{one(4, 6, 1), one(7, 8, 1)}, 1, 0, 10, true},
		{"still free", []occupancy.Clutch{one(4, 6, 1), one(8, 9, 1)}, 1, 0, 0, false},
		{"too few before anyhow", []occupancy.Clutch{one(4, 6, 1), one(6, 8, 1), one(0, 0, 2)}, -1, 0, 0, true},
		{"too few after anyhow", []occupancy.Clutch{one(4, 6, 1), one(6, 8, 1), one(11, 11, 2)}, -1, 0, 0, true},
		{"too few by itself", []occupancy.Clutch{one(4, 6, 2)}, 3, 0, 0, true},
		{"out of the season", []occupancy.Clutch{one(4, 6, 2)}, 12, 10, 0, false},
		{"into the season", []occupancy.Clutch{one(-4, -2, 2)}, 3, 0, 10, true},
		{"nowhere", []occupancy.Clutch{one(4, 6, 2)}, 0, 0, 0, true},
	} {
		t.Run(row.name, func(t *testing.T) {
			s := occupancy.Season{
				First: date("2027-03-01"), Days: 12, Clutches: row.clutches,
				Resources: []occupancy.Resource{{Name: "tubs", Count: 1}, {Name: "bins"}},
			}
			move := occupancy.Move{Days: row.days}
			moved, err := occupancy.TryMoves(s, occupancy.Options{Seasons: 10}, []occupancy.Move{move, {}})
			require.NoError(t, err)
			want := occupancy.Change{Short: occupancy.Chance{Of: 10}, Spared: row.spared, Spoilt: row.spoilt}
			if row.short {
				want.Short.Seasons = 10
			}
			none := occupancy.Change{Short: occupancy.Chance{Of: 10}}
			assert.Equal(t, occupancy.Moved{Move: move, Any: want, Resources: []occupancy.Change{want, none}}, moved[0])
			assert.Zero(t, moved[1].Any.Spared+moved[1].Any.Spoilt, "one move leaves no trace in the next")
		})
	}
}

func TestDifference(t *testing.T) {
	c := occupancy.Change{Short: occupancy.Chance{Seasons: 1000, Of: 10_000}, Spared: 500, Spoilt: 100}
	value, deviation := c.Difference()
	assert.InDelta(t, 0.04, value, 1e-12)
	assert.InDelta(t, 0.0024166, deviation, 1e-7) // √(600−16)/10,000
}
