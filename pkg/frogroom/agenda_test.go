package frogroom_test

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

func agenda(t *testing.T, r *frogroom.Room, on string, days int) frogroom.Agenda {
	t.Helper()
	return r.Agenda(day(on), days)
}

// TestAgenda is a week with one of everything.
func TestAgenda(t *testing.T) {
	r := room(t, basic+`
holidays: de-by
away: [2027-03-28..2027-03-29, 2027-12-24..2027-12-31]
targets:
  - {name: show, on: 2027-03-27, species: clockwork, froglets: 30}
clutches:
  - {id: C, laid: 2027-02-10, dam: D, sire: A, place: tub 1}
  - {id: old, laid: 2027-01-10, dam: D, sire: A, place: tub 2}
pairings:
  - {id: P, dam: E, sire: B, start: 2027-02-20}
diary:
  - {on: 2027-02-17, clutch: C, saw: feeding}
  - {on: 2027-02-20, pairing: P, began: conditioning}
`)
	got := agenda(t, r, "2027-03-22", 8)
	want := frogroom.Agenda{
		Days: days("2027-03-22", "2027-03-29"),
		Overdue: []frogroom.Overdue{
			{
				Clutch: "old", Place: "tub 2", Stage: "hatched", Late: day("2027-01-15"), SeenOn: day("2027-01-10"),
				Text: "old (tub 2): hatched expected by 2027-01-15, nothing recorded since 2027-01-10 (laid), 71 days",
			},
			{Pairing: "P", Stage: "cooling", Late: day("2027-03-02"), Text: "P: cooling was to begin on 2027-03-02, nothing recorded of it"},
		},
		Tasks: []frogroom.Task{
			{On: day("2027-03-22"), What: "C (tub 1): a way out of the water"},
			{On: day("2027-03-22"), What: "P: warm-up begins (E × B)"},
			{On: day("2027-03-22"), What: "by now: have tubs ready with aged water, free of chlorine, at the set temperature: old (tub 2)"},
			{On: day("2027-03-22"), What: "by now: a way out of the water: old (tub 2)"},
			{On: day("2027-03-22"), What: "by now: start the first foods: C (tub 1), old (tub 2)"},
			{On: day("2027-03-22"), What: "by now: bins for froglets: old (tub 2)"},
			// Good Friday is the 26th, so that the parcel has to arrive on Thursday.
			{On: day("2027-03-24"), What: "last day to hand over a parcel for show"},
			{On: day("2027-03-27"), What: "C (tub 1): bins for froglets"},
			{On: day("2027-03-27"), What: "P: rain begins (E × B)"},
			{On: day("2027-03-27"), What: "show: 30 froglets of clockwork wanted"},
		},
		Watch: []frogroom.Watch{
			{Pairing: "P", Stage: "laid", Window: exactly("2027-03-29")},
			{Clutch: "C", Place: "tub 1", Stage: "toes", Window: civil.Window{Early: day("2027-03-11"), Likely: day("2027-03-17"), Late: day("2027-03-23")}},
			{Clutch: "C", Place: "tub 1", Stage: "front-legs", Window: exactly("2027-03-29")},
		},
		Away:      []civil.Span{days("2027-03-28", "2027-03-29")},
		NoParcels: []frogroom.Holiday{{On: day("2027-03-26"), Name: "Karfreitag"}, {On: day("2027-03-29"), Name: "Ostermontag"}},
		Parcels:   []civil.Date{day("2027-03-22"), day("2027-03-23"), day("2027-03-24")},
		Conflicts: []frogroom.Conflict{},
	}
	slack := cmp.FilterPath(func(p cmp.Path) bool { return p.Last().String() == ".Note" }, cmp.Ignore())
	if diff := cmp.Diff(want, got, slack); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// A weight is no look, and yet it is not nothing.
func TestSilence(t *testing.T) {
	for _, row := range []struct{ name, entry, want string }{
		{"nothing since it was laid", "{on: 2027-03-10, clutch: C, saw: hatched, some: true}", "nothing recorded since 2027-01-10 (laid), 30 days"},
		{"a count", "{on: 2027-02-01, clutch: C, count: 40}", "no stage recorded since 2027-01-10 (laid), 30 days"},
		{"a look", "{on: 2027-01-15, clutch: C, saw: hatched}", "nothing recorded since 2027-01-15 (hatched), 25 days"},
		{"a count on the day of the look", "{on: 2027-01-15, clutch: C, saw: hatched, count: 40}", "nothing recorded since 2027-01-15 (hatched), 25 days"},
	} {
		r := room(t, basic+"clutches: [{id: C, laid: 2027-01-10, dam: D, sire: A, eggs: 50}]\ndiary: ["+row.entry+"]\n")
		overdue := agenda(t, r, "2027-02-09", 1).Overdue
		require.Len(t, overdue, 1, row.name)
		assert.True(t, strings.HasSuffix(overdue[0].Text, row.want), "%s: %s", row.name, overdue[0].Text)
	}
}

// Nobody is told to have ready what the first of a clutch have left behind them; what
// the others and the next stage need is still told.
func TestCareOfThoseBehind(t *testing.T) {
	r := room(t, basic+"clutches: [{id: C, laid: 2027-01-10, dam: D, sire: A}]\ndiary: [{on: 2027-02-20, clutch: C, saw: front-legs, some: true}]\n")
	var what []string
	for _, task := range agenda(t, r, "2027-02-20", 14).Tasks {
		what = append(what, task.What)
	}
	text := strings.Join(what, "; ")
	assert.NotContains(t, text, "tubs ready", "some had hatched long ago")
	assert.Contains(t, text, "a way out of the water", "the others need it")
	assert.Contains(t, text, "bins for froglets")
}

// TestAgendaOfPassedStages: nobody is told to put a ramp in for froglets that
// are out of the water, nor to look for what was passed; only what comes after it.
func TestAgendaOfPassedStages(t *testing.T) {
	r := room(t, basic+`
clutches:
  - {id: C, laid: 2027-02-10, dam: D}
diary:
  - {on: 2027-04-04, clutch: C, gosner: 46}
`)
	a := agenda(t, r, "2027-04-04", 10)
	assert.Empty(t, a.Overdue)
	var whats []string
	for _, task := range a.Tasks {
		whats = append(whats, task.On.String()+" "+task.What)
	}
	assert.Equal(t, []string{"2027-04-07 C: offer first food every day", "2027-04-11 C: see that each one eats"}, whats)
	require.Len(t, a.Watch, 1)
	assert.Equal(t, "eating", a.Watch[0].Stage)
}

func TestAgendaOfADeadClutch(t *testing.T) {
	r := room(t, basic+`
clutches:
  - {id: C, laid: 2027-02-10, dam: D}
diary:
  - {on: 2027-02-14, clutch: C, count: 0}
`)
	for _, on := range []string{"2027-02-15", "2027-03-20", "2027-03-29", "2027-12-01"} {
		a := agenda(t, r, on, 10)
		assert.Empty(t, a.Overdue, on)
		assert.Empty(t, a.Tasks, on)
		assert.Empty(t, a.Watch, on)
	}
}

// TestOverduePhases waits for the phase that the cycle should be in.
func TestOverduePhases(t *testing.T) {
	for _, row := range []struct{ name, on, diary, want string }{
		{"it begins today", "2027-01-04", "", ""},
		{"it was to begin yesterday", "2027-01-05", "", "P: conditioning was to begin on 2027-01-04, nothing recorded of it"},
		{"only the last one is asked for", "2027-02-09", "", "P: rain was to begin on 2027-02-08, nothing recorded of it"},
		{"it was recorded", "2027-01-13", "{on: 2027-01-04, pairing: P, began: conditioning}", ""},
		{"the next one was not", "2027-01-15", "{on: 2027-01-04, pairing: P, began: conditioning}", "P: cooling was to begin on 2027-01-14, nothing recorded of it"},
		{"the whole cycle has gone by", "2027-03-03", "", ""},
	} {
		r := room(t, basic+"pairings: [{id: P, dam: D, sire: A, start: 2027-01-04}]\ndiary: ["+row.diary+"]\n")
		var texts []string
		for _, o := range agenda(t, r, row.on, 1).Overdue {
			texts = append(texts, o.Text)
		}
		assert.Equal(t, row.want, strings.Join(texts, "\n"), row.name)
	}
}

// TestAgendaOfARefusedPairing: nobody is told to begin it, or asked why it has not begun.
func TestAgendaOfARefusedPairing(t *testing.T) {
	r := room(t, basic+`
  - {id: G, species: clockwork, sex: female, out_of_water: 2027-01-01}
holidays: de-by
pairings: [{id: P, dam: G, sire: A, start: 2027-01-24}]
`)
	left := []string{"P should not be made, so its days are left out; `spawnwright season` says why"}
	for _, row := range []struct {
		name, on string
		want     []string
	}{
		{"it is further away than the agenda looks", "2027-01-16", nil},
		{"it would begin on the last day", "2027-01-17", left},
		{"it should have begun long ago", "2027-02-20", left},
		{"it would be over in these days", "2027-03-20", left},
		{"it would be over", "2027-04-20", nil},
	} {
		a := agenda(t, r, row.on, 8)
		assert.Equal(t, row.want, a.Warnings, row.name)
		assert.Empty(t, a.Overdue, row.name)
		assert.Empty(t, a.Tasks, row.name)
	}
}

// TestEggsToCome looks for the eggs of a pairing, two nights after its rain began.
func TestEggsToCome(t *testing.T) {
	for _, row := range []struct{ name, on, more, watch, overdue string }{
		{"the rain is planned for the 8th", "2027-02-07", "", "2027-02-10", ""},
		{"it began", "2027-02-08", "{on: 2027-02-08, pairing: P, began: rain}", "2027-02-10", ""},
		{"today", "2027-02-10", "{on: 2027-02-08, pairing: P, began: rain}", "2027-02-10", ""},
		{
			"none came", "2027-02-11", "{on: 2027-02-08, pairing: P, began: rain}", "",
			"P: eggs expected by 2027-02-10, none recorded since the rain began on 2027-02-08",
		},
		{
			"none came, and the rain is over", "2027-02-12", "{on: 2027-02-08, pairing: P, began: rain}, {on: 2027-02-11, pairing: P, began: rest}", "",
			"P: it rests since 2027-02-11 and no clutch of it is recorded, so no young of it are counted on",
		},
		{
			"it rests since today, and eggs may be there", "2027-02-11", "{on: 2027-02-08, pairing: P, began: rain}, {on: 2027-02-11, pairing: P, began: rest}", "",
			"P: eggs expected by 2027-02-10, none recorded since the rain began on 2027-02-08",
		},
		{"it rests, and the dam has laid", "2027-02-12", "{on: 2027-02-08, pairing: P, began: rain}, {on: 2027-02-11, pairing: P, began: rest}]\nclutches: [{id: C, dam: D, laid: 2027-02-10}", "", ""},
		{"they came", "2027-02-11", "{on: 2027-02-08, pairing: P, began: rain}]\nclutches: [{id: C, pairing: P, laid: 2027-02-10}", "", ""},
		{"they came, of the dam", "2027-02-11", "{on: 2027-02-08, pairing: P, began: rain}]\nclutches: [{id: C, dam: D, laid: 2027-02-10}", "", ""},
		{"the dam laid before", "2027-02-09", "{on: 2027-02-08, pairing: P, began: rain}]\nclutches: [{id: C, dam: D, laid: 2026-02-10, ended: 2026-10-01}", "2027-02-10", ""},
		{"the cycle is over", "2027-03-20", "{on: 2027-02-08, pairing: P, began: rain}", "", ""},
	} {
		r := room(t, basic+"pairings: [{id: P, dam: D, sire: A, start: 2027-01-04}]\ndiary: ["+row.more+"]\n")
		a := agenda(t, r, row.on, 7)
		watch, overdue := "", ""
		for _, w := range a.Watch {
			if w.Pairing == "P" {
				assert.Equal(t, "laid", w.Stage)
				watch = w.Window.Likely.String()
			}
		}
		for _, o := range a.Overdue {
			if o.Pairing == "P" && o.Stage == "laid" {
				overdue = o.Text
			}
		}
		told := messages(r.Check(day(row.on)), strictyaml.Warning)
		assert.Equal(t, row.watch, watch, row.name)
		assert.Equal(t, row.overdue, overdue, row.name)
		assert.Equal(t, row.overdue != "", strings.Contains(told, "eggs expected by") || strings.Contains(told, "it rests since"), row.name)
	}
}

// TestClutchWithoutItsPairing: the plan waits for eggs that are there.
func TestClutchWithoutItsPairing(t *testing.T) {
	for _, row := range []struct{ name, clutch, want string }{
		{"in the rain", "dam: D, laid: 2027-02-10", "clutch C has a dam of pairing P, whose rain began on 2027-02-08, but names no pairing, so that it does not count as the clutch of the pairing"},
		{"named", "dam: D, pairing: P, laid: 2027-02-10", ""},
		{"of another dam", "dam: E, laid: 2027-02-10", ""},
		{"before the rain", "dam: D, laid: 2027-02-07", ""},
		{"still to come", "dam: D, laid: 2027-02-16", ""},
	} {
		r := room(t, basic+"pairings: [{id: P, dam: D, sire: A, start: 2027-01-04}]\ndiary: [{on: 2027-02-08, pairing: P, began: rain}]\nclutches: [{id: C, "+row.clutch+"}]\n")
		got := ""
		for _, d := range r.Check(day("2027-02-12")) {
			if strings.Contains(d.Message, "names no pairing") {
				got = d.Message
			}
		}
		assert.Equal(t, row.want, got, row.name)
		s, err := r.Season(day("2027-02-12"))
		require.NoError(t, err)
		assert.Equal(t, row.want != "", strings.Contains(strings.Join(s.Pairings[0].Warnings, "\n"), "names no pairing"), row.name)
	}
}

// TestTooLateIsNotOverdue: a cycle that would have had to begin long ago is a
// conflict of the season, and nobody waits for its last phase.
func TestTooLateIsNotOverdue(t *testing.T) {
	r := room(t, basic+"pairings: [{id: P, dam: D, sire: A, ready_by: 2027-05-24}]\n")
	assert.Empty(t, agenda(t, r, "2027-03-10", 1).Overdue)
}

// TestHolidaysUnknown says what is left out.
func TestHolidaysUnknown(t *testing.T) {
	a := agenda(t, room(t, basic), "2027-12-20", 14)
	assert.Empty(t, a.NoParcels)
	assert.Equal(t, []string{"public holidays are not known (holidays: is left out), so parcel days are checked for weekdays only"}, a.Warnings)
}

// TestEndsOfTime: the calendar ends with the year 9999, and so does an agenda.
func TestEndsOfTime(t *testing.T) {
	r := room(t, basic+`
holidays: de-by
clutches:
  - {id: C, laid: 2027-02-10, dam: D}
pairings:
  - {id: P, dam: D, sire: A, start: 2027-01-04}
  - {id: Q, dam: D, sire: A, ready_by: 2027-09-04}
`)
	for _, on := range []civil.Date{civil.First, civil.First + 1, civil.Last - 1, civil.Last} {
		for _, n := range []int{1, 400, math.MaxInt} {
			if n > 400 && on < civil.Last-1 {
				continue // all the days there are
			}
			a := r.Agenda(on, n)
			assert.Equal(t, on, a.Days.First)
			assert.LessOrEqual(t, a.Days.Last, civil.Last)
		}
		r.Check(on)
		r.Kin(on)
		_, err := r.Season(on, "P", "Q")
		require.NoError(t, err)
	}
}
