package frogroom_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

func events(t *testing.T, r *frogroom.Room, on string) map[string]calendar.Event {
	t.Helper()
	c := r.Events(day(on))
	byKey := make(map[string]calendar.Event)
	for _, e := range c.Events {
		require.NotContains(t, byKey, e.Key)
		byKey[e.Key] = e
	}
	return byKey
}

// TestEventsOfAClutch follows one from laying to its last stage.
func TestEventsOfAClutch(t *testing.T) {
	r := room(t, basic+`
clutches:
  - {id: C, laid: 2027-02-10, dam: D, sire: A, place: tub 1}
diary:
  - {on: 2027-01-01, animal: A, note: older than the clutch}
  - {on: 2027-02-16, clutch: C, saw: hatched}
  - {on: 2027-02-17, clutch: C, water_c: 24}
  - {on: 2027-02-18, animal: A, note: about something else}
  - {on: 2027-03-31, clutch: C, gosner: 44}
`)
	for _, row := range []struct {
		on       string
		sequence int
		changed  string
		hatched  string
		legs     string
		ramp     string
	}{
		{"2027-02-10", 0, "2027-02-10", "2027-02-15 clutch C (tub 1): hatched expected, likely 2027-02-15", "2027-03-29 clutch C (tub 1): front legs expected, likely 2027-03-29", "2027-03-22 prepare"},
		{"2027-02-16", 1, "2027-02-16", "2027-02-16 seen C (tub 1): hatched, seen", "2027-03-30 clutch C (tub 1): front legs expected, likely 2027-03-30", "2027-03-23 prepare"},
		{"2027-03-30", 2, "2027-02-17", "2027-02-16 seen C (tub 1): hatched, seen", "2027-03-30 clutch C (tub 1): front legs expected, likely 2027-03-30", "2027-03-23 prepare"},
		{"2027-03-31", 3, "2027-03-31", "2027-02-16 seen C (tub 1): hatched, seen", "2027-03-30 seen C (tub 1): front legs, passed without being seen", "2027-03-23 prepare cancelled"},
	} {
		e := events(t, r, row.on)
		assert.Len(t, e, 8+7, row.on)
		assert.Equal(t, row.hatched[:10] == "2027-02-16", e["clutch/C/care/hatched/3 before"].Cancelled, row.on)
		say := func(key string) string {
			return strings.TrimSpace(fmt.Sprintf("%s %s %s", e[key].Span, e[key].Category, e[key].Summary))
		}
		assert.Equal(t, row.hatched, say("clutch/C/hatched"), row.on)
		assert.Equal(t, row.legs, say("clutch/C/front-legs"), row.on)
		ramp := fmt.Sprintf("%s %s", e["clutch/C/ramp"].Span, e["clutch/C/ramp"].Category)
		if e["clutch/C/ramp"].Cancelled {
			ramp += " cancelled"
		}
		assert.Equal(t, row.ramp, ramp, row.on)
		for key, event := range e {
			assert.Equal(t, row.sequence, event.Sequence, "%s: %s", row.on, key)
			assert.Equal(t, day(row.changed), event.Changed, "%s: %s", row.on, key)
		}
	}
}

// TestUIDsStay: a look moves events, and no event becomes another.
func TestUIDsStay(t *testing.T) {
	const text = basic + `
clutches:
  - {id: C, laid: 2027-02-10, dam: D, sire: A}
pairings:
  - {id: P, dam: E, sire: B, start: 2027-01-04}
diary:
  - {on: 2027-01-04, pairing: P, began: conditioning}
`
	before := events(t, room(t, text), "2027-02-16")
	after := events(t, room(t, text+"  - {on: 2027-02-16, clutch: C, saw: hatched}\n  - {on: 2027-02-16, pairing: P, began: rain}\n"), "2027-02-16")
	require.Len(t, after, len(before))
	for key, e := range before {
		now, ok := after[key]
		require.True(t, ok, key)
		entries := 1
		if strings.HasPrefix(key, "pairing/") {
			entries = 2 // the clutch teaches what the plan goes by
		}
		assert.Equal(t, e.Sequence+entries, now.Sequence, key)
		assert.Equal(t, day("2027-02-16"), now.Changed, key)
		assert.Equal(t, calendar.UID("frog room", key), calendar.UID("frog room", now.Key))
	}
	assert.NotEqual(t, before["clutch/C/feeding"].Span, after["clutch/C/feeding"].Span)
	assert.NotEqual(t, before["pairing/P/rest"].Span, after["pairing/P/rest"].Span)
	assert.Equal(t, before, events(t, room(t, text), "2027-02-16"), "the same file, the same events")
}

func TestEventsOfAPairing(t *testing.T) {
	r := room(t, basic+`
pairings:
  - {id: P, dam: D, sire: [A, B], start: 2027-01-04}
clutches:
  - {id: C, laid: 2027-02-20, pairing: P}
diary:
  - {on: 2027-01-05, pairing: P, began: conditioning}
  - {on: 2027-02-18, pairing: P, began: rain}
`)
	e := events(t, r, "2027-01-04")
	want := map[string]calendar.Event{
		"pairing/P/conditioning": {
			Key: "pairing/P/conditioning", Span: days("2027-01-04", "2027-01-04"), Category: "pairing", Changed: day("2027-01-04"),
			Summary: "P: conditioning begins (D × A, B)", Description: "Until 2027-01-13.",
		},
		"pairing/P/over": {
			Key: "pairing/P/over", Span: days("2027-03-03", "2027-03-03"), Category: "pairing", Changed: day("2027-01-04"),
			Summary: "P: rest is over (D × A, B)",
		},
		"pairing/P/young/laid": {
			Key: "pairing/P/young/laid", Span: days("2027-02-10", "2027-02-10"), Category: "planned young", Changed: day("2027-01-04"),
			Summary: "P: eggs, if all goes to plan, likely 2027-02-10", Description: "Early 2027-02-10, likely 2027-02-10, late 2027-02-10.",
		},
	}
	for key, event := range want {
		if diff := cmp.Diff(event, e[key]); diff != "" {
			t.Errorf("%s (-want +got):\n%s", key, diff)
		}
	}
	assert.Len(t, e, 5+1+6)
	assert.Contains(t, e["pairing/P/rain"].Description, "residual-current device")

	began := events(t, r, "2027-01-05")
	assert.Equal(t, "P: conditioning began (D × A, B)", began["pairing/P/conditioning"].Summary)
	assert.Equal(t, "seen", began["pairing/P/conditioning"].Category)

	laid := events(t, r, "2027-02-20")
	assert.Len(t, laid, 12+8+7)
	for key, event := range laid {
		if strings.HasPrefix(key, "pairing/") {
			assert.Equal(t, strings.Contains(key, "/young/"), event.Cancelled, "%s: the clutch speaks for itself", key)
			assert.Equal(t, 3, event.Sequence, "%s: two entries and a clutch", key)
			assert.Equal(t, day("2027-02-20"), event.Changed, key)
		}
	}
}

// TestRefusedInTheCalendar: whoever reads only the calendar is told, too.
func TestRefusedInTheCalendar(t *testing.T) {
	r := room(t, basic+`
  - {id: G, species: clockwork, sex: female, sire: A, dam: D, acquired: 2024-01-01}
pairings:
  - {id: P, dam: G, sire: A, start: 2027-01-04}
`)
	e := events(t, r, "2027-01-01")["pairing/P/rain"]
	assert.Contains(t, e.Description, "Until 2027-02-10.\nShould not be made: the young of A and G would be inbred to 0.25; refused from 0.125.\n")
}

// TestKeysDoNotCollide has ids and names that look like the keys of others.
func TestKeysDoNotCollide(t *testing.T) {
	r := room(t, `
species:
  - CLOCKWORK
animals:
  - {id: A, species: clockwork, sex: male}
  - {id: D, species: clockwork, sex: female}
targets:
  - {name: show, on: 2027-09-18, species: clockwork, froglets: 10}
  - {name: show/last parcel, on: 2027-09-18, species: clockwork, froglets: 10}
  - {name: show%2Flast parcel, on: 2027-09-18, species: clockwork, froglets: 10}
clutches:
  - {id: C, laid: 2027-01-01, dam: D}
  - {id: C/ramp, laid: 2027-01-01, dam: D}
  - {id: C/hatched, laid: 2027-01-01, dam: D}
pairings:
  - {id: P, dam: D, sire: A, start: 2027-01-04}
  - {id: P/young, dam: D, sire: A, start: 2027-01-04}
`)
	assert.Len(t, events(t, r, "2027-01-01"), 3*2+3*15+2*12, "each key once")
	c := r.Events(day("2027-01-01"))
	require.NoError(t, calendar.WriteICS(&bytes.Buffer{}, c))
}

// TestDatesInIDs: a date that the keeper put into an id is a name as any other.
func TestDatesInIDs(t *testing.T) {
	for _, on := range []string{"2027-01-01", "2027-01-20"} {
		r := room(t, basic+`
clutches:
  - {id: 2027-01-01, laid: 2027-01-01, dam: D}
diary:
  - {on: 2027-01-20, clutch: 2027-01-01, saw: hatched}
`)
		assert.Contains(t, events(t, r, on), "clutch/2027-01-01/hatched")
	}
}

func TestEventsOfTargets(t *testing.T) {
	r := room(t, basic+`
keeper: Lindenhof frog room
shipping: {weekdays: [monday], transit_days: 2}
targets:
  - {name: show, on: 2027-09-18, species: clockwork, froglets: 30}
diary:
  - {on: 2027-01-20, animal: A, note: the newest entry}
`)
	c := r.Events(day("2027-02-01"))
	assert.Equal(t, "Lindenhof frog room", c.ID)
	want := []calendar.Event{
		{
			Key: "target/show", Span: days("2027-09-18", "2027-09-18"), Category: "target", Changed: day("2027-01-20"),
			Summary: "show: 30 froglets of clockwork wanted",
		},
		{
			Key: "target/show/last parcel", Span: days("2027-09-13", "2027-09-13"), Category: "shipping", Changed: day("2027-01-20"),
			Summary:     "last day to hand over a parcel for show",
			Description: "Weekday and holidays only: look at the forecast at both ends, the carrier's rules for live animals, and permits (CITES, local law) before sending.",
		},
	}
	if diff := cmp.Diff(want, c.Events); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	assert.Equal(t, days("2027-09-13", "2027-09-18"), frogroom.Extent(c))
}

// TestArrivesInTime: with two days on the way a parcel for Thursday leaves on
// Tuesday at the latest.
func TestArrivesInTime(t *testing.T) {
	r := room(t, basic+`
shipping: {weekdays: [monday, tuesday, wednesday, thursday, friday], transit_days: 2}
targets:
  - {name: show, on: 2027-09-16, species: clockwork, froglets: 30}
`)
	assert.Equal(t, days("2027-09-14", "2027-09-14"), events(t, r, "2027-02-01")["target/show/last parcel"].Span)
}

// TestNoParcelDay has no event for a day that there is not: Saturday's parcels
// travel on Sunday.
func TestNoParcelDay(t *testing.T) {
	r := room(t, basic+`
shipping: {weekdays: [saturday]}
targets:
  - {name: show, on: 2027-09-18, species: clockwork, froglets: 30}
`)
	assert.Len(t, events(t, r, "2027-02-01"), 1)
	assert.Contains(t, asJSON(t, r.Agenda(day("2027-02-01"), 7)), `"parcels":[]`)
}

func TestDeadClutchIsCancelled(t *testing.T) {
	r := room(t, basic+`
clutches:
  - {id: C, laid: 2027-02-10, dam: D}
diary:
  - {on: 2027-02-15, clutch: C, saw: hatched, count: 3}
  - {on: 2027-02-16, clutch: C, count: 0}
`)
	for key, e := range events(t, r, "2027-02-16") {
		assert.Equal(t, key != "clutch/C/hatched", e.Cancelled, key)
	}
}

// TestPhaseNotes gives the conditions of a phase, values of one source together.
func TestPhaseNotes(t *testing.T) {
	r := room(t, `
species:
  - id: noted
    name: Rana notata
    source: invented
    cycle:
      rain:
        days: [3, 3, 3]
        day_c: 25.5
        night_c: [21, 24]
        humidity_pct: [90, 100]
        light_h: 12
        feeding: little
        sources: {humidity_pct: own notes, light_h: own notes}
animals:
  - {id: A, species: noted, sex: male}
  - {id: D, species: noted, sex: female}
pairings:
  - {id: P, dam: D, sire: A, start: 2027-01-04}
`)
	assert.Equal(t, `Until 2027-01-06.
Day 25.5 °C, night 21 to 24 °C (invented).
Humidity 90 to 100 %, light 12 h a day (own notes).
Feeding: little (invented).
Water and electricity: pump, heater and lamps on a residual-current device, mains off before hands go in; follow local codes.`,
		events(t, r, "2027-01-01")["pairing/P/rain"].Description)
}
