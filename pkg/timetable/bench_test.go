package timetable_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/season"
	"github.com/spawnwright/spawnwright/pkg/timetable"
)

// BenchmarkFit plans seasons in rooms that grow with them.
func BenchmarkFit(b *testing.B) {
	for _, n := range []int{6, 20, 60, 1000} {
		room := timetable.Room{Room: season.Room{
			Capacity: []season.Capacity{
				have("rain chamber", 2+n/25), have("cooling place", 3+n/5), have(timetable.Tub, 8+n), have(timetable.Bin, 8+n), have(planner.Minutes, 60+20*n),
			},
			Away: []civil.Span{{First: today.Add(120), Last: today.Add(128)}},
		}}
		r := rand.New(rand.NewPCG(uint64(n), 1))
		var pairings []timetable.Pairing
		for i := range n {
			pairings = append(pairings, readyBy(fmt.Sprint("P", i), 60+r.IntN(240), func(p *timetable.Pairing) {
				p.Young = []planner.Hold{
					{Resource: timetable.Tub, Amount: 1 + r.IntN(4), From: 10, To: 55},
					{Resource: timetable.Bin, Amount: 1 + r.IntN(4), From: 45, To: 110, Until: p.ReadyBy},
				}
				p.Hands = []planner.Visit{{Day: 3}, {Day: 45}, {Day: 50}}
				p.Work = map[string]int{season.Rain: 20, "conditioning": 10}
			}))
		}
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				t := timetable.Fit(context.Background(), room, pairings, today, timetable.Options{Workers: 2, Advise: true})
				if t.Proof != nil {
					b.ReportMetric(100*float64(t.Proof.Cost-t.Proof.Bound)/float64(max(t.Proof.Cost, 1)), "%gap")
				} else {
					b.ReportMetric(100, "%gap")
				}
			}
		})
	}
}
