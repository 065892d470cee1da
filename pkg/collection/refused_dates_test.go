package collection_test

import "testing"

func TestReadRefusesDates(t *testing.T) {
	refuse(t, []refusal{
		{
			name: "dates that are none", reason: "the calendar, one way to write it, and no slip of a century",
			yaml: `
away: [2027-02-30..2027-03-02, 2027-05-16..2027-05-08, 2027-05-08 to 2027-05-16, "", 2027-05-01..2207-05-02]
animals:
  - {id: A, species: hyla-cinerea, hatched: 2025-02-29}
  - {id: B, species: hyla-cinerea, hatched: 1.2.2025, acquired: 2025-13-01, died: 20250301, left: [2025-01-01]}
  - {id: C, species: hyla-cinerea, hatched: 0205-02-01}
clutches:
  - {id: K, species: hyla-cinerea}
  - {id: L, species: hyla-cinerea, laid: ""}
diary:
  - {clutch: K, count: 1}
`,
			want: []string{
				`1:8: away: "2027-02-30" is not a date: 2027-02 has days 01 to 28; check the day`,
				`1:32: away: "2027-05-16..2027-05-08" ends before it begins; write 2027-05-08..2027-05-16`,
				`1:56: away: "2027-05-08 to 2027-05-16" is not a date: it is not written YYYY-MM-DD; write year, month and day as 2027-03-19`,
				`1:82: away: "" is not a date: it is not written YYYY-MM-DD; write year, month and day as 2027-03-19`,
				"1:86: away is in the year 2207; write a year from 1900 to 2199",
				`3:45: hatched: "2025-02-29" is not a date: 2025-02 has days 01 to 28; check the day`,
				`4:45: hatched: "1.2.2025" is not a date: it is not written YYYY-MM-DD; write 2025-02-01 or 2025-01-02, whichever is meant`,
				`4:65: acquired: "2025-13-01" is not a date: there is no month 13; write year, month and day as 2027-03-19`,
				`4:83: died: "20250301" is not a date: it is not written YYYY-MM-DD; write year, month and day as 2027-03-19`,
				"4:99: left is one value, not a list; write one value",
				"5:45: hatched is in the year 0205; write a year from 1900 to 2199",
				`7:10: clutch "K" has no date of laying, and no stage of it was seen; add laid:, or a diary entry that says what was seen: saw: or gosner:`,
				`8:42: laid: "" is not a date: it is not written YYYY-MM-DD; write year, month and day as 2027-03-19`,
				"10:5: a diary entry has no value for on; add on:",
			},
		},
		{
			name: "away twice", reason: "nothing is wrong, and a span may be a slip",
			yaml: `
away: [2027-05-08..2027-05-20, 2027-05-01..2027-05-02, 2027-05-09, 2027-05-20..2027-05-21]
`,
			want: []string{
				"1:56: warning: away: 2027-05-09 overlaps 2027-05-08..2027-05-20 of line 1; join them",
				"1:68: warning: away: 2027-05-20..2027-05-21 overlaps 2027-05-08..2027-05-20 of line 1; join them",
			},
		},
		{
			name: "a life in the wrong order", reason: "laid, hatched, out of water, gone",
			yaml: `
animals:
  - {id: A, species: hyla-cinerea, hatched: 2025-03-01, out_of_water: 2025-02-01}
  - {id: B, clutch: K, hatched: 2025-01-01, out_of_water: 2025-03-01}
  - {id: C, clutch: K, died: 2024-12-31}
  - {id: D, species: hyla-cinerea, out_of_water: 2025-03-01, left: 2025-02-01}
  - {id: E, species: hyla-cinerea, acquired: 2025-03-01, died: 2025-02-01, left: 2025-02-28}
  - {id: F, species: hyla-cinerea, hatched: 2025-03-01, out_of_water: 2025-03-01, acquired: 2025-02-01, died: 2025-03-01}
clutches:
  - {id: K, species: hyla-cinerea, laid: 2025-02-01}
  - {id: L, species: hyla-cinerea, laid: 2025-02-01, ended: 2025-01-01}
`,
			want: []string{
				`2:71: animal "A" left the water on 2025-02-01, before it hatched on 2025-03-01; check both dates`,
				`3:33: animal "B" hatched on 2025-01-01, before it was laid on 2025-02-01; check both dates`,
				`4:30: animal "C" died on 2024-12-31, before it was laid on 2025-02-01; check both dates`,
				`5:68: animal "D" left the room on 2025-02-01, before it left the water on 2025-03-01; check both dates`,
				`6:64: animal "E" died on 2025-02-01, before it came to the room on 2025-03-01; check both dates`,
				`6:82: animal "E" left the room on 2025-02-28, before it came to the room on 2025-03-01; check both dates`,
				`10:61: clutch "L" ended on 2025-01-01, before it was laid on 2025-02-01; check both dates`,
				`6:82: warning: animal "E" left the room on 2025-02-28, after it died on 2025-02-01; check both dates`,
			},
		},
		{
			name: "parents younger than their young", reason: "with dates of their own or of their clutch",
			yaml: `
animals:
  - {id: D1, species: hyla-cinerea, sex: female, out_of_water: 2025-02-01}
  - {id: D2, clutch: K0, sex: female}
  - {id: S, species: hyla-cinerea, sex: male, hatched: 2024-02-01}
  - {id: Y1, species: hyla-cinerea, dam: D1, sire: S, hatched: 2025-02-01}
  - {id: Y2, species: hyla-cinerea, dam: D2, sire: S, acquired: 2025-05-31, out_of_water: 2025-06-01}
  - {id: Y3, species: hyla-cinerea, dam: D2}
clutches:
  - {id: K0, species: hyla-cinerea, laid: 2025-06-01}
  - {id: K1, dam: D1, sire: S, laid: 2025-01-01}
  - {id: K2, dam: [D1, D2], sire: S, laid: 2025-06-01}
`,
			want: []string{
				`5:42: dam "D1" left the water on 2025-02-01 (line 2), too late for animal "Y1", which hatched on 2025-02-01; check the parent and the dates`,
				`6:42: dam "D2" was laid on 2025-06-01 (line 3), too late for animal "Y2", which came to the room on 2025-05-31; check the parent and the dates`,
				`10:19: dam "D1" left the water on 2025-02-01 (line 2), too late for clutch "K1", which was laid on 2025-01-01; check the parent and the dates`,
				`11:24: dam "D2" was laid on 2025-06-01 (line 3), too late for clutch "K2", which was laid on 2025-06-01; check the parent and the dates`,
			},
		},
		{
			name: "a clutch after the death of a parent", reason: "eggs are fertilised as they are laid; on the day itself it may be",
			yaml: `
animals:
  - {id: D, species: hyla-cinerea, sex: female, died: 2025-02-01}
  - {id: S, species: hyla-cinerea, sex: male}
  - {id: T, species: hyla-cinerea, sex: male, left: 2025-01-01}
clutches:
  - {id: K1, dam: D, sire: S, laid: 2025-02-01}
  - {id: K2, dam: D, sire: S, laid: 2025-02-02}
  - {id: K3, sire: [S, T], laid: 2025-03-01, species: hyla-cinerea}
  - {id: K4, sire: [S, T], laid: 2025-03-02, species: hyla-cinerea}
diary:
  - {on: 2025-03-01, animal: S, status: died}
`,
			want: []string{
				`7:19: dam "D" died on 2025-02-01 (line 2), before clutch "K2" was laid on 2025-02-02; check the parent and both dates`,
				`9:21: sire "S" died on 2025-03-01 (line 3), before clutch "K4" was laid on 2025-03-02; check the parent and both dates`,
				`8:24: warning: sire "T" left the room on 2025-01-01 (line 4), before clutch "K3" was laid on 2025-03-01; check the parent and both dates`,
				`9:24: warning: sire "T" left the room on 2025-01-01 (line 4), before clutch "K4" was laid on 2025-03-02; check the parent and both dates`,
			},
		},
		{
			name: "two deaths", reason: "the list and the diary, or two entries, contradict each other",
			yaml: `
animals:
  - {id: A, species: hyla-cinerea, died: 2025-02-01}
  - {id: B, species: hyla-cinerea, died: 2025-02-01}
  - {id: C, species: hyla-cinerea}
diary:
  - {on: 2025-02-01, animal: A, status: died}
  - {on: 2025-02-02, animal: B, status: died}
  - {on: 2025-02-02, animal: C, status: left}
  - {on: 2025-02-03, animal: C, status: left}
  - {on: 2025-02-03, animal: C, status: died}
`,
			want: []string{
				`7:5: animal "B" died on 2025-02-02, but elsewhere it died on 2025-02-01; keep the right date`,
				`9:5: animal "C" left on 2025-02-03, but elsewhere it left on 2025-02-02; keep the right date`,
			},
		},
		{
			name: "facts too early and too late", reason: "nothing is seen of what is not there yet, or no more",
			yaml: `
animals:
  - {id: A, clutch: K, died: 2025-04-01}
  - {id: B, species: hyla-cinerea, hatched: 2025-02-01}
clutches:
  - {id: K, species: hyla-cinerea, laid: 2025-02-01, ended: 2025-05-01}
diary:
  - {on: 2025-01-31, clutch: K, note: laid before}
  - {on: 2025-02-01, clutch: K, note: on the day}
  - {on: 2025-05-02, clutch: K, note: too late}
  - {on: 2025-01-31, animal: A, note: before it was laid}
  - {on: 2025-04-02, animal: A, weight_g: 3}
  - {on: 2025-01-31, animal: B, note: before it hatched}
  - {on: 2025-01-31, place: tub, water_c: 25}
`,
			want: []string{
				`10:10: 2025-01-31 is about animal "A", which was laid on 2025-02-01; check both dates`,
				`12:10: 2025-01-31 is about animal "B", which hatched on 2025-02-01; check both dates`,
				`7:10: warning: 2025-01-31 is about clutch "K", which was laid on 2025-02-01: the entry is left out; check both dates`,
				`9:10: warning: 2025-05-02 is about clutch "K", which ended on 2025-05-01; check both dates`,
				`11:10: warning: 2025-04-02 is about animal "A", which died on 2025-04-01; check both dates`,
			},
		},
	})
}
