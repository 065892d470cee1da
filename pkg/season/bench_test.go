package season_test

import (
	"fmt"
	"testing"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/season"
)

// busySeason gives n pairings spread over a year, with two weeks away every
// other month. Where few is set places are short, and every tenth pairing has
// the same male.
func busySeason(n int, few bool) (season.Room, []season.Pairing) {
	room := season.Room{Capacity: []season.Capacity{known("rain chamber", n), known("cooling place", n)}}
	if few {
		room.Capacity = []season.Capacity{known("rain chamber", max(1, n/40)), known("cooling place", max(1, n/8))}
	}
	for month := range 12 {
		room.Away = append(room.Away, civil.Span{First: day0.Add(61 * month), Last: day0.Add(61*month + 13)})
	}
	var pairings []season.Pairing
	for i := range n {
		p := season.Pairing{ID: fmt.Sprintf("P-%d", i), Phases: treeFrog(), Animals: []string{fmt.Sprintf("sire %d", i), fmt.Sprintf("dam %d", i)}}
		if few && i%10 == 0 {
			p.Animals[0] = "sire 0"
		}
		if day := day0.Add(i * 365 / n); i%2 == 0 {
			p.Start = day
		} else {
			p.ReadyBy, p.ReadyAfter = day.Add(260), 140
		}
		pairings = append(pairings, p)
	}
	return room, pairings
}

func BenchmarkPlan(b *testing.B) {
	for _, n := range []int{60, 1000} {
		for _, few := range []bool{false, true} {
			name := fmt.Sprintf("pairings=%d/room enough", n)
			if few {
				name = fmt.Sprintf("pairings=%d/room short", n)
			}
			b.Run(name, func(b *testing.B) {
				room, pairings := busySeason(n, few)
				b.ReportAllocs()
				for b.Loop() {
					season.Plan(room, pairings, day0)
				}
			})
		}
	}
}
