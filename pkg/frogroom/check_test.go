package frogroom_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// TestCheck has what is wrong with a file that can be read, a thing at a time.
func TestCheck(t *testing.T) {
	for _, row := range []struct {
		name, text, on string
		warnings       string // without the place
	}{
		{"nothing is wrong", basic, "2027-01-01", ""},
		{
			"a refusal of the rules, and when time cures it", basic + `
  - {id: G, species: clockwork, sex: female, out_of_water: 2026-01-05}
pairings:
  - {id: P, dam: G, sire: A, start: 2027-01-04}
`, "2027-01-01",
			"id: P | pairing P should not be made: G is too young: 399 days (out of the water 2026-01-05), and a female needs 400; this passes on 2027-02-09",
		},
		{
			"too young by the day on which its clutch was laid, for nothing was seen of that", basic + `
  - {id: G, species: clockwork, sex: female, clutch: K}
clutches: [{id: K, laid: 2025-12-20, dam: D, sire: A, ended: 2026-03-01}]
pairings:
  - {id: P, dam: G, sire: B, start: 2027-01-04}
`, "2027-01-01",
			"id: P | pairing P should not be made: G is too young: 362 days (laid 2025-12-20, and 5 days as an egg and 48 as a tadpole are usual), and a female needs 400; this passes on 2027-03-18",
		},
		{
			"a warning of the rules", basic + `
pairings:
  - {id: P, dam: [D, E], sire: A, start: 2027-01-04}
`, "2027-01-01",
			"id: P | pairing P: 1 male to 2 females; the species spawns well with 1 to 2 males to a female",
		},
		{
			"a pairing of an earlier season is history, once there is a record of it", basic + `
  - {id: G, species: clockwork, sex: female, sire: A, dam: D}
pairings:
  - {id: P, dam: G, sire: A, start: 2020-01-04}
  - {id: Q, dam: D, sire: A, start: 2020-01-04}
  - {id: R, dam: D, sire: A, start: 2021-01-04}
clutches:
  - {id: C, laid: 2021-02-20, dam: D, sire: A, pairing: R, ended: 2021-09-01}
diary:
  - {on: 2020-01-04, pairing: Q, began: conditioning}
`, "2027-01-01",
			"id: P | pairing P ended on 2020-03-01 by its dates, and nothing is recorded of it; correct its date, record what began or the clutch, or remove it",
		},
		{
			"young that come while nobody is there, and temperatures that nobody compares", basic + `
away: [2027-02-16..2027-02-22]
clutches:
  - {id: C, laid: 2027-02-10, dam: D}
diary:
  - {on: 2027-02-12, animal: D, air_c: 45}
`, "2027-02-14",
			"id: C | clutch C: feeding can come while nobody is in the room (2027-02-16..2027-02-22): arrange for somebody to look",
		},
		{
			"a date that cannot be met", basic + `
pairings:
  - {id: P, dam: D, sire: A, ready_by: 2027-03-01}
`, "2027-01-01",
			"id: P | P: too late for 2027-03-01: conditioning would have had to begin by 2026-10-12, and today is 2027-01-01; young can be ready by 2027-05-21 at the earliest",
		},
		{
			"a species that nobody can plan for; the other pairing is checked", `
species:
  - {id: poor, name: Rana pauper}
  - CLOCKWORK
animals:
  - {id: Y, species: poor, sex: male}
  - {id: Z, species: poor, sex: female}
  - FOUNDERS
pairings:
  - {id: P, dam: Z, sire: Y, start: 2027-01-04}
  - {id: Q, dam: [D, E], sire: A, start: 2027-01-04}
`, "2027-01-01",
			`id: P | P: no season can be planned for poor, whose profile has no phases under cycle; add it under species
id: Q | pairing Q: 1 male to 2 females; the species spawns well with 1 to 2 males to a female`,
		},
		{
			"a phase that was to begin", basic + `
pairings:
  - {id: P, dam: D, sire: A, start: 2027-01-04}
`, "2027-01-05",
			"id: P | pairing P: conditioning was to begin on 2027-01-04 and nothing is recorded of it: record the day on which it began, or change the pairing",
		},
		{
			"a target for which nothing is planned", basic + `
targets:
  - {name: show, on: 2027-09-18, species: clockwork, froglets: 30}
`, "2027-01-01",
			`name: show | no pairing is planned for target "show"; name it in a pairing: target: show`,
		},
		{
			"a target for which too little is planned", basic + `
targets:
  - {name: show, on: 2027-09-18, species: clockwork, froglets: 30}
pairings:
  - {id: P, dam: D, sire: A, target: show}
`, "2027-01-01",
			`name: show | target "show" wants 30 froglets, and its pairings usually bring about 20; a usual clutch brings about 20; plan more of them`,
		},
		{
			"a target that has passed", basic + `
targets:
  - {name: show, on: 2026-09-18, species: clockwork, froglets: 30}
`, "2027-01-01", "",
		},
		{
			"a stage that nobody saw: the first one is enough", basic + `
clutches:
  - {id: C, laid: 2027-02-10, dam: D}
`, "2027-04-01",
			"id: C | clutch C: hatched expected by 2027-02-15, and nothing is recorded; look, and record what you see; end a clutch that is over with ended: DATE",
		},
		{
			"a clutch that died", basic + `
clutches:
  - {id: C, laid: 2027-02-10, dam: D}
diary:
  - {on: 2027-02-12, clutch: C, count: 0}
`, "2027-04-01", "id: C | clutch C: none of it is alive by the last count; end it with ended: DATE",
		},
		{
			"too warm and too cold, as far as is known by then, in clutches that run", basic + `
clutches:
  - {id: C, laid: 2027-02-10, dam: D, place: tub 1}
  - {id: ended, laid: 2026-02-10, dam: D, place: tub 1, ended: 2027-02-14}
diary:
  - {on: 2027-02-09, place: tub 1, water_c: 40}
  - {on: 2027-02-11, place: tub 1, water_c: 28.4, air_c: 28}
  - {on: 2027-02-12, clutch: C, air_c: 17.9}
  - {on: 2027-02-12, clutch: C, air_c: 17.996, note: rounds to what is allowed}
  - {on: 2027-02-13, clutch: C, water_c: 24}
  - {on: 2027-02-15, clutch: C, water_c: 10}
`, "2027-02-14",
			`on: 2027-02-11 | water at 28.4 °C on 2027-02-11 is outside the safe range of 18 to 28 °C for clockwork (clutch C); bring it back slowly, and ask a veterinarian when animals look unwell
on: 2027-02-12 | air at 17.9 °C on 2027-02-12 is outside the safe range of 18 to 28 °C for clockwork (clutch C); bring it back slowly, and ask a veterinarian when animals look unwell`,
		},
		{
			"the set-point, once a species", basic + `
equipment: {tadpole_tubs: {water_c: 29}}
clutches:
  - {id: C, laid: 2027-02-10, dam: D}
  - {id: B2, laid: 2027-02-10, dam: D}
`, "2027-02-14",
			`id: C | the tadpole tubs are set to 29 °C, outside the safe range of 18 to 28 °C for clockwork; give these clutches a place of their own, or change equipment.tadpole_tubs.water_c`,
		},
	} {
		t.Run(row.name, func(t *testing.T) {
			r := room(t, row.text)
			ds := r.Check(day(row.on))
			assert.False(t, ds.HasErrors(), "%v", ds)
			told := slices.DeleteFunc(slices.Clone(ds), func(d strictyaml.Diagnostic) bool {
				return strings.Contains(d.Message, "windows are wider") // told as the windows are; see TestWarmth
			})
			assert.Equal(t, row.warnings, placed(told, strictyaml.Warning))
			assert.Equal(t, ds, r.Check(day(row.on)), "two runs, one result")
		})
	}
}

// placed gives the problems of a severity, each with the beginning of the line
// that it is about.
func placed(ds strictyaml.Diagnostics, severity strictyaml.Severity) string {
	var lines []string
	for _, d := range ds {
		if d.Severity == severity {
			at, _, _ := strings.Cut(strings.TrimPrefix(strings.TrimSpace(d.Excerpt), "- {"), ",")
			text := at + " | " + d.Message
			if d.Cure != "" {
				text += "; " + d.Cure
			}
			lines = append(lines, text)
		}
	}
	return strings.Join(lines, "\n")
}

// TestNotes are about what was not checked.
func TestNotes(t *testing.T) {
	r := room(t, basic+`
pairings:
  - {id: P, dam: [D, E], sire: [A, B], start: 2027-01-04}
  - {id: Q, dam: D, sire: A, start: 2027-06-04}
`)
	notes := messages(r.Check(day("2027-01-01")), strictyaml.Note)
	assert.Contains(t, notes, "room.yaml: note: public holidays are not known, so shipping days are checked for weekdays only; add holidays: with a code such as de-by or us")
	assert.Contains(t, notes, "room.yaml: note: the temperature of the tubs is not known, so only measured temperatures are checked; add equipment.tadpole_tubs.water_c")
	assert.Contains(t, notes, "note: pairing P: not known, and so not checked or not exact: line, locality, length, weight, ancestry")

	known := room(t, basic+`
holidays: de
equipment: {tadpole_tubs: {water_c: 24}}
`)
	assert.Empty(t, known.Check(day("2027-01-01")))
}

// TestGapsNameAnimals where not all of a pairing are concerned.
func TestGapsNameAnimals(t *testing.T) {
	r := room(t, `
species:
  - CLOCKWORK
animals:
  - {id: A, species: clockwork, sex: male, out_of_water: 2024-01-01, line: x, locality: y}
  - {id: D, species: clockwork, sex: female, line: x, locality: y}
  - {id: E, species: clockwork, sex: female, line: x, locality: y}
  - {id: F, species: clockwork, sex: female, out_of_water: 2024-01-01, line: x, locality: y}
pairings:
  - {id: P, dam: [D, E, F], sire: A, start: 2027-01-04}
  - {id: Q, dam: D, sire: A, start: 2027-06-04}
`)
	notes := messages(r.Check(day("2027-01-01")), strictyaml.Note)
	assert.Contains(t, notes, "pairing P: not known, and so not checked or not exact: age of D and E, length, weight, ancestry")
	assert.Contains(t, notes, "pairing Q: not known, and so not checked or not exact: age of D, length, weight, ancestry")
}
