package kin_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/kin"
)

// TestSquares: a square for each species, in which families stand together.
func TestSquares(t *testing.T) {
	a := ancestry(t, `
rules: {warn_inbreeding: 0.1, max_inbreeding: 0.25}
species:
  - CLOCKWORK
animals:
  - {id: A, name: Anton, species: clockwork, sex: male}
  - {id: B, species: clockwork, sex: male}
  - {id: D, species: clockwork, sex: female}
  - {id: Z, species: hyla-cinerea}
  - {id: K, species: clockwork, sex: female, sire: A, dam: D}
  - {id: X, species: clockwork, sex: female, died: 2026-01-01}
`)
	squares, err := a.Squares(day("2027-01-01"), nil)
	require.NoError(t, err)
	require.Len(t, squares, 2)
	one := squares[0]
	at := make(map[string]int)
	for i, x := range one.Animals {
		at[x.ID] = i
	}
	require.Len(t, at, 4, "the dead one is left out, and so is the other species")
	assert.Equal(t, kin.SquareAnimal{ID: "A", Name: "Anton", Sex: collection.Male}, one.Animals[at["A"]])
	for _, row := range []struct {
		one, other string
		kinship    float64
	}{{"A", "A", 0.5}, {"A", "K", 0.25}, {"D", "K", 0.25}, {"A", "D", 0}, {"B", "K", 0}} {
		assert.Equal(t, row.kinship, one.Kinship[at[row.one]][at[row.other]], row)
		assert.Equal(t, row.kinship, one.Kinship[at[row.other]][at[row.one]], row)
	}
	assert.Contains(t, []int{0, 3}, at["B"], "who is related to nobody stands beside the family, and not in it")
	assert.False(t, one.Expected)
	assert.Equal(t, []float64{0.1, 0.25}, []float64{one.Warn, one.Refuse})
	assert.Equal(t, "hyla-cinerea", squares[1].Species)

	named, err := a.Squares(day("2027-01-01"), []int{0, 5})
	require.NoError(t, err)
	require.Len(t, named, 1)
	assert.Len(t, named[0].Animals, 2, "who is named counts, here or not")
}

// TestSquareByTheRules: who could be paired, and by how close they are.
func TestSquareByTheRules(t *testing.T) {
	of := func(one, other collection.Sex, kinship float64) kin.Square {
		return kin.Square{
			Animals: []kin.SquareAnimal{{ID: "one", Sex: one}, {ID: "other", Sex: other}},
			Kinship: [][]float64{{0.5, kinship}, {kinship, 0.5}}, Warn: 0.1, Refuse: 0.25,
		}
	}
	const male, female, unknown = collection.Male, collection.Female, collection.UnknownSex
	for _, row := range []struct {
		name            string
		square          kin.Square
		warned, refused bool
	}{
		{"strangers", of(male, female, 0), false, false},
		{"below the warning", of(male, female, 0.0999), false, false},
		{"at the warning", of(male, female, 0.1), true, false},
		{"at the limit, and that alone", of(male, female, 0.25), false, true},
		{"at the limit but for rounding", of(male, female, 0.25-1e-12), false, true},
		{"two males", of(male, male, 0.25), false, false},
		{"two of unknown sex may be a pair", of(unknown, unknown, 0.25), false, true},
		{"a female and one of unknown sex", of(female, unknown, 0.1), true, false},
	} {
		assert.Equal(t, row.warned, row.square.Warned(0, 1), row.name)
		assert.Equal(t, row.warned, row.square.Warned(1, 0), row.name)
		assert.Equal(t, row.refused, row.square.Refused(0, 1), row.name)
		assert.False(t, row.square.Refused(0, 0) || row.square.Warned(0, 0), "nobody with itself")
	}
	free := of(male, female, 0.25)
	free.Warn, free.Refuse = 0, 0
	assert.False(t, free.Warned(0, 1) || free.Refused(0, 1), "no rule is known")
}

func TestSquareTooLarge(t *testing.T) {
	var table strings.Builder
	table.WriteString("id,sire,dam\n")
	for i := range kin.MostInSquare + 1 {
		fmt.Fprintf(&table, "a%d,,\n", i)
	}
	a, err := readTable(table.String())
	require.NoError(t, err)
	_, err = a.Squares(0, nil)
	var large *kin.SquareError
	require.ErrorAs(t, err, &large)
	assert.EqualError(t, err, "501 living animals are more than the 500 that one picture shows")
	_, err = a.Squares(0, a.Living(0)[1:])
	assert.NoError(t, err)
}
