package breedingplan_test

import (
	"errors"
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/breedingplan"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// small is a line of five grown animals: two couples that are unrelated, and a daughter of the first.
func small() *breedingplan.Stock {
	p, err := pedigree.New([]pedigree.Record{
		{ID: "Quill"}, {ID: "Sedge"}, {ID: "Moss"}, {ID: "Fenna"}, {ID: "Ottilie", Sire: "Quill", Dam: "Sedge"},
	})
	if err != nil {
		panic(err)
	}
	on, _ := civil.Parse("2027-03-01")
	s := &breedingplan.Stock{
		Terms:   pairing.Terms{Pedigree: p, On: on, Rules: pairing.DefaultRules()},
		Species: []string{"hyla-cinerea"},
		MayGo:   func(int) ([]string, civil.Date) { return nil, 0 },
	}
	for i, sex := range []pairing.Sex{pairing.Male, pairing.Female, pairing.Male, pairing.Female, pairing.Female} {
		s.Animals = append(s.Animals, breedingplan.Animal{
			Animal: pairing.Animal{ID: p.ID(i), Node: i, Species: "hyla-cinerea", Sex: sex},
			Here:   true,
		})
	}
	return s
}

func ExampleStock_Plan() {
	plan, err := small().Plan(breedingplan.Wish{Pairings: 1, Weight: 0.1})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, species := range plan.Species {
		for _, p := range species.Pairs {
			fmt.Printf("%s × %s, hold back %d: %s\n", p.Male, p.Female, p.Young, p.Reason)
		}
		for _, l := range species.LeftOut {
			fmt.Printf("not %s: %s\n", l.ID, l.Reason)
		}
	}
	// Output:
	// Moss × Fenna, hold back 2: no known ancestor in common; by rarity 1 of 2 males and 1 of 3 females
	// not Quill: others do more for the line: 2 of 2 males by rarity (mean kinship 0.15)
	// not Sedge: others do more for the line: 2 of 3 females by rarity (mean kinship 0.15)
	// not Ottilie: others do more for the line: 3 of 3 females by rarity (mean kinship 0.2)
}

func ExampleNoPlanError() {
	stock := small()
	stock.Animals[2].HealthHolds = []pairing.Hold{{}} // Moss, until it is lifted
	_, err := stock.Plan(breedingplan.Wish{Without: [][2]string{{"Sedge", ""}, {"Fenna", ""}}})
	var none *breedingplan.NoPlanError
	fmt.Println(errors.As(err, &none), err)
	// Output:
	// true there is no plan for hyla-cinerea: left out as asked; health; inbreeding; left out as asked alone refuses 4 of 6 pairs
}

func ExampleStock_Exchange() {
	e, err := small().Exchange(breedingplan.Wish{}, breedingplan.Outsider{Name: "Nuria", Sex: pairing.Female, Sire: "Moss"})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, x := range e.Species[0].Animals {
		fmt.Printf("%s: from %.4f to %.4f, and with two young of it and %s to %.4f\n", x.What, e.Species[0].GeneDiversity, x.With, x.Mate, x.WithYoung)
	}
	// Output:
	// an unrelated animal: from 0.8600 to 0.8889, and with two young of it and Moss to 0.8828
	// described; female; sire Moss, dam unrelated: from 0.8600 to 0.8750, and with two young of it and Quill to 0.8594
}
