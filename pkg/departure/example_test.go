package departure_test

import (
	"fmt"
	"time"

	"github.com/spawnwright/spawnwright/pkg/breeders"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/departure"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/rearing"
)

// Which young may leave, and what has to be looked at before the others do?
func ExampleRegister_Ready() {
	c, problems := collection.Read("collection.yaml", []byte(`
species:
  - {id: plain, name: Rana plana, source: invented, sale: {age_days: 40, length_mm: 20}, quarantine_days: 30, maturity: {male: {age_days: 300}, female: {age_days: 300}}}
animals:
  - {id: Kai, species: plain, out_of_water: 2027-03-01, length_mm: 22}
  - {id: Lea, species: plain, out_of_water: 2027-05-01, length_mm: 21}
  - {id: Moss, species: plain, out_of_water: 2027-03-01, length_mm: 23}
diary:
  - {on: 2027-04-20, animal: Kai, ate: true}
  - {on: 2027-05-20, animal: Lea, ate: true}
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
	register := &departure.Register{
		Collection: c, Ancestry: ancestry,
		Rearing: rearing.New(c, ancestry, models), Breeders: breeders.New(c, ancestry, nil),
	}
	report, err := register.Ready(civil.Of(2027, time.June, 1), departure.Wish{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, y := range report.Young {
		fmt.Println(y.ID, y.Ready, y.From, y.Held, y.Ask)
	}
	// Output:
	// Kai true 2027-06-01 [] []
	// Lea false 2027-06-10 [out of water for 31 days, at least 40 are wanted: from 2027-06-10] []
	// Moss false unknown [] [was it seen eating, and how often? (at least 1)]
}
