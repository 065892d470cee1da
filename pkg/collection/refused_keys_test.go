package collection_test

import "testing"

func TestReadRefusesWishes(t *testing.T) {
	refuse(t, []refusal{
		{
			name: "rules", reason: "words and numbers of the contract; which rules there are is not known here",
			yaml: `
rules: {clutches_a_season: 0, relax: [rest, Weight, "", rest, [age]], space_pct: [51, 49]}
`,
			want: []string{
				"1:28: clutches_a_season is 0; write a number from 1 to 100000",
				`1:45: relax cannot be "Weight"; write the name of a rule in small letters, such as rest`,
				`1:53: relax cannot be ""; write the name of a rule in small letters, such as rest`,
				`1:57: "rest" stands twice in the list relax; keep one of them`,
				"1:63: relax is one value, not a list; write one value",
				"1:83: the first of space_pct is 51; write a number from 1 to 50",
				"1:87: the second of space_pct is 49; write a number from 50 to 99",
			},
		},
		{
			name: "rules that are no lists", reason: "one form each",
			yaml: `
rules: {relax: rest, space_pct: 10}
`,
			want: []string{
				`1:16: relax is a list, not "rest"; write - before each entry, or put the entries in [ ]`,
				"1:33: space_pct is not a list of 2 numbers; write two whole numbers, such as space_pct: [10, 90]",
			},
		},
		{
			name: "shipping, equipment, card", reason: "spans and whole numbers; a card has one line",
			yaml: `
shipping: {carrier_closed: [2027-12-20..2027-12-24, 2027-12-24, 2027-12-31..2027-12-30]}
equipment: {retry_after_days: 366}
card: {contact: "two\nlines", colour: blue}
`,
			want: []string{
				`1:65: carrier_closed: "2027-12-31..2027-12-30" ends before it begins; write 2027-12-30..2027-12-31`,
				"2:31: retry_after_days is 366; write a number from 0 to 365",
				"3:17: contact has more than one line; write it in one line",
				`3:31: unknown key "colour" in the card; known here: contact`,
				"1:53: warning: carrier_closed: 2027-12-24 overlaps 2027-12-20..2027-12-24 of line 1; join them",
			},
		},
		{
			name: "costs and dates of a plan", reason: "a cost has its range, and a release leaves time",
			yaml: `
targets:
  - {name: show, on: 2027-09-18, species: hyla-cinerea, froglets: 6, late_cost: 1001, early_cost: -1}
animals:
  - {id: S, species: hyla-cinerea, sex: male}
  - {id: D, species: hyla-cinerea, sex: female}
pairings:
  - {id: P1, sire: S, dam: D, start: 2027-01-01, not_before: 2027-01-02, leave_out_cost: 0}
  - {id: P2, sire: S, dam: D, start: 2027-01-01, not_before: 2027-01-01, leave_out_cost: 10001}
  - {id: P3, sire: S, dam: D, target: show, not_before: 2027-09-18}
  - {id: P4, sire: S, dam: D, ready_by: 2027-09-18, not_before: 2027-09-17}
`,
			want: []string{
				"2:81: late_cost is 1001; write a number from 0 to 1000",
				"2:99: early_cost is -1; write a number from 0 to 1000",
				`7:62: pairing "P1" starts on 2027-01-01, before its not_before 2027-01-02; keep one of them`,
				"7:90: leave_out_cost is 0; write a number from 1 to 10000",
				"8:90: leave_out_cost is 10001; write a number from 1 to 10000",
				`9:57: pairing "P3" begins on 2027-09-18 at the earliest, and its young must be ready by 2027-09-18; check both dates`,
			},
		},
	})
}

func TestReadRefusesHoldsAndPromises(t *testing.T) {
	refuse(t, []refusal{
		{
			name: "animals", reason: "a sign is of a sex that is known, and a hold ends after it begins",
			yaml: `
animals:
  - {id: A, species: hyla-cinerea, sex_sign: called}
  - {id: B, species: hyla-cinerea, sex: unknown, sex_sign: called}
  - {id: C, species: hyla-cinerea, sex: male, sex_sign: called, holds: {kind: health}}
  - {id: D, species: hyla-cinerea, holds: [{from: 2027-01-02, until: 2027-01-01}, {kind: parole}, health]}
  - {id: E, species: hyla-cinerea, food: [crickets]}
`,
			want: []string{
				"2:36: sex_sign stands without the sex; add sex: male or female, or remove it",
				"3:50: sex_sign stands without the sex; add sex: male or female, or remove it",
				"4:72: holds is a list, not a set of keys and values; write - before each entry, or put the entries in [ ]",
				"5:44: a hold has no value for kind; add kind:",
				"5:70: a hold ends on 2027-01-01, before it begins on 2027-01-02; check both dates",
				`5:90: kind cannot be "parole"; write one of quarantine, health`,
				`5:99: a hold is a set of keys and values, not "health"; write it as {key: value, …} or as indented lines`,
				"6:42: food is one value, not a list; write one value",
			},
		},
		{
			name: "promises", reason: "to whom and how many, and no more than there are",
			yaml: `
clutches:
  - {id: K1, species: hyla-cinerea, laid: 2025-02-01, promised: [{to: Anna}, {count: 0, to: ""}]}
  - {id: K2, species: hyla-cinerea, laid: 2025-02-01, eggs: 5, promised: [{to: Anna, count: 3}, {to: Bernd, count: 3}]}
  - {id: K3, species: hyla-cinerea, laid: 2025-02-01, eggs: 50, promised: [{to: Anna, count: 3}, {to: Bernd, count: 3}]}
  - {id: K4, species: hyla-cinerea, laid: 2025-02-01, eggs: 50, promised: [{to: Anna, count: 3}, {to: Bernd, count: 3}]}
  - {id: K5, species: hyla-cinerea, laid: 2025-02-01, promised: [{to: Anna, count: 99}]}
diary:
  - {on: 2025-04-01, clutch: K3, count: 8}
  - {on: 2025-04-02, clutch: K3, losses: 1, held_back: 2}
  - {on: 2025-04-01, clutch: K4, count: 8}
  - {on: 2025-04-02, clutch: K4, sold: 3, to: Anna}
`,
			want: []string{
				"2:66: a promise has no value for count; add count:",
				"2:86: count is 0; write a number from 1 to 100000",
				"2:93: to of a promise is empty; write it, or remove the entry",
				`3:97: warning: 6 young of clutch "K2" are promised, and at most 5 are left by its 5 eggs (line 3); count again, or promise fewer`,
				`4:98: warning: 6 young of clutch "K3" are promised, and at most 5 are left by the count of 2025-04-01 (line 8); count again, or promise fewer`,
			},
		},
		{
			name: "promised to one and gone to another", reason: "who waits for it would wait in vain; a name is the same in any case, and nobody named is no other",
			yaml: `
animals:
  - {id: A, species: hyla-cinerea, promised: Anna}
  - {id: B, species: hyla-cinerea, promised: Anna}
  - {id: C, species: hyla-cinerea, promised: Anna}
  - {id: D, species: hyla-cinerea}
diary:
  - {on: 2025-04-01, animal: A, status: left, to: Bernd}
  - {on: 2025-04-01, animal: B, status: left, to: anna}
  - {on: 2025-04-01, animal: C, status: left}
  - {on: 2025-04-01, animal: D, status: left, to: Bernd}
`,
			want: []string{
				`7:5: warning: animal "A" left to "Bernd", and is promised to "Anna" (line 2); check to whom it went, or take the promise out`,
			},
		},
		{
			name: "diary of an animal", reason: "each word beside what it belongs to",
			yaml: `
animals: [{id: A, species: hyla-cinerea}]
clutches: [{id: K, species: hyla-cinerea, laid: 2025-02-01}]
diary:
  - {on: 2025-02-03, animal: A, until: 2025-03-01, note: x}
  - {on: 2025-02-03, animal: A, hold: lifted, until: 2025-03-01}
  - {on: 2025-02-04, animal: A, hold: health, until: 2025-02-03}
  - {on: 2025-02-05, animal: A, hold: ill}
  - {on: 2025-02-05, animal: A, ate: false, to: Anna}
  - {on: 2025-02-05, animal: A, status: died, to: Anna}
  - {on: 2025-02-05, animal: A, sold: 1, held_back: 1}
  - {on: 2025-02-05, clutch: K, ate: true, hold: health, to: Anna}
  - {on: 2025-02-05, clutch: K, sold: 0, held_back: 100001}
  - {on: 2025-02-05, place: tub-1, hold: health, to: Anna, note: x}
`,
			want: []string{
				"4:33: until stands without hold; add hold:, or remove it",
				"5:47: a hold that is lifted has no until; remove it",
				"6:54: a hold ends on 2025-02-03, before it begins on 2025-02-04; check both dates",
				`7:39: hold cannot be "ill"; write one of quarantine, health, lifted`,
				`8:38: ate cannot be "false"; write true`,
				"8:45: to stands without what left; add status: left or sold:, or remove it",
				"9:47: to stands without what left; add status: left or sold:, or remove it",
				"10:33: sold does not fit an entry about animal; write it in an entry about clutch",
				"10:42: held_back does not fit an entry about animal; write it in an entry about clutch",
				"11:33: ate does not fit an entry about clutch; write it in an entry about animal",
				"11:44: hold does not fit an entry about clutch; write it in an entry about animal",
				"11:58: to stands without what left; add status: left or sold:, or remove it",
				"12:39: sold is 0; write a number from 1 to 100000",
				"12:53: held_back is 100001; write a number from 1 to 100000",
				"13:36: hold does not fit an entry about place; write it in an entry about animal",
				"13:50: to does not fit an entry about place; write it in an entry about animal or clutch",
				`5:39: warning: the hold of animal "A" is lifted on 2025-02-03, but none runs on that day; check the date, or remove the entry`,
			},
		},
		{
			name: "holds that are lifted", reason: "a slip of the date leaves an animal held",
			yaml: `
animals:
  - {id: A, species: hyla-cinerea}
  - {id: B, species: hyla-cinerea, holds: [{kind: quarantine, until: 2025-01-31}]}
  - {id: C, species: hyla-cinerea, holds: [{kind: quarantine, from: 2025-01-31}]}
diary:
  - {on: 2025-02-01, animal: A, hold: lifted}
  - {on: 2025-02-01, animal: B, hold: lifted}
  - {on: 2025-02-01, animal: C, hold: lifted}
  - {on: 2025-02-02, animal: C, hold: lifted}
`,
			want: []string{
				`6:39: warning: the hold of animal "A" is lifted on 2025-02-01, but none runs on that day; check the date, or remove the entry`,
				`7:39: warning: the hold of animal "B" is lifted on 2025-02-01, but none runs on that day; check the date, or remove the entry`,
				`9:39: warning: the hold of animal "C" is lifted on 2025-02-02, but none runs on that day; check the date, or remove the entry`,
			},
		},
		{
			name: "heads that leave", reason: "no more leave than there were",
			yaml: `
clutches:
  - {id: K1, species: hyla-cinerea, laid: 2025-02-01, eggs: 10}
  - {id: K2, species: hyla-cinerea, laid: 2025-02-01}
  - {id: K3, species: hyla-cinerea, laid: 2025-02-01, eggs: 10}
diary:
  - {on: 2025-04-01, clutch: K1, losses: 4}
  - {on: 2025-04-02, clutch: K1, sold: 4, held_back: 3}
  - {on: 2025-04-01, clutch: K2, count: 5}
  - {on: 2025-04-02, clutch: K2, held_back: 3}
  - {on: 2025-04-03, clutch: K2, sold: 3}
  - {on: 2025-04-03, clutch: K3, sold: 3}
  - {on: 2025-04-04, clutch: K3, count: 8}
`,
			want: []string{
				`7:40: clutch "K1" lost, sold or held back 11 in all, more than its eggs: 10 (line 2); check both numbers`,
				`10:40: warning: 3 of clutch "K2" died or left on 2025-04-03, more than the 2 that are left of those counted on 2025-04-01 (line 8); check the numbers`,
				`12:41: warning: clutch "K3" counts 8 and lost, sold or held back 3 until 2025-04-04, together more than its eggs: 10 (line 4); check the numbers`,
			},
		},
	})
}

// What contradicts itself about a clutch is a warning at the line of the diary,
// so that the rest of the forecast still comes.
func TestReadWarnsOfDiaryThatContradictsItself(t *testing.T) {
	refuse(t, []refusal{
		{
			name: "an event before the one it follows", reason: "front legs do not come before feeding",
			yaml: `
clutches: [{id: K, species: hyla-cinerea, laid: 2025-02-01}]
diary:
  - {on: 2025-02-20, clutch: K, saw: feeding}
  - {on: 2025-02-10, clutch: K, saw: front-legs}
`,
			want: []string{
				`3:38: warning: clutch "K" is seen at feeding on 2025-02-20, after it was seen at front-legs on 2025-02-10 (line 4); check the dates and the stages; some: true says that only some were that far`,
			},
		},
		{
			name: "a Gosner number going backwards", reason: "tadpoles do not grow younger",
			yaml: `
clutches: [{id: K, species: hyla-cinerea, laid: 2025-02-01}]
diary:
  - {on: 2025-02-20, clutch: K, gosner: 31}
  - {on: 2025-02-21, clutch: K, gosner: 30}
`,
			want: []string{
				`4:41: warning: clutch "K" is seen at Gosner 30 on 2025-02-21, after it was seen at Gosner 31 on 2025-02-20 (line 3); check the dates and the stages; some: true says that only some were that far`,
			},
		},
		{
			name: "counts that grow", reason: "one of the two was counted wrong",
			yaml: `
clutches: [{id: K, species: hyla-cinerea, laid: 2025-02-01}]
diary:
  - {on: 2025-02-20, clutch: K, count: 10}
  - {on: 2025-02-21, clutch: K, count: 11}
`,
			want: []string{
				`4:40: warning: clutch "K" counts 11 on 2025-02-21, more than the 10 on 2025-02-20 (line 3); check both numbers`,
			},
		},
		{
			name: "counts above what is left", reason: "those that were found dead do not come back; of a day both ways round may be meant",
			yaml: `
clutches:
  - {id: K1, species: hyla-cinerea, laid: 2025-02-01}
  - {id: K2, species: hyla-cinerea, laid: 2025-02-01}
diary:
  - {on: 2025-02-20, clutch: K1, count: 10}
  - {on: 2025-02-21, clutch: K1, losses: 3}
  - {on: 2025-02-22, clutch: K1, losses: 1}
  - {on: 2025-02-22, clutch: K1, count: 8}
  - {on: 2025-02-20, clutch: K2, count: 10}
  - {on: 2025-02-22, clutch: K2, losses: 3}
  - {on: 2025-02-22, clutch: K2, count: 9}
`,
			want: []string{
				`8:41: warning: clutch "K1" counts 8 on 2025-02-22, more than the 7 that are left of those counted on 2025-02-20 (line 5); check the numbers`,
			},
		},
		{
			name: "a look after all were dead", reason: "by a count, by the losses of all eggs, or because the last left; of the day itself nothing is said",
			yaml: `
clutches:
  - {id: K1, species: hyla-cinerea, laid: 2025-02-01}
  - {id: K2, species: hyla-cinerea, laid: 2025-02-01, eggs: 4}
  - {id: K3, species: hyla-cinerea, laid: 2025-02-01}
diary:
  - {on: 2025-02-20, clutch: K1, count: 0}
  - {on: 2025-02-20, clutch: K1, saw: hatched}
  - {on: 2025-02-21, clutch: K1, saw: feeding}
  - {on: 2025-02-22, clutch: K1, count: 3}
  - {on: 2025-02-23, clutch: K1, gosner: 27}
  - {on: 2025-02-20, clutch: K2, losses: 4}
  - {on: 2025-02-21, clutch: K2, gosner: 27}
  - {on: 2025-02-20, clutch: K3, count: 5, saw: hatched}
  - {on: 2025-02-21, clutch: K3, sold: 2, held_back: 3}
  - {on: 2025-02-22, clutch: K3, saw: feeding, some: true}
`,
			want: []string{
				`8:39: warning: clutch "K1" is seen at feeding on 2025-02-21, after none of it was left on 2025-02-20 (line 6); check the count, or the clutch that is meant`,
				`9:41: warning: clutch "K1" counts 3 on 2025-02-22, more than the 0 on 2025-02-20 (line 6); check both numbers`,
				`12:42: warning: clutch "K2" is seen at Gosner 27 on 2025-02-21, after none of it was left on 2025-02-20 (line 11); check the count, or the clutch that is meant`,
				`15:39: warning: clutch "K3" is seen at feeding on 2025-02-22, after none of it was left on 2025-02-21 (line 14); check the count, or the clutch that is meant`,
			},
		},
		{
			name: "temperatures in Fahrenheit without a unit", reason: "78 is no temperature of a tub in Celsius, and a guess would cook the forecast",
			yaml: `
clutches: [{id: K, species: hyla-cinerea, laid: 2025-02-01}]
diary:
  - {on: 2025-02-20, clutch: K, water_c: 78}
  - {on: 2025-02-20, clutch: K, water: 78}
  - {on: 2025-02-20, place: tub-1, air: 780}
  - {on: 2025-02-20, place: tub-1, note: cool, air_f: 55}
  - {on: 2025-02-20, place: tub-1, water_c: "76 F"}
`,
			want: []string{
				`6:48: unknown key "air_f" in a diary entry; write air: 55 °F`,
				"3:42: warning: water_c is 78: the temperature is left out; write a number from -10 to 60, or water: 78 °F",
				"4:40: warning: water 78 has no unit: the temperature is left out; if it is in °F, write water: 78 °F",
				"5:41: warning: air 780 has no unit: the temperature is left out; write air_c: and a number from -10 to 60",
				`7:45: warning: water_c is "76 F", not a number: the temperature is left out; write water: 76 °F`,
			},
		},
		{
			name: "a gap of more than a year", reason: "the year was written wrong",
			yaml: `
clutches: [{id: K, species: hyla-cinerea, laid: 2025-02-01}, {id: L, species: hyla-cinerea, laid: 2025-02-01}]
diary:
  - {on: 2025-02-20, clutch: K, saw: hatched}
  - {on: 2026-03-27, clutch: K, saw: feeding}
  - {on: 2026-02-02, clutch: L, saw: hatched}
  - {on: 2027-02-04, clutch: L, saw: feeding}
`,
			want: []string{
				`4:10: warning: 2026-03-27 is about clutch "K", 400 days after the entry before it on 2025-02-20; check the year`,
				`6:10: warning: 2027-02-04 is about clutch "L", 367 days after the entry before it on 2026-02-02; check the year`,
			},
		},
		{
			name: "before it was laid", reason: "one of the dates is wrong",
			yaml: `
clutches: [{id: K, species: hyla-cinerea, laid: 2025-02-01}]
diary:
  - {on: 2025-01-20, clutch: K, saw: hatched}
`,
			want: []string{
				`3:10: warning: 2025-01-20 is about clutch "K", which was laid on 2025-02-01: the entry is left out; check both dates`,
			},
		},
		{
			name: "no date of laying", reason: "what was seen stands in for it; a count or a note does not say how far they were",
			yaml: `
animals:
  - {id: A, clutch: K3, hatched: 2025-02-10}
  - {id: B, clutch: K4}
clutches:
  - {id: K1, species: hyla-cinerea}
  - {id: K2, species: hyla-cinerea}
  - {id: K3, species: hyla-cinerea}
  - {id: K4, species: hyla-cinerea}
diary:
  - {on: 2025-02-20, clutch: K1, gosner: 26}
  - {on: 2025-02-20, clutch: K2, count: 11}
`,
			want: []string{
				`6:10: clutch "K2" has no date of laying, and no stage of it was seen; add laid:, or a diary entry that says what was seen: saw: or gosner:`,
				`8:10: clutch "K4" has no date of laying, and no stage of it was seen; add laid:, or a diary entry that says what was seen: saw: or gosner:`,
			},
		},
		{
			name: "parents of a clutch without a date of laying", reason: "they are older than what was first seen; that one died between laying and the first look may be",
			yaml: `
animals:
  - {id: S, species: hyla-cinerea, sex: male, hatched: 2025-03-01}
  - {id: D, species: hyla-cinerea, sex: female, died: 2025-02-19}
clutches: [{id: K, sire: S, dam: D}]
diary:
  - {on: 2025-02-20, clutch: K, gosner: 26}
`,
			want: []string{
				`4:26: sire "S" hatched on 2025-03-01 (line 2), too late for clutch "K", which was first seen on 2025-02-20; check the parent and the dates`,
			},
		},
	})
}
