package collection_test

import "testing"

func TestReadRefusesKeysAndIDs(t *testing.T) {
	refuse(t, []refusal{
		{
			name: "unknown key at the top", reason: "a slip is never passed over",
			yaml: `
animal:
  - {id: A}
`,
			want: []string{
				`1:1: unknown key "animal" in the file; did you mean "animals"?`,
			},
		},
		{
			name: "unknown keys everywhere", reason: "each section knows its keys",
			yaml: `
shipping: {weekday: [monday]}
targets:
  - {name: show, on: 2027-09-18, species: hyla-cinerea, froglets: 6, sure: 80}
equipment: {chambers: 1, tadpole_tubs: {count: 1, liters: 3}, froglet_bins: {number: 3}}
rules: {max: 0.1}
animals:
  - {id: A, species: hyla-cinerea, sexx: male}
clutches:
  - {id: C, laid: 2027-01-01, species: hyla-cinerea, egs: 12}
pairings:
  - {id: P, dam: A, sire: A, start: 2027-01-01, notes: x}
diary:
  - {on: 2027-01-02, clutch: C, seen: hatched, count: 3}
`,
			want: []string{
				`1:12: unknown key "weekday" in shipping; did you mean "weekdays"?`,
				`3:70: unknown key "sure" in a target; known here: name, on, species, froglets, certainty_pct, late_cost, early_cost`,
				`4:13: unknown key "chambers" in equipment; known here: rain_chambers, cooling_places, tadpole_tubs, froglet_bins, minutes_a_day, retry_after_days`,
				`4:51: unknown key "liters" in tadpole_tubs; did you mean "litres"?`,
				`4:78: unknown key "number" in froglet_bins; known here: count, froglets`,
				`5:9: unknown key "max" in rules; known here: warn_inbreeding, max_inbreeding, pairings_a_season, clutches_a_season, relax, space_pct`,
				`7:36: unknown key "sexx" in an animal; did you mean "sex"?`,
				`9:54: unknown key "egs" in a clutch; did you mean "eggs"?`,
				`11:27: "A" is sire and dam of pairing "P"; record its sex and correct the other`,
				`11:49: unknown key "notes" in a pairing; did you mean "note"?`,
				`13:33: unknown key "seen" in a diary entry; known here: on, clutch, animal, pairing, place, saw, gosner, some, count, losses, sold, held_back, began, weight_g, weight, length_mm, length, ate, hold, until, status, to, moved_to, water_c, water, air_c, air, note`,
			},
		},
		{
			name: "ids that look the same", reason: "two rows of a table could not be told apart",
			yaml: "\nanimals:\n  - {id: AC 1, species: hyla-cinerea}\n  - {id: ac\u00a01, species: hyla-cinerea}\n  - {id: AC\u200d 1, species: hyla-cinerea}\n  - {id: AC 2, species: hyla-cinerea}\n",
			want: []string{
				"3:10: warning: id \"ac\\u00a01\" looks like \"AC 1\", and is another one; give one of them another id, unless they are meant to differ so little",
				"4:10: warning: id \"AC\\u200d 1\" looks like \"AC 1\", and is another one; give one of them another id, unless they are meant to differ so little",
			},
		},
		{
			name: "the nearest id is no answer", reason: "an animal is not its own parent, and a sire not a female",
			yaml: `
animals:
  - {id: AC-01, species: hyla-cinerea, sex: male, sire: AC-O1, dam: AC-O2}
  - {id: AC-02, species: hyla-cinerea, sex: female, sire: AC-O2}
  - {id: AC-002, species: hyla-cinerea, sex: male}
`,
			want: []string{
				`2:57: sire "AC-O1" is not in the file; add an animal of that id, or check the spelling`,
				`2:69: dam "AC-O2" is not in the file; did you mean "AC-02"?`,
				`3:59: sire "AC-O2" is not in the file; did you mean "AC-01"?`,
			},
		},
		{
			name: "duplicate key", reason: "the last would win in silence",
			yaml: `
animals:
  - {id: A, species: hyla-cinerea, sex: male, sex: female}
`,
			want: []string{
				`2:47: key "sex" stands twice in an animal, first in line 2; keep one of them`,
			},
		},
		{
			name: "sections of the wrong kind", reason: "a list is not guessed from a single entry",
			yaml: `
animals: {id: A}
clutches: C
diary:
  - an entry
  - [on, 2027-01-01]
shipping: [monday]
`,
			want: []string{
				"1:10: animals is a list, not a set of keys and values; write - before each entry, or put the entries in [ ]",
				`2:11: clutches is a list, not "C"; write - before each entry, or put the entries in [ ]`,
				`4:5: a diary entry is a set of keys and values, not "an entry"; write it as {key: value, …} or as indented lines`,
				"5:5: a diary entry is a set of keys and values, not a list; write it as {key: value, …} or as indented lines",
				"6:11: shipping is a set of keys and values, not a list; write it as {key: value, …} or as indented lines",
			},
		},
		{
			name: "ids shared by kinds", reason: "a diary line must be about one thing",
			yaml: `
animals:
  - {id: A, species: hyla-cinerea}
  - {id: A, species: hyla-cinerea}
clutches:
  - {id: A, laid: 2027-01-01, species: hyla-cinerea}
pairings:
  - {id: A, dam: A, sire: A, start: 2027-01-01}
`,
			want: []string{
				`3:10: id "A" is taken by an animal in line 2; give one of them another id`,
				`5:10: id "A" is taken by an animal in line 2; give one of them another id`,
				`7:10: id "A" is taken by an animal in line 2; give one of them another id`,
				`7:27: "A" is sire and dam of pairing "A"; record its sex and correct the other`,
			},
		},
		{
			name: "ids that are none", reason: "an id goes into tables, lists and file names",
			yaml: `
animals:
  - {species: hyla-cinerea}
  - {id: , species: hyla-cinerea}
  - {id: "", species: hyla-cinerea}
  - {id: " A", species: hyla-cinerea}
  - {id: "A,B", species: hyla-cinerea}
  - {id: "A\x07B", species: hyla-cinerea}
  - {id: "A\nB", species: hyla-cinerea}
  - {id: aaaaaaaaaabbbbbbbbbbccccccccccddddddddddeeeeeeeeeeffffffffffggggg, species: hyla-cinerea}
  - {id: [A], species: hyla-cinerea}
  - {id: aaaaaaaaaabbbbbbbbbbccccccccccddddddddddeeeeeeeeeeffffffffffgggg, species: hyla-cinerea}
`,
			want: []string{
				"2:5: an animal has no value for id; add id:",
				"3:5: an animal has no value for id; add id:",
				"4:10: the id of an animal is empty; write a short text that is not used elsewhere",
				`5:10: id " A" has blanks at its ends; remove them`,
				`6:10: id "A,B" has a comma; write another sign`,
				"7:10: id has a control character; remove it",
				"8:10: id has more than one line; write it in one line",
				"9:10: id has 65 characters, more than 64; shorten it",
				"10:10: id is one value, not a list; write one value",
			},
		},
		{
			name: "names of species", reason: "a keeper knows them by their names, scientific or common, built in or their own",
			yaml: `
species: [{id: argus, name: Hyperolius argus, common_name: argus reed frog, like: hyla-cinerea}]
animals:
  - {id: A, species: Red-eyed tree frog}
  - {id: B, species: Hyperolius argus}
  - {id: C, species: Argus reed frog}
  - {id: D, species: Rana temporaria}
`,
			want: []string{
				`3:22: species "Red-eyed tree frog" is not known; that is a name; its id is "agalychnis-callidryas"`,
				`4:22: species "Hyperolius argus" is not known; that is a name; its id is "argus"`,
				`5:22: species "Argus reed frog" is not known; that is a name; its id is "argus"`,
				"6:22: species \"Rana temporaria\" is not known; `spawnwright species list` shows those that are built in; others stand under species:",
			},
		},
		{
			name: "unknown references", reason: "each gets the nearest id of the right kind",
			yaml: `
targets:
  - {name: autumn show, on: 2027-09-18, species: hyla-cinera, froglets: 6}
animals:
  - {id: AC-01, name: Bram, species: hyla-cinerea, sire: Bram, dam: AC-O2}
  - {id: AC-02, species: hyla-cinerea, sex: female, clutch: C-26-2}
  - {id: AC-03, clutch: C-26-02, note: the species comes from the clutch}
clutches:
  - {id: C-26-02, laid: 2026-05-01, species: hyla-cinerea, sire: [AC-01, AC-10x], pairing: P}
pairings:
  - {id: P1, dam: AC-02, sire: C-26-02, target: autum show}
  - {id: P2, dam: AC-02, sire: AC-01, target: a fair in spring}
diary:
  - {on: 2026-05-03, clutch: AC-01, note: an animal is no clutch}
  - {on: 2026-05-03, animal: nobody, note: x}
  - {on: 2026-05-03, pairing: P-1, note: x}
`,
			want: []string{
				`2:50: species "hyla-cinera" is not known; did you mean "hyla-cinerea"?`,
				`4:58: sire "Bram" is not in the file; that is a name; its id is "AC-01"`,
				`4:69: dam "AC-O2" is not in the file; did you mean "AC-02"?`,
				`5:61: clutch "C-26-2" is not in the file; did you mean "C-26-02"?`,
				`8:74: sire "AC-10x" is not in the file; did you mean "AC-01"?`,
				`8:92: pairing "P" is not in the file; add a pairing of that id, or check the spelling`,
				`10:32: sire "C-26-02" is a clutch (line 8); write the id of an animal`,
				`10:49: target "autum show" is not in the file; did you mean "autumn show"?`,
				`11:47: target "a fair in spring" is not in the file; add it under targets:`,
				`13:30: clutch "AC-01" is an animal (line 4); write the id of a clutch`,
				`14:30: animal "nobody" is not in the file; add an animal of that id, or check the spelling`,
				`15:31: pairing "P-1" is not in the file; did you mean "P1"?`,
			},
		},
		{
			name: "lists of parents", reason: "a list says one of these, so it has several different ones",
			yaml: `
animals:
  - {id: A, species: hyla-cinerea, sire: []}
  - {id: B, species: hyla-cinerea, sire: [A, A]}
  - {id: C, species: hyla-cinerea, sire: ["", ~, {id: A}]}
clutches:
  - {id: K, laid: 2027-01-01, dam: A, sire_mix: several, dam_mix: one}
  - {id: L, laid: 2027-01-01, dam: A, sire: [A, B], sire_mix: all}
`,
			want: []string{
				"2:42: the list sire is empty; remove sire: when it is not known",
				`3:46: "A" stands twice in the list sire; keep one of them`,
				"4:43: sire is empty; write an id, or remove sire:",
				"4:47: sire has nothing in it; write a value or remove it",
				"4:50: sire is one value, not a set of keys and values; write one value",
				"6:49: sire_mix is only for a list of several; remove it, or list all that sire may be",
				"6:67: dam_mix is only for a list of several; remove it, or list all that dam may be",
				`7:46: "A" is sire and dam of clutch "L"; record its sex and correct the other`,
				`7:63: sire_mix cannot be "all"; write one of one, several`,
			},
		},
		{
			name: "texts", reason: "a name goes into one line of a table; a note may be longer",
			yaml: `
keeper: "two\nlines"
animals:
  - {id: A, species: hyla-cinerea, name: " Bram", line: "", note: "two\nlines", place: "tank\u202e1"}
targets:
  - {name: "", on: 2027-09-18, species: "", froglets: 3}
`,
			want: []string{
				"1:9: keeper has more than one line; write it in one line",
				`3:42: name " Bram" has blanks at its ends; remove them`,
				"3:88: place has a control character; remove it",
				"5:12: name of a target is empty; write it, or remove the entry",
				"5:41: species \"\" is not known; `spawnwright species list` shows those that are built in; others stand under species:",
			},
		},
	})
}
