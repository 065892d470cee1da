package pairing

import (
	"fmt"
	"testing"
)

// BenchmarkBest60 proves the best plan among 60 pairs: each male at most twice,
// each female once.
func BenchmarkBest60(b *testing.B) { bench60(b, 0, func(*search) {}) }

// BenchmarkBest60ByTangentsAlone does the same with a bound that does not know that
// young are whole, as the search had it once; for 20,000 partial plans at most.
func BenchmarkBest60ByTangentsAlone(b *testing.B) {
	bench60(b, 20_000, func(s *search) {
		clear(s.squares.own)
		clear(s.squares.moved)
	})
}

func bench60(b *testing.B, nodes int, prepare func(*search)) {
	for _, n := range [][5]int{{10, 6, 5, 10, 3}, {10, 6, 5, 10, 2}, {10, 6, 6, 12, 2}, {10, 6, 4, 8, 2}, {6, 10, 8, 16, 3}} {
		for seed := range uint64(12) {
			b.Run(fmt.Sprint(n, seed), func(b *testing.B) {
				c := tight(seed, n[0], n[1], n[2], n[3], n[4])
				for b.Loop() {
					s := newSearch(&c, Effort{Nodes: nodes})
					prepare(s)
					o := s.run()
					if nodes == 0 && !o.Proven {
						b.Fatal("not proven")
					}
					b.ReportMetric(float64(o.Nodes), "nodes")
					b.ReportMetric(100*o.Gap(), "%gap")
				}
			})
		}
	}
}

// BenchmarkBestAlike proves the best plan among 20 unrelated males and 20 unrelated
// females, for every number of pairings from 1 to 20, and looks for two that are other
// than by an exchange of equals.
func BenchmarkBestAlike(b *testing.B) {
	for b.Loop() {
		nodes, others := 0, 0
		for count := range 20 {
			c := alike(20, 20, count+1)
			o := c.Best(Effort{Plans: 3, Nodes: 2500})
			if o.OthersProven {
				others++
			}
			if !o.Proven {
				b.Fatal("not proven")
			}
			nodes += o.Nodes
		}
		b.ReportMetric(float64(nodes), "nodes")
		b.ReportMetric(float64(others), "others-proven")
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
