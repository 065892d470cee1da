package breedingplan

import (
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// BenchmarkPlan plans without a limit on the pairings: 20 unrelated males and females, as in a
// new room; 5 families of 4 brothers and 4 sisters; and 12 founders with 48 young and grandyoung.
func BenchmarkPlan(b *testing.B) {
	for _, room := range []struct {
		name  string
		stock *Stock
	}{
		{"alike", newRoom(40, func(int) [2]int { return [2]int{-1, -1} })},
		{"families", newRoom(50, func(i int) [2]int {
			if i < 10 {
				return [2]int{-1, -1}
			}
			return [2]int{i / 2 * 2 % 10, i/2*2%10 + 1}
		})},
		{"generations 1", generations(1)},
		{"generations 2", generations(2)},
	} {
		if room.name == "families" {
			for i := range 10 {
				room.stock.Animals[i].Here = false
			}
		}
		b.Run(room.name, func(b *testing.B) {
			for b.Loop() {
				p, err := room.stock.Plan(Wish{Weight: 0.1})
				if err != nil {
					b.Fatal(err)
				}
				b.ReportMetric(float64(len(p.Species[0].Pairs)), "pairings")
				b.ReportMetric(float64(p.Species[0].Allowed), "pairs")
				b.ReportMetric(100*p.Species[0].Gap, "%gap")
			}
		})
	}
}

func generations(seed uint64) *Stock {
	rng := rand.New(rand.NewPCG(seed, 5))
	return newRoom(60, func(i int) [2]int {
		if i < 12 {
			return [2]int{-1, -1}
		}
		older := 6
		if i >= 36 {
			older = 18
		}
		return [2]int{2 * rng.IntN(older), 2*rng.IntN(older) + 1}
	})
}

// newRoom is a room of so many animals, males and females in turn, with their parents.
func newRoom(animals int, parents func(int) [2]int) *Stock {
	s := &Stock{Species: []string{"hyla-cinerea"}}
	var records []pedigree.Record
	for i := range animals {
		r := pedigree.Record{ID: fmt.Sprint(i)}
		if of := parents(i); of[0] >= 0 {
			r.Sire, r.Dam = fmt.Sprint(of[0]), fmt.Sprint(of[1])
		}
		sex := pairing.Male
		if i%2 == 1 {
			sex = pairing.Female
		}
		records = append(records, r)
		s.Animals = append(s.Animals, Animal{Animal: pairing.Animal{ID: r.ID, Node: i, Species: s.Species[0], Sex: sex, Hatched: civil.Of(2020, time.May, 1)}, Here: true})
	}
	p, err := pedigree.New(records)
	if err != nil {
		panic(err)
	}
	s.Terms = pairing.Terms{Pedigree: p, Rules: pairing.DefaultRules(), On: civil.Of(2027, time.February, 1)}
	return s
}
