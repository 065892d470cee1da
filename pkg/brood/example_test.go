package brood_test

import (
	"fmt"
	"time"

	"github.com/spawnwright/spawnwright/pkg/brood"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/rearing"
)

// How long after the first night of rain are young of a pairing ready, and how likely
// does one clutch bring fifteen?
func ExampleBroods_Of() {
	c, problems := collection.Read("collection.yaml", []byte(`
species:
  - id: example-frog
    name: Rana exempli
    breeding: {eggs_after_nights: [1, 2, 4], clutch_eggs: [30, 40, 55]}
    development:
      egg: {days: [5, 6, 8], at_c: 25, survival: 0.9}
      hatchling: {days: [2, 3, 4], at_c: 25, survival: 1}
      tadpole: {days: [42, 50, 62], at_c: 25, survival: 0.6}
      metamorph: {days: [4, 5, 7], at_c: 25, survival: 1}
      grow_out: {days: [55, 60, 70], at_c: 25, survival: 0.9}
animals:
  - {id: Bram, species: example-frog, sex: male}
  - {id: Ulla, species: example-frog, sex: female}
`))
	if c == nil {
		fmt.Println(problems.Err())
		return
	}
	ancestry, err := kin.Of(c)
	if err != nil {
		fmt.Println(err)
		return
	}
	breeding, models := make(map[string]*brood.Breeding), make(map[string]*development.Model)
	for _, p := range c.Species {
		b, err := brood.NewBreeding(p)
		if err != nil {
			fmt.Println(err)
			return
		}
		breeding[p.ID], models[p.ID] = b, b.Model
	}
	broods := brood.New(rearing.New(c, ancestry, models), breeding)
	b := broods.Of("example-frog", civil.Of(2027, time.January, 1))
	for _, s := range b.Stages {
		fmt.Println(s.Stage, s.Early, s.Likely, s.Late)
	}
	y, _ := b.Yield(15, 0, brood.InTime)
	fmt.Printf("fifteen in %.0f of 100 clutches\n", 100*y.Enough())
	// Output:
	// laid 1 2 4
	// hatched 7 8 11
	// feeding 9 11 15
	// front-legs 52 62 75
	// out-of-water 57 67 81
	// sale-ready 114 128 148
	// fifteen in 73 of 100 clutches
}
