package pedigree_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// clutches is a population in clutches: each year some couples of grown animals
// spawn, every third one with two males, and all young are kept on record.
func clutches(years, couples, young int) ([]pedigree.Record, []pedigree.Group) {
	random := rand.New(rand.NewPCG(1, 2))
	var records []pedigree.Record
	var groups []pedigree.Group
	add := func(sire, dam string) {
		records = append(records, pedigree.Record{ID: fmt.Sprint("a", len(records)), Sire: sire, Dam: dam})
	}
	for range 4 * couples {
		add("", "")
	}
	for year := range years {
		first := max(0, len(records)-2*couples*young) // the last two years breed
		pick := func(rest int) string {               // even ones are males
			from := first + random.IntN(len(records)-first-1)
			return records[from+(from+rest)%2].ID
		}
		for couple := range couples {
			sire, dam := pick(0), pick(1)
			if couple%3 == 0 {
				other := pick(0)
				if other != sire {
					g := pedigree.Group{ID: fmt.Sprintf("g%d.%d", year, couple), Candidates: []pedigree.Candidate{{ID: sire}, {ID: other}}}
					groups, sire = append(groups, g), g.ID
				}
			}
			for range young {
				add(sire, dam)
			}
		}
	}
	return records, groups
}

// BenchmarkNew is a pedigree in clutches, some of them of two possible sires.
func BenchmarkNew(b *testing.B) {
	for _, years := range []int{10, 25} {
		records, groups := clutches(years, 40, 40)
		b.Run(fmt.Sprintf("clutches/%d", len(records)), func(b *testing.B) { benchmarkNew(b, records, groups) })
	}
}

func benchmarkNew(b *testing.B, records []pedigree.Record, groups []pedigree.Group) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := pedigree.New(records, groups...); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkKinship(b *testing.B) {
	records, groups := clutches(25, 40, 40)
	p, err := pedigree.New(records, groups...)
	if err != nil {
		b.Fatal(err)
	}
	last := p.Len() - 1
	b.Run("one", func(b *testing.B) {
		for b.Loop() {
			p.Kinship(last, last-50)
		}
	})
	b.Run("to all", func(b *testing.B) {
		for b.Loop() {
			p.KinshipTo(last)
		}
	})
	b.Run("shared ancestors", func(b *testing.B) {
		for b.Loop() {
			p.SharedAncestors(last, last-50)
		}
	})
}
