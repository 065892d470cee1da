package diversity_test

import (
	"encoding/json"
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/diversity"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// The living animals are two pairs of full sibs; Odo, Lene and Mara are gone.
func room() (p *pedigree.Pedigree, living []int) {
	p, err := pedigree.New([]pedigree.Record{
		{ID: "Odo"},
		{ID: "Lene"},
		{ID: "Mara"},
		{ID: "Bram", Sire: "Odo", Dam: "Lene"},
		{ID: "Isa", Sire: "Odo", Dam: "Lene"},
		{ID: "Juna", Sire: "Bram", Dam: "Mara"},
		{ID: "Tess", Sire: "Bram", Dam: "Mara"},
	})
	if err != nil {
		panic(err)
	}
	return p, []int{3, 4, 5, 6}
}

func ExampleSummarise() {
	p, living := room()
	summary := diversity.Summarise(p, living, diversity.Drops{Count: 1000, Seed: 1})
	fmt.Printf("gene diversity %.3f\n", summary.GeneDiversity)
	fmt.Printf("as good as %.2f founders, or %.2f ancestors\n", *summary.FounderEquivalents, *summary.AncestorEquivalents)
	fmt.Printf("genomes by kinship %.2f\n", *summary.FounderGenomeEquivalents)
	fmt.Println("inbreeding so far:", summary.EffectiveSize != nil)
	text, _ := json.Marshal(summary)
	fmt.Println(json.Valid(text))
	// Output:
	// gene diversity 0.719
	// as good as 2.91 founders, or 2.67 ancestors
	// genomes by kinship 1.78
	// inbreeding so far: false
	// true
}

func ExampleFounderContributions() {
	p, living := room()
	for _, c := range diversity.FounderContributions(p, living) {
		fmt.Println(p.ID(c.Founder.Animal), c.Share)
	}
	// Output:
	// Odo 0.375
	// Lene 0.375
	// Mara 0.25
}

func ExampleAncestorContributions() {
	p, living := room()
	for _, a := range diversity.AncestorContributions(p, living) {
		fmt.Println(p.ID(a.Animal), a.Marginal)
	}
	// Output:
	// Bram 0.5
	// Mara 0.25
	// Isa 0.25
}

// What if Isa had four young with a new male, and Bram went to another room?
func ExampleWhatIf() {
	p, living := room()
	p, err := p.Grow([]pedigree.Record{{ID: "Pelle"}})
	if err != nil {
		fmt.Println(err)
		return
	}
	now := diversity.WhatIf(p, living, diversity.Change{})
	then := diversity.WhatIf(p, living, diversity.Change{
		Born: []diversity.Brood{{Sire: 7, Dam: 4, Count: 4}},
		Left: []int{3},
	})
	fmt.Printf("%d animals, gene diversity %.3f\n", now.Animals, now.GeneDiversity)
	fmt.Printf("%d animals, gene diversity %.3f\n", then.Animals, then.GeneDiversity)
	// Output:
	// 4 animals, gene diversity 0.719
	// 7 animals, gene diversity 0.786
}

func ExampleDrop() {
	p, living := room()
	drop := diversity.Drop(p, living, diversity.Drops{Count: 20_000, Seed: 1})
	for _, f := range drop.Founders {
		fmt.Printf("%s: %.1f of 2 genes are still there\n", p.ID(f.Founder.Animal), 2*f.Retained)
	}
	fmt.Printf("genomes by retention %.1f\n", drop.FounderGenomeEquivalents())
	// Output:
	// Odo: 1.5 of 2 genes are still there
	// Lene: 1.5 of 2 genes are still there
	// Mara: 1.5 of 2 genes are still there
	// genomes by retention 2.2
}

func ExamplePartialInbreeding() {
	p, err := pedigree.New([]pedigree.Record{
		{ID: "Odo"},
		{ID: "Lene"},
		{ID: "Bram", Sire: "Odo", Dam: "Lene"},
		{ID: "Isa", Sire: "Odo"}, // her mother is unknown
		{ID: "Juna", Sire: "Bram", Dam: "Isa"},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range diversity.PartialInbreeding(p, []int{4}) {
		fmt.Println(p.ID(c.Founder.Animal), c.Share)
	}
	// Output:
	// Odo 0.125
}
