package frogroom_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

// TestSeasonOf plans what does not stand in the file as if it did.
func TestSeasonOf(t *testing.T) {
	r := room(t, oneOfEach)
	on := day("2026-12-01")
	for _, w := range []frogroom.Wish{
		{Dams: []string{"D"}, Sires: []string{"A"}, Start: day("2027-01-04")},
		{Dams: []string{"D"}, Sires: []string{"A"}, ReadyBy: day("2027-05-24"), CertaintyPct: 80},
	} {
		s, err := r.SeasonOf(on, w)
		require.NoError(t, err)
		require.Len(t, s.Pairings, 1)
		assert.Equal(t, cycle()[3].Span, s.Pairings[0].Phases[3].Span)
		assert.Equal(t, young(), s.Pairings[0].Stages)
	}
}

// TestWishIsNobody: a pairing of the file that happens to be called like a wish
// has nothing to do with it.
func TestWishIsNobody(t *testing.T) {
	r := room(t, basic+`
clutches:
  - {id: C, laid: 2026-10-01, pairing: this pairing}
pairings:
  - {id: this pairing, dam: D, sire: A, start: 2026-09-01}
diary:
  - {on: 2026-09-03, pairing: this pairing, began: conditioning}
`)
	s, err := r.SeasonOf(day("2026-12-01"), frogroom.Wish{Dams: []string{"E"}, Sires: []string{"B"}, Start: day("2027-01-04")})
	require.NoError(t, err)
	assert.Equal(t, day("2027-01-04"), s.Pairings[0].Phases[0].Span.First)
	assert.Empty(t, s.Pairings[0].Warnings)
}

func TestSeasonOfRefused(t *testing.T) {
	r := room(t, basic+"  - {id: Z, species: hyla-cinerea, sex: female}\n")
	both := frogroom.Wish{Dams: []string{"Z"}, Sires: []string{"D"}, Start: day("2027-01-04")}
	s, err := r.SeasonOf(day("2026-12-01"), both)
	require.NoError(t, err, "another species and the wrong sex are refusals of the rules")
	assert.True(t, s.Pairings[0].Refused)
	assert.Len(t, s.Pairings[0].Findings, 2)
}

func TestWishErrors(t *testing.T) {
	r := room(t, `
species:
  - {id: poor, name: Rana pauper}
  - CLOCKWORK
animals:
  - {id: Z, species: poor, sex: female}
  - {id: Y, species: poor, sex: male}
  - FOUNDERS
`)
	start := day("2027-01-04")
	for _, row := range []struct {
		name string
		wish frogroom.Wish
		want string
	}{
		{"no sire", frogroom.Wish{Dams: []string{"D"}, Start: start}, "a pairing needs at least one dam and one sire"},
		{"neither", frogroom.Wish{Start: start}, "a pairing needs at least one dam and one sire"},
		{"no date", frogroom.Wish{Dams: []string{"D"}, Sires: []string{"A"}}, "give either a start or a date by which young are to be ready"},
		{"two dates", frogroom.Wish{Dams: []string{"D"}, Sires: []string{"A"}, Start: start, ReadyBy: start, CertaintyPct: 80}, "give either a start or a date by which young are to be ready"},
		{"no certainty", frogroom.Wish{Dams: []string{"D"}, Sires: []string{"A"}, ReadyBy: start}, "a certainty of 0 % is not from 50 to 95"},
		{"too sure", frogroom.Wish{Dams: []string{"D"}, Sires: []string{"A"}, ReadyBy: start, CertaintyPct: 96}, "a certainty of 96 % is not from 50 to 95"},
		{"one animal twice", frogroom.Wish{Dams: []string{"D"}, Sires: []string{"A", "A"}, Start: start}, "A stands in the pairing twice"},
		{"one animal on both sides", frogroom.Wish{Dams: []string{"D"}, Sires: []string{"D"}, Start: start}, "D stands in the pairing twice"},
	} {
		_, err := r.SeasonOf(day("2026-12-01"), row.wish)
		var wrong *frogroom.WishError
		require.ErrorAs(t, err, &wrong, row.name)
		assert.EqualError(t, err, row.want, row.name)
	}
	_, err := r.SeasonOf(day("2026-12-01"), frogroom.Wish{Dams: []string{"D"}, Sires: []string{"nobody"}, Start: start})
	var unknown *collection.UnknownError
	require.ErrorAs(t, err, &unknown)
	_, err = r.SeasonOf(day("2026-12-01"), frogroom.Wish{Dams: []string{"Z"}, Sires: []string{"Y"}, Start: start})
	var noCycle *frogroom.NoCycleError
	require.ErrorAs(t, err, &noCycle)
}
