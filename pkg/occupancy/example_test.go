package occupancy_test

import (
	"fmt"
	"math"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/occupancy"
)

// Two clutches in a room with six tubs. Each is known by the days on which it may
// hatch and leave the water, at three paces, and by the tubs that so many tadpoles
// need.
func Example() {
	first := date("2027-03-01")
	clutch := func(id string, hatch civil.Date) occupancy.Clutch {
		var paces []occupancy.Pace
		for _, stay := range []int{45, 55, 70} { // days in the water: fast, usual, slow
			paces = append(paces, occupancy.Pace{Chance: 1, Stays: []occupancy.Hold{
				{Resource: 0, First: hatch.Add(stay / 20), Last: hatch.Add(stay)},
			}})
		}
		var sizes []occupancy.Size
		for _, tadpoles := range []float64{90, 150, 230} { // few, usual, many
			sizes = append(sizes, occupancy.Size{Chance: 1, Places: []int{int(math.Ceil(tadpoles / 60))}})
		}
		return occupancy.Clutch{ID: id, Courses: occupancy.Courses(0.8, paces, sizes)} // eggs in 4 of 5 attempts
	}
	season := occupancy.Season{
		First: first, Days: 150,
		Resources: []occupancy.Resource{{Name: "tubs", Count: 6}},
		Clutches:  []occupancy.Clutch{clutch("P-1", first.Add(10)), clutch("P-2", first.Add(58))},
	}
	options := occupancy.Options{Seasons: 20_000, Seed: 1, Workers: 2}

	risk, err := occupancy.Assess(season, options)
	if err != nil {
		fmt.Println(err)
		return
	}
	tubs := risk.Resources[0]
	fmt.Printf("tubs run out in one season in %.0f, worst on %s\n", 1/tubs.Short.Value(), tubs.Worst)
	fmt.Printf("%d more tubs make it less than one in 20\n", tubs.More(0.05))

	moved, err := occupancy.TryMoves(season, options, []occupancy.Move{{Clutch: 1, Days: 7}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("P-2 a week later: one in %.0f\n", 1/moved[0].Resources[0].Short.Value())
	// Output:
	// tubs run out in one season in 7, worst on 2027-05-01
	// 1 more tubs make it less than one in 20
	// P-2 a week later: one in 14
}

func date(text string) civil.Date {
	d, err := civil.Parse(text)
	if err != nil {
		panic(err)
	}
	return d
}
