package rearing_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Whether a stage of Gosner 1960 says that eggs have hatched is a matter of the
// species: those of Agalychnis callidryas may still be in the egg at 29, others
// feed at 25. A keeper's profile has the last word.
func TestWhoHasHatched(t *testing.T) {
	for _, row := range []struct {
		species, own string
		gosner       int
		want         string
	}{
		{"hyla-cinerea", "", 24, "laid"},
		{"hyla-cinerea", "", 25, "feeding"},
		{"hyla-cinerea", "", 28, "hind-legs"},
		{"agalychnis-callidryas", "", 29, "laid"},
		{"agalychnis-callidryas", "", 30, "hind-legs"},
		{"agalychnis-callidryas", "species: [{use: agalychnis-callidryas, development: {egg: {hatch_gosner: [20, 24]}}}]\n", 25, "feeding"},
	} {
		r := room(t, row.own+fmt.Sprintf(`
animals:
  - {id: A, species: %[1]s, sex: male, acquired: 2024-01-01}
  - {id: B, species: %[1]s, sex: female, acquired: 2024-01-01}
clutches:
  - {id: K, dam: B, sire: A, laid: 2027-02-20}
diary:
  - {on: 2027-03-01, clutch: K, gosner: %d}
`, row.species, row.gosner))
		k, err := r.Clutch("K", day("2027-03-02"))
		require.NoError(t, err)
		assert.Equal(t, row.want, k.Now, "%s at %d", row.species, row.gosner)
	}
}
