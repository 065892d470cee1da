package pairing_test

import (
	"fmt"
	"time"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

func lindenhof() *pedigree.Pedigree {
	p, err := pedigree.New([]pedigree.Record{
		{ID: "AC-01"},
		{ID: "AC-02"},
		{ID: "AC-03"},
		{ID: "AC-04", Sire: "AC-01", Dam: "AC-02"},
		{ID: "AC-05", Sire: "AC-01", Dam: "AC-03"},
	})
	if err != nil {
		panic(err)
	}
	return p
}

// Half sibs, and the male has only just left the water.
func ExampleJudge() {
	const species = "agalychnis-callidryas"
	terms := pairing.Terms{
		Pedigree: lindenhof(),
		Needs:    map[string]pairing.Needs{species: {Male: pairing.Maturity{AgeDays: 300}, Female: pairing.Maturity{AgeDays: 540}}},
		Rules:    pairing.DefaultRules(),
		On:       civil.Of(2027, time.March, 1),
	}
	male := pairing.Animal{
		ID: "AC-04", Node: 3, Species: species, Sex: pairing.Male, OutOfWater: civil.Of(2026, time.December, 1),
	}
	female := pairing.Animal{
		ID: "AC-05", Node: 4, Species: species, Sex: pairing.Female, OutOfWater: civil.Of(2025, time.June, 20),
	}
	verdict := pairing.Judge(terms, []pairing.Animal{male}, []pairing.Animal{female})
	fmt.Println("allowed:", verdict.Allowed())
	for _, f := range verdict.Findings {
		if f.Severity == pairing.Refuse {
			fmt.Printf("%s: %s, until %s\n", f.Rule, f.Message, f.From)
		}
	}
	// Output:
	// allowed: false
	// age: AC-04 is too young: 90 days (out of the water 2026-12-01), and a male needs 300, until 2027-09-27
	// inbreeding: the young of AC-04 and AC-05 would be inbred to 0.125; refused from 0.125, until unknown
}

// What holding back four young of half sibs would do to a set of five.
func ExampleBreedingSet_Effect() {
	p := lindenhof()
	set := pairing.NewBreedingSet(p, []int{0, 1, 2, 3, 4})
	effect := set.Effect([]int{3}, []int{4}, 4, pedigree.OneUnknown)
	fmt.Printf("inbreeding of the young %.4f\n", effect.YoungInbreeding)
	for _, a := range effect.Shared {
		fmt.Printf("  through %s %.4f\n", p.ID(a.Animal), a.Share)
	}
	fmt.Printf("gene diversity %.4f -> %.4f\n", effect.GeneDiversity, effect.WithYoung)
	// Output:
	// inbreeding of the young 0.1250
	//   through AC-01 0.1250
	// gene diversity 0.8100 -> 0.7562
}

// The best pairs stand first.
func ExampleRank() {
	const species = "agalychnis-callidryas"
	p := lindenhof()
	terms := pairing.Terms{Pedigree: p, Rules: pairing.DefaultRules(), On: civil.Of(2027, time.March, 1)}
	animal := func(node int, sex pairing.Sex) pairing.Animal {
		return pairing.Animal{ID: p.ID(node), Node: node, Species: species, Sex: sex}
	}
	males := []pairing.Animal{animal(0, pairing.Male), animal(3, pairing.Male)}
	females := []pairing.Animal{animal(1, pairing.Female), animal(2, pairing.Female), animal(4, pairing.Female)}
	for _, pair := range pairing.Rank(terms, pairing.NewBreedingSet(p, []int{0, 1, 2, 3, 4}), males, females) {
		fmt.Printf("%s x %s: allowed %t, inbreeding %.4f\n", pair.Male, pair.Female, pair.Verdict.Allowed(), pair.Verdict.YoungInbreeding)
	}
	// Output:
	// AC-01 x AC-02: allowed true, inbreeding 0.0000
	// AC-01 x AC-03: allowed true, inbreeding 0.0000
	// AC-04 x AC-03: allowed true, inbreeding 0.0000
	// AC-04 x AC-05: allowed false, inbreeding 0.1250
	// AC-04 x AC-02: allowed false, inbreeding 0.2500
	// AC-01 x AC-05: allowed false, inbreeding 0.2500
}

func ExampleChoice_Best() {
	p, err := pedigree.New([]pedigree.Record{
		{ID: "Bram"},
		{ID: "Falk"},
		{ID: "Greta"},
		{ID: "Hilde"},
		{ID: "Ida", Sire: "Bram", Dam: "Greta"},
	})
	if err != nil {
		panic(err)
	}
	const bram, falk, greta, hilde, ida = 0, 1, 2, 3, 4
	pair := func(sire, dam int) pairing.Option {
		return pairing.Option{Sires: []int{sire}, Dams: []int{dam}, MinYoung: 1, MaxYoung: 3}
	}
	best := pairing.Choice{
		Pool:    pairing.NewBreedingSet(p, []int{bram, falk, greta, hilde, ida}),
		Options: []pairing.Option{pair(bram, hilde), pair(falk, hilde), pair(bram, greta), pair(falk, ida)},
		Limits: []pairing.Limit{
			{Name: "Hilde spawns once", Options: []int{0, 1}, AtMost: 1},
			{Name: "one rain chamber", Options: []int{0, 1, 2, 3}, AtMost: 1},
		},
		Young:  2,
		Weight: 0.1,
	}.Best(pairing.Effort{Plans: 2})
	for _, plan := range best.Plans {
		fmt.Printf("option %d, gene diversity %.4f\n", plan.Picks[0].Option, 1-plan.MeanKinship)
	}
	fmt.Println("proven:", best.Proven)
	// Output:
	// option 1, gene diversity 0.8571
	// option 0, gene diversity 0.8469
	// proven: true
}
