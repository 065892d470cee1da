package parentage_test

import (
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/parentage"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

func ExampleRead() {
	const text = "Animal;Father;Mother;tub\nIsa;Odo;unknown;4\nBea;Odo;Isa;2\n"
	table, err := parentage.Read(strings.NewReader(text), parentage.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, w := range table.Warnings {
		fmt.Println("warning:", w)
	}
	p, err := pedigree.New(table.Records)
	if err != nil {
		fmt.Println(table.Locate(err))
		return
	}
	bea, _ := p.Index("Bea")
	fmt.Println("Bea is inbred to", p.Inbreeding(bea))
	// Output:
	// warning: 2:1: 1 parent has no row of its own and counts as a founder: "Odo"; look whether it is spelt right, or add a row
	// Bea is inbred to 0.25
}

func ExampleError() {
	const text = "ring,sire,dam\n17,3,4\n18,4,3\n17,5,\n"
	_, err := parentage.Read(strings.NewReader(text), parentage.Options{Columns: parentage.Columns{ID: "ring"}})
	fmt.Println(err)
	// Output:
	// parentage: 3:1: "4" is the sire of "18" and also a dam on line 2; correct one of them, or leave the parent empty if this stands for an unknown one (any-sex)
	// 3:1: "3" is the dam of "18" and also a sire on line 2; correct one of them, or leave the parent empty if this stands for an unknown one (any-sex)
	// 4:1: "17" has sire "5" and dam unknown here, and sire "3" and dam "4" on line 2; keep the right one
}
