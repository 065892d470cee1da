package occupancy_test

import (
	"fmt"
	"testing"

	"github.com/spawnwright/spawnwright/pkg/occupancy"
)

// busy is a season of 400 days with 24 tubs and 30 bins and so many clutches,
// each with ten paces and five sizes.
func busy(clutches int) occupancy.Season {
	first := date("2027-01-01")
	s := occupancy.Season{
		First: first, Days: 400,
		Resources: []occupancy.Resource{{Name: "tubs", Count: 24}, {Name: "bins", Count: 30}},
	}
	for i := range clutches {
		hatch := first.Add(i * 250 / clutches)
		var paces []occupancy.Pace
		for p := range 10 {
			out := hatch.Add(45 + 3*p)
			paces = append(paces, occupancy.Pace{Chance: 1, Stays: []occupancy.Hold{
				{Resource: 0, First: hatch.Add(p), Last: out},
				{Resource: 1, First: out, Last: out.Add(35 + 4*p), Until: date("2027-09-18")},
			}})
		}
		var sizes []occupancy.Size
		for z := range 5 {
			sizes = append(sizes, occupancy.Size{Chance: 1, Places: []int{1 + z, 1 + 2*z}})
		}
		s.Clutches = append(s.Clutches, occupancy.Clutch{ID: fmt.Sprint(i), Courses: occupancy.Courses(0.75, paces, sizes)})
	}
	return s
}

func BenchmarkLoads(b *testing.B) {
	for _, clutches := range []int{10, 60, 1000} {
		b.Run(fmt.Sprintf("%d clutches", clutches), func(b *testing.B) {
			s := busy(clutches)
			for b.Loop() {
				if _, err := occupancy.Loads(s); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkAssess(b *testing.B) {
	for _, clutches := range []int{10, 60} {
		b.Run(fmt.Sprintf("%d clutches, 20000 seasons", clutches), func(b *testing.B) {
			s := busy(clutches)
			for b.Loop() {
				if _, err := occupancy.Assess(s, occupancy.Options{Seasons: 20_000, Seed: 1, Workers: 2}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkTryMoves(b *testing.B) {
	for _, clutches := range []int{10, 60} {
		b.Run(fmt.Sprintf("%d clutches, each by four weeks, 20000 seasons", clutches), func(b *testing.B) {
			s := busy(clutches)
			var moves []occupancy.Move
			for i := range clutches {
				for week := 1; week <= 4; week++ {
					moves = append(moves, occupancy.Move{Clutch: i, Days: 7 * week})
				}
			}
			for b.Loop() {
				if _, err := occupancy.TryMoves(s, occupancy.Options{Seasons: 20_000, Seed: 1, Workers: 2}, moves); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
