package pairing

import (
	"fmt"
	"testing"
)

// BenchmarkBest60 proves the best plan among 60 pairs: each male at most twice,
// each female once.
func BenchmarkBest60(b *testing.B) {
	for _, n := range [][5]int{{10, 6, 5, 10, 3}, {10, 6, 5, 10, 2}, {10, 6, 6, 12, 2}, {10, 6, 4, 8, 2}, {6, 10, 8, 16, 3}} {
		for seed := range uint64(3) {
			b.Run(fmt.Sprint(n, seed), func(b *testing.B) {
				c := tight(seed, n[0], n[1], n[2], n[3], n[4])
				for b.Loop() {
					if o := c.Best(Effort{}); !o.Proven {
						b.Fatal("not proven")
					}
				}
			})
		}
	}
}

// BenchmarkBest10000 finds a plan of 20 pairings among 100 males and 100 females
// that is within 1 % of the proven bound.
func BenchmarkBest10000(b *testing.B) {
	c := tight(1, 100, 100, 20, 40, 2)
	for b.Loop() {
		o := c.Best(Effort{Nodes: 1})
		if o.Gap() > 0.01 {
			b.Fatal(o.Gap())
		}
		b.ReportMetric(100*o.Gap(), "%gap")
	}
}
