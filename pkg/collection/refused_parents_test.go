package collection_test

import "testing"

func TestReadRefusesParents(t *testing.T) {
	refuse(t, []refusal{
		{
			name: "own parent", reason: "the smallest loop",
			yaml: `
animals:
  - {id: A, species: hyla-cinerea, sire: A}
`,
			want: []string{
				`2:10: animal "A" is its own ancestor: it is named as its own parent; name another animal, or leave the parent out`,
			},
		},
		{
			name: "own ancestor", reason: "the members stand in order, from the first one of the file",
			yaml: `
animals:
  - {id: X, species: hyla-cinerea, sire: A}
  - {id: C, species: hyla-cinerea, sire: A}
  - {id: A, species: hyla-cinerea, sire: B}
  - {id: B, species: hyla-cinerea, sire: [X2, C]}
  - {id: X2, species: hyla-cinerea}
`,
			want: []string{
				`3:10: animal "C" is its own ancestor: it comes from animal "A" (line 4), that from animal "B" (line 5), that from animal "C"; one of these parents is wrong`,
			},
		},
		{
			name: "own ancestor through clutches", reason: "a clutch hands the parents on",
			yaml: `
animals:
  - {id: A, sex: female, clutch: K1}
  - {id: B, sex: female, clutch: K2}
clutches:
  - {id: K1, laid: 2025-01-01, dam: B}
  - {id: K2, laid: 2026-01-01, dam: A}
`,
			want: []string{
				`2:10: animal "A" is its own ancestor: it comes from clutch "K1" (line 5), that from animal "B" (line 3), that from clutch "K2" (line 6), that from animal "A"; one of these parents is wrong`,
			},
		},
		{
			name: "own ancestor through a pairing", reason: "a clutch without parents has those of its pairing",
			yaml: `
animals:
  - {id: A, species: hyla-cinerea, sex: female, clutch: K}
  - {id: B, species: hyla-cinerea, sex: male}
clutches:
  - {id: K, laid: 2025-01-01, pairing: P}
pairings:
  - {id: P, dam: A, sire: B, start: 2024-01-01}
`,
			want: []string{
				`2:10: animal "A" is its own ancestor: it comes from clutch "K" (line 5), that from animal "A"; one of these parents is wrong`,
			},
		},
		{
			name: "two knots", reason: "each is reported once, with a shortest loop of it",
			yaml: `
animals:
  - {id: A, species: hyla-cinerea, sire: [A, B], dam: C}
  - {id: B, species: hyla-cinerea, sire: A, dam: C}
  - {id: C, species: hyla-cinerea, sire: A}
  - {id: D, species: hyla-cinerea, sire: E}
  - {id: E, species: hyla-cinerea, dam: D, sire: A}
`,
			want: []string{
				`2:10: animal "A" is its own ancestor: it is named as its own parent; name another animal, or leave the parent out`,
				`5:10: animal "D" is its own ancestor: it comes from animal "E" (line 6), that from animal "D"; one of these parents is wrong`,
			},
		},
		{
			name: "a long loop", reason: "the list of members is cut",
			yaml: `
animals:
  - {id: A, species: hyla-cinerea, sire: B}
  - {id: B, species: hyla-cinerea, sire: C}
  - {id: C, species: hyla-cinerea, sire: D}
  - {id: D, species: hyla-cinerea, sire: E}
  - {id: E, species: hyla-cinerea, sire: F}
  - {id: F, species: hyla-cinerea, sire: G}
  - {id: G, species: hyla-cinerea, sire: H}
  - {id: H, species: hyla-cinerea, sire: I}
  - {id: I, species: hyla-cinerea, sire: J}
  - {id: J, species: hyla-cinerea, sire: K}
  - {id: K, species: hyla-cinerea, sire: L}
  - {id: L, species: hyla-cinerea, sire: M}
  - {id: M, species: hyla-cinerea, sire: N}
  - {id: N, species: hyla-cinerea, sire: A}
`,
			want: []string{
				`2:10: animal "A" is its own ancestor: it comes from animal "B" (line 3), that from animal "C" (line 4), that from animal "D" (line 5), that from animal "E" (line 6), that from animal "F" (line 7), that from animal "G" (line 8), that from animal "H" (line 9), that from animal "I" (line 10), that from animal "J" (line 11), that from animal "K" (line 12), that from animal "L" (line 13), that from animal "M" (line 14), that from … (14 members in all), that from animal "A"; one of these parents is wrong`,
			},
		},
		{
			name: "wrong sex", reason: "of animals, clutches and pairings, with the nearest id of the right sex",
			yaml: `
animals:
  - {id: Bram, species: hyla-cinerea, sex: male}
  - {id: Brama, species: hyla-cinerea, sex: female}
  - {id: Q, species: hyla-cinerea, sire: Brama, dam: Bram}
clutches:
  - {id: K, laid: 2025-01-01, dam: Brama, sire: [Bram, Brama]}
pairings:
  - {id: P, dam: Brama, sire: Brama, start: 2024-01-01}
`,
			want: []string{
				`4:42: sire "Brama" of animal "Q" is recorded as female (line 3); did you mean "Bram"?`,
				`4:54: dam "Bram" of animal "Q" is recorded as male (line 2); did you mean "Brama"?`,
				`6:56: sire "Brama" of clutch "K" is recorded as female (line 3); did you mean "Bram"?`,
				`8:31: sire "Brama" of pairing "P" is recorded as female (line 3); did you mean "Bram"?`,
			},
		},
		{
			name: "unknown sex in both roles", reason: "it cannot be both; where it is one of several, nothing is said",
			yaml: `
animals:
  - {id: U, species: hyla-cinerea}
  - {id: V, species: hyla-cinerea}
  - {id: W, species: hyla-cinerea}
  - {id: Q, species: hyla-cinerea, sire: U, dam: V}
  - {id: R, species: hyla-cinerea, sire: [V, W]}
clutches:
  - {id: K, laid: 2025-01-01, dam: U}
  - {id: L, laid: 2025-01-01, dam: [U, V], sire: [W, V]}
`,
			want: []string{
				`8:36: "U" is the dam of clutch "K", but the sire of animal "Q" (line 5); record its sex and correct the other`,
				`9:54: "V" is sire and dam of clutch "L"; record its sex and correct the other`,
			},
		},
		{
			name: "wrong sex in a pairing that has a clutch", reason: "the pairing is wrong, and the clutch only follows it",
			yaml: `
animals:
  - {id: A, species: hyla-cinerea, sex: male}
  - {id: B, species: hyla-cinerea, sex: male}
clutches:
  - {id: K, laid: 2025-01-01, pairing: P}
pairings:
  - {id: P, dam: A, sire: B, start: 2024-01-01}
`,
			want: []string{
				`7:18: dam "A" of pairing "P" is recorded as male (line 2); check the id, or the sex`,
			},
		},
		{
			name: "a dam of the pairing that is not the one of the clutch", reason: "a clutch that names its dam has no other",
			yaml: `
animals:
  - {id: D, species: hyla-cinerea, sex: female}
  - {id: E, species: hyla-cinerea, sex: female, died: 2024-12-31}
  - {id: S, species: hyla-cinerea, sex: male, died: 2024-12-31}
clutches:
  - {id: K, laid: 2025-01-01, dam: D, pairing: P}
pairings:
  - {id: P, dam: [D, E], sire: S, start: 2024-01-01}
`,
			want: []string{
				`6:10: sire "S" died on 2024-12-31 (line 4), before clutch "K" was laid on 2025-01-01; check the parent and both dates`,
			},
		},
		{
			name: "mixed species", reason: "young are of the species of both parents; whether a pairing makes sense is not for the file",
			yaml: `
animals:
  - {id: H1, species: hyla-cinerea, sex: male}
  - {id: H2, species: hyla-cinerea, sex: female}
  - {id: T1, species: theloderma-corticale, sex: male}
  - {id: Y1, species: hyla-cinerea, sire: T1, dam: H2}
  - {id: Y2, species: theloderma-corticale, clutch: K1}
clutches:
  - {id: K1, laid: 2025-01-01, dam: H2, sire: H1}
  - {id: K2, laid: 2025-01-01, dam: H2, sire: [H1, T1]}
  - {id: K3, laid: 2025-01-01, dam: H2, species: theloderma-corticale}
  - {id: K4, laid: 2025-01-01, pairing: P1}
  - {id: K5, laid: 2025-01-01, pairing: P2, species: theloderma-corticale}
pairings:
  - {id: P1, dam: H2, sire: T1, start: 2024-01-01}
  - {id: P2, dam: H2, sire: H1, target: show}
targets:
  - {name: show, on: 2027-09-18, species: theloderma-corticale, froglets: 6}
`,
			want: []string{
				`5:43: sire "T1" is theloderma-corticale (line 4), but animal "Y1" is recorded as hyla-cinerea; correct the species or the parent`,
				`6:23: animal "Y2" is recorded as theloderma-corticale, but its clutch "K1" is hyla-cinerea (line 8); correct the species or the clutch`,
				`9:52: sire "T1" of clutch "K2" is theloderma-corticale (line 4), but its dam "H2" is hyla-cinerea; young of two species are not bred; correct the species or the parent`,
				`10:37: dam "H2" is hyla-cinerea (line 3), but clutch "K3" is recorded as theloderma-corticale; correct the species or the parent`,
				`11:41: sire "T1" of clutch "K4" is theloderma-corticale (line 4), but its dam "H2" is hyla-cinerea; young of two species are not bred; correct the species or the parent`,
				`12:54: dam "H2" is hyla-cinerea (line 3), but clutch "K5" is recorded as theloderma-corticale; correct the species or the parent`,
				`12:54: sire "H1" is hyla-cinerea (line 2), but clutch "K5" is recorded as theloderma-corticale; correct the species or the parent`,
				`15:41: target "show" wants theloderma-corticale, but pairing "P2" is hyla-cinerea; name another target, or pair other animals`,
			},
		},
		{
			name: "no species", reason: "nothing can be said of a frog of no species",
			yaml: `
animals:
  - {id: A, sex: female}
  - {id: B, clutch: K}
clutches:
  - {id: K, laid: 2025-01-01}
  - {id: L, laid: 2025-01-01, dam: A}
`,
			want: []string{
				`2:10: animal "A" needs a species; add species:, or the clutch it came from`,
				`5:10: clutch "K" needs a species, for it has no parents; add species:, or the parents that are known`,
			},
		},
		{
			name: "parents of its own beside a clutch", reason: "they agree or one is wrong",
			yaml: `
animals:
  - {id: D, species: hyla-cinerea, sex: female}
  - {id: S, species: hyla-cinerea, sex: male}
  - {id: T, species: hyla-cinerea, sex: male}
  - {id: Y1, clutch: K, sire: [T, S], dam: D}
  - {id: Y2, clutch: K, sire: S}
  - {id: Y3, clutch: L, sire: S}
clutches:
  - {id: K, laid: 2025-01-01, dam: D, sire: [S, T]}
  - {id: L, laid: 2025-01-01, dam: D}
`,
			want: []string{
				`6:31: the sire of animal "Y2" is not that of its clutch; remove sire: here; parents come from the clutch`,
				`7:31: the sire of animal "Y3" is not that of its clutch; remove sire: here; parents come from the clutch`,
			},
		},
		{
			name: "parents that are not those of the pairing", reason: "one of the two lists is behind the other",
			yaml: `
animals:
  - {id: D, species: hyla-cinerea, sex: female}
  - {id: S, species: hyla-cinerea, sex: male}
  - {id: T, species: hyla-cinerea, sex: male}
clutches:
  - {id: K, laid: 2025-01-01, dam: D, sire: [S, T], pairing: P}
pairings:
  - {id: P, dam: D, sire: S, start: 2024-12-01}
`,
			want: []string{
				`6:49: warning: sire "T" of clutch "K" is not in its pairing "P"; correct the one or the other`,
			},
		},
	})
}
