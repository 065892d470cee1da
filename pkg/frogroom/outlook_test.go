package frogroom_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/timetable"
)

func TestTargets(t *testing.T) {
	r := room(t, basic+`
  - {id: F, species: clockwork, sex: male, acquired: 2021-01-01, died: 2026-11-01}
equipment: {rain_chambers: 3}
holidays: de-by
targets:
  - {name: show, on: 2027-05-24, species: clockwork, froglets: 60}
  - {name: too soon, on: 2027-02-01, species: clockwork, froglets: 1}
  - {name: nobody plans for it, on: 2027-05-24, species: clockwork, froglets: 1}
pairings:
  - {id: two dams, dam: [D, E], sire: A, target: show}
  - {id: dead, dam: D, sire: F, target: show}
  - {id: late, dam: E, sire: B, target: too soon}
`)
	s, err := r.Season(day("2026-12-01"))
	require.NoError(t, err)
	want := []frogroom.TargetOutlook{
		// 20 from each of two dams. 2027-05-24 is a Monday, so that a parcel for
		// it would travel on Sunday; the Thursday before is the 20th.
		{
			Name: "show", On: day("2027-05-24"), Species: "clockwork", Wanted: 60, Pairings: []string{"two dams"}, LeftOut: []string{"dead"},
			FromEach: 20, Clutches: 2, Outlook: 40, ChancePct: new(int), CertaintyPct: 80, OneMorePct: new(int), LastShipping: day("2027-05-20"),
		},
		// 2027-02-01 is a Monday, too.
		{
			Name: "too soon", On: day("2027-02-01"), Species: "clockwork", Wanted: 1, Pairings: []string{}, LeftOut: []string{"late"},
			FromEach: 20, CertaintyPct: 80, LastShipping: day("2027-01-28"),
		},
	}
	if diff := cmp.Diff(want, s.Targets); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	one, err := r.Season(day("2026-12-01"), "late")
	require.NoError(t, err)
	require.Len(t, one.Targets, 1)
	assert.Equal(t, "too soon", one.Targets[0].Name)
}

// TestRefusalAfterTheEggs does not take young away that are there.
func TestRefusalAfterTheEggs(t *testing.T) {
	r := room(t, basic+`
  - {id: G, species: clockwork, sex: female, sire: A, dam: D, acquired: 2024-01-01}
targets:
  - {name: show, on: 2027-05-24, species: clockwork, froglets: 10}
pairings:
  - {id: P, dam: G, sire: A, target: show}
clutches:
  - {id: C, laid: 2027-02-10, pairing: P}
`)
	for on, want := range map[string]int{"2026-12-01": 0, "2027-02-10": 20} {
		s, err := r.Season(day(on), "P")
		require.NoError(t, err)
		assert.True(t, s.Pairings[0].Refused)
		require.Len(t, s.Targets, 1)
		assert.Equal(t, want, s.Targets[0].Outlook, on)
	}
}

// TestRainBegunLate: once the rain has begun there is nothing to plan any more, so
// that young which come late are no conflict but less likely to be in time.
func TestRainBegunLate(t *testing.T) {
	for _, row := range []struct {
		name, rain, more string
		conflicts        int
		counted          []string
		warned           string
	}{
		{"on the last day for the wished certainty", "2027-03-25", "", 0, []string{"P"}, ""},
		{"a day late", "2027-03-26", "", 0, []string{"P"}, "the chance that a clutch is sale-ready by 2027-08-21 is 79 %; wished: 80 %"},
		{"more likely late than in time", "2027-05-01", "", 0, []string{}, "the chance that a clutch is sale-ready by 2027-08-21 is 23 %; wished: 80 %"},
		{"with its clutch, which speaks for itself", "2027-05-01", "clutches: [{id: C, pairing: P, laid: 2027-05-03}]", 0, []string{"P"}, ""},
		{"not begun, and it cannot any more", "", "", 1, []string{}, ""},
	} {
		t.Run(row.name, func(t *testing.T) {
			diary := ""
			if row.rain != "" {
				diary = "  - {on: " + row.rain + ", pairing: P, began: rain}"
			}
			r := room(t, `
animals:
  - {id: A, species: agalychnis-callidryas, sex: male, acquired: 2024-01-01}
  - {id: D, species: agalychnis-callidryas, sex: female, acquired: 2024-01-01}
targets: [{name: show, on: 2027-08-21, species: agalychnis-callidryas, froglets: 5}]
pairings: [{id: P, dam: D, sire: A, target: show}]
`+row.more+"\ndiary:\n"+diary)
			s, err := r.Season(day("2027-05-04"))
			require.NoError(t, err)
			assert.Len(t, s.Conflicts, row.conflicts)
			assert.Equal(t, row.counted, s.Targets[0].Pairings)
			if row.warned != "" {
				assert.Contains(t, s.Pairings[0].Warnings, row.warned)
			} else {
				assert.NotContains(t, strings.Join(s.Pairings[0].Warnings, "\n"), "the chance that")
			}
		})
	}
}

// TestLostClutch: one of two clutches for a target is lost. Half of all tadpoles live:
// with two clutches fewer have to be raised of each than when one has to do it alone.
func TestLostClutch(t *testing.T) {
	text := wet(basic + `
equipment: {tadpole_tubs: {count: 9, litres: 1}}
targets:
  - {name: show, on: 2027-07-24, species: clockwork, froglets: 8}
pairings:
  - {id: P, dam: D, sire: A, target: show}
  - {id: Q, dam: E, sire: B, target: show}
clutches:
  - {id: C, laid: 2027-02-10, pairing: P}
`)
	before, err := room(t, text).Season(day("2027-02-12"))
	require.NoError(t, err)
	lost, err := room(t, text+"diary:\n  - {on: 2027-02-12, clutch: C, count: 0}\n").Season(day("2027-02-12"))
	require.NoError(t, err)
	assert.Equal(t, []string{"P", "Q"}, before.Targets[0].Pairings)
	assert.Equal(t, []string{"Q"}, lost.Targets[0].Pairings)
	assert.Equal(t, []string{"P"}, lost.Targets[0].LeftOut)
	tubs := func(s frogroom.Season) int {
		require.Len(t, s.Solved.Problem.Chains, 1)
		return s.Solved.Problem.Chains[0].Holds[0].Amount
	}
	assert.Greater(t, tubs(lost), tubs(before), "tubs of 2 tadpoles that are kept for Q")
}

// TestRestedWithoutAClutch: nobody counts on young of a pairing that was put to rest and
// has not laid, and the other of the target has to bring more.
func TestRestedWithoutAClutch(t *testing.T) {
	text := wet(basic + `
equipment: {tadpole_tubs: {count: 9, litres: 1}, froglet_bins: {count: 9, froglets: 10}}
targets:
  - {name: show, on: 2027-07-24, species: clockwork, froglets: 8}
pairings:
  - {id: P, dam: D, sire: A, target: show}
  - {id: Q, dam: E, sire: B, target: show}
diary:
  - {on: 2027-02-08, pairing: P, began: rain}
`)
	waiting, err := room(t, text).Season(day("2027-02-12"))
	require.NoError(t, err)
	resting, err := room(t, text+"  - {on: 2027-02-11, pairing: P, began: rest}\n").Season(day("2027-02-12"))
	require.NoError(t, err)
	assert.Equal(t, []string{"P", "Q"}, waiting.Targets[0].Pairings)
	assert.Equal(t, []string{"Q"}, resting.Targets[0].Pairings)
	assert.Equal(t, []string{"P"}, resting.Targets[0].LeftOut)
	assert.NotEmpty(t, waiting.Pairings[0].Stages)
	assert.Empty(t, resting.Pairings[0].Stages)
	assert.Contains(t, resting.Pairings[0].Warnings, "it rests since 2027-02-11 and no clutch of it is recorded, so no young of it are counted on: record the clutch, or plan another attempt")
	kept := func(s frogroom.Season) (tubs int) {
		for _, t := range s.Solved.Problem.Taken {
			if t.Resource == timetable.Tub {
				tubs += t.Amount
			}
		}
		return tubs
	}
	assert.Positive(t, kept(waiting), "for the young of P, which rains and is not moved any more")
	assert.Zero(t, kept(resting))
	tubs := func(s frogroom.Season) int {
		require.Len(t, s.Solved.Problem.Chains, 1)
		return s.Solved.Problem.Chains[0].Holds[0].Amount
	}
	assert.Greater(t, tubs(resting), tubs(waiting), "tubs of 2 tadpoles that are kept for Q")
}
