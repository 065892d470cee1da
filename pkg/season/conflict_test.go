package season_test

import (
	"regexp"
	"slices"
	"strconv"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/season"
)

func known(place string, count int) season.Capacity {
	return season.Capacity{Place: place, Count: count, Known: true}
}

func forward(t testing.TB, id, start string, animals ...string) season.Pairing {
	t.Helper()
	return season.Pairing{ID: id, Start: date(t, start), Phases: treeFrog(), Animals: animals}
}

// The usual cycle from 01-10: cooling 02-07 to 03-20, rain 03-31 to 04-04, rest
// to 05-23.
func TestPlacesAndAnimals(t *testing.T) {
	tests := []struct {
		name     string
		room     season.Room
		pairings []season.Pairing
		today    string
		want     []string
	}{
		{
			name: "two chambers, three in the rain on 04-02 to 04-04",
			room: season.Room{Capacity: []season.Capacity{known("rain chamber", 2), known("cooling place", 3)}},
			pairings: []season.Pairing{
				forward(t, "P-1", "2027-01-10"), forward(t, "P-2", "2027-01-11"), forward(t, "P-3", "2027-01-12"),
			},
			want: []string{
				"rain chamber: 3 needed and 2 there on 2027-04-02..2027-04-04 (P-1, P-2 and P-3); P-3 started 3 days later, on 2027-01-15, clears it, and so does 1 more rain chamber",
			},
		},
		{
			name: "one chamber: a run of days for each set of pairings, and no move of one clears three",
			room: season.Room{Capacity: []season.Capacity{known("rain chamber", 1), known("cooling place", 3)}},
			pairings: []season.Pairing{
				forward(t, "P-1", "2027-01-10"), forward(t, "P-2", "2027-01-11"), forward(t, "P-3", "2027-01-12"),
			},
			want: []string{
				// P-2 would have to pass P-1 and P-3 (rain to 04-06), P-3 only P-2 (rain to 04-05).
				"rain chamber: 2 needed and 1 there on 2027-04-01 (P-1 and P-2); P-2 started 6 days later, on 2027-01-17, clears it, and so does 1 more rain chamber",
				"rain chamber: 3 needed and 1 there on 2027-04-02..2027-04-04 (P-1, P-2 and P-3); needs 2 more rain chambers",
				"rain chamber: 2 needed and 1 there on 2027-04-05 (P-2 and P-3); P-3 started 4 days later, on 2027-01-16, clears it, and so does 1 more rain chamber",
			},
		},
		{
			name:     "who leaves in the morning makes room for who comes",
			room:     season.Room{Capacity: []season.Capacity{known("rain chamber", 1), known("cooling place", 2)}},
			pairings: []season.Pairing{forward(t, "P-1", "2027-01-10"), forward(t, "P-2", "2027-01-15")},
		},
		{
			name:     "no place at all",
			room:     season.Room{Capacity: []season.Capacity{known("rain chamber", 0), known("cooling place", 1)}},
			pairings: []season.Pairing{forward(t, "P-1", "2027-01-10")},
			want:     []string{"rain chamber: 1 needed and 0 there on 2027-03-31..2027-04-04 (P-1); needs 1 more rain chamber"},
		},
		{
			name:     "the cure keeps off days away: 3 days later the rain would start on one",
			room:     season.Room{Away: away(t, "2027-04-05"), Capacity: []season.Capacity{known("rain chamber", 1), known("cooling place", 2)}},
			pairings: []season.Pairing{forward(t, "P-1", "2027-01-09"), forward(t, "P-2", "2027-01-11")},
			want: []string{
				"rain chamber: 2 needed and 1 there on 2027-04-01..2027-04-03 (P-1 and P-2); P-2 started 3 days later, on 2027-01-14, clears it, and so does 1 more rain chamber",
			},
		},
		{
			name:     "what is over is no conflict any more",
			room:     season.Room{Capacity: []season.Capacity{known("rain chamber", 1), known("cooling place", 1)}},
			pairings: []season.Pairing{forward(t, "P-1", "2027-01-10"), forward(t, "P-2", "2027-01-12")},
			today:    "2027-04-04",
			want:     []string{"rain chamber: 2 needed and 1 there on 2027-04-04 (P-1 and P-2); needs 1 more rain chamber"},
		},
		{
			name:     "animals in two cycles at once, from conditioning to the end of rest",
			pairings: []season.Pairing{forward(t, "P-1", "2027-01-10", "AC-02", "AC-04", "AC-05"), forward(t, "P-2", "2027-05-20", "AC-04", "AC-03", "AC-02")},
			want:     []string{"AC-02 and AC-04 are in P-1 and P-2 at once on 2027-05-20..2027-05-23; P-2 started 4 days later, on 2027-05-24, clears it"},
		},
		{
			name:     "an animal that goes on the day after its rest",
			pairings: []season.Pairing{forward(t, "P-1", "2027-01-10", "AC-02"), forward(t, "P-2", "2027-05-24", "AC-02")},
		},
		{
			// P-2 is for a date: rain on 2027-05-01, from 02-10 to 06-23, so it
			// would have to end before P-1 begins, which it cannot from today on.
			name: "a backward plan does not move to later days; the forward one does",
			pairings: []season.Pairing{
				forward(t, "P-1", "2027-01-20", "AC-02"),
				{ID: "P-2", ReadyBy: date(t, "2027-09-18"), ReadyAfter: 140, Phases: treeFrog(), Animals: []string{"AC-02"}},
			},
			want: []string{"AC-02 is in P-1 and P-2 at once on 2027-02-10..2027-06-02; P-1 started 155 days later, on 2027-06-24, clears it"},
		},
		{
			// Both have the rain on 05-01 for 5 days.
			name: "a backward plan moves to earlier days",
			room: season.Room{Capacity: []season.Capacity{known("rain chamber", 1), known("cooling place", 2)}},
			pairings: []season.Pairing{
				{ID: "P-1", ReadyBy: date(t, "2027-09-18"), ReadyAfter: 140, Phases: treeFrog()},
				{ID: "P-2", ReadyBy: date(t, "2027-09-18"), ReadyAfter: 140, Phases: treeFrog()},
			},
			want: []string{"rain chamber: 2 needed and 1 there on 2027-05-01..2027-05-05 (P-1 and P-2); P-2 planned to be ready 5 days earlier, by 2027-09-13, clears it, and so does 1 more rain chamber"},
		},
		{
			name: "what has begun does not move",
			pairings: []season.Pairing{
				{ID: "P-1", Start: date(t, "2027-01-10"), Phases: treeFrog(), Animals: []string{"AC-02"}, Began: began(t, "conditioning 2027-01-10")},
				{ID: "P-2", Start: date(t, "2027-03-01"), Phases: treeFrog(), Animals: []string{"AC-02"}, Began: began(t, "conditioning 2027-03-01")},
			},
			today: "2027-03-02",
			want:  []string{"AC-02 is in P-1 and P-2 at once on 2027-03-02..2027-05-23"},
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			today := date(t, "2027-01-05")
			if tt.today != "" {
				today = date(t, tt.today)
			}
			s := season.Plan(tt.room, tt.pairings, today)
			assert.Empty(t, cmp.Diff(tt.want, messages(s)))
		})
	}
}

func TestConflictFields(t *testing.T) {
	room := season.Room{Capacity: []season.Capacity{known("rain chamber", 1)}, Away: away(t, "2027-08-01..2027-12-31")}
	pairings := []season.Pairing{
		forward(t, "P-1", "2027-01-10", "AC-02"),
		forward(t, "P-2", "2027-01-10", "AC-02"),
		forward(t, "P-3", "2027-07-20"),
		{ID: "P-4", ReadyBy: date(t, "2027-03-01"), ReadyAfter: 140, Phases: treeFrog()},
	}
	s := season.Plan(room, pairings, date(t, "2027-01-10"))
	for i := range s.Conflicts {
		s.Conflicts[i].Message = ""
	}
	span := func(text string) civil.Span { return away(t, text)[0] }
	want := []season.Conflict{
		// 140 and 56 days before 03-01; 56 and 140 days from today.
		{Kind: season.TooLate, Pairings: []string{"P-4"}, Days: span("2026-08-17..2027-01-09"), Earliest: date(t, "2027-07-25")},
		{Kind: season.AnimalTwice, Pairings: []string{"P-1", "P-2"}, Animals: []string{"AC-02"}, Days: span("2027-01-10..2027-05-23")},
		{Kind: season.PlaceFull, Pairings: []string{"P-1", "P-2"}, Place: "rain chamber", Days: span("2027-03-31..2027-04-04"), Capacity: 1, Needed: 2},
		{Kind: season.Away, Pairings: []string{"P-3"}, Phase: "cooling", Days: span("2027-08-01..2027-12-31")},
	}
	assert.Empty(t, cmp.Diff(want, s.Conflicts))
}

func TestUnchecked(t *testing.T) {
	always := []string{
		"tadpole tubs, froglet bins and hours of work",
		"room for a second attempt when there are no eggs, and for cleaning a place between two pairings",
	}
	room := season.Room{Capacity: []season.Capacity{{Place: "rain chamber"}}}
	s := season.Plan(room, []season.Pairing{forward(t, "P-1", "2027-01-10"), forward(t, "P-2", "2027-01-10")}, date(t, "2027-01-10"))
	assert.Empty(t, s.Conflicts)
	assert.Equal(t, append([]string{
		"cooling places, for how many there are is not given",
		"rain chambers, for how many there are is not given",
	}, always...), s.Unchecked)
	assert.Equal(t, always, season.Plan(room, nil, date(t, "2027-01-10")).Unchecked, "no pairing needs a place")
}

func TestLongListsAreCut(t *testing.T) {
	var pairings []season.Pairing
	for i := range 12 {
		pairings = append(pairings, season.Pairing{ID: "P-" + strconv.Itoa(i+1), Start: date(t, "2027-01-10"), Phases: []season.Phase{{Name: "rain", Min: 1, Usual: 1, Max: 1, Place: "rain chamber"}}})
	}
	s := season.Plan(season.Room{Capacity: []season.Capacity{known("rain chamber", 1)}}, pairings, date(t, "2027-01-10"))
	require.Len(t, s.Conflicts, 1)
	assert.Equal(t, "rain chamber: 12 needed and 1 there on 2027-01-10 (P-1, P-2, P-3, P-4, P-5, P-6, P-7, P-8 and 4 more); needs 11 more rain chambers", s.Conflicts[0].Message)
	assert.Len(t, s.Conflicts[0].Pairings, 12)
}

var (
	startedLater = regexp.MustCompile(`(P-\d+) started (\d+) days? later`)
	readyEarlier = regexp.MustCompile(`(P-\d+) planned to be ready (\d+) days? earlier`)
)

// A cure that a message names is tried: the pairing is then in no conflict, and
// with any smaller move it still is.
func TestCuresAreTrue(t *testing.T) {
	cures := 0
	rapid.Check(t, func(t *rapid.T) {
		room, pairings := drawSeason(t)
		for _, c := range season.Plan(room, pairings, day0).Conflicts {
			step, m := 1, startedLater.FindStringSubmatch(c.Message)
			if m == nil {
				step, m = -1, readyEarlier.FindStringSubmatch(c.Message)
			}
			if m == nil {
				continue
			}
			cures++
			i := slices.IndexFunc(pairings, func(p season.Pairing) bool { return p.ID == m[1] })
			require.Contains(t, c.Pairings, m[1])
			n, err := strconv.Atoi(m[2])
			require.NoError(t, err)
			for by := range n + 1 {
				require.Equal(t, by < n, troubled(room, pairings, i, by*step), "%s, moved by %d", c.Message, by)
			}
		}
	})
	if !testing.Short() { // which draws too few seasons to count by
		require.Positive(t, cures)
	}
}

// troubled reports whether a pairing is in a conflict once it is moved.
func troubled(room season.Room, pairings []season.Pairing, i, by int) bool {
	moved := slices.Clone(pairings)
	moved[i].Start, moved[i].ReadyBy = moved[i].Start.Add(by), moved[i].ReadyBy.Add(by)
	s := season.Plan(room, moved, day0)
	return slices.ContainsFunc(s.Conflicts, func(c season.Conflict) bool { return slices.Contains(c.Pairings, moved[i].ID) })
}
