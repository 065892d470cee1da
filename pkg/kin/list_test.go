package kin_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/kin"
)

// TestGroupSpawning holds what several possible parents come to against the
// mean over all ways in which it can have been, worked out by hand.
func TestGroupSpawning(t *testing.T) {
	for _, row := range []struct {
		name, animals, clutches string
		one, other              string
		kinship                 float64 // of the two
		inbreeding              float64 // of the first
		why                     string
	}{
		{
			name:     "two young of one clutch with one unknown sire",
			animals:  "{id: X, clutch: C1}, {id: Y, clutch: C1}",
			clutches: "{id: C1, laid: 2024-03-01, dam: D, sire: [A, B]}",
			one:      "X", other: "Y", kinship: 1.0 / 4,
			why: "whoever the sire is, they share him: full sibs",
		},
		{
			name:     "two young of which each has its own sire",
			animals:  "{id: X, clutch: C1}, {id: Y, clutch: C1}",
			clutches: "{id: C1, laid: 2024-03-01, dam: D, sire: [A, B], sire_mix: several}",
			one:      "X", other: "Y", kinship: 3.0 / 16,
			why: "AA and BB are full sibs, 1/4; AB and BA half sibs, 1/8",
		},
		{
			name:     "three males, each egg its own",
			animals:  "{id: F, species: clockwork, sex: male}, {id: X, clutch: C1}, {id: Y, clutch: C1}",
			clutches: "{id: C1, laid: 2024-03-01, dam: D, sire: [A, B, F], sire_mix: several}",
			one:      "X", other: "Y", kinship: (1.0/4 + 2*1.0/8) / 3,
			why: "the same sire in one case of three",
		},
		{
			name:     "two clutches with the same males",
			animals:  "{id: X, clutch: C1}, {id: Y, clutch: C2}",
			clutches: "{id: C1, laid: 2024-03-01, dam: D, sire: [A, B]}, {id: C2, laid: 2025-03-01, dam: E, sire: [A, B]}",
			one:      "X", other: "Y", kinship: 1.0 / 16,
			why: "the sires are drawn for each clutch: half sibs, 1/8, in half of the cases",
		},
		{
			name:     "a clutch with two dams",
			animals:  "{id: X, clutch: C1}, {id: Y, clutch: C1}",
			clutches: "{id: C1, laid: 2024-03-01, dam: [D, E], sire: A, dam_mix: several}",
			one:      "X", other: "Y", kinship: 3.0 / 16,
			why: "as with two sires",
		},
		{
			name:     "both sides unknown, each egg its own",
			animals:  "{id: X, clutch: C1}, {id: Y, clutch: C1}",
			clutches: "{id: C1, laid: 2024-03-01, dam: [D, E], sire: [A, B], dam_mix: several, sire_mix: several}",
			one:      "X", other: "Y", kinship: 1.0 / 8,
			why: "both the same 1/4 in one case of four, one of two the same 1/8 in two, neither 0 in one",
		},
		{
			name:     "a possible sire is the dam's sire",
			animals:  "{id: G, species: clockwork, sex: female, sire: A, dam: D}, {id: X, clutch: C1}, {id: Y, clutch: C1}",
			clutches: "{id: C1, laid: 2024-03-01, dam: G, sire: [A, B]}",
			one:      "X", other: "Y", kinship: 5.0 / 16, inbreeding: 1.0 / 8,
			why: "with A F is 1/4 and the sibs (1/2 + 2/4 + 1/2)/4 = 3/8, with B 0 and 1/4",
		},
		{
			name:     "a possible sire is the brother of the dam",
			animals:  "{id: G, species: clockwork, sex: female, sire: A, dam: D}, {id: H, species: clockwork, sex: male, sire: A, dam: D}, {id: X, clutch: C1}",
			clutches: "{id: C1, laid: 2024-03-01, dam: G, sire: [H, B]}",
			one:      "X", other: "D", kinship: 3.0 / 16, inbreeding: 1.0 / 8,
			why: "with her brother F is 1/4 and f(X,D) = (1/4 + 1/4)/2, with B 0 and 1/8",
		},
		{
			name:    "two animals that name the same two sires without a clutch",
			animals: "{id: X, species: clockwork, sire: [A, B], dam: D}, {id: Y, species: clockwork, sire: [A, B], dam: D}",
			one:     "X", other: "Y", kinship: 3.0 / 16,
			why: "nothing says that they are of one clutch",
		},
		{
			name:     "a clutch of which no parent is known",
			animals:  "{id: X, clutch: C1}, {id: Y, clutch: C1}",
			clutches: "{id: C1, laid: 2024-03-01, species: clockwork}",
			one:      "X", other: "Y", kinship: 0,
			why: "unknown parents are related to nobody: a lower bound",
		},
	} {
		t.Run(row.name, func(t *testing.T) {
			r := ancestry(t, basic+"  - "+strings.ReplaceAll(row.animals, "}, {", "}\n  - {")+"\nclutches: ["+row.clutches+"]\n")
			pair, err := r.Pair(row.one, row.other)
			require.NoError(t, err)
			assert.InDelta(t, row.kinship, pair.Kinship, 1e-12, row.why)
			back, err := r.Pair(row.other, row.one)
			require.NoError(t, err)
			assert.InDelta(t, pair.Kinship, back.Kinship, 1e-15)
			for _, k := range r.List(day("2027-01-01"), nil).Animals {
				if k.ID == row.one {
					assert.InDelta(t, row.inbreeding, k.Inbreeding, 1e-12, row.why)
					assert.Equal(t, strings.Contains(row.clutches+row.animals, "["), k.Expected)
				}
			}
		})
	}
}

// TestWhoCounts is about which animals are in the room on a day.
func TestWhoCounts(t *testing.T) {
	r := ancestry(t, `
species:
  - CLOCKWORK
animals:
  - {id: A, species: clockwork, sex: male, acquired: 2020-01-01, left: 2025-06-01}
  - {id: D, species: clockwork, sex: female, acquired: 2021-01-01}
  - {id: K, clutch: C}
  - {id: L, clutch: C, died: 2024-01-10}
  - {id: M, species: clockwork, hatched: 2023-05-05}
  - {id: N, species: clockwork, out_of_water: 2023-06-06}
  - {id: O, species: clockwork}
  - {id: Z, species: hyla-cinerea, acquired: 2024-01-01}
clutches:
  - {id: C, laid: 2024-01-01, dam: D, sire: A}
`)
	for _, row := range []struct{ on, clockwork, all string }{
		{"2019-12-31", "O", "A=not yet D=not yet K=not yet L=not yet M=not yet N=not yet O=here Z=not yet"},
		{"2020-01-01", "A O", "A=here D=not yet K=not yet L=not yet M=not yet N=not yet O=here Z=not yet"},
		{"2023-12-31", "A D M N O", "A=here D=here K=not yet L=not yet M=here N=here O=here Z=not yet"},
		{"2024-01-09", "A D K L M N O", "A=here D=here K=here L=here M=here N=here O=here Z=here"},
		{"2025-06-01", "D K M N O", "A=left D=here K=here L=died M=here N=here O=here Z=here"},
		{"9999-12-31", "D K M N O", "A=left D=here K=here L=died M=here N=here O=here Z=here"},
	} {
		k := r.List(day(row.on), nil)
		var here, all []string
		for _, a := range k.Animals {
			all = append(all, a.ID+"="+string(a.Status))
			if a.Species == "clockwork" && a.Status == collection.Here {
				here = append(here, a.ID)
			}
		}
		assert.Equal(t, row.clockwork, strings.Join(here, " "), row.on)
		assert.Equal(t, row.all, strings.Join(all, " "), row.on)
		assert.Equal(t, len(here), k.Groups[0].Living, row.on)

		relatives, err := r.Relatives("D", day(row.on))
		require.NoError(t, err)
		var near []string
		for _, a := range relatives {
			near = append(near, a.ID)
		}
		assert.ElementsMatch(t, strings.Fields(strings.ReplaceAll(" "+row.clockwork, " D", "")), near, row.on)
	}
}

// TestMeanKinship has numbers that can be worked out by hand: A and D founders,
// K and L their young, and one animal of another species.
func TestMeanKinship(t *testing.T) {
	r := ancestry(t, `
species:
  - CLOCKWORK
animals:
  - {id: A, species: clockwork, sex: male, died: 2025-01-01}
  - {id: D, species: clockwork, sex: female}
  - {id: K, name: Kai, species: clockwork, sire: A, dam: D}
  - {id: L, species: clockwork, sire: A, dam: D}
  - {id: Z, species: hyla-cinerea}
  - {id: Y, species: xenopus-laevis, died: 2020-01-01}
`)
	want := kin.List{
		On: day("2026-01-01"),
		Groups: []kin.Group{
			// D with D, K, L: 1/2, 1/4, 1/4; K with them: 1/4, 1/2, 1/4.
			{Species: "clockwork", Living: 3, MeanKinship: 1.0 / 3, GeneDiversity: 2.0 / 3},
			{Species: "hyla-cinerea", Living: 1, MeanKinship: 0.5, GeneDiversity: 0.5},
		},
		Animals: []kin.Row{
			{ID: "A", Species: "clockwork", Sex: "male", Status: "died", MeanKinship: 1.0 / 6, KnownAncestry: 1}, // 0, 1/4, 1/4
			{ID: "D", Species: "clockwork", Sex: "female", Status: "here", MeanKinship: 1.0 / 3, KnownAncestry: 1},
			{ID: "K", Name: "Kai", Species: "clockwork", Sex: "unknown", Status: "here", Sire: "A", Dam: "D", Generation: 1, MeanKinship: 1.0 / 3, CompleteGenerations: 1, KnownAncestry: 1},
			{ID: "L", Species: "clockwork", Sex: "unknown", Status: "here", Sire: "A", Dam: "D", Generation: 1, MeanKinship: 1.0 / 3, CompleteGenerations: 1, KnownAncestry: 1},
			{ID: "Z", Species: "hyla-cinerea", Sex: "unknown", Status: "here", MeanKinship: 0.5, KnownAncestry: 1},
			{ID: "Y", Species: "xenopus-laevis", Sex: "unknown", Status: "died", KnownAncestry: 1}, // nobody there to be related to
		},
		Warnings: []string{"animals without recorded parents count as unrelated, so kinship and inbreeding are lower bounds"},
	}
	if diff := cmp.Diff(want, r.List(day("2026-01-01"), nil), cmpopts.EquateApprox(0, 1e-12)); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestPair(t *testing.T) {
	r := ancestry(t, `
animals:
  - {id: A, name: Anton, species: hyla-cinerea, sex: male}
  - {id: D, species: hyla-cinerea, sex: female}
  - {id: K, species: hyla-cinerea, sex: male, sire: A, dam: D}
  - {id: L, species: hyla-cinerea, sex: female, sire: A, dam: D}
`)
	got, err := r.Pair("K", "L")
	require.NoError(t, err)
	path := func(through string) []kin.Path {
		return []kin.Path{{Up: []string{"K", through}, Down: []string{through, "L"}, Share: 0.125}}
	}
	want := kin.Pair{
		A: "K", B: "L", Kinship: 0.25, YoungInbreeding: 0.25,
		Relationship: "full siblings",
		Shared: []kin.Shared{
			{ID: "A", Name: "Anton", Share: 0.125, PathCount: 1, Paths: path("A")},
			{ID: "D", Share: 0.125, PathCount: 1, Paths: path("D")},
		},
		Warnings: []string{"animals without recorded parents count as unrelated, so kinship and inbreeding are lower bounds"},
	}
	if diff := cmp.Diff(want, got, cmpopts.EquateApprox(0, 1e-12)); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	assert.Nil(t, got.Least, "nothing is uncertain")
	stranger, err := r.Pair("A", "D")
	require.NoError(t, err)
	assert.Contains(t, asJSON(t, stranger), `"shared":[]`, "an empty list, and not null")
	assert.Equal(t, "not known to be related", stranger.Relationship)
	child, err := r.Pair("A", "K")
	require.NoError(t, err)
	assert.Equal(t, "parent and young", child.Relationship)
	self, err := r.Pair("K", "K")
	require.NoError(t, err)
	assert.Equal(t, 0.5, self.Kinship)
	assert.Contains(t, self.Warnings, "an animal has no young with itself")
	two, err := ancestry(t, "animals: [{id: A, species: hyla-cinerea}, {id: B, species: theloderma-corticale}]\n").Pair("A", "B")
	require.NoError(t, err)
	assert.Contains(t, two.Warnings, "A is hyla-cinerea and B is theloderma-corticale: two species are not paired")
}

// TestPairRange has two possible sires, one of whom is the sire of the other animal.
func TestPairRange(t *testing.T) {
	r := ancestry(t, basic+`
  - {id: K, species: clockwork, sire: [A, B], dam: D}
  - {id: L, species: clockwork, sire: A, dam: E}
`)
	p, err := r.Pair("K", "L")
	require.NoError(t, err)
	assert.Equal(t, 1.0/16, p.Kinship)
	require.NotNil(t, p.Least)
	assert.Equal(t, []float64{0, 1.0 / 8}, []float64{*p.Least, *p.Greatest}, "half siblings, or not related")
	assert.Equal(t, "possibly half siblings through A (Anton)", p.Relationship)
}

func TestUnknownAnimal(t *testing.T) {
	r := ancestry(t, basic)
	_, pair := r.Pair("A", "nobody")
	_, pairB := r.Pair("AA", "A")
	_, relatives := r.Relatives("nobody", 0)
	_, lineage := r.Lineage(day("2027-01-01"), kin.LineageWish{IDs: []string{"A", "nobody"}})
	for _, err := range []error{pair, pairB, relatives, lineage} {
		var unknown *collection.UnknownError
		require.ErrorAs(t, err, &unknown)
	}
	assert.EqualError(t, pair, `there is no animal "nobody"`)
	assert.EqualError(t, &collection.UnknownError{Kind: "animal", ID: "AC-41", Nearest: "AC-14"}, `there is no animal "AC-41"; did you mean "AC-14"?`)
}

func TestRelatives(t *testing.T) {
	r := ancestry(t, basic+`
  - {id: K, species: clockwork, sire: A, dam: D}
  - {id: L, species: clockwork, sire: [A, B], dam: E}
  - {id: Z, species: hyla-cinerea}
`)
	got, err := r.Relatives("K", day("2027-01-01"))
	require.NoError(t, err)
	want := []kin.Relative{
		{ID: "B", Sex: "male"},
		{ID: "E", Sex: "female"},
		{ID: "L", Sex: "unknown", Kinship: 1.0 / 16, Expected: true},
		{ID: "A", Name: "Anton", Sex: "male", Kinship: 0.25},
		{ID: "D", Name: "Dora", Sex: "female", Kinship: 0.25},
	}
	if diff := cmp.Diff(want, got, cmpopts.EquateApprox(0, 1e-12)); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	alone, err := r.Relatives("Z", day("2027-01-01"))
	require.NoError(t, err)
	assert.Equal(t, "[]", asJSON(t, alone))
}

func TestPlainTable(t *testing.T) {
	a, err := readTable("id,sire,dam\nK,A,D\nA,,\nD,0,NA\n")
	require.NoError(t, err)
	k := a.List(0, nil)
	require.Len(t, k.Groups, 1)
	assert.Equal(t, 3, k.Groups[0].Living)
	// K, A, D with each other: 1/2 three times, 1/4 four times, 0 twice, of nine.
	assert.InDelta(t, 2.5/9, k.Groups[0].MeanKinship, 1e-12)
	assert.Equal(t, collection.Here, k.Animals[0].Status)
	relatives, err := a.Relatives("K", 0)
	require.NoError(t, err)
	assert.Len(t, relatives, 2)
	dot, err := a.Lineage(0, kin.LineageWish{Direction: kin.Ancestors, IDs: []string{"K"}})
	require.NoError(t, err)
	assert.Contains(t, dot.DOT(), `animal-A`)

	empty, err := readTable("id,sire,dam\n")
	require.NoError(t, err)
	assert.NotContains(t, asJSON(t, empty.List(0, nil)), "null")
	_, err = readTable("nonsense\n")
	assert.Error(t, err)
	_, err = readTable("id,sire,dam\nK,A,D\nK,,\n")
	assert.Error(t, err)
}
