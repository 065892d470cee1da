package strictyaml_test

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

func Example() {
	doc := strictyaml.Parse("frogs.yaml", []byte("id: 007\nsex: mal\nwieght: 0.4 oz\n"))
	if doc.Root == nil {
		fmt.Println(doc.Problems().Err())
		return
	}
	frog := doc.Mapping(doc.Root, "a frog")
	fmt.Println("id", frog.Text("id"))
	frog.Choice("sex", "male", "female")
	frog.Quantity("weight", strictyaml.Grams(), 0.01, 2000)
	frog.Done()
	for _, problem := range doc.Problems() {
		fmt.Println(problem)
		fmt.Print(problem.Picture())
	}
	// Output:
	// id 007
	// frogs.yaml:2:6: sex cannot be "mal"; did you mean "male"?
	//     2 | sex: mal
	//       |      ^
	// frogs.yaml:3:1: unknown key "wieght" in a frog; did you mean "weight"?
	//     3 | wieght: 0.4 oz
	//       | ^
}

func ExampleDiagnostics_Err() {
	doc := strictyaml.Parse("frogs.yaml", []byte("a: 1\na: 2\nb: *x\n"))
	fmt.Println(doc.Problems().Err())
	// Output: frogs.yaml:3: aliases (*x) are not used in this file; write the values out
}

func ExampleNearest() {
	fmt.Println(strictyaml.Nearest("Brama", []string{"Ada", "Bram"}))
	// Output: Bram
}
