package collection_test

import "testing"

func TestReadRefusesDiary(t *testing.T) {
	refuse(t, []refusal{
		{
			name: "what an entry is about", reason: "exactly one thing, and something is said about it",
			yaml: `
animals: [{id: A, species: hyla-cinerea}]
clutches: [{id: K, species: hyla-cinerea, laid: 2025-02-01}]
diary:
  - {on: 2025-02-03, count: 3}
  - {on: 2025-02-03, clutch: K, animal: A, note: both}
  - {on: 2025-02-03, clutch: K}
  - {on: 2025-02-03, clutch: K, note: }
`,
			want: []string{
				"4:5: a diary entry needs clutch, animal, pairing or place; add one of them",
				"5:41: a diary entry has clutch and animal; keep one of them",
				"6:5: the entry says nothing about the clutch; add what was seen or done, or a note:",
				"7:5: the entry says nothing about the clutch; add what was seen or done, or a note:",
			},
		},
		{
			name: "facts that do not fit", reason: "each fact is about one kind of thing",
			yaml: `
animals:
  - {id: A, species: hyla-cinerea, sex: male}
  - {id: B, species: hyla-cinerea, sex: female}
clutches: [{id: K, species: hyla-cinerea, laid: 2025-02-01}]
pairings: [{id: P, sire: A, dam: B, start: 2025-02-01}]
diary:
  - {on: 2025-02-03, animal: A, saw: hatched, count: 3, began: rain}
  - {on: 2025-02-03, clutch: K, began: rain, status: died}
  - {on: 2025-02-03, pairing: P, water_c: 25, length: 3 cm, moved_to: tank}
  - {on: 2025-02-03, place: tub, losses: 2, gosner: 20, moved_to: shelf}
`,
			want: []string{
				"7:33: saw does not fit an entry about animal; write it in an entry about clutch",
				"7:47: count does not fit an entry about animal; write it in an entry about clutch",
				"7:57: began does not fit an entry about animal; write it in an entry about pairing",
				"8:33: began does not fit an entry about clutch; write it in an entry about pairing",
				"8:46: status does not fit an entry about clutch; write it in an entry about animal",
				"9:34: water_c does not fit an entry about pairing; write it in an entry about place, clutch or animal",
				"9:47: length does not fit an entry about pairing; write it in an entry about animal or clutch",
				"9:61: moved_to does not fit an entry about pairing; write it in an entry about animal or clutch",
				"10:34: losses does not fit an entry about place; write it in an entry about clutch",
				"10:45: gosner does not fit an entry about place; write it in an entry about clutch",
				"10:57: moved_to does not fit an entry about place; write it in an entry about animal or clutch",
			},
		},
		{
			name: "values of facts", reason: "words and numbers of the contract",
			yaml: `
animals: [{id: A, species: hyla-cinerea}]
clutches: [{id: K, species: hyla-cinerea, laid: 2025-02-01}]
pairings: [{id: P, sire: A, dam: A, start: 2025-02-01, certainty_pct: 80}]
diary:
  - {on: 2025-02-03, clutch: K, saw: front legs}
  - {on: 2025-02-03, clutch: K, gosner: 47}
  - {on: 2025-02-03, clutch: K, saw: hatched, gosner: 20}
  - {on: 2025-02-03, clutch: K, some: yes, count: -1}
  - {on: 2025-02-03, clutch: K, losses: 0, count: 100001}
  - {on: 2025-02-03, clutch: K, water: 25, air_c: 99}
  - {on: 2025-02-03, animal: A, weight: 12.4, length_mm: "12,4"}
  - {on: 2025-02-03, animal: A, weight: 12.4 g, weight_g: 12.4, status: sold}
  - {on: 2025-02-03, pairing: P, began: raining}
`,
			want: []string{
				`3:26: "A" is sire and dam of pairing "P"; record its sex and correct the other`,
				"3:71: certainty_pct is only for ready_by; remove it; a target has its own",
				`5:38: saw cannot be "front legs"; did you mean "front-legs"?`,
				"6:41: gosner is 47; write a number from 1 to 46",
				"7:47: saw and gosner say the same thing; keep one of them",
				"8:33: some stands without the stage that was seen; add saw:, or remove it",
				`8:39: some cannot be "yes"; write one of true, false`,
				"8:51: count is -1; write a number from 0 to 100000",
				"9:41: losses is 0; write a number from 1 to 100000",
				"9:51: count is 100001; write a number from 0 to 100000",
				"11:41: weight 12.4 has no unit; write weight_g: 12.4, or weight: 12.4 g",
				`11:58: length_mm is "12,4", not a number; write a point: 12.4`,
				"12:41: weight_g and weight say the same thing; keep one of them",
				`12:73: status cannot be "sold"; write one of died, left`,
				`13:41: began cannot be "raining"; write one of conditioning, cooling, warm-up, rain, rest`,
				"10:40: warning: water 25 has no unit: the temperature is left out; write water_c: 25, or water: 25 °C",
				"10:51: warning: air_c is 99: the temperature is left out; write a number from -10 to 60, or air: 99 °F",
			},
		},
		{
			name: "stages that go backward", reason: "words by their order, Gosner stages by number, one with the other where it is certain",
			yaml: `
clutches:
  - {id: K1, species: hyla-cinerea, laid: 2025-02-01}
  - {id: K2, species: hyla-cinerea, laid: 2025-02-01}
  - {id: K3, species: hyla-cinerea, laid: 2025-02-01}
  - {id: K4, species: hyla-cinerea, laid: 2025-02-01}
  - {id: K5, species: hyla-cinerea, laid: 2025-02-01}
diary:
  - {on: 2025-03-09, clutch: K1, saw: feeding}
  - {on: 2025-03-03, clutch: K1, saw: front-legs}
  - {on: 2025-03-03, clutch: K1, saw: toes, note: the same day}
  - {on: 2025-03-02, clutch: K1, saw: feeding, note: before}
  - {on: 2025-03-03, clutch: K2, saw: front-legs, some: true, note: only the first}
  - {on: 2025-03-05, clutch: K2, saw: toes}
  - {on: 2025-03-07, clutch: K2, saw: feeding, some: true}
  - {on: 2025-03-03, clutch: K3, gosner: 37}
  - {on: 2025-03-05, clutch: K3, gosner: 36}
  - {on: 2025-03-03, clutch: K4, gosner: 43}
  - {on: 2025-03-05, clutch: K4, saw: front-legs, note: may be}
  - {on: 2025-03-06, clutch: K4, saw: toes, note: cannot be}
  - {on: 2025-03-03, clutch: K5, saw: out-of-water}
  - {on: 2025-03-05, clutch: K5, gosner: 44, note: may be}
  - {on: 2025-03-06, clutch: K5, gosner: 41, note: cannot be}
`,
			want: []string{
				`8:39: warning: clutch "K1" is seen at feeding on 2025-03-09, after it was seen at front-legs on 2025-03-03 (line 9); check the dates and the stages; some: true says that only some were that far`,
				`14:39: warning: clutch "K2" is seen at feeding on 2025-03-07, after it was seen at toes on 2025-03-05 (line 13); check the dates and the stages; some: true says that only some were that far`,
				`16:42: warning: clutch "K3" is seen at Gosner 36 on 2025-03-05, after it was seen at Gosner 37 on 2025-03-03 (line 15); check the dates and the stages; some: true says that only some were that far`,
				`19:39: warning: clutch "K4" is seen at toes on 2025-03-06, after it was seen at front-legs on 2025-03-05 (line 18); check the dates and the stages; some: true says that only some were that far`,
				`22:42: warning: clutch "K5" is seen at Gosner 41 on 2025-03-06, after it was seen at out-of-water on 2025-03-03 (line 20); check the dates and the stages; some: true says that only some were that far`,
			},
		},
		{
			name: "counts", reason: "a clutch has no more young than eggs, and does not grow",
			yaml: `
animals:
  - {id: A, clutch: K3}
  - {id: B, clutch: K3}
clutches:
  - {id: K1, species: hyla-cinerea, laid: 2025-02-01, eggs: 40}
  - {id: K2, species: hyla-cinerea, laid: 2025-02-01}
  - {id: K3, species: hyla-cinerea, laid: 2025-02-01, eggs: 1}
  - {id: K4, species: hyla-cinerea, laid: 2025-02-01, eggs: 0}
  - {id: K5, species: hyla-cinerea, laid: 2025-02-01, eggs: 40}
diary:
  - {on: 2025-02-03, clutch: K1, count: 41}
  - {on: 2025-02-04, clutch: K1, count: 30, losses: 11}
  - {on: 2025-02-05, clutch: K1, losses: 30}
  - {on: 2025-02-03, clutch: K2, count: 10}
  - {on: 2025-02-04, clutch: K2, saw: hatched, some: true, count: 3}
  - {on: 2025-02-05, clutch: K2, count: 9}
  - {on: 2025-02-06, clutch: K2, count: 10}
  - {on: 2025-02-06, clutch: K5, saw: hatched, some: true, count: 50}
`,
			want: []string{
				`7:61: 2 animals come from clutch "K3", more than its eggs: 1; correct the eggs, or the clutch of the animals`,
				"8:61: eggs is 0; write a number from 1 to 100000",
				`11:41: clutch "K1" counts 41, more than its eggs: 40 (line 5); check both numbers`,
				`13:42: clutch "K1" lost 41 in all, more than its eggs: 40 (line 5); check both numbers`,
				`18:67: clutch "K5" counts 50, more than its eggs: 40 (line 9); check both numbers`,
				`12:41: warning: clutch "K1" counts 30 and lost 11 until 2025-02-04, together more than its eggs: 40 (line 5); check the numbers`,
				`17:41: warning: clutch "K2" counts 10 on 2025-02-06, more than the 9 on 2025-02-05 (line 16); check both numbers`,
			},
		},
	})
}
