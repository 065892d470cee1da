package collection_test

import (
	"fmt"
	"strings"
	"testing"

	"go.yaml.in/yaml/v3"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
)

// large gives a collection of so many animals, two to a clutch that is over, and
// diary entries about the clutches.
func large(animals, entries int) []byte {
	var b strings.Builder
	b.WriteString("animals:\n")
	start := civil.Of(1950, 1, 1)
	sexes := [...]string{"male", "female"}
	for i := range animals {
		if i < 20 {
			fmt.Fprintf(&b, "  - {id: A%d, species: hyla-cinerea, sex: %s, line: L%d, weight_g: 7.1}\n", i, sexes[i%2], i%4)
			continue
		}
		fmt.Fprintf(&b, "  - {id: A%d, name: Frog %d, sex: %s, clutch: C%d, weight_g: 7.1, length_mm: 51, place: tank-%d}\n",
			i, i, sexes[i%2], i/2, i%40)
	}
	b.WriteString("clutches:\n")
	for k := 10; k <= (animals-1)/2; k++ {
		dam, sire := 2*k-19, max(2*k-20-k%10*2, 0) // 20 animals older or more
		fmt.Fprintf(&b, "  - {id: C%d, laid: %v, dam: A%d, sire: A%d, eggs: 300, ended: %v}\n", k, start.Add(3*k), dam, sire, start.Add(3*k+200))
	}
	b.WriteString("diary:\n")
	clutches := (animals-1)/2 - 9
	for i := range entries {
		k := 10 + i%clutches
		fmt.Fprintf(&b, "  - {on: %v, clutch: C%d, count: %d, water_c: 24.5}\n", start.Add(3*k+10+i/clutches), k, 200-i/clutches)
	}
	return []byte(b.String())
}

func BenchmarkRead(b *testing.B) {
	data := large(50_000, 200_000)
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		if c, problems := collection.Read("large.yaml", data); c == nil {
			b.Fatal(problems.Err())
		}
	}
}

// The same file as a bare tree of nodes, by the YAML parser that the reader
// uses, for comparison.
func BenchmarkBareNodes(b *testing.B) {
	data := large(50_000, 200_000)
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		var node yaml.Node
		if err := yaml.Unmarshal(data, &node); err != nil {
			b.Fatal(err)
		}
	}
}
