package almanac_test

import (
	"fmt"
	"time"

	"github.com/spawnwright/spawnwright/pkg/almanac"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
)

// Which days of a planned pairing, and of the show that it is for, go into a calendar?
func ExampleSeason_Events() {
	c, problems := collection.Read("collection.yaml", []byte(`
animals:
  - {id: Ulla, species: hyla-cinerea, sex: female}
  - {id: Bram, species: hyla-cinerea, sex: male}
targets:
  - {name: autumn show, on: 2027-09-18, species: hyla-cinerea, froglets: 20}
pairings:
  - {id: P-27-01, dam: Ulla, sire: Bram, start: 2027-04-01}
`))
	if c == nil {
		fmt.Println(problems.Err())
		return
	}
	days := func(month time.Month, first, last int) civil.Span {
		return civil.Span{First: civil.Of(2027, month, first), Last: civil.Of(2027, month, last)}
	}
	season := almanac.Season{
		Collection: c, On: civil.Of(2027, time.February, 1),
		Pairings: []almanac.Pairing{{
			ID: "P-27-01", Species: "hyla-cinerea", Dams: []string{"Ulla"}, Sires: []string{"Bram"},
			Phases: []almanac.Phase{
				{Name: "conditioning", Span: days(time.April, 1, 30)},
				{Name: "rain", Span: days(time.May, 1, 5)},
			},
		}},
	}
	for _, e := range season.Events() {
		fmt.Println(e.Span.First, e.Key, e.Summary)
	}
	// Output:
	// 2027-04-01 pairing/P-27-01/conditioning P-27-01: conditioning begins (Ulla × Bram)
	// 2027-05-01 pairing/P-27-01/rain P-27-01: rain begins (Ulla × Bram)
	// 2027-05-06 pairing/P-27-01/over P-27-01: rain is over (Ulla × Bram)
	// 2027-09-18 target/autumn show autumn show: 20 froglets of hyla-cinerea wanted
	// 2027-09-16 target/autumn show/last parcel last day to hand over a parcel for autumn show
}
