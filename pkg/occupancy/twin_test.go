package occupancy_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/occupancy"
)

// outcome is one way in which a whole season may go, day by day.
type outcome struct {
	chance float64
	needs  [][]int // [resource][day]
}

// outcomes gives every combination of the courses of s, the obvious way.
func outcomes(s occupancy.Season) []outcome {
	blank := make([][]int, len(s.Resources))
	for r := range blank {
		blank[r] = make([]int, s.Days)
	}
	all := []outcome{{1, blank}}
	for _, c := range s.Clutches {
		rest := 1.0
		for _, course := range c.Courses {
			rest -= course.Chance
		}
		var next []outcome
		for _, o := range all {
			for _, course := range append(slices.Clone(c.Courses), occupancy.Course{Chance: max(rest, 0)}) {
				needs := make([][]int, len(s.Resources))
				for r := range needs {
					needs[r] = slices.Clone(o.needs[r])
				}
				for _, h := range course.Holds {
					for d := range s.Days {
						if on := s.First.Add(d); h.First <= on && (on <= h.Last || on <= h.Until) {
							needs[h.Resource][d] += h.Amount
						}
					}
				}
				next = append(next, outcome{o.chance * course.Chance, needs})
			}
		}
		all = next
	}
	return all
}

// shortChance adds up the chances of the outcomes in which a resource runs out.
func shortChance(s occupancy.Season, resource, more int) float64 {
	sum := 0.0
	for _, o := range outcomes(s) {
		if slices.Max(o.needs[resource]) > s.Resources[resource].Count+more {
			sum += o.chance
		}
	}
	return sum
}

func season(t *rapid.T) occupancy.Season {
	s := occupancy.Season{
		First: date("2027-03-01"), Days: rapid.IntRange(1, 12).Draw(t, "days"),
		Resources: []occupancy.Resource{
			{Name: "tubs", Count: rapid.IntRange(0, 6).Draw(t, "tubs")},
			{Name: "bins", Count: rapid.IntRange(0, 6).Draw(t, "bins")},
		},
	}
	for range rapid.IntRange(0, 3).Draw(t, "clutches") {
		var c occupancy.Clutch
		courses := rapid.IntRange(0, 4).Draw(t, "courses")
		for range courses {
			course := occupancy.Course{Chance: rapid.Float64Range(0, 1/float64(courses)).Draw(t, "chance")}
			for range rapid.IntRange(0, 3).Draw(t, "holds") {
				first := s.First.Add(rapid.IntRange(-4, 14).Draw(t, "first"))
				h := occupancy.Hold{
					Resource: rapid.IntRange(0, 1).Draw(t, "resource"), Amount: rapid.IntRange(0, 4).Draw(t, "amount"),
					First: first, Last: first.Add(rapid.IntRange(0, 9).Draw(t, "length")),
				}
				if rapid.Bool().Draw(t, "kept") {
					h.Until = s.First.Add(rapid.IntRange(0, 12).Draw(t, "until"))
				}
				course.Holds = append(course.Holds, h)
			}
			c.Courses = append(c.Courses, course)
		}
		s.Clutches = append(s.Clutches, c)
	}
	return s
}

// TestLoadsTwin holds each day's load against all outcomes.
func TestLoadsTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := season(t)
		loads, err := occupancy.Loads(s)
		require.NoError(t, err)
		all := outcomes(s)
		for r, days := range loads {
			require.Len(t, days, s.Days)
			for d, l := range days {
				require.Equal(t, s.First.Add(d), l.On)
				mean, above := 0.0, make([]float64, 40)
				for _, o := range all {
					mean += o.chance * float64(o.needs[r][d])
					for n := range o.needs[r][d] {
						above[n] += o.chance
					}
				}
				require.InDelta(t, mean, l.Mean, 1e-12)
				require.InDelta(t, above[s.Resources[r].Count], l.Over, 1e-12)
				for n, want := range above {
					require.InDelta(t, want, l.Above(n), 1e-12)
				}
				for _, q := range []struct {
					p float64
					n int
				}{{0.1, l.P10}, {0.5, l.P50}, {0.9, l.P90}} {
					require.LessOrEqual(t, above[q.n], 1-q.p+1e-8)
					if q.n > 0 {
						require.GreaterOrEqual(t, above[q.n-1], 1-q.p-1e-8)
					}
				}
			}
		}
	})
}

// TestAssessTwin holds the chances of whole seasons against all outcomes: five
// standard errors are passed by less than one of a million.
func TestAssessTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := season(t)
		o := occupancy.Options{Seasons: 4000, Seed: rapid.Uint64().Draw(t, "seed"), Workers: rapid.IntRange(0, 3).Draw(t, "workers")}
		risk, err := occupancy.Assess(s, o)
		require.NoError(t, err)
		within := func(want float64, got occupancy.Chance) {
			t.Helper()
			require.Equal(t, o.Seasons, got.Of)
			require.InDelta(t, want, got.Value(), 5*math.Sqrt(want*(1-want)/4000)+1.5/4000)
		}
		anyShort := 0.0
		for _, o := range outcomes(s) {
			if slices.Max(o.needs[0]) > s.Resources[0].Count || slices.Max(o.needs[1]) > s.Resources[1].Count {
				anyShort += o.chance
			}
		}
		within(anyShort, risk.Any)
		for r, shortage := range risk.Resources {
			within(shortChance(s, r, 0), shortage.Short)
			for _, more := range []int{-1, 1, 3} {
				within(shortChance(s, r, more), shortage.With(more))
			}
			require.Equal(t, shortage.Short, shortage.With(0))
		}
	})
}

// TestMoreTwin: so many more are enough, and one less is not.
func TestMoreTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := season(t)
		risk, err := occupancy.Assess(s, occupancy.Options{Seasons: rapid.IntRange(1, 30).Draw(t, "seasons")})
		require.NoError(t, err)
		wished := float64(rapid.IntRange(0, 20).Draw(t, "wished")) / 20
		for _, shortage := range risk.Resources {
			more := shortage.More(wished)
			require.LessOrEqual(t, shortage.With(more).Value(), wished+1e-9)
			if more > 0 {
				require.Greater(t, shortage.With(more-1).Value(), wished)
			}
		}
	})
}

// TestMovesTwin plays each moved season anew: the same seasons come out.
func TestMovesTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := season(t)
		if len(s.Clutches) == 0 {
			return
		}
		o := occupancy.Options{Seasons: 300, Seed: rapid.Uint64().Draw(t, "seed"), Workers: 2}
		m := occupancy.Move{Clutch: rapid.IntRange(0, len(s.Clutches)-1).Draw(t, "clutch"), Days: rapid.IntRange(-9, 9).Draw(t, "days")}
		before, err := occupancy.Assess(s, o)
		require.NoError(t, err)
		moved, err := occupancy.TryMoves(s, o, []occupancy.Move{{Clutch: m.Clutch}, m})
		require.NoError(t, err)
		require.Equal(t, occupancy.Change{Short: before.Any}, moved[0].Any)

		later := s
		later.Clutches = slices.Clone(s.Clutches)
		later.Clutches[m.Clutch] = shifted(s.Clutches[m.Clutch], m.Days)
		after, err := occupancy.Assess(later, o)
		require.NoError(t, err)
		require.Equal(t, after.Any, moved[1].Any.Short)
		for r := range after.Resources {
			change := moved[1].Resources[r]
			require.Equal(t, after.Resources[r].Short, change.Short)
			require.Equal(t, before.Resources[r].Short.Seasons-change.Spared+change.Spoilt, change.Short.Seasons)
		}
	})
}

// shifted gives c with all its days but those of Until moved.
func shifted(c occupancy.Clutch, days int) occupancy.Clutch {
	courses := slices.Clone(c.Courses)
	for i := range courses {
		courses[i].Holds = slices.Clone(courses[i].Holds)
		for j := range courses[i].Holds {
			h := &courses[i].Holds[j]
			h.First, h.Last = h.First.Add(days), h.Last.Add(days)
		}
	}
	return occupancy.Clutch{ID: c.ID, Courses: courses}
}
