package rearing_test

import (
	"fmt"
	"strings"
	"time"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/rearing"
)

// When does a clutch reach what is ahead of it, and what does it need by then?
func ExampleRearing_Report() {
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
clutches:
  - {id: C-27-01, laid: 2027-02-10, dam: Ulla, sire: Bram, eggs: 40}
diary:
  - {on: 2027-02-17, clutch: C-27-01, saw: feeding, count: 36}
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
	models := make(map[string]*development.Model)
	for _, p := range c.Species {
		if models[p.ID], err = rearing.ModelOf(p); err != nil {
			fmt.Println(err)
			return
		}
	}
	report, err := rearing.New(c, ancestry, models).Report("C-27-01", civil.Of(2027, time.March, 26))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range report.Stages {
		if s.Ahead() {
			fmt.Println(s.Stage, s.Window)
		}
	}
	for _, d := range report.Due {
		what, _, _ := strings.Cut(d.What, ":")
		fmt.Println(d.On, what)
	}
	// Output:
	// hind-legs 2027-02-21 / 2027-02-25 / 2027-03-02
	// toes 2027-03-13 / 2027-03-21 / 2027-03-31
	// front-legs 2027-03-28 / 2027-04-04 / 2027-04-12
	// out-of-water 2027-04-01 / 2027-04-08 / 2027-04-17
	// eating 2027-04-06 / 2027-04-13 / 2027-04-22
	// sale-ready 2027-05-26 / 2027-06-05 / 2027-06-17
	// 2027-03-26 begin to feed
	// 2027-03-18 start the first foods
	// 2027-03-21 a way out of the water
	// 2027-03-25 bins for froglets
	// 2027-03-28 no food while the tail goes
}
