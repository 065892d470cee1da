package collection_test

import "testing"

func TestReadRefusesRoomAndWishes(t *testing.T) {
	refuse(t, []refusal{
		{
			name: "holidays and shipping", reason: "a wrong day would send frogs into a weekend",
			yaml: `
holidays: Germany
shipping: {weekdays: [monday, tusday, monday], transit_days: 6}
`,
			want: []string{
				`1:11: holidays cannot be "Germany"; write an ISO 3166 code in small letters, such as de or de-by`,
				`2:31: weekday cannot be "tusday"; did you mean "tuesday"?`,
				`2:39: "monday" stands twice in the list weekdays; keep one of them`,
				"2:62: transit_days is 6; write a number from 1 to 5",
			},
		},
		{
			name: "no shipping day", reason: "an empty list is a slip",
			yaml: `
shipping: {weekdays: [], transit_days: 0}
`,
			want: []string{
				"1:22: the list weekdays is empty; name one day at least, or remove weekdays:",
				"1:40: transit_days is 0; write a number from 1 to 5",
			},
		},
		{
			name: "targets", reason: "each number has its range, each target its own name",
			yaml: `
targets:
  - {name: show, on: 2027-09-18, species: hyla-cinerea, froglets: 0}
  - {name: show, on: 2027-09-19, species: hyla-cinerea, froglets: 100001, certainty_pct: 99}
  - {on: 2027-09-18}
`,
			want: []string{
				"2:67: froglets is 0; write a number from 1 to 100000",
				`3:12: target "show" stands twice, first in line 2; give one of them another name`,
				"3:67: froglets is 100001; write a number from 1 to 100000",
				"3:90: certainty_pct is 99; write a number from 50 to 95",
				"4:5: a target has no value for name; add name:",
				"4:5: a target has no value for species; add species:",
				"4:5: a target has no value for froglets; add froglets:",
			},
		},
		{
			name: "equipment", reason: "counts are whole and not negative",
			yaml: `
equipment:
  rain_chambers: -1
  cooling_places: 1.5
  tadpole_tubs: {count: 100001, litres: 0, water_c: 25 °C}
  froglet_bins: {count: many, froglets: 0}
  minutes_a_day: 1441
`,
			want: []string{
				"2:18: rain_chambers is -1; write a number from 0 to 100000",
				`3:19: cooling_places is "1.5", not a whole number; write a whole number, such as 1`,
				"4:25: count is 100001; write a number from 0 to 100000",
				"4:41: litres is 0; write a number from 0.1 to 10000",
				`4:53: water_c is "25 °C", not a number; write water_c: 25`,
				`5:25: count is "many", not a whole number; write a whole number, such as 1`,
				"5:41: froglets is 0; write a number from 1 to 100000",
				"6:18: minutes_a_day is 1441; write a number from 0 to 1440",
			},
		},
		{
			name: "rules", reason: "a coefficient goes from 0 to 1, and the warning comes first",
			yaml: `
rules: {warn_inbreeding: 0.2, max_inbreeding: 0.1, pairings_a_season: 0}
`,
			want: []string{
				"1:26: warn_inbreeding 0.2 is above max_inbreeding 0.1; make it the smaller one",
				"1:71: pairings_a_season is 0; write a number from 1 to 100000",
			},
		},
		{
			name: "capacities of zero", reason: "a pairing needs them; what its species does without may be zero",
			yaml: `
equipment:
  rain_chambers: 0
  cooling_places: 0
  tadpole_tubs: {count: 0}
  froglet_bins: {count: 0}
  minutes_a_day: 0
animals:
  - {id: S, species: dendrobates-tinctorius, sex: male}
  - {id: D, species: dendrobates-tinctorius, sex: female}
pairings:
  - {id: P, sire: S, dam: D, start: 2027-01-01}
`,
			want: []string{
				`2:18: rain_chambers is 0, but pairing "P" needs it (line 11); write how many there are, or remove the line: then they are not limited`,
				`4:25: tadpole_tubs is 0, but pairing "P" needs it (line 11); write how many there are, or remove the line: then they are not limited`,
				`5:25: froglet_bins is 0, but pairing "P" needs it (line 11); write how many there are, or remove the line: then they are not limited`,
				`6:18: minutes_a_day is 0, but pairing "P" needs it (line 11); write how many there are, or remove the line: then they are not limited`,
			},
		},
		{
			name: "pairings", reason: "two sides, and one date to plan from",
			yaml: `
animals:
  - {id: S, species: hyla-cinerea, sex: male}
  - {id: D, species: hyla-cinerea, sex: female}
targets:
  - {name: show, on: 2027-09-18, species: hyla-cinerea, froglets: 6}
pairings:
  - {id: P1, sire: S, start: 2027-01-01}
  - {id: P2, sire: S, dam: D}
  - {id: P3, sire: S, dam: D, start: 2027-01-01, target: show, ready_by: 2027-09-01}
  - {id: P4, sire: S, dam: D, target: show, certainty_pct: 90}
  - {id: P5, sire: S, dam: D, ready_by: 2027-09-01, certainty_pct: 96}
`,
			want: []string{
				"7:5: a pairing has no value for dam; add dam:",
				"8:5: a pairing needs start, target or ready_by; add one of them",
				"9:58: a pairing has start and target; keep one of them",
				"10:60: certainty_pct is only for ready_by; remove it; a target has its own",
				"11:68: certainty_pct is 96; write a number from 50 to 95",
			},
		},
		{
			name: "sizes", reason: "a number has its unit, and a frog is no ox",
			yaml: `
animals:
  - {id: A, species: hyla-cinerea, weight: 7, length: 4}
  - {id: B, species: hyla-cinerea, weight: 7 stone, length_mm: 501}
  - {id: C, species: hyla-cinerea, weight_g: -7, length: two}
`,
			want: []string{
				"2:44: weight 7 has no unit; write weight_g: 7, or weight: 7 g",
				"2:55: length 4 has no unit; write length_mm: 4, or length: 4 mm",
				`3:44: weight has the unknown unit "stone"; units known here: g, kg, mg, oz`,
				"3:64: length_mm is 501; write a number from 0.5 to 500",
				"4:46: weight_g is -7; write a number from 0.001 to 5000",
				`4:58: length is "two"; write a number and its unit, such as length: 12.5 mm`,
			},
		},
		{
			name: "species", reason: "an entry stands once, and its own problems are its profile's",
			yaml: `
species:
  - {use: hyla-cinerea, tadpoles_per_litre: 2}
  - {use: hyla-cinerea, tadpoles_per_litre: 3}
  - {use: hyla-cinera}
  - {tadpoles_per_litre: 3}
  - {id: hyla-cinerea, name: twice}
`,
			want: []string{
				`3:11: species "hyla-cinerea" stands twice, first in line 2; put all of it into one entry`,
				`4:11: there is no built-in profile "hyla-cinera"; did you mean "hyla-cinerea"?`,
				"5:5: a species does not say which species it is about; add use: and a built-in profile, or id: and a name of your own",
				"6:10: hyla-cinerea is built in; write use: hyla-cinerea to change it, or choose another id",
			},
		},
	})
}
