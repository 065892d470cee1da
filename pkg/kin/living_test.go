package kin_test

import (
	"errors"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/diversity"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/parentage"
)

const sevenAnimals = "id,sire,dam\n1,,\n2,,\n3,,\n4,1,2\n5,1,2\n6,3,4\n7,3,4\n"

func TestReadLiving(t *testing.T) {
	a, err := readTable(sevenAnimals)
	require.NoError(t, err)
	for name, text := range map[string]string{
		"plain":                           "4\n5\n7\n",
		"no line end at the end":          "4\n5\n7",
		"Windows, a byte order mark":      "\uFEFF4\r\n5\r\n7\r\n",
		"old line ends":                   "4\r5\r7\r",
		"blanks around ids, blank lines ": "\n 4\t\n\n5 \n \n7\n\n",
	} {
		living, warnings, err := a.ReadLiving(strings.NewReader(text))
		require.NoError(t, err, name)
		assert.Empty(t, warnings, name)
		assert.Equal(t, []int{3, 4, 6}, living, name)
	}
	living, warnings, err := a.ReadLiving(strings.NewReader("1\n7\n1\n"))
	require.NoError(t, err)
	assert.Equal(t, []int{0, 6}, living, "the first animal has number 0")
	assert.Equal(t, []parentage.Problem{{Line: 3, Column: 1, Message: `"1" stands on line 1 already and counts once`, Cure: "remove one of them"}}, warnings)
}

func TestReadLivingErrors(t *testing.T) {
	a, err := readTable("id,sire,dam\nBram,,\nUlla,,\n")
	require.NoError(t, err)
	for _, test := range []struct{ name, text, want string }{
		{"nothing", "", "1:1: the list is empty; write the id of a living animal on each line"},
		{"blank lines", "\n\r\n", "1:1: the list is empty; write the id of a living animal on each line"},
		{"not known, with one that is near", "Bram\nUla\n7\n", "2:1: there is no animal \"Ula\"; did you mean \"Ulla\"?\n3:1: there is no animal \"7\"; write one id of the table a line"},
		{"long", strings.Repeat("x", 100) + "\n", `1:1: there is no animal "` + strings.Repeat("x", 60) + `..."; write one id of the table a line`},
		{"not UTF-8", "Br\xffm", `1:1: there is no animal "Br?m..."; write one id of the table a line`},
	} {
		t.Run(test.name, func(t *testing.T) {
			living, _, err := a.ReadLiving(strings.NewReader(test.text))
			require.EqualError(t, err, "parentage: "+test.want)
			assert.Nil(t, living)
		})
	}
	var bad *parentage.Error
	_, _, err = a.ReadLiving(strings.NewReader(strings.Repeat("x\n", 50)))
	require.ErrorAs(t, err, &bad)
	assert.Len(t, bad.Problems, parentage.Most)
	assert.Equal(t, 50-parentage.Most, bad.More)

	gone := errors.New("the disk is gone")
	_, _, err = a.ReadLiving(iotest.ErrReader(gone))
	require.ErrorIs(t, err, gone)
}

// TestKinOfLiving has the mean kinships of a set of animals worked out by hand: in
// the set 4, 5, 6, 7 two are full siblings, two are young of one of them.
func TestKinOfLiving(t *testing.T) {
	a, err := readTable(sevenAnimals)
	require.NoError(t, err)
	living, _, err := a.ReadLiving(strings.NewReader("7\n6\n5\n4\n"))
	require.NoError(t, err)
	k := a.List(day("2027-01-01"), living)
	assert.Equal(t, []kin.Group{{Living: 4, MeanKinship: 9. / 32, GeneDiversity: 23. / 32}}, k.Groups)
	assert.False(t, k.On.Known(), "a table has no dates")
	i := 0
	for row := range a.Rows(0, living) {
		assert.Equal(t, k.Animals[i], row, "row by row it is the same")
		i++
	}
	assert.Equal(t, 7, i)
	want := kin.Row{
		ID: "6", Sire: "3", Dam: "4", Sex: "unknown", Status: "here", Generation: 2, MeanKinship: 9. / 32,
		CompleteGenerations: 1.5, KnownAncestry: 1,
	}
	assert.Equal(t, want, k.Animals[5])
	for range a.Rows(0, nil) {
		break // and nothing happens
	}
}

// TestDiversity is one species at a time.
func TestDiversity(t *testing.T) {
	a, err := readTable(sevenAnimals)
	require.NoError(t, err)
	drops := diversity.Drops{Count: 10, Seed: 3}
	d := a.Diversity(0, []int{3, 4, 5, 6}, drops)
	require.NotNil(t, d.Summary)
	assert.Equal(t, diversity.Summarise(a.Pedigree, []int{3, 4, 5, 6}, drops), *d.Summary)
	assert.Equal(t, []kin.GroupDiversity{{Summary: *d.Summary}}, d.Groups)
	assert.Equal(t, 7, a.Diversity(0, nil, drops).Animals)

	r := ancestry(t, basic+`
  - {id: Z, species: hyla-cinerea}
  - {id: K, species: clockwork, sire: [A, B], dam: D}
`)
	two := r.Diversity(day("2027-01-01"), nil, drops)
	assert.Nil(t, two.Summary, "two species have no figures together")
	require.Len(t, two.Groups, 2)
	assert.Equal(t, "clockwork", two.Groups[0].Species)
	assert.Equal(t, 5, two.Groups[0].Animals)
	assert.Equal(t, 1, two.Groups[1].Animals)
	assert.Contains(t, two.Warnings[0], "one of several")
	assert.Contains(t, asJSON(t, two), `{"groups":[{"species":"clockwork","animals":5,`)

	none := r.Diversity(day("2027-01-01"), []int{}, drops)
	assert.Contains(t, asJSON(t, none), `{"groups":[],`)
}

// TestKinOfLivingInARoom is about a list that says otherwise than the file.
func TestKinOfLivingInARoom(t *testing.T) {
	r := ancestry(t, `
animals:
  - {id: A, species: hyla-cinerea, sex: male, died: 2020-01-01}
  - {id: D, species: hyla-cinerea, sex: female}
  - {id: K, species: hyla-cinerea, sire: A, dam: D}
`)
	living, _, err := r.ReadLiving(strings.NewReader("A\n"))
	require.NoError(t, err)
	k := r.List(day("2027-01-01"), living)
	assert.Equal(t, 1, k.Groups[0].Living)
	assert.Equal(t, []float64{0.5, 0, 0.25}, []float64{k.Animals[0].MeanKinship, k.Animals[1].MeanKinship, k.Animals[2].MeanKinship})
	assert.Equal(t, []int{1, 2}, r.Living(day("2027-01-01")))
}

// TestReadPedigree keeps doubts, and gives loops with their lines.
func TestReadPedigree(t *testing.T) {
	a, err := readTable("id,sire,dam\nK,A,D\nk,A,D\n")
	require.NoError(t, err)
	assert.Len(t, a.Table.Warnings, 2)
	_, err = readTable("id,sire,dam\nK,A,\nA,K,\n")
	require.EqualError(t, err, `parentage: 2:1: "K" descends from itself: "K" (line 2) is from "A" (line 3) is from "K"; one of these parents must be wrong`)
	r := ancestry(t, basic)
	assert.Nil(t, r.Table)
}
