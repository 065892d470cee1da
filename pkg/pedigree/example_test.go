package pedigree_test

import (
	"errors"
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

func ExampleNew() {
	p, err := pedigree.New([]pedigree.Record{
		{ID: "Juna", Sire: "Bram", Dam: "Isa"}, // the order of records does not matter
		{ID: "Bram", Sire: "Odo", Dam: "Lene"},
		{ID: "Isa", Sire: "Odo", Dam: "Mara"},
		{ID: "Odo"},
		{ID: "Lene"},
		{ID: "Mara"},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	juna, _ := p.Index("Juna")
	fmt.Println("F of Juna:", p.Inbreeding(juna))
	// Output:
	// F of Juna: 0.125
}

// Two males were in the rain chamber; nobody knows which of them is the father.
func ExampleNew_groupSpawning() {
	records := []pedigree.Record{
		{ID: "Bram"},
		{ID: "Odo"},
		{ID: "Isa"},
		{ID: "y1", Sire: "males", Dam: "Isa"},
		{ID: "y2", Sire: "males", Dam: "Isa"},
	}
	males := pedigree.Group{ID: "males", Candidates: []pedigree.Candidate{{ID: "Bram"}, {ID: "Odo"}}}
	for _, males.Kind = range []pedigree.GroupKind{pedigree.OneUnknown, pedigree.Several} {
		p, err := pedigree.New(records, males)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: %v to each other, %v to Bram\n", males.Kind, p.Kinship(3, 4), p.Kinship(3, 0))
	}
	// Output:
	// one: 0.25 to each other, 0.125 to Bram
	// several: 0.1875 to each other, 0.125 to Bram
}

func ExampleNew_loop() {
	_, err := pedigree.New([]pedigree.Record{{ID: "Bram", Sire: "Odo"}, {ID: "Odo", Sire: "Bram"}})
	var loop *pedigree.LoopError
	if errors.As(err, &loop) {
		fmt.Println(loop.Members)
	}
	// Output:
	// [Bram Odo]
}

func ExamplePedigree_SharedAncestors() {
	p, err := pedigree.New([]pedigree.Record{
		{ID: "Odo"},
		{ID: "Lene"},
		{ID: "Mara"},
		{ID: "Bram", Sire: "Odo", Dam: "Lene"},
		{ID: "Isa", Sire: "Bram", Dam: "Mara"},
		{ID: "Tess", Sire: "Odo", Dam: "Mara"},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range p.SharedAncestors(4, 5) {
		fmt.Println(p.ID(s.Animal), s.Share)
	}
	fmt.Println("together", p.Kinship(4, 5))
	// Output:
	// Mara 0.125
	// Odo 0.0625
	// together 0.1875
}

func ExamplePedigree_MeanKinship() {
	p, err := pedigree.New([]pedigree.Record{
		{ID: "Odo"},
		{ID: "Lene"},
		{ID: "Mara"},
		{ID: "Bram", Sire: "Odo", Dam: "Lene"},
		{ID: "Isa", Sire: "Odo", Dam: "Lene"},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	living := []int{2, 3, 4}
	for _, i := range living {
		fmt.Printf("%s %.3f\n", p.ID(i), p.MeanKinship(living)[i])
	}
	fmt.Printf("gene diversity %.3f\n", p.GeneDiversity(living))
	// Output:
	// Mara 0.167
	// Bram 0.250
	// Isa 0.250
	// gene diversity 0.778
}

// Wild-caught animals from one pond, of which any two genes are copies of one with
// a chance of 5 %, and two sisters from a clutch that was found there.
func ExampleFromSource() {
	pond := pedigree.Group{ID: "pond", Kind: pedigree.Source, Kinship: 0.05}
	sire := pedigree.Group{ID: "sire of the clutch", Kind: pedigree.Source, Kinship: 0.5}
	dam := pedigree.Group{ID: "dam of the clutch", Kind: pedigree.Source, Kinship: 0.5}
	p, err := pedigree.New(pedigree.FromSource([]pedigree.Record{
		{ID: "Bram"},
		{ID: "Odo"},
		{ID: "Isa", Sire: sire.ID, Dam: dam.ID},
		{ID: "Lene", Sire: sire.ID, Dam: dam.ID},
	}, pond.ID), pond, sire, dam)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("Bram and Odo", p.Kinship(0, 1), "- the sisters", p.Kinship(2, 3))
	// Output:
	// Bram and Odo 0.05 - the sisters 0.25
}

func ExamplePedigree_Grow() {
	p, err := pedigree.New([]pedigree.Record{{ID: "Odo"}, {ID: "Lene"}, {ID: "Bram", Sire: "Odo", Dam: "Lene"}})
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err = p.Grow([]pedigree.Record{{ID: "Isa", Sire: "Bram", Dam: "Lene"}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("F of Isa:", p.Inbreeding(3))
	// Output:
	// F of Isa: 0.25
}
