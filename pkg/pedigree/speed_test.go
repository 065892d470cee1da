package pedigree

import (
	"flag"
	"fmt"
	"runtime"
	"strings"
	"testing"
	"time"
)

// Benchmarks against slow twins in the same run. Metrics that begin with "x" are
// how many times as long the twin takes; docs/benchmarks.md explains them.

// timed gives how long f takes, the best of some times.
func timed(b *testing.B, times int, f func()) time.Duration {
	best := time.Duration(1<<63 - 1)
	for range times {
		before := b.Elapsed()
		f()
		best = min(best, b.Elapsed()-before)
	}
	return best
}

func ms(d time.Duration) float64 { return d.Seconds() * 1000 }

func simulated(b *testing.B, shape population) *Pedigree {
	b.Helper()
	p, err := New(shape.records(1))
	if err != nil {
		b.Fatal(err)
	}
	return p
}

// fillAnew computes everything but the links of a pedigree once more.
func fillAnew(p *Pedigree) func() {
	return func() {
		g := p.graph.bare()
		g.fill(0)
	}
}

func plainTwin(p *Pedigree) func() {
	return func() {
		g := p.graph.bare()
		g.plainMeuwissenLuo()
	}
}

func familyTwin(p *Pedigree) func() {
	return func() {
		g := p.graph.bare()
		g.familyMeuwissenLuo()
	}
}

func BenchmarkInbreeding(b *testing.B) {
	for _, shape := range []population{clutchShaped, clutchShaped.tenth(), smallFamily.tenth()} {
		b.Run(fmt.Sprintf("%s/%dk", shape.name, shape.size()/1000), func(b *testing.B) {
			p := simulated(b, shape)
			for b.Loop() {
				fast := timed(b, 5, fillAnew(p))
				families := timed(b, 1, familyTwin(p))
				b.ReportMetric(ms(fast), "ms")
				b.ReportMetric(ms(families), "families-once-ms")
				b.ReportMetric(families.Seconds()/fast.Seconds(), "x-families-once")
				if shape.size() < 200_000 {
					plain := timed(b, 1, plainTwin(p))
					b.ReportMetric(plain.Seconds()/fast.Seconds(), "x-plain")
				}
			}
		})
	}
}

// Ten times the animals of small families, in ten times the couples.
func BenchmarkInbreedingGrowth(b *testing.B) {
	large, small := smallFamily.records(1), smallFamily.tenth().records(1)
	for b.Loop() {
		var p, tenth *Pedigree
		all := timed(b, 2, func() { p, _ = New(large) })
		some := timed(b, 10, func() { tenth, _ = New(small) })
		fill, fillSome := timed(b, 2, fillAnew(p)), timed(b, 10, fillAnew(tenth))
		b.ReportMetric(ms(fill), "ms")
		b.ReportMetric(ms(all), "with-links-ms")
		b.ReportMetric(fill.Seconds()/fillSome.Seconds(), "x-of-a-tenth")
		b.ReportMetric(all.Seconds()/some.Seconds(), "x-of-a-tenth-with-links")
	}
}

// The slow twin on a million animals in small families takes minutes: it runs only
// when it is asked for by name.
func BenchmarkMinutesOfTwin(b *testing.B) {
	if !strings.Contains(flag.Lookup("test.bench").Value.String(), "MinutesOfTwin") {
		b.Skip("takes minutes; ask for it with -bench MinutesOfTwin")
	}
	p := simulated(b, smallFamily)
	for b.Loop() {
		fast, families := timed(b, 3, fillAnew(p)), timed(b, 1, familyTwin(p))
		b.ReportMetric(ms(fast), "ms")
		b.ReportMetric(families.Seconds()/fast.Seconds(), "x-families-once")
	}
}

func BenchmarkMeanKinship(b *testing.B) {
	for _, shape := range []population{clutchShaped, smallFamily} {
		b.Run(shape.name, func(b *testing.B) {
			records := shape.records(1)
			var p *Pedigree
			with := timed(b, 1, func() { p, _ = New(records) })
			fill := timed(b, 5, fillAnew(p))
			living := make([]int, p.Len())
			for i := range living {
				living[i] = i
			}
			best := time.Hour
			for b.Loop() {
				best = min(best, timed(b, 1, func() { p.MeanKinship(living) }))
			}
			b.ReportMetric(ms(best), "ms")
			b.ReportMetric(best.Seconds()/fill.Seconds(), "of-inbreeding")
			b.ReportMetric(best.Seconds()/with.Seconds(), "of-New")
		})
	}
}

// Live memory of a pedigree, the ids' bytes left out and their headers, of 16
// bytes each, included.
func BenchmarkMemory(b *testing.B) {
	for _, shape := range []population{clutchShaped, smallFamily} {
		b.Run(shape.name, func(b *testing.B) {
			records := shape.records(1)
			for b.Loop() {
				before := live()
				p, err := New(records)
				if err != nil {
					b.Fatal(err)
				}
				b.ReportMetric(float64(live()-before)/float64(p.Len()), "B/animal")
				runtime.KeepAlive(p)
			}
			runtime.KeepAlive(records)
		})
	}
}

func live() uint64 {
	runtime.GC()
	runtime.GC() // the first may leave what was let go of during it
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}

// The last of the cohorts is added to what is known of the others.
func BenchmarkGrow(b *testing.B) {
	for _, shape := range []population{clutchShaped, smallFamily} {
		b.Run(shape.name, func(b *testing.B) {
			records := shape.records(1)
			last := len(records) - shape.dams*shape.young
			p, err := New(records[:last])
			if err != nil {
				b.Fatal(err)
			}
			for b.Loop() {
				whole := timed(b, 1, func() { New(records) })
				grown := timed(b, 3, func() { p.Grow(records[last:]) })
				b.ReportMetric(ms(grown), "ms")
				b.ReportMetric(whole.Seconds()/grown.Seconds(), "x-all-anew")
			}
		})
	}
}

// A closed line of 50,000 generations, one couple of brother and sister each.
func BenchmarkClosedLine(b *testing.B) {
	records := []Record{{ID: "m0"}, {ID: "f0"}}
	for g := range 50_000 {
		sire, dam := fmt.Sprint("m", g), fmt.Sprint("f", g)
		records = append(records, Record{fmt.Sprint("m", g+1), sire, dam}, Record{fmt.Sprint("f", g+1), sire, dam})
	}
	for b.Loop() {
		if _, err := New(records); err != nil {
			b.Fatal(err)
		}
	}
}
