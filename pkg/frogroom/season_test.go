package frogroom_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/rearing"
	"github.com/spawnwright/spawnwright/pkg/season"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// cycle is the plan of the clockwork species with the rain from 2027-02-08 on:
// 10 days of conditioning, 20 of cooling and 5 of warming up before it, 3 of
// rain and 20 of rest.
func cycle() []frogroom.PlannedPhase {
	return []frogroom.PlannedPhase{
		{Name: "conditioning", Span: days("2027-01-04", "2027-01-13")},
		{Name: "cooling", Place: "cooling place", Span: days("2027-01-14", "2027-02-02")},
		{Name: "warm-up", Span: days("2027-02-03", "2027-02-07")},
		{Name: "rain", Place: "rain chamber", Span: days("2027-02-08", "2027-02-10")},
		{Name: "rest", Span: days("2027-02-11", "2027-03-02")},
	}
}

// young are the days 2, 7, 9, 49, 55 and 105 after 2027-02-08, which has 20
// days of February and 31 of March before April.
func young() []frogroom.PlannedStage {
	book := rearing.RestsOn{Book: 4, Words: "the book"}
	return []frogroom.PlannedStage{
		{Stage: "laid", Window: exactly("2027-02-10")},
		{Stage: "hatched", Window: exactly("2027-02-15"), RestsOn: book},
		{Stage: "feeding", Window: exactly("2027-02-17"), RestsOn: book},
		{Stage: "front-legs", Window: exactly("2027-03-29"), RestsOn: book},
		{Stage: "out-of-water", Window: exactly("2027-04-04"), RestsOn: book},
		{Stage: "sale-ready", Window: exactly("2027-05-24"), RestsOn: book},
	}
}

const oneOfEach = basic + `
equipment: {rain_chambers: 1, cooling_places: 1}
`

func TestSeasonForward(t *testing.T) {
	r := room(t, oneOfEach+`
pairings:
  - {id: P, dam: D, sire: [A, B], start: 2027-01-04}
`)
	got, err := r.Season(day("2026-12-01"))
	require.NoError(t, err)
	want := frogroom.Season{
		On: day("2026-12-01"),
		Pairings: []frogroom.PlannedPairing{{
			ID: "P", Species: "clockwork", Dams: []string{"D"}, Sires: []string{"A", "B"},
			Young:  kin.Young{Expected: true, Known: true},
			Phases: cycle(), Stages: young(),
		}},
		Conflicts: []frogroom.Conflict{},
		Unchecked: []string{
			"tadpole tubs, froglet bins and minutes of work a day, for how many there are is not given",
			"room for a second attempt when there are no eggs",
			"cleaning a place between two pairings",
		},
		Proof: &frogroom.Proof{Best: true, Started: []string{"P"}},
	}
	assert.Empty(t, planner.Check(got.Solved.Problem, *got.Solved.Plan))
	got.Solved = planner.Document{} // the same in other terms
	got.Peaks, got.Weeks, got.Food = nil, nil, nil
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// TestSeasonBackward asks for young by the day on which the forward plan has
// them: the same plan, and nothing in it can begin later.
func TestSeasonBackward(t *testing.T) {
	latest := []string{"2027-01-04", "2027-01-14", "2027-02-03", "2027-02-08", ""}
	for _, row := range []struct{ name, pairing, target string }{
		{"by a date", "ready_by: 2027-05-24", ""},
		{"for a target", "target: show", "show"},
	} {
		r := room(t, oneOfEach+`
targets:
  - {name: show, on: 2027-05-24, species: clockwork, froglets: 20}
pairings:
  - {id: P, dam: D, sire: A, `+row.pairing+`}
`)
		got, err := r.Season(day("2026-12-01"))
		require.NoError(t, err)
		require.Empty(t, got.Conflicts, row.name)
		phases := cycle()
		for i := range phases {
			if latest[i] != "" {
				phases[i].LatestStart = day(latest[i])
			}
		}
		want := frogroom.PlannedPairing{
			ID: "P", Species: "clockwork", Dams: []string{"D"}, Sires: []string{"A"},
			Target: row.target, ReadyBy: day("2027-05-24"),
			Young:  kin.Young{Known: true},
			Phases: phases, Stages: young(),
		}
		if diff := cmp.Diff([]frogroom.PlannedPairing{want}, got.Pairings); diff != "" {
			t.Errorf("%s (-want +got):\n%s", row.name, diff)
		}
	}
}

// TestCertainty: who wants to be surer begins earlier.
func TestCertainty(t *testing.T) {
	before := day("9999-12-31")
	for _, pct := range []string{"50", "80", "95"} {
		r := room(t, `
animals:
  - {id: A, species: hyla-cinerea, sex: male}
  - {id: D, species: hyla-cinerea, sex: female}
pairings:
  - {id: P, dam: D, sire: A, ready_by: 2028-05-24, certainty_pct: `+pct+`}
`)
		s, err := r.Season(day("2026-12-01"))
		require.NoError(t, err)
		begin := s.Pairings[0].Phases[0].Span.First
		assert.Less(t, begin, before, pct)
		before = begin
	}
}

// TestRecordedPhases goes on from the diary, as far as the day that counts as
// today has come.
func TestRecordedPhases(t *testing.T) {
	r := room(t, oneOfEach+`
pairings:
  - {id: P, dam: D, sire: A, start: 2027-01-04}
diary:
  - {on: 2027-01-06, pairing: P, began: conditioning}
  - {on: 2027-02-20, pairing: P, began: rain}
`)
	for _, row := range []struct{ on, conditioning, rain string }{
		{"2027-01-05", "2027-01-04", "2027-02-08"}, // nothing is known yet
		{"2027-01-06", "2027-01-06", "2027-02-10"}, // two days late
		{"2027-02-20", "2027-01-06", "2027-02-20"},
	} {
		s, err := r.Season(day(row.on))
		require.NoError(t, err)
		phases := s.Pairings[0].Phases
		assert.Equal(t, day(row.conditioning), phases[0].Span.First, row.on)
		assert.Equal(t, day(row.rain), phases[3].Span.First, row.on)
		assert.Equal(t, day(row.rain).Add(105), s.Pairings[0].Stages[5].Window.Likely, row.on)
	}
}

// TestOver is about pairings of earlier seasons, to which clutches still refer.
func TestOver(t *testing.T) {
	r := room(t, oneOfEach+`
targets:
  - {name: show, on: 2027-05-24, species: clockwork, froglets: 20}
rules: {pairings_a_season: 2}
pairings:
  - {id: forward, dam: D, sire: A, start: 2027-01-04}
  - {id: for the show, dam: E, sire: B, target: show}
`)
	for _, row := range []struct{ on, planned, why string }{
		{"2027-03-02", "forward, for the show", "the last day of the rest"},
		{"2027-03-03", "for the show", "the young of the other may still grow, or it is too late"},
		{"2027-05-24", "for the show", "the day of the show"},
		{"2027-05-25", "", "all is over"},
		{"2400-01-01", "", "and stays so"},
	} {
		s, err := r.Season(day(row.on))
		require.NoError(t, err)
		var ids []string
		for _, p := range s.Pairings {
			ids = append(ids, p.ID)
		}
		assert.Equal(t, row.planned, strings.Join(ids, ", "), row.why)
		if row.planned == "" {
			assert.Empty(t, s.Conflicts, row.on)
			assert.Empty(t, s.Targets, row.on)
		}
	}
	s, err := r.Season(day("2400-01-01"), "forward", "forward")
	require.NoError(t, err)
	assert.Len(t, s.Pairings, 1, "asked for by its id, it is planned all the same, and once")
}

// TestConflicts has one of each kind, as the keeper reads it.
func TestConflicts(t *testing.T) {
	for _, row := range []struct {
		name, more string
		on         string
		kind       season.Kind
		pairings   string
		message    string
	}{
		{
			"one rain chamber for two", `
equipment: {rain_chambers: 1, cooling_places: 2}
pairings:
  - {id: P, dam: D, sire: A, start: 2027-01-04}
  - {id: Q, dam: E, sire: B, start: 2027-01-05}
`, "2026-12-01", season.PlaceFull, "P Q", "rain chamber: 2 needed and 1 there",
		},
		{
			"one male in two cycles", `
pairings:
  - {id: P, dam: D, sire: A, start: 2027-01-04}
  - {id: Q, dam: E, sire: [A, B], start: 2027-02-05}
`, "2026-12-01", season.AnimalTwice, "P Q", "A is in P and Q at once",
		},
		{
			"the rain would have had to begin before today", `
pairings:
  - {id: P, dam: D, sire: A, ready_by: 2027-05-24}
`, "2027-01-05", season.TooLate, "P", "can be ready by 2027-05-25 at the earliest",
		},
		{
			"nobody there when the rain has to begin", `
away: [2027-02-08]
pairings:
  - {id: P, dam: D, sire: A, start: 2027-01-04}
`, "2026-12-01", season.Away, "P", "the start of rain falls on 2027-02-08",
		},
		{
			"more than the keeper wants to run", `
rules: {pairings_a_season: 1}
pairings:
  - {id: P, dam: D, sire: A, start: 2027-01-04}
  - {id: Q, dam: E, sire: B, start: 2027-01-05}
`, "2026-12-01", frogroom.TooMany, "P Q", "2 pairings are planned, and rules.pairings_a_season allows 1",
		},
	} {
		r := room(t, basic+row.more)
		s, err := r.Season(day(row.on))
		require.NoError(t, err)
		clash := row.kind == season.PlaceFull || row.kind == season.AnimalTwice
		require.Len(t, s.Conflicts, 1+btoi(clash), "%s: %v", row.name, s.Conflicts)
		if clash {
			assert.Equal(t, frogroom.NoPlan, s.Conflicts[1].Kind, row.name)
		}
		c := s.Conflicts[0]
		assert.Equal(t, row.kind, c.Kind, row.name)
		assert.Equal(t, row.pairings, strings.Join(c.Pairings, " "), row.name)
		assert.Contains(t, c.Message, row.message, row.name)
	}
}

func btoi(b bool) int {
	if b {
		return 1
	}
	return 0
}

// TestPoorProfiles is about species of which the keeper knows little yet. One
// pairing that cannot be planned stops no other.
func TestPoorProfiles(t *testing.T) {
	for _, row := range []struct {
		name, profile, wish string
		planned             string // its phases
		want                string // the conflict, or the warning
	}{
		{
			"nothing but a name", "", "start: 2027-01-04", "",
			"P: no season can be planned for poor, whose profile has no phases under cycle; add it under species",
		},
		{
			"phases, but nobody knows when there are eggs: the dates of the phases are right",
			"cycle: {rain: {days: [3, 3, 3]}}", "start: 2027-01-04", "rain",
			"when there will be young is not known: the profile of poor has no eggs_after_nights under breeding",
		},
		{
			"the same, and a date to be met", "cycle: {rain: {days: [3, 3, 3]}}", "ready_by: 2027-09-04", "",
			"P: no season can be planned for poor, whose profile has no eggs_after_nights under breeding; add it under species",
		},
		{
			"a step of development is missing", "cycle: {rain: {days: [3, 3, 3]}}, breeding: {eggs_after_nights: [2, 2, 2]}, development: {egg: {days: [5, 5, 5], at_c: 24}, grow_out: {days: [5, 5, 5], at_c: 24}}",
			"ready_by: 2027-09-04", "",
			"P: no season can be planned for poor, whose profile has no days for every step of development; add it under species",
		},
		{
			"no rain at all: young are counted from the end of the phases",
			"cycle: {conditioning: {days: [3, 3, 3]}}, breeding: {eggs_after_nights: [2, 2, 2]}", "start: 2027-01-04", "conditioning", "",
		},
		{
			"young that are ready at once", "cycle: {rain: {days: [3, 3, 3]}}, breeding: {eggs_after_nights: [0.1, 0.1, 0.1]}, development: {egg: {days: [0.1, 0.1, 0.1], at_c: 24}, hatchling: {days: [0.1, 0.1, 0.1], at_c: 24}, tadpole: {days: [0.1, 0.1, 0.1], at_c: 24}, metamorph: {days: [0.1, 0.1, 0.1], at_c: 24}, grow_out: {days: [0.1, 0.1, 0.1], at_c: 24}}",
			"ready_by: 2027-09-04", "rain", "",
		},
	} {
		t.Run(row.name, func(t *testing.T) {
			profile := row.profile
			if profile != "" {
				profile = ", " + profile
			}
			r := room(t, `
species:
  - {id: poor, name: Rana pauper`+profile+`}
animals:
  - {id: A, species: poor, sex: male}
  - {id: D, species: poor, sex: female}
  - {id: H, species: hyla-cinerea, sex: male}
  - {id: I, species: hyla-cinerea, sex: female}
pairings:
  - {id: P, dam: D, sire: A, `+row.wish+`}
  - {id: other, dam: I, sire: H, start: 2027-01-04}
`)
			on := day("2026-12-01")
			s, err := r.Season(on)
			require.NoError(t, err)
			var noCycle *frogroom.NoCycleError
			_, named := r.Season(on, "P")
			if row.planned == "" {
				require.Len(t, s.Pairings, 1)
				assert.Equal(t, "other", s.Pairings[0].ID)
				require.Len(t, s.Conflicts, 1)
				assert.Equal(t, frogroom.Conflict{Kind: frogroom.NotPlanned, Pairings: []string{"P"}, Message: row.want}, s.Conflicts[0])
				assert.ErrorAs(t, named, &noCycle, "who asks for it by its id gets the reason")
				assert.Equal(t, "P: "+noCycle.Error(), row.want)
				assert.NotContains(t, asJSON(t, s.Conflicts), `"days":`, "no days are concerned")
			} else {
				require.NoError(t, named)
				require.Len(t, s.Pairings, 2)
				require.Len(t, s.Pairings[0].Phases, 1)
				assert.Equal(t, row.planned, s.Pairings[0].Phases[0].Name)
				assert.Equal(t, row.want, strings.Join(s.Pairings[0].Warnings, "\n"))
				assert.Equal(t, row.want == "", len(s.Pairings[0].Stages) > 0)
			}
			assert.NotContains(t, asJSON(t, s), "null")
			r.Events(on)
			r.Agenda(on, 400)
		})
	}
}

// TestJudgedOnOneDay: where there is no rain it is the day from which the young
// are counted, in Season and Check alike.
func TestJudgedOnOneDay(t *testing.T) {
	r := room(t, `
species:
  - {id: dry, name: Rana sicca, cycle: {conditioning: {days: [100, 100, 100]}}, maturity: {male: {age_days: 400}}}
animals:
  - {id: A, species: dry, sex: male, out_of_water: 2026-01-01}
  - {id: D, species: dry, sex: female}
pairings:
  - {id: P, dam: D, sire: A, start: 2027-01-01}
`)
	s, err := r.Season(day("2026-12-01"))
	require.NoError(t, err)
	assert.False(t, s.Pairings[0].Refused, "465 days old on 2027-04-11")
	assert.NotContains(t, messages(r.Check(day("2026-12-01")), strictyaml.Warning), "too young")
}

func TestFindings(t *testing.T) {
	for _, row := range []struct {
		name, animals, pairing, diary string
		refused                       bool
		want                          string
	}{
		{name: "nothing against it", pairing: "dam: D, sire: A"},
		{
			name: "daughter and sire", animals: "{id: G, species: clockwork, sex: female, sire: A, dam: D, acquired: 2024-01-01}",
			pairing: "dam: G, sire: A", refused: true,
			want: "the young of A and G would be inbred to 0.25; refused from 0.125",
		},
		{
			name: "he is dead", animals: "{id: F, species: clockwork, sex: male, acquired: 2021-01-01, died: 2026-11-01}",
			pairing: "dam: D, sire: F", refused: true, want: "F died on 2026-11-01",
		},
		{
			name: "he dies before the rain, as far as the diary knows by now", animals: "{id: F, species: clockwork, sex: male, acquired: 2021-01-01}",
			diary: "{on: 2026-11-01, animal: F, status: died}", pairing: "dam: D, sire: F", refused: true, want: "F died on 2026-11-01",
		},
		{
			name: "too young, and the first day on which it is not", animals: "{id: G, species: clockwork, sex: female, out_of_water: 2026-02-08}",
			pairing: "dam: G, sire: A", refused: true, want: "G is too young: 365 days (out of the water 2026-02-08), and a female needs 400",
		},
		{
			name: "two females for one male", pairing: "dam: [D, E], sire: A",
			want: "1 male to 2 females; the species spawns well with 1 to 2 males to a female",
		},
		{
			name: "promised", animals: "{id: F, species: clockwork, sex: male, acquired: 2021-01-01, promised: the neighbour}",
			pairing: "dam: D, sire: F", refused: true, want: "F is promised to the neighbour",
		},
	} {
		t.Run(row.name, func(t *testing.T) {
			text := basic
			if row.animals != "" {
				text += "  - " + row.animals + "\n"
			}
			text += "pairings:\n  - {id: P, " + row.pairing + ", start: 2027-01-04}\n"
			if row.diary != "" {
				text += "diary:\n  - " + row.diary + "\n"
			}
			s, err := room(t, text).Season(day("2026-12-01"))
			require.NoError(t, err)
			assert.Equal(t, row.want, strings.Join(s.Pairings[0].Findings, "\n"))
			assert.Equal(t, row.refused, s.Pairings[0].Refused)
		})
	}
}

// TestRestBetweenClutches knows of clutches that were laid by today, those of
// which she is one of two possible dams among them.
func TestRestBetweenClutches(t *testing.T) {
	r := room(t, basic+`
clutches:
  - {id: old, laid: 2026-02-01, dam: D, sire: A, ended: 2026-12-01}
  - {id: recent, laid: 2027-01-25, dam: [E, D], sire: A, ended: 2027-02-01}
pairings:
  - {id: P, dam: D, sire: A, start: 2027-01-04}
`)
	for _, row := range []struct{ on, want, why string }{
		{"2027-01-24", "", "the clutch is not there yet"},
		{"2027-01-25", "the last clutch of D was laid on 2027-01-25, 14 days before; she needs 20 to recover", "before the rain of 2027-02-08"},
	} {
		s, err := r.Season(day(row.on))
		require.NoError(t, err)
		assert.Equal(t, row.want, strings.Join(s.Pairings[0].Findings, "\n"), row.why)
	}
}

// TestPresumedRain goes by the clutch where the diary has nothing of the rain.
func TestPresumedRain(t *testing.T) {
	const warning = "the rain is taken to have begun on 2027-02-18, because a clutch was laid on 2027-02-20: record the day on which it began"
	for _, row := range []struct {
		name, diary string
		on, rain    string
		warned      bool
	}{
		{"not laid yet", "", "2027-02-19", "2027-02-08", false},
		{"laid, two nights of rain are usual", "", "2027-02-20", "2027-02-18", true},
		{"the diary knows better", "{on: 2027-02-15, pairing: P, began: rain}", "2027-02-20", "2027-02-15", false},
		{"the rain is over", "{on: 2027-03-01, pairing: P, began: rest}", "2027-03-01", "2027-02-26", false},
		{"not before what is recorded", "{on: 2027-02-19, pairing: P, began: warm-up}", "2027-02-20", "2027-02-19", true},
		{"what is recorded later than the eggs is no reason", "{on: 2027-02-21, pairing: P, began: warm-up}", "2027-02-21", "2027-02-20", true},
	} {
		r := room(t, basic+`
clutches:
  - {id: C2, laid: 2027-02-22, pairing: P}
  - {id: C, laid: 2027-02-20, pairing: P}
pairings:
  - {id: P, dam: D, sire: A, start: 2027-01-04}
diary: [`+row.diary+"]\n")
		s, err := r.Season(day(row.on))
		require.NoError(t, err)
		assert.Equal(t, day(row.rain), s.Pairings[0].Phases[3].Span.First, row.name)
		if row.rain == "2027-02-18" {
			assert.Contains(t, s.Pairings[0].Warnings, warning, row.name)
		}
		assert.Equal(t, row.warned, strings.Contains(strings.Join(s.Pairings[0].Warnings, "\n"), "the rain is taken to have begun"), row.name)
	}
}

func TestAwayDoubts(t *testing.T) {
	r := room(t, basic+`
away: [2027-02-10, 2027-02-15, 2027-03-20..2027-03-29, 2027-05-24]
pairings:
  - {id: P, dam: D, sire: A, start: 2027-01-04}
`)
	s, err := r.Season(day("2026-12-01"))
	require.NoError(t, err)
	assert.Equal(t, []string{
		"eggs can come while nobody is in the room (2027-02-10): arrange for somebody to look",
		"front legs can come while nobody is in the room (2027-03-20..2027-03-29): arrange for somebody to look",
	}, s.Pairings[0].Warnings, "hatching and sale wait a day")
}

func TestUnknownPairing(t *testing.T) {
	r := room(t, basic+`
pairings:
  - {id: P-27-01, dam: D, sire: A, start: 2027-01-04}
`)
	_, err := r.Season(day("2027-01-01"), "P-27-1")
	var unknown *collection.UnknownError
	require.ErrorAs(t, err, &unknown)
	assert.EqualError(t, err, `there is no pairing "P-27-1"; did you mean "P-27-01"?`)
	_, err = r.Season(day("2027-01-01"), "D")
	assert.EqualError(t, err, `there is no pairing "D"`, "an animal is none")
}
