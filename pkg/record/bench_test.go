package record_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/record"
)

// large gives a collection of so many animals, two to a clutch, and diary
// entries about the clutches.
func large(animals, entries int) []byte {
	var b strings.Builder
	b.WriteString("animals:\n")
	start := civil.Of(1950, 1, 1)
	sexes := [...]string{"male", "female"}
	for i := range animals {
		if i < 20 {
			fmt.Fprintf(&b, "  - {id: A-%d, species: hyla-cinerea, sex: %s, weight_g: 7.1}\n", i, sexes[i%2])
			continue
		}
		fmt.Fprintf(&b, "  - {id: A-%d, name: Frog %d, sex: %s, clutch: C-%d, weight_g: 7.1, place: tank-%d}\n", i, i, sexes[i%2], i/2, i%40)
	}
	b.WriteString("clutches:\n")
	for k := 10; k <= (animals-1)/2; k++ {
		fmt.Fprintf(&b, "  - {id: C-%d, laid: %v, dam: A-%d, sire: A-%d, eggs: 300}\n", k, start.Add(3*k), 2*k-19, max(2*k-20-k%10*2, 0))
	}
	b.WriteString("diary:\n")
	clutches := (animals-1)/2 - 9
	for i := range entries {
		k := 10 + i%clutches
		fmt.Fprintf(&b, "  - {on: %v, clutch: C-%d, count: %d, water_c: 24.5}\n", start.Add(3*k+10+i/clutches), k, 200-i/clutches)
	}
	return []byte(b.String())
}

// BenchmarkChange records a weight in a file of 50,000 animals and 200,000
// entries, and stores it.
func BenchmarkChange(b *testing.B) {
	path := filepath.Join(b.TempDir(), "large.yaml")
	if err := os.WriteFile(path, large(50_000, 200_000), 0o600); err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		_, err := record.Change(path, func(book *record.Book) (*record.Plan, error) {
			e, err := book.Weight(day, "A-40000", "7.3g")
			if err != nil {
				return nil, err
			}
			return book.Plan(e)
		})
		if err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkPlan is the part of it that comes after reading the file.
func BenchmarkPlan(b *testing.B) {
	book, problems := record.Read("large.yaml", large(50_000, 200_000))
	if book == nil {
		b.Fatal(problems.Err())
	}
	b.ReportAllocs()
	for b.Loop() {
		e, err := book.Weight(day, "A-40000", "7.3g")
		if err != nil {
			b.Fatal(err)
		}
		if _, err := book.Plan(e); err != nil {
			b.Fatal(err)
		}
	}
}

var day = civil.Of(2175, 2, 3)
