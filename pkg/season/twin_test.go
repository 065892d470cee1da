package season_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/season"
)

const day0 = civil.Date(740000)

// drawPhases gives one to four short phases of a cycle, sometimes without rain
// or places.
func drawPhases(t *rapid.T) []season.Phase {
	all := []season.Phase{
		{Name: "conditioning"},
		{Name: "cooling", Place: "cooling place"},
		{Name: "warm-up"},
		{Name: "rain", Place: "rain chamber"},
		{Name: "rest"},
	}
	var phases []season.Phase
	for _, p := range all {
		if len(phases) == 4 || !rapid.Bool().Draw(t, p.Name) {
			continue
		}
		p.Min = rapid.IntRange(0, 4).Draw(t, "min")
		p.Usual = p.Min + rapid.IntRange(0, 2).Draw(t, "usual")
		p.Max = p.Usual + rapid.IntRange(0, 2).Draw(t, "max")
		if p.Name == "warm-up" && rapid.Bool().Draw(t, "stays") {
			p.Place = "cooling place"
		}
		phases = append(phases, p)
	}
	return phases
}

func drawAway(t *rapid.T) []civil.Span {
	var spans []civil.Span
	for range rapid.IntRange(0, 5).Draw(t, "spans away") {
		first := day0.Add(rapid.IntRange(-25, 35).Draw(t, "first away"))
		spans = append(spans, civil.Span{First: first, Last: first.Add(rapid.IntRange(0, 6).Draw(t, "more days"))})
	}
	return spans
}

// choice is one way to run a cycle, with what it costs.
type choice struct {
	starts  []civil.Date // and the day after the chain
	lengths []int
	total   int
}

// choices gives every way to run the phases from a day on that keeps hands-on
// work off the days away.
func choices(phases []season.Phase, spans []civil.Span, first civil.Date) []choice {
	away := func(d civil.Date) bool {
		return slices.ContainsFunc(spans, func(s civil.Span) bool { return s.Contains(d) })
	}
	n := len(phases)
	moved := func(k int) bool { return phases[k].Name == "rain" || phases[k].Place != "" }
	if n > 0 && moved(0) && away(first) {
		return nil
	}
	ways := []choice{{starts: []civil.Date{first}}}
	for k, p := range phases {
		var longer []choice
		for _, w := range ways {
			for length := p.Min; length <= p.Max; length++ {
				next := w.starts[k].Add(length)
				if (k < n-1 || moved(k)) && away(next) {
					continue
				}
				longer = append(longer, choice{
					starts:  append(slices.Clone(w.starts), next),
					lengths: append(slices.Clone(w.lengths), length),
					total:   w.total + max(length-p.Usual, p.Usual-length),
				})
			}
		}
		ways = longer
	}
	return ways
}

// better is the order that the comment of Plan promises.
func better(phases []season.Phase, a, b choice) bool {
	if a.total != b.total {
		return a.total < b.total
	}
	for k := len(phases) - 1; k >= 0; k-- {
		departs := func(c choice) int { return max(c.lengths[k]-phases[k].Usual, phases[k].Usual-c.lengths[k]) }
		if departs(a) != departs(b) {
			return departs(a) < departs(b)
		}
		if a.lengths[k] != b.lengths[k] {
			return a.lengths[k] > b.lengths[k]
		}
	}
	return false
}

func best(phases []season.Phase, ways []choice) *choice {
	var b *choice
	for _, w := range ways {
		if b == nil || better(phases, w, *b) {
			b = &w
		}
	}
	return b
}

func plannedStarts(c season.Cycle) []civil.Date {
	var out []civil.Date
	for _, p := range c.Phases {
		out = append(out, p.Span.First)
	}
	return append(out, c.Span().Last.Add(1))
}

func TestForwardIsBestOfAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := season.Pairing{ID: "P-1", Start: day0, Phases: drawPhases(t)}
		room := season.Room{Away: drawAway(t)}
		pairings := []season.Pairing{p}
		s := season.Plan(room, pairings, day0)
		require.Empty(t, faults(room, pairings, day0, s))
		want := best(p.Phases, choices(p.Phases, room.Away, day0))
		if want == nil {
			require.Len(t, s.Conflicts, 1)
			next := day0.Add(1)
			for len(choices(p.Phases, room.Away, next)) == 0 {
				next++
			}
			require.Contains(t, s.Conflicts[0].Message, fmt.Sprintf("later, on %s, avoids it", next))
			require.True(t, slices.ContainsFunc(room.Away, func(a civil.Span) bool { return a.Overlaps(s.Conflicts[0].Days) }))
			return
		}
		require.Empty(t, s.Conflicts)
		if len(p.Phases) > 0 {
			require.Equal(t, want.starts, plannedStarts(s.Cycles[0]))
		}
	})
}

// Long absences and wide limits, so that the best plan departs by many days.
func TestForwardIsBestOfAllWhenFarFromUsual(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := season.Pairing{ID: "P-1", Start: day0}
		for _, name := range []string{"conditioning", "rain"} {
			phase := season.Phase{Name: name, Min: rapid.IntRange(0, 10).Draw(t, "min")}
			phase.Usual = phase.Min + rapid.IntRange(0, 40).Draw(t, "usual")
			phase.Max = phase.Usual + rapid.IntRange(0, 40).Draw(t, "max")
			p.Phases = append(p.Phases, phase)
		}
		var room season.Room
		for range 2 {
			first := day0.Add(rapid.IntRange(0, 90).Draw(t, "first away"))
			room.Away = append(room.Away, civil.Span{First: first, Last: first.Add(rapid.IntRange(5, 40).Draw(t, "more days"))})
		}
		s := season.Plan(room, []season.Pairing{p}, day0)
		want := best(p.Phases, choices(p.Phases, room.Away, day0))
		require.Equal(t, want == nil, len(s.Conflicts) > 0)
		if want != nil {
			require.Equal(t, want.starts, plannedStarts(s.Cycles[0]))
		}
	})
}

func rainIndex(phases []season.Phase) int {
	for _, name := range []string{"rain", "rest"} {
		if k := slices.IndexFunc(phases, func(p season.Phase) bool { return p.Name == name }); k >= 0 {
			return k
		}
	}
	return len(phases)
}

// allFrom gives the ways to run a cycle that begins from first to last.
func allFrom(phases []season.Phase, spans []civil.Span, first, last civil.Date) []choice {
	var ways []choice
	for d := first; d <= last; d++ {
		ways = append(ways, choices(phases, spans, d)...)
	}
	return ways
}

func TestBackwardIsBestOfAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := season.Pairing{ID: "P-1", ReadyBy: day0.Add(100 + rapid.IntRange(0, 30).Draw(t, "latest")), ReadyAfter: 100, Phases: drawPhases(t)}
		room := season.Room{Away: drawAway(t)}
		pairings := []season.Pairing{p}
		s := season.Plan(room, pairings, day0)
		require.Empty(t, faults(room, pairings, day0, s))

		rain, latest := rainIndex(p.Phases), p.ReadyBy.Add(-100)
		// Nothing before day -60 or after day 60 is near a day away.
		ways := allFrom(p.Phases, room.Away, day0.Add(-60), day0.Add(60))
		var inTime, fresh []choice
		earliest := civil.Last
		for _, w := range ways {
			begun := w.starts[0] < day0
			if !begun {
				earliest = min(earliest, w.starts[rain])
			}
			if w.starts[rain] <= latest {
				inTime = append(inTime, w)
				if !begun {
					fresh = append(fresh, w)
				}
			}
		}
		c := s.Cycles[0]
		for k := range p.Phases {
			var want civil.Date
			for _, w := range inTime {
				if k <= rain {
					want = max(want, w.starts[k])
				}
			}
			require.Equal(t, want, c.Phases[k].LatestStart, "latest start of %s", p.Phases[k].Name)
		}
		if len(fresh) == 0 {
			require.Len(t, s.Conflicts, 1)
			require.Equal(t, earliest.Add(100), s.Conflicts[0].Earliest)
			fresh = nil
			for _, w := range allFrom(p.Phases, nil, day0, latest) {
				if w.starts[rain] <= latest {
					fresh = append(fresh, w)
				}
			}
			require.Equal(t, len(fresh) > 0, s.Conflicts[0].Kind == season.Away, s.Conflicts[0].Message)
			return
		}
		require.Empty(t, s.Conflicts)
		want := best(p.Phases, latestRains(fresh, rain))
		if len(p.Phases) > 0 {
			require.Equal(t, want.starts, plannedStarts(c))
		}
	})
}

func latestRains(ways []choice, rain int) []choice {
	latest := civil.First
	for _, w := range ways {
		latest = max(latest, w.starts[rain])
	}
	return slices.DeleteFunc(ways, func(w choice) bool { return w.starts[rain] != latest })
}

// drawSeason gives a few pairings that share places and animals, some of them
// begun, some with contradictory records.
func drawSeason(t *rapid.T) (season.Room, []season.Pairing) {
	room := season.Room{Away: drawAway(t)}
	for _, place := range []string{"cooling place", "rain chamber"} {
		room.Capacity = append(room.Capacity, season.Capacity{
			Place: place, Count: rapid.IntRange(0, 2).Draw(t, place), Known: rapid.IntRange(0, 9).Draw(t, "known") > 0,
		})
	}
	var pairings []season.Pairing
	for i := range rapid.IntRange(0, 6).Draw(t, "pairings") {
		p := season.Pairing{
			ID:      fmt.Sprintf("P-%d", i+1),
			Animals: rapid.SliceOfN(rapid.SampledFrom([]string{"A", "B", "C", "D", "E", "F"}), 0, 3).Draw(t, "animals"),
			Phases:  drawPhases(t),
			Stages:  []season.StageOffset{{Stage: "hatched", Early: 5, Likely: 6, Late: 8}},
		}
		if day := day0.Add(rapid.IntRange(-5, 20).Draw(t, "day")); rapid.Bool().Draw(t, "backward") {
			p.ReadyBy, p.ReadyAfter = day.Add(110), 100
		} else {
			p.Start = day
		}
		for range max(0, rapid.IntRange(-4, 3).Draw(t, "records")) {
			name := rapid.SampledFrom([]string{"conditioning", "cooling", "warm-up", "rain", "rest"}).Draw(t, "phase")
			p.Began = append(p.Began, season.Began{Phase: name, On: day0.Add(rapid.IntRange(-12, 1).Draw(t, "began"))})
		}
		pairings = append(pairings, p)
	}
	return room, pairings
}

// found is a conflict over a place or an animal without its words.
type found struct {
	Kind             season.Kind
	Place            string
	Animals          []string
	Pairings         []string
	Days             civil.Span
	Capacity, Needed int
}

// byDay counts places and animals day by day from today on.
func byDay(room season.Room, pairings []season.Pairing, s season.Season) []found {
	var out []found
	for _, c := range room.Capacity {
		if !c.Known {
			continue
		}
		out = append(out, runs(func(d civil.Date) found {
			f := found{Kind: season.PlaceFull, Place: c.Place, Capacity: c.Count}
			for i, cycle := range s.Cycles {
				for _, phase := range cycle.Phases {
					if phase.Place == c.Place && phase.Span.Contains(d) {
						f.Pairings = append(f.Pairings, pairings[i].ID)
					}
				}
			}
			if f.Needed = len(f.Pairings); f.Needed <= c.Count {
				return found{}
			}
			return f
		})...)
	}
	for i, p := range pairings {
		for k := i + 1; k < len(pairings); k++ {
			out = append(out, runs(func(d civil.Date) found {
				f := found{Kind: season.AnimalTwice, Pairings: []string{p.ID, pairings[k].ID}}
				for _, a := range []string{"A", "B", "C", "D", "E", "F"} {
					if slices.Contains(p.Animals, a) && slices.Contains(pairings[k].Animals, a) {
						f.Animals = append(f.Animals, a)
					}
				}
				if f.Animals == nil || !s.Cycles[i].Span().Contains(d) || !s.Cycles[k].Span().Contains(d) {
					return found{}
				}
				return f
			})...)
		}
	}
	return out
}

// runs joins following days on which the same was found.
func runs(on func(civil.Date) found) []found {
	var out []found
	for d := day0; d < day0+120; d++ {
		f := on(d)
		if f.Kind == "" {
			continue
		}
		if n := len(out); n > 0 && out[n-1].Days.Last == d-1 {
			f.Days = out[n-1].Days
			if f.Days.Last = d - 1; cmp.Equal(f, out[n-1]) {
				out[n-1].Days.Last = d
				continue
			}
		}
		f.Days = civil.Span{First: d, Last: d}
		out = append(out, f)
	}
	return out
}

func TestSeasonDayByDay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room, pairings := drawSeason(t)
		s := season.Plan(room, pairings, day0)
		require.Empty(t, faults(room, pairings, day0, s))
		var got []found
		for _, c := range s.Conflicts {
			if c.Kind == season.PlaceFull || c.Kind == season.AnimalTwice {
				slices.Sort(c.Animals)
				got = append(got, found{c.Kind, c.Place, c.Animals, c.Pairings, c.Days, c.Capacity, c.Needed})
			}
		}
		want := byDay(room, pairings, s)
		for _, list := range [][]found{got, want} {
			slices.SortFunc(list, func(a, b found) int { return slices.Compare([]byte(fmt.Sprint(a)), []byte(fmt.Sprint(b))) })
		}
		require.Empty(t, cmp.Diff(want, got))
	})
}

func TestSameInSameOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room, pairings := drawSeason(t)
		before := fmt.Sprint(room, pairings)
		s := season.Plan(room, pairings, day0)
		require.Empty(t, cmp.Diff(s, season.Plan(room, pairings, day0)))
		require.Equal(t, before, fmt.Sprint(room, pairings), "the input was changed")
		// The order of absences and of records does not matter.
		slices.Reverse(room.Away)
		for _, p := range pairings {
			slices.Reverse(p.Began)
		}
		require.Empty(t, cmp.Diff(s, season.Plan(room, pairings, day0)))
	})
}

// A forward plan does not shift from one day to the next.
func TestForwardPlanDoesNotShift(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := season.Pairing{ID: "P-1", Start: day0, Phases: drawPhases(t)}
		room := season.Room{Away: drawAway(t)}
		s := season.Plan(room, []season.Pairing{p}, day0)
		later := season.Plan(room, []season.Pairing{p}, day0.Add(rapid.IntRange(1, 40).Draw(t, "days later")))
		require.Empty(t, cmp.Diff(s.Cycles[0].Phases, later.Cycles[0].Phases))
	})
}
