package development

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestFromMasses(t *testing.T) {
	for _, row := range []struct {
		name        string
		first       int
		masses      []float64
		lo, hi      int
		mean, sd    float64
		early, late int // 10th and 90th percentile
	}{
		{"one day", 7, []float64{3}, 7, 7, 7, 0, 7, 7},
		{"scale does not matter", 0, []float64{50, 50}, 0, 1, 0.5, 0.5, 0, 1},
		{"empty ends are no part of it", 2, []float64{0, 0, 1, 2, 1, 0}, 4, 6, 5, math.Sqrt(0.5), 4, 6},
		{"a gap stays", -1, []float64{1, 0, 1}, -1, 1, 0, 1, -1, 1},
		{"ends of nearly nothing are cut", 0, []float64{1e-12, 1, 1, 1e-12}, 1, 2, 1.5, 0.5, 1, 2},
	} {
		t.Run(row.name, func(t *testing.T) {
			d := FromMasses(row.first, row.masses)
			assert.Equal(t, []int{row.lo, row.hi}, []int{d.First(), d.Last()})
			assert.InDelta(t, row.mean, d.Mean(), 1e-9)
			assert.InDelta(t, row.sd, d.SD(), 1e-9)
			assert.Equal(t, []int{row.early, row.late}, []int{d.Quantile(0.1), d.Quantile(0.9)})
		})
	}
}

func TestDistributionIsACopy(t *testing.T) {
	masses := []float64{1, 1}
	d := FromMasses(0, masses)
	masses[0] = 100
	assert.Equal(t, 0.5, d.Mass(0))
}

func TestCutChanceGoesToTheEnds(t *testing.T) {
	d := FromMasses(0, []float64{4e-10, 0.25, 0.5, 0.25, 4e-10})
	assert.InDelta(t, (0.25+4e-10)/(1+8e-10), d.CDF(1), 1e-15)
	assert.Equal(t, 2, d.Quantile(0.5))
	assert.Equal(t, 3, d.Last())
}

func TestQuantileOnTheEdgeOfADay(t *testing.T) {
	d := FromMasses(1, []float64{1, 1, 1, 1, 1, 1, 1, 1, 1, 1})
	for tenth := 1; tenth <= 10; tenth++ { // the sums of tenths are off in the last bit
		assert.Equal(t, tenth, d.Quantile(float64(tenth)/10))
	}
}

func TestDistributionPanics(t *testing.T) {
	for name, f := range map[string]func(){
		"no masses":            func() { FromMasses(0, nil) },
		"masses of 0":          func() { FromMasses(0, []float64{0, 0}) },
		"negative mass":        func() { FromMasses(0, []float64{1, -1e-20}) },
		"mass not a number":    func() { FromMasses(0, []float64{math.NaN()}) },
		"infinite mass":        func() { FromMasses(0, []float64{math.Inf(1)}) },
		"quantile above 1":     func() { Point(0).Quantile(1.1) },
		"quantile below 0":     func() { Point(0).Quantile(-0.1) },
		"quantile of NaN":      func() { Point(0).Quantile(math.NaN()) },
		"mean of unknown":      func() { Distribution{}.Mean() },
		"sum with unknown":     func() { Point(0).Plus(Distribution{}) },
		"condition of unknown": func() { Distribution{}.After(0) },
	} {
		assert.Panics(t, f, name)
	}
}

func TestUnknownDistribution(t *testing.T) {
	var d Distribution
	assert.False(t, d.Known())
	assert.Zero(t, d.Mass(0))
	assert.Zero(t, d.CDF(0))
}

func TestConditions(t *testing.T) {
	d := FromMasses(10, []float64{1, 2, 0, 3, 4}) // days 10 to 14
	for _, row := range []struct {
		name   string
		of     func() (Distribution, bool)
		ok     bool
		masses map[int]float64
	}{
		{"not yet on day 9 says nothing", func() (Distribution, bool) { return d.After(9) }, true, map[int]float64{10: .1, 11: .2, 13: .3, 14: .4}},
		{"not yet on day 11", func() (Distribution, bool) { return d.After(11) }, true, map[int]float64{13: 3.0 / 7, 14: 4.0 / 7}},
		{"not yet on the last day", func() (Distribution, bool) { return d.After(14) }, false, nil},
		{"both ends count", func() (Distribution, bool) { return d.Between(11, 13) }, true, map[int]float64{11: .4, 13: .6}},
		{"wider than all", func() (Distribution, bool) { return d.Between(-5, 99) }, true, map[int]float64{10: .1, 11: .2, 13: .3, 14: .4}},
		{"a day without chance", func() (Distribution, bool) { return d.Between(12, 12) }, false, nil},
		{"ends the wrong way round", func() (Distribution, bool) { return d.Between(13, 11) }, false, nil},
		{"before all", func() (Distribution, bool) { return d.Between(0, 9) }, false, nil},
	} {
		t.Run(row.name, func(t *testing.T) {
			got, ok := row.of()
			require.Equal(t, row.ok, ok)
			require.Equal(t, row.ok, got.Known())
			for day := 0; day < 20; day++ {
				assert.InDelta(t, row.masses[day], got.Mass(day), 1e-15, "day %d", day)
			}
		})
	}
}

// distributions draws small distributions, with gaps among them.
func distributions() *rapid.Generator[Distribution] {
	return rapid.Custom(func(t *rapid.T) Distribution {
		first := rapid.IntRange(0, 4).Draw(t, "first")
		masses := rapid.SliceOfN(rapid.IntRange(0, 9), 1, 5).Draw(t, "masses")
		p := make([]float64, len(masses))
		for i, m := range masses {
			p[i] = float64(m)
		}
		p[0]++
		return FromMasses(first, p)
	})
}

func sameDistribution(t rapid.TB, want, got Distribution) {
	for day := min(want.First(), got.First()); day <= max(want.Last(), got.Last()); day++ {
		if math.Abs(want.Mass(day)-got.Mass(day)) > 1e-9 {
			t.Fatalf("day %d: %v, want %v", day, got.Mass(day), want.Mass(day))
		}
	}
}

func TestMassSumsToOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := distributions().Draw(t, "d").Plus(distributions().Draw(t, "e"))
		sum := 0.0
		for day := d.First(); day <= d.Last(); day++ {
			sum += d.Mass(day)
			if math.Abs(sum-d.CDF(day)) > 1e-12 {
				t.Fatalf("CDF(%d) = %v, sum of masses %v", day, d.CDF(day), sum)
			}
		}
		if math.Abs(sum-1) > 1e-12 {
			t.Fatalf("sum %v", sum)
		}
	})
}

func TestPlusCommutesAndAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, e := distributions().Draw(t, "d"), distributions().Draw(t, "e")
		f := distributions().Draw(t, "f")
		sum := d.Plus(e)
		sameDistribution(t, sum, e.Plus(d))
		sameDistribution(t, sum.Plus(f), d.Plus(e.Plus(f)))
		if math.Abs(sum.Mean()-d.Mean()-e.Mean()) > 1e-9 {
			t.Fatalf("mean %v of %v and %v", sum.Mean(), d.Mean(), e.Mean())
		}
		if math.Abs(sum.SD()*sum.SD()-d.SD()*d.SD()-e.SD()*e.SD()) > 1e-9 {
			t.Fatalf("variances do not add up")
		}
	})
}

func TestQuantileRisesAndInvertsCDF(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := distributions().Draw(t, "d")
		p := rapid.Float64Range(0, 1).Draw(t, "p")
		q := rapid.Float64Range(p, 1).Draw(t, "q")
		if d.Quantile(p) > d.Quantile(q) {
			t.Fatalf("falls from %d to %d", d.Quantile(p), d.Quantile(q))
		}
		day := d.Quantile(p)
		if d.CDF(day) < p-1e-12 || day > d.First() && d.CDF(day-1) >= p {
			t.Fatalf("day %d is not the first with a chance of %v", day, p)
		}
	})
}

func TestAfterNeverMovesEarlier(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := distributions().Draw(t, "d")
		day := rapid.IntRange(-1, 10).Draw(t, "day")
		left, ok := d.After(day)
		if ok != (d.CDF(day) < 1) {
			t.Fatalf("ok = %v with CDF %v", ok, d.CDF(day))
		}
		for x := 0; ok && x < 12; x++ {
			if left.CDF(x) > d.CDF(x)+1e-12 {
				t.Fatalf("earlier on day %d", x)
			}
		}
	})
}

// The convolution against drawing from each step, with a fixed seed. The
// margin is four standard errors.
func TestPlusAgainstSimulation(t *testing.T) {
	const runs = 200_000
	random := rand.New(rand.NewPCG(19, 60))
	counts := map[int]int{}
	for range runs {
		sum := 0
		for _, d := range []Distribution{pertEgg, pertTadpole, pertMetamorph, pertGrowOut} {
			sum += d.Quantile(random.Float64())
		}
		counts[sum]++
	}
	below := 0
	for day := pertChain.First(); day <= pertChain.Last(); day++ {
		below += counts[day]
		want := pertChain.CDF(day)
		assert.InDelta(t, want, float64(below)/runs, 4*math.Sqrt(want*(1-want)/runs)+1e-5, "day %d", day)
	}
	assert.Equal(t, runs, below)
}

func BenchmarkPlus(b *testing.B) {
	for b.Loop() {
		pertTadpole.Plus(pertGrowOut)
	}
}
