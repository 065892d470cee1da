package collection_test

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
)

const shelf = `
animals:
  - {id: AC-01, name: Bram, species: agalychnis-callidryas, sex: male}
  - {id: AC-02, name: Wilma, species: agalychnis-callidryas, sex: female, weight_g: 12}
  - {id: AC-11, clutch: C-26-03}
clutches:
  - {id: C-26-03, laid: 2026-02-14, dam: AC-02, sire: AC-01, eggs: 43}
diary:
  - {on: 2026-02-21, clutch: C-26-03, saw: hatched, count: 38}
  - {on: 2026-03-30, animal: AC-02, weight_g: 12.4}
`

func ExampleRead() {
	c, problems := collection.Read("collection.yaml", []byte(shelf))
	fmt.Println(len(problems), "problems")

	young, _ := c.Animal("AC-11")
	fmt.Println(young.Species, young.Sires, young.Dams, young.Hatched)

	on := civil.Of(2026, 4, 1)
	weight, _ := c.Weight("AC-02", on)
	fmt.Println(weight.Value, "g on", weight.On)
	for _, look := range c.Looks("C-26-03") {
		fmt.Println(look.On, look.Saw)
	}
	// Output:
	// 0 problems
	// agalychnis-callidryas [AC-01] [AC-02] 2026-02-21
	// 12.4 g on 2026-03-30
	// 2026-02-21 hatched
}

func ExampleRead_problems() {
	_, problems := collection.Read("collection.yaml", []byte(`
animals:
  - {id: Bram, species: hyla-cinerea, sex: male, wieght_g: 7}
  - {id: Brama, species: hyla-cinerea, sex: female}
clutches:
  - {id: K, laid: 2027-02-30, dam: Brama, sire: Brama}
`))
	for _, p := range problems {
		fmt.Println(p)
		fmt.Print(p.Picture())
	}
	// Output:
	// collection.yaml:3:50: unknown key "wieght_g" in an animal; did you mean "weight_g"?
	//     3 |   - {id: Bram, species: hyla-cinerea, sex: male, wieght_g: 7}
	//       |                                                  ^
	// collection.yaml:6:19: laid: "2027-02-30" is not a date: 2027-02 has days 01 to 28; check the day
	//     6 |   - {id: K, laid: 2027-02-30, dam: Brama, sire: Brama}
	//       |                   ^
	// collection.yaml:6:49: sire "Brama" of clutch "K" is recorded as female (line 4); did you mean "Bram"?
	//     6 |   - {id: K, laid: 2027-02-30, dam: Brama, sire: Brama}
	//       |                                                 ^
}
