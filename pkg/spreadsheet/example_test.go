package spreadsheet_test

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/spreadsheet"
)

func ExampleConvert() {
	table := "Tag;Species;Sex;Hatched;Father\nHC-1;Hyla cinerea;1.0;25.12.2023;\nHC-2;Hyla cinerea;;03/04/2025;HC-1\n"
	r := spreadsheet.Convert([]byte(table), spreadsheet.Options{File: "frogs.csv"})
	fmt.Print(string(r.YAML))
	for _, p := range r.Problems {
		fmt.Println(p)
	}
	// Output:
	// # Made from a table by spawnwright init; see docs/file.md for all that can stand here.
	// animals:
	//   - {id: HC-1, species: hyla-cinerea, sex: male, hatched: 2023-12-25}
	//   - {id: HC-2, species: hyla-cinerea, sire: HC-1}
	// frogs.csv:3:20: warning: Hatched "03/04/2025" could be 2025-04-03 or 2025-03-04: it is left out; say --dates day-first or --dates month-first
}
