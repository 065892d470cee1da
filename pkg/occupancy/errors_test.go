package occupancy_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/occupancy"
)

func TestErrors(t *testing.T) {
	first := date("2027-03-01")
	good := occupancy.Hold{First: first, Last: first, Amount: 1}
	with := func(change func(*occupancy.Season)) occupancy.Season {
		s := occupancy.Season{
			First: first, Days: 5, Resources: []occupancy.Resource{{Name: "tubs", Count: 1}},
			Clutches: []occupancy.Clutch{{ID: "C-1", Courses: []occupancy.Course{{Chance: 0.5, Holds: []occupancy.Hold{good}}}}},
		}
		change(&s)
		return s
	}
	course := func(change func(*occupancy.Course)) occupancy.Season {
		return with(func(s *occupancy.Season) { change(&s.Clutches[0].Courses[0]) })
	}
	hold := func(change func(*occupancy.Hold)) occupancy.Season {
		return course(func(c *occupancy.Course) { change(&c.Holds[0]) })
	}
	for _, row := range []struct {
		name   string
		season occupancy.Season
		want   string
	}{
		{"no first day", with(func(s *occupancy.Season) { s.First = 0 }), "occupancy of the season: its first day is unknown"},
		{"no days", with(func(s *occupancy.Season) { s.Days = 0 }), "occupancy of the season: it has 0 days; 1 to 6000 are taken"},
		{"too many days", with(func(s *occupancy.Season) { s.Days = 6001 }), "occupancy of the season: it has 6001 days; 1 to 6000 are taken"},
		{"fewer than none", with(func(s *occupancy.Season) { s.Resources[0].Count = -1 }), `occupancy of the season: there are -1 of "tubs"; 0 to 1000000 are taken`},
		{"no chance", course(func(c *occupancy.Course) { c.Chance = math.NaN() }), "occupancy of the season: clutch C-1, course 0: its chance NaN is not from 0 to 1"},
		{"negative", course(func(c *occupancy.Course) { c.Chance = -0.1 }), "occupancy of the season: clutch C-1, course 0: its chance -0.1 is not from 0 to 1"},
		{
			"more than certain", with(func(s *occupancy.Season) {
				s.Clutches[0].Courses = append(s.Clutches[0].Courses, occupancy.Course{Chance: 0.75})
			}),
			"occupancy of the season: clutch C-1: the chances of its courses add up to 1.25, which is more than 1",
		},
		{"unknown resource", hold(func(h *occupancy.Hold) { h.Resource = 1 }), "occupancy of the season: clutch C-1, course 0: it holds resource number 1 of 1"},
		{"negative amount", hold(func(h *occupancy.Hold) { h.Amount = -1 }), "occupancy of the season: clutch C-1, course 0: it holds -1 places; 0 to 1000000 are taken"},
		{"unknown day", hold(func(h *occupancy.Hold) { h.Last = 0 }), "occupancy of the season: clutch C-1, course 0: a day of what it holds is unknown"},
		{"day out of range", hold(func(h *occupancy.Hold) { h.Until = civil.Last + 1 }), "occupancy of the season: clutch C-1, course 0: a day of what it holds is unknown"},
		{"backward", hold(func(h *occupancy.Hold) { h.First++ }), "occupancy of the season: clutch C-1, course 0: what it holds ends on 2027-03-01, before it begins on 2027-03-02"},
		{
			"too much in a course", course(func(c *occupancy.Course) {
				c.Holds = []occupancy.Hold{{First: first, Last: first, Amount: 600_000}, {First: first, Last: first, Amount: 600_000}}
			}),
			"occupancy of the season: clutch C-1, course 0: it holds more than 1000000 places",
		},
		{
			"too much together", with(func(s *occupancy.Season) {
				c := occupancy.Clutch{ID: "C-2", Courses: []occupancy.Course{{1, []occupancy.Hold{{First: first, Last: first, Amount: 600_000}}}}}
				s.Clutches = append(s.Clutches, c, c)
			}),
			"occupancy of the season: its clutches can hold more than 1000000 places together",
		},
	} {
		t.Run(row.name, func(t *testing.T) {
			_, err := occupancy.Loads(row.season)
			var wrong *occupancy.SeasonError
			require.ErrorAs(t, err, &wrong)
			assert.EqualError(t, err, row.want)
			_, err = occupancy.Assess(row.season, occupancy.Options{Seasons: 1})
			assert.ErrorAs(t, err, &wrong)
			_, err = occupancy.TryMoves(row.season, occupancy.Options{Seasons: 1}, nil)
			assert.ErrorAs(t, err, &wrong)
		})
	}
	_, err := occupancy.Loads(with(func(*occupancy.Season) {}))
	require.NoError(t, err, "the season that the rows spoil")
}

func TestPanics(t *testing.T) {
	s := alike(1, 1, 0.5)
	one := occupancy.Options{Seasons: 1}
	risk, err := occupancy.Assess(s, one)
	require.NoError(t, err)
	pace := []occupancy.Pace{{Chance: 1}}
	size := []occupancy.Size{{Chance: 1}}
	for name, call := range map[string]func(){
		"no season played": func() { _, _ = occupancy.Assess(s, occupancy.Options{}) },
		"too many":         func() { _, _ = occupancy.Assess(s, occupancy.Options{Seasons: 10_000_001}) },
		"workers":          func() { _, _ = occupancy.TryMoves(s, occupancy.Options{Seasons: 1, Workers: -1}, nil) },
		"no such clutch":   func() { _, _ = occupancy.TryMoves(s, one, []occupancy.Move{{Clutch: 1}}) },
		"wished":           func() { risk.Resources[0].More(1.5) },
		"wished no number": func() { risk.Resources[0].More(math.NaN()) },
		"comes":            func() { occupancy.Courses(-0.1, pace, size) },
		"no pace":          func() { occupancy.Courses(1, nil, size) },
		"no chance":        func() { occupancy.Courses(1, pace, []occupancy.Size{{}}) },
		"negative":         func() { occupancy.Courses(1, []occupancy.Pace{{Chance: -1}}, size) },
		"other stays":      func() { occupancy.Courses(1, pace, []occupancy.Size{{Chance: 1, Places: []int{1}}}) },
	} {
		assert.Panics(t, call, name)
	}
}

func TestCourses(t *testing.T) {
	first := date("2027-03-01")
	stay := func(days int) []occupancy.Hold {
		return []occupancy.Hold{
			{Resource: 0, First: first, Last: first.Add(days)},
			{Resource: 1, First: first.Add(days + 1), Last: first.Add(2 * days), Until: first.Add(30)},
		}
	}
	got := occupancy.Courses(0.8,
		[]occupancy.Pace{{1, stay(5)}, {3, stay(9)}},
		[]occupancy.Size{{2, []int{1, 2}}, {6, []int{3, 4}}})
	held := func(days, tubs, bins int) []occupancy.Hold {
		h := stay(days)
		h[0].Amount, h[1].Amount = tubs, bins
		return h
	}
	want := []occupancy.Course{{0.05, held(5, 1, 2)}, {0.15, held(5, 3, 4)}, {0.15, held(9, 1, 2)}, {0.45, held(9, 3, 4)}}
	require.Len(t, got, len(want))
	for i := range want {
		assert.InDelta(t, want[i].Chance, got[i].Chance, 1e-12)
		assert.Equal(t, want[i].Holds, got[i].Holds)
	}
}
