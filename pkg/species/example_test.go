package species_test

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// A built-in profile, with the source of each value.
func ExampleFind() {
	p, ok := species.Find("xenopus-laevis")
	fmt.Println(p.Name, ok)
	for _, row := range p.Rows() {
		if row.Section == "development: metamorph" && row.Key != "note" {
			fmt.Printf("%s: %s (%s)\n", row.Key, row.Value, row.Source)
		}
	}
	// Output:
	// Xenopus laevis true
	// days: 12 / 14 / 17 days (Nieuwkoop & Faber 1994, Normal Table of Xenopus laevis, at 22 to 24; spread from memory)
	// at_c: 22 to 24 °C (Nieuwkoop & Faber 1994, Normal Table of Xenopus laevis, at 22 to 24; spread from memory)
	// law: Q10 3 at 17.5 °C, 2.5 at 23 °C, 1.6 at 28 °C (Moore 1939, Ecology 20, and Johnson 1964, thesis, Oregon (eggs of ranids, rounded); that it holds here from memory)
	// covers_c: 19 to 26 °C (from memory)
	// minutes_a_day: 15 minutes a day (common practice, no source)
	// survival: 85 % (from memory)
}

// A keeper's own times in place of the built-in ones, and a slip of the finger.
func ExampleFromMapping() {
	doc := strictyaml.Parse("collection.yaml", []byte(`
use: agalychnis-callidryas
development: {tadpole: {days: [48, 60, 80], at_c: 25}}
sale: {lenght_mm: 26}
`))
	p := species.FromMapping(doc.Mapping(doc.Root, "a species"))
	tadpole, _ := p.Step(species.Tadpole)
	fmt.Println(tadpole.Days.P50, tadpole.AtC.Middle(), tadpole.Days.Source)
	for _, d := range doc.Problems() {
		fmt.Println(d)
	}
	// Output:
	// 60 25 the keeper's file
	// collection.yaml:4:8: unknown key "lenght_mm" in sale; did you mean "length_mm"?
}
