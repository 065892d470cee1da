package kin_test

import (
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/parentage"
)

// A plain table of parents needs no file of a keeper.
func ExampleReadTable() {
	a, err := kin.ReadTable(strings.NewReader("id,sire,dam\nKai,Anton,Dora\nLea,Anton,Ella\n"), parentage.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	pair, err := a.Pair("Kai", "Lea")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(pair.Relationship, pair.Kinship)
	// Output: half siblings through Anton 0.125
}
