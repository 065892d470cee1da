package development_test

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// leafFrog is an invented species.
func leafFrog() *species.Profile {
	step := func(name species.StepName, p10, p50, p90, survival float64) species.Step {
		return species.Step{
			Name:     name,
			Days:     species.Percentiles{P10: p10, P50: p50, P90: p90, Source: "invented"},
			Survival: species.Number{Value: survival, Source: "invented"},
		}
	}
	return &species.Profile{ID: "leaf-frog", Development: []species.Step{
		step(species.Egg, 6, 7, 9, 0.8),
		step(species.Hatchling, 1, 2, 3, 0.95),
		step(species.Tadpole, 48, 60, 80, 0.7),
		step(species.Metamorph, 5, 7, 10, 0.85),
		step(species.GrowOut, 40, 56, 75, 0.9),
	}}
}

// A clutch that hatched on the eighth day and has tadpoles without front legs
// after ten weeks.
func ExampleModel_Outlook_looks() {
	model, err := development.NewModel(leafFrog())
	if err != nil {
		fmt.Println(err)
		return
	}
	laid := civil.Of(2027, 2, 14)
	outlook := model.Outlook(development.Clutch{Laid: laid, Looks: []development.Look{
		{Stage: development.Hatched, On: laid.Add(8), Kind: development.Reached},
		{Stage: development.FrontLegs, On: laid.Add(70), Kind: development.NotYet},
	}}, nil)
	for _, e := range outlook.All() {
		fmt.Printf("%-12v %v\n", e.Stage, e.Window)
	}
	// Output:
	// hatched      2027-02-22
	// feeding      2027-02-23 / 2027-02-24 / 2027-02-25
	// hind-legs    2027-03-03 / 2027-03-09 / 2027-03-17
	// toes         2027-04-04 / 2027-04-16 / 2027-05-02
	// front-legs   2027-04-27 / 2027-05-06 / 2027-05-23
	// out-of-water 2027-05-05 / 2027-05-14 / 2027-06-01
	// eating       2027-05-10 / 2027-05-19 / 2027-06-06
	// sale-ready   2027-06-26 / 2027-07-17 / 2027-08-13
}

// Doubt is part of the result.
func ExampleModel_Outlook_doubt() {
	model, err := development.NewModel(leafFrog())
	if err != nil {
		fmt.Println(err)
		return
	}
	laid := civil.Of(2027, 2, 14)
	outlook := model.Outlook(development.Clutch{Laid: laid, Looks: []development.Look{
		{Stage: development.Hatched, On: laid.Add(18), Kind: development.Reached},
		{Stage: development.Feeding, On: laid.Add(10), Kind: development.By},
	}}, nil)
	fmt.Println(outlook.Events[0].Window)
	for _, w := range outlook.Warnings {
		fmt.Println(w.Looks, w.Text)
	}
	// Output:
	// 2027-03-04
	// [1 0] feeding by 2027-02-24 contradicts hatched on 2027-03-04: it is left out
	// [0] hatched came 18 days after laid, where the profile expects 6 to 9 days (10th to 90th percentile): what was seen has a chance under 0.1 %, so the step lengths, the temperature or a date is in doubt
}

// How many froglets to expect of a hundred eggs, and when.
func ExampleModel_Survival() {
	model, err := development.NewModel(leafFrog())
	if err != nil {
		fmt.Println(err)
		return
	}
	sale, _ := model.Outlook(development.Clutch{Laid: civil.Of(2027, 2, 14)}, nil).Event(development.SaleReady)
	days := sale.Dist
	share, _ := model.Survival(development.Laid, development.SaleReady)
	fmt.Printf("%.0f of 100, the likely day is %d, with a chance of 80 %% by day %d\n",
		100*share, days.Quantile(0.5), days.Quantile(0.8))
	// Output:
	// 41 of 100, the likely day is 134, with a chance of 80 % by day 155
}

// Two steps one after the other: the median of the sum is later than the sum
// of the medians, 17.
func ExampleDistribution_Plus() {
	egg, err := development.FromPercentiles(6, 7, 12)
	if err != nil {
		fmt.Println(err)
		return
	}
	metamorph, err := development.FromPercentiles(9, 10, 18)
	if err != nil {
		fmt.Println(err)
		return
	}
	both := egg.Plus(metamorph)
	fmt.Println(both.Quantile(0.1), both.Quantile(0.5), both.Quantile(0.9))
	// Output:
	// 16 19 27
}

func ExampleDistribution_After() {
	tadpole, err := development.FromPercentiles(35, 45, 60)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("at first: likely day %d, mean %.1f\n", tadpole.Quantile(0.5), tadpole.Mean())
	if left, ok := tadpole.After(50); ok {
		fmt.Printf("still a tadpole on day 50: likely day %d, mean %.1f\n", left.Quantile(0.5), left.Mean())
	}
	// Output:
	// at first: likely day 45, mean 46.5
	// still a tadpole on day 50: likely day 57, mean 58.7
}

func ExampleFromGosner() {
	fmt.Println(development.FromGosner(42))
	// Output:
	// front-legs
}

// What the keeper's own clutches teach, what the egg tells of the tadpole, and
// what each date rests on.
func ExampleModel_Outlook() {
	model, err := development.NewModel(leafFrog())
	if err != nil {
		fmt.Println(err)
		return
	}
	laid := civil.Of(2026, 3, 1)
	var own []development.Clutch
	for _, legs := range []int{78, 84, 81} {
		own = append(own, development.Clutch{Laid: laid, Looks: []development.Look{
			{Stage: development.Feeding, On: laid.Add(9), Kind: development.Reached},
			{Stage: development.FrontLegs, On: laid.Add(legs), Kind: development.Reached},
		}})
	}
	now := civil.Of(2027, 2, 14)
	outlook := model.Outlook(development.Clutch{
		Laid:  now,
		Looks: []development.Look{{Stage: development.Hatched, On: now.Add(8), Kind: development.Reached}},
	}, model.Learn(own))
	legs, _ := outlook.Event(development.FrontLegs)
	fmt.Printf("front legs %v\n", legs.Window)
	fmt.Printf("rests on %v\n", legs.Basis)
	// Output:
	// front legs 2027-04-20 / 2027-05-04 / 2027-05-23
	// rests on your 3 clutches, the book (counts as 4 clutches) and 1 look
}
