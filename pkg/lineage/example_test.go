package lineage_test

import (
	"fmt"
	"regexp"

	"github.com/spawnwright/spawnwright/pkg/lineage"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// A clutch with one of two males as its father.
func ExampleDraw() {
	p, err := pedigree.New([]pedigree.Record{
		{ID: "AC-01"},
		{ID: "AC-02"},
		{ID: "AC-04"},
		{ID: "AC-11", Sire: "fathers of C-26-03", Dam: "AC-02"},
	}, pedigree.Group{
		ID:         "fathers of C-26-03",
		Candidates: []pedigree.Candidate{{ID: "AC-01"}, {ID: "AC-04"}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	animals := []lineage.Animal{
		{Name: "Quill", Sex: lineage.Male},
		{Name: "Sedge", Sex: lineage.Female},
		{Name: "Bram", Sex: lineage.Male},
		{Clutch: "C-26-03"},
	}
	text := lineage.Draw(p, animals, lineage.Everything()).DOT()
	// The text is for Graphviz: dot -Tsvg. These are the words in the picture.
	for _, label := range regexp.MustCompile(`\blabel="[^"]*"`).FindAllString(text, -1) {
		fmt.Println(label)
	}
	// Output:
	// label="Quill\nAC-01, male"
	// label="Sedge\nAC-02, female"
	// label="Bram\nAC-04, male"
	// label="AC-11\nsex unknown\nF 0"
	// label="\ndouble border: founder, no parent known  |  thick border: male  |  thin border: female\ndotted border: sex unknown  |  F and a darker ground: inbreeding coefficient\ndashed line: one of several possible parents"
	// label="C-26-03"
}
