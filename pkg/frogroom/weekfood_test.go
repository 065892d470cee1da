package frogroom_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

// A species with round numbers: 20 eggs of which all hatch in 10 days and feed 2
// days later, legs after 40 more, out of the water after 5, ready after 50.
const fedRoom = `
species:
  - id: paper-frog
    name: Paper frog
    cycle: {rain: {days: [3, 3, 3]}}
    breeding: {clutch_eggs: [20, 20, 20], eggs_after_nights: [1, 1, 1]}
    development:
      egg: {days: [10, 10, 10], survival: 1}
      hatchling: {days: [2, 2, 2], survival: 1}
      tadpole: {days: [40, 40, 40], survival: 0.5}
      metamorph: {days: [5, 5, 5], survival: 1}
      grow_out: {days: [50, 50, 50]}
    maturity: {male: {age_days: 300}, female: {age_days: 300}}
    food:
      tadpole: {dry_mg: [10, 20], every_days: 1}
      froglet: {feeders: [4, 6], feeder_mm: [2, 3], every_days: 1}
      adult: {feeders: [3, 6], feeder_mm: [10, 15], every_days: [2, 3.5]}
animals:
  - {id: M, species: paper-frog, sex: male, acquired: 2020-01-01, out_of_water: 2019-01-01}
  - {id: F, species: paper-frog, sex: female, acquired: 2020-01-01, out_of_water: 2019-01-01}
  - {id: G, species: paper-frog, sex: female, acquired: 2020-01-01, out_of_water: 2019-01-01, left: 2027-03-11}
  - {id: Y, species: paper-frog, out_of_water: 2027-01-20}
pairings:
  - {id: P, dam: F, sire: M, start: 2027-03-01}
`

// What is eaten in a week is the animals of its Thursday times the meals of seven
// days times what one eats at a meal, from the fewest to the most.
func TestWeekFood(t *testing.T) {
	s, err := room(t, fedRoom).Season(day("2027-03-01"), "P")
	require.NoError(t, err)
	food := make(map[string]frogroom.WeekFood)
	for _, w := range s.Weeks {
		for _, f := range w.Food {
			food[w.First.String()+" "+f.Age] = f
		}
	}
	week := func(monday, age string, f frogroom.WeekFood) frogroom.WeekFood {
		f.Week, f.Species, f.Age = day(monday), "paper-frog", age
		return f
	}
	// Rain from 2027-03-01, eggs on 03-02, feeding on 03-14, front legs on 04-23, out
	// of the water on 04-28, meals from 05-01, ready on 06-17.
	for _, row := range []struct {
		why  string
		want frogroom.WeekFood
	}{
		{"three grown ones, two to three and a half days apart", week("2027-03-01", "grown", frogroom.WeekFood{Animals: 3, Feeders: [2]int{18, 63}, FeederMM: [2]float64{10, 15}})},
		{"one has left on the Thursday", week("2027-03-08", "grown", frogroom.WeekFood{Animals: 2, Feeders: [2]int{12, 42}, FeederMM: [2]float64{10, 15}})},
		{"the tadpoles eat from the week after", week("2027-03-15", "tadpoles", frogroom.WeekFood{Animals: 20, DryG: [2]float64{1.4, 2.8}})},
		{"until their front legs", week("2027-04-19", "tadpoles", frogroom.WeekFood{Animals: 20, DryG: [2]float64{1.4, 2.8}})},
		{"the young animal of the room eats as a froglet", week("2027-03-01", "froglets", frogroom.WeekFood{Animals: 1, Feeders: [2]int{28, 42}, FeederMM: [2]float64{2, 3}})},
		{"and from the fiftieth day on land what lies between", week("2027-03-08", "half-grown", frogroom.WeekFood{Animals: 1, Feeders: [2]int{6, 42}, FeederMM: [2]float64{3, 10}})},
		{"half of the tadpoles come on land, and eat some days later", week("2027-05-03", "froglets", frogroom.WeekFood{Animals: 10, Feeders: [2]int{280, 420}, FeederMM: [2]float64{2, 3}})},
	} {
		assert.Equal(t, row.want, food[row.want.Week.String()+" "+row.want.Age], row.why)
	}
	assert.NotContains(t, food, "2027-03-08 tadpoles", "they do not feed yet")
	assert.NotContains(t, food, "2027-04-26 tadpoles")
	assert.NotContains(t, food, "2027-03-08 froglets")
	assert.NotContains(t, food, "2027-03-01 half-grown")
	var peaks []string
	for _, f := range s.Food {
		peaks = append(peaks, f.Week.String()+" "+f.Age)
	}
	assert.Equal(t, []string{"2027-03-15 tadpoles", "2027-05-03 froglets", "2027-03-08 half-grown", "2027-03-01 grown"}, peaks)
}

// Young that could have left and were not seen to leave still have to be fed.
func TestFoodOfThoseWhoStay(t *testing.T) {
	const clutch = "clutches: [{id: C, laid: 2026-10-01, dam: F, sire: M, eggs: 20%s}]\ndiary: [{on: 2026-11-27, clutch: C, saw: out-of-water, count: 9}, {on: 2027-02-01, clutch: C, %s}]\n"
	for _, row := range []struct {
		name, ended, last string
		want              int // with the young animal of the room
	}{
		{"nine were there at the last count, a month after they were ready", "", "count: 9", 10},
		{"all but two were sold", "", "sold: 7", 3},
		{"all were sold", "", "sold: 9", 1},
		{"it has ended", ", ended: 2027-02-02", "count: 9", 1},
	} {
		s, err := room(t, fedRoom+fmt.Sprintf(clutch, row.ended, row.last)).Season(day("2027-03-01"))
		require.NoError(t, err, row.name)
		for _, f := range s.Weeks[0].Food {
			if f.Age == "froglets" {
				assert.Equal(t, row.want, f.Animals, row.name)
			}
		}
	}
}

// A profile that does not say what they eat leaves it open.
func TestFoodNotKnown(t *testing.T) {
	s, err := room(t, basic).Season(day("2027-01-01"))
	require.NoError(t, err)
	assert.Empty(t, s.Food)
	for _, w := range s.Weeks {
		for _, f := range w.Food {
			assert.Positive(t, f.Animals)
			assert.Zero(t, f.Feeders[1]+int(f.DryG[1]), f.Species)
		}
	}
}
