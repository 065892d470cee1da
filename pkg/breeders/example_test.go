package breeders_test

import (
	"fmt"
	"time"

	"github.com/spawnwright/spawnwright/pkg/breeders"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/pairing"
)

// What do the rules say of a pairing on its first night of rain?
func ExampleBreeders_Judge() {
	c, problems := collection.Read("collection.yaml", []byte(`
animals:
  - {id: Bram, species: hyla-cinerea, sex: male}
  - {id: Ulla, species: hyla-cinerea, sex: female}
  - {id: Resi, species: hyla-cinerea, sex: female, sire: Bram, dam: Ulla, out_of_water: 2024-06-01}
pairings:
  - {id: P-27-01, dam: Resi, sire: Bram, start: 2027-02-01}
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
	b := breeders.New(c, ancestry, nil)
	planned, _ := c.Pairing("P-27-01")
	rain, today := civil.Of(2027, time.March, 15), civil.Of(2027, time.January, 10)
	verdict := b.Judge(ancestry.Above([]string{"Bram", "Resi"}), planned, rain, today)
	fmt.Println("allowed:", verdict.Allowed())
	for _, f := range verdict.Findings {
		if f.Severity == pairing.Refuse {
			fmt.Println(f.Message)
		}
	}
	// Output:
	// allowed: false
	// the young of Bram and Resi would be inbred to 0.25; refused from 0.125
}
