package planner_test

import (
	"fmt"
	"testing"

	"github.com/spawnwright/spawnwright/pkg/planner"
)

// BenchmarkSolve plans pairings in the room of randomSeason, or one some times as
// large. With -short the seasons that take 20 seconds each have a tenth of the work.
func BenchmarkSolve(b *testing.B) {
	for _, row := range []struct{ pairings, steps, room int }{{6, 0, 1}, {8, 0, 1}, {10, 0, 1}, {20, 100_000, 1}, {60, 100_000, 3}, {60, 1_000_000, 1}} {
		if testing.Short() {
			row.steps = min(row.steps, 100_000)
		}
		for seed := range uint64(3) {
			b.Run(fmt.Sprintf("pairings=%d/room=%d/seed=%d", row.pairings, row.room, seed), func(b *testing.B) {
				p := randomSeason(seed, row.pairings)
				for i := range p.Resources {
					p.Resources[i].Count *= row.room
				}
				var plan planner.Plan
				for b.Loop() {
					plan = planner.Solve(b.Context(), p, planner.Options{Steps: row.steps, Workers: 2})
				}
				if faults := planner.Check(p, plan); len(faults) > 0 {
					b.Fatal(faults)
				}
				b.ReportMetric(float64(plan.Cost), "cost")
				b.ReportMetric(float64(plan.Bound), "bound")
				b.ReportMetric(100*plan.Gap(), "%gap")
				b.ReportMetric(float64(plan.Steps), "steps")
			})
		}
	}
}
