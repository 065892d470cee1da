package frogroom_test

import (
	"bytes"
	"errors"
	"testing"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/internal/clockwork"
)

// FuzzRead: whatever bytes a file has and whatever day it is, no question
// panics, and what is told can be written as JSON and as a calendar. Where pairings
// can be in each other's way a plan may take a second, and fuzzing takes ten of them for
// a hang: such rooms are only checked here, and TestRandomRooms asks them everything.
func FuzzRead(f *testing.F) {
	for _, seed := range []string{
		"",
		"{}",
		basic + "clutches: [{id: C, laid: 2027-01-01, dam: [D, E], sire: [A, B], sire_mix: several}]\ndiary: [{on: 2027-01-03, clutch: C, gosner: 42, some: true}]\n",
		basic + "pairings: [{id: P, dam: D, sire: [A, B], start: 2027-01-04}]\ndiary: [{on: 2027-01-03, pairing: P, began: rest}]\n",
		"species: [{id: p, name: Rana p, cycle: {rain: {days: [1, 1, 730]}}}]\nanimals: [{id: A, species: p, sex: male}, {id: D, species: p, sex: female}]\npairings: [{id: P, dam: D, sire: A, ready_by: 2027-01-04}]\n",
		"targets: [{name: a/b, on: 2199-12-31, species: hyla-cinerea, froglets: 1}]\nholidays: us\nshipping: {weekdays: [saturday]}\n",
		"species: [{use: hyla-cinerea, cycle: {rain: none}, development: {egg: {days: [0.01, 1, 900], at_c: 20}}}]\nclutches: [{id: C, species: hyla-cinerea, laid: 1900-01-01}]\n",
	} {
		f.Add([]byte(clockwork.Spelled(seed)), int(day("2027-01-05")))
	}
	f.Fuzz(func(t *testing.T, data []byte, today int) {
		r, problems := frogroom.Read("fuzz.yaml", data)
		if (r == nil) != problems.HasErrors() {
			t.Fatalf("room %v, problems %v", r != nil, problems)
		}
		if r == nil {
			return
		}
		on := civil.Date(min(max(today, int(civil.First)), int(civil.Last)))
		if len(r.Collection.Pairings) > 1 {
			r.Check(on)
			return
		}
		answers := askAll(t, r, on)
		if len(answers["events"]) > 0 {
			writeCalendar(t, r, on)
		}
	})
}

// writeCalendar fails for another reason than the end of the calendar.
func writeCalendar(t *testing.T, r *frogroom.Room, on civil.Date) {
	err := calendar.WriteICS(&bytes.Buffer{}, r.Events(on))
	var end *calendar.EventError
	if err != nil && !(errors.As(err, &end) && end.Field == "Span") {
		t.Fatal(err)
	}
}
