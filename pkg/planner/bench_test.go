package planner_test

import (
	"fmt"
	"testing"

	"github.com/spawnwright/spawnwright/pkg/planner"
)

func BenchmarkSolve(b *testing.B) {
	for _, row := range []struct{ pairings, steps int }{{6, 0}, {8, 0}, {10, 0}, {20, 100_000}, {60, 200_000}} {
		for seed := range uint64(3) {
			b.Run(fmt.Sprintf("pairings=%d/seed=%d", row.pairings, seed), func(b *testing.B) {
				p := randomSeason(seed, row.pairings)
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
