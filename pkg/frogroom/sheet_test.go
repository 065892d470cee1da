package frogroom_test

import (
	"context"
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/internal/clockwork"
)

// Clockwork: rain of D begins on 35 days after conditioning, on 2027-03-08, so
// that eggs are laid on 03-10, young hatch on 03-15, are out of the water on
// 05-02 and sale-ready on 06-21. Of 40 eggs 40 hatch: 4 tubs of 10; 20 froglets: 2
// bins of 10.
const sheetRoom = `
keeper: Lindenhof frog room
holidays: de-by
away: [2027-02-13..2027-02-14]
equipment: {rain_chambers: 1, tadpole_tubs: {count: TUBS, litres: 10}, froglet_bins: {count: 5, froglets: 10}}
species:
  - CLOCKWORK
    tadpoles_per_litre: 1
animals:
  - FOUNDERS
clutches:
  - {id: C-1, laid: 2027-01-25, dam: E, sire: B, pairing: P-2, eggs: 30, place: tub-1}
pairings:
  - {id: P-1, dam: D, sire: [A, B], start: 2027-02-01}
  - {id: P-2, dam: E, sire: B, start: 2026-12-20}
`

func TestSeasonSheet(t *testing.T) {
	on := civil.Of(2027, 2, 1)
	sheet := func(tubs string) frogroom.Sheet {
		s, err := room(t, strings.ReplaceAll(sheetRoom, "TUBS", tubs)).SeasonSheet(context.Background(), on, frogroom.Planning{})
		require.NoError(t, err)
		return s
	}
	s := sheet("24")
	assert.Equal(t, "Lindenhof frog room", s.Keeper)
	assert.Equal(t, map[string]string{"A": "Anton", "D": "Dora"}, s.Names)
	assert.Equal(t, []string{
		"D with A: no known ancestor in common; by rarity 1 to 2 of 2 males and 1 to 2 of 2 females",
		"D with B: no known ancestor in common; by rarity 1 to 2 of 2 males and 1 to 2 of 2 females",
	}, s.Reasons["P-1"])
	require.Len(t, s.Clutches, 1)
	assert.Equal(t, "P-2", s.Clutches[0].Pairing)
	assert.Equal(t, []civil.Span{{First: civil.Of(2027, 2, 13), Last: civil.Of(2027, 2, 14)}}, s.Away)
	assert.Equal(t, "Karfreitag", s.Holidays[0].Name)
	assert.Equal(t, civil.Span{First: on, Last: civil.Of(2027, 3, 28)}, s.Agenda.Days)
	assert.True(t, slices.ContainsFunc(s.Agenda.Tasks, func(x frogroom.Task) bool { return x.On == civil.Of(2027, 3, 8) }), "the rain is a task")

	rain := loadOf(t, s, "rain chamber")
	assert.Nil(t, rain.Likely, "the plan decides when it rains")
	assert.Equal(t, []int{0, 1, 1, 1, 0}, rain.Kept[34:39])
	tubs := loadOf(t, s, "tadpole tub")
	hatched, out := civil.Of(2027, 3, 15).Sub(on), civil.Of(2027, 5, 2).Sub(on)
	for _, list := range [][]int{tubs.Kept, tubs.Low, tubs.Likely, tubs.High} { // nothing varies
		assert.Equal(t, list[hatched-1]+4, list[hatched])
		assert.Equal(t, list[out-1]-4, list[out])
	}
	assert.Empty(t, tubs.Short)

	// C-1 holds 3 tubs until 03-18: on 4 days 7 are held together.
	assert.Empty(t, loadOf(t, sheet("7"), "tadpole tub").Short)
	assert.Equal(t, []civil.Span{{First: civil.Of(2027, 3, 15), Last: civil.Of(2027, 3, 18)}}, loadOf(t, sheet("6"), "tadpole tub").Short)
}

// The plan holds tubs for a usual clutch. One that may be twice as large can need
// more than there are, though the plan fits.
func TestSeasonSheetOfClutchesThatVary(t *testing.T) {
	text := strings.Replace(clockwork.Spelled(strings.ReplaceAll(sheetRoom, "TUBS", "7")), "clutch_eggs: [40, 40, 40]", "clutch_eggs: [20, 40, 80]", 1)
	s, err := room(t, text).SeasonSheet(context.Background(), civil.Of(2027, 2, 1), frogroom.Planning{})
	require.NoError(t, err)
	tubs := loadOf(t, s, "tadpole tub")
	assert.Equal(t, 7, slices.Max(tubs.Kept))
	assert.Equal(t, []civil.Span{{First: civil.Of(2027, 3, 15), Last: civil.Of(2027, 5, 1)}}, tubs.Short)
	d := civil.Of(2027, 4, 1).Sub(s.On)
	assert.Equal(t, []int{2, 4, 8}, []int{tubs.Low[d], tubs.Likely[d], tubs.High[d]})
}

// What is doubtful about a clutch stands on the sheet without the line of the file.
func TestSeasonSheetHasDoubts(t *testing.T) {
	r := room(t, strings.ReplaceAll(sheetRoom, "TUBS", "7")+"diary:\n  - {on: 2027-01-31, place: tub-1, water_c: 31}\n")
	s, err := r.SeasonSheet(context.Background(), civil.Of(2027, 2, 1), frogroom.Planning{})
	require.NoError(t, err)
	require.Len(t, s.Clutches[0].Warnings, 2)
	for _, w := range s.Clutches[0].Warnings {
		assert.Regexp(t, "^clutch C-1: ", w)
	}
}

func TestSeasonSheetRefuses(t *testing.T) {
	_, err := room(t, strings.ReplaceAll(sheetRoom, "TUBS", "9")).SeasonSheet(context.Background(), civil.Of(2027, 2, 1), frogroom.Planning{Pairings: []string{"P-9"}})
	var unknown *collection.UnknownError
	assert.True(t, errors.As(err, &unknown))
}

func loadOf(t *testing.T, s frogroom.Sheet, what string) frogroom.PlaceDays {
	t.Helper()
	for _, l := range s.Loads {
		if l.What == what {
			return l
		}
	}
	t.Fatalf("no load of %s", what)
	return frogroom.PlaceDays{}
}
