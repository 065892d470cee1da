package rearing_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/rearing"
)

// TestCaresOnDaysAway: tubs are ready three days before the young hatch on 2027-02-15,
// and froglets get first food three days after the water, on 2027-04-07.
func TestCaresOnDaysAway(t *testing.T) {
	for _, row := range []struct{ name, away, tubs, food string }{
		{"nobody is away", "", "2027-02-12", "2027-04-07"},
		{"before the days away, or after them when it is for after a stage", "away: [2027-02-12..2027-02-13, 2027-04-06..2027-04-09]\n", "2027-02-11", "2027-04-10"},
		{"after all the days away that touch", "away: [2027-04-07..2027-04-08, 2027-04-09..2027-04-11]\n", "2027-02-12", "2027-04-12"},
		{"before all that touch", "away: [2027-02-11..2027-02-11, 2027-02-12..2027-02-12]\n", "2027-02-10", "2027-04-07"},
		{"not before it was laid", "away: [2027-02-08..2027-02-13]\n", "2027-02-10", "2027-04-07"},
	} {
		r := room(t, row.away+basic+"clutches:\n  - {id: C, laid: 2027-02-10, dam: D, sire: A}\n")
		tended := r.Tended(day("2027-02-10"))
		require.Len(t, tended, 1, row.name)
		on := make(map[string]rearing.Care)
		for _, c := range tended[0].Cares(r.Collection.Away) {
			on[c.Key()] = c
		}
		assert.Equal(t, row.tubs, on["care/hatched/3 before"].On.String(), row.name)
		assert.Equal(t, row.food, on["care/out-of-water/3 after"].On.String(), row.name)
	}
}

// TestAnimalLeaves: an animal has what was seen of it, and what was seen of all of its
// clutch, up to the day.
func TestAnimalLeaves(t *testing.T) {
	r := room(t, basic+`
  - {id: K, clutch: C, out_of_water: 2027-04-04}
clutches:
  - {id: C, laid: 2027-02-10, dam: D, sire: A}
diary:
  - {on: 2027-04-10, animal: K, ate: true}
  - {on: 2027-04-11, clutch: C, saw: eating}
  - {on: 2027-04-12, clutch: C, saw: eating, some: true}
  - {on: 2027-04-12, animal: K, weight_g: 1.5}
  - {on: 2027-04-13, animal: K, length_mm: 15}
`)
	k, _ := r.Collection.Animal("K")
	out := r.AnimalLeaves(k, day("2027-04-12"))
	assert.Equal(t, day("2027-04-04"), out.OutOfWater)
	assert.Equal(t, 2, out.SeenEating, "of some of the clutch nobody knows whether it was one")
	assert.Equal(t, []float64{1.5, 0}, []float64{out.WeightG, out.LengthMM})
	assert.Equal(t, 15.0, r.AnimalLeaves(k, day("2027-04-13")).LengthMM)
	assert.False(t, r.AnimalLeaves(k, day("2027-04-03")).OutOfWater.Known(), "it is still to come out")
}
