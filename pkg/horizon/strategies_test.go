package horizon

import (
	"fmt"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
)

// founders are unrelated animals, male and female by turns.
func founders(n int) Line {
	return families(ones(n)...)
}

func ones(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = 1
	}
	return out
}

// families are the young of unrelated couples, so many of each, male and
// female by turns.
func families(sizes ...int) Line {
	var of []int
	for family, n := range sizes {
		for range n {
			of = append(of, family)
		}
	}
	l := Line{Kinship: make([][]float64, len(of))}
	for i := range of {
		l.Kinship[i] = make([]float64, len(of))
		for j := range of {
			switch {
			case i == j:
				l.Kinship[i][j] = 0.5
			case of[i] == of[j]:
				l.Kinship[i][j] = 0.25
			}
		}
		l.Male = append(l.Male, i%2 == 0)
		l.Age = append(l.Age, 1)
	}
	return l
}

// starts are the lines of the table of strategies: 20 and 40 unrelated animals,
// and 20 from four couples with 1, 3, 6 and 10 young.
var starts = []struct {
	name string
	line Line
}{
	{"20 unrelated", founders(20)},
	{"20 of 8 skewed", families(1, 3, 6, 10)},
	{"40 unrelated", founders(40)},
}

var strategies = []struct {
	name string
	f    Future
}{
	{"random", Future{Strategy: Random}},
	{"equal families", Future{Strategy: EqualFamilies}},
	{"avoid kin alone", Future{Weight: 1000}},
	{"plan", Future{Weight: 0.1}},
	{"plan, lines crossed every 5", Future{Weight: 0.1, CrossEvery: 5}},
	{"plan, lines below 0.25 crossed every 5", Future{Weight: 0.1, CrossEvery: 5, Ceiling: 0.25}},
	{"plan below 0.125", Future{Weight: 0.1, Ceiling: 0.125}},
}

// discrete is ten generations that do not overlap, played a hundred times.
func discrete(l Line, f Future) Outlook {
	f.Years, f.Runs, f.Seed, f.Workers, f.Size, f.Matures, f.Lives = 10, 100, 1, runtime.NumCPU(), len(l.Male), 1, 1
	return Simulate(l, f)
}

// BenchmarkStrategies reproduces the table of docs/strategies.md.
func BenchmarkStrategies(b *testing.B) {
	for _, start := range starts {
		for _, s := range strategies {
			b.Run(fmt.Sprintf("%s/%s", start.name, s.name), func(b *testing.B) {
				for b.Loop() {
					o := discrete(start.line, s.f)
					most := 0.0
					for _, y := range o.Years {
						most = max(most, y.Inbreeding.Mean)
					}
					last := o.Years[10]
					b.ReportMetric(last.GeneDiversity.Mean, "GD")
					b.ReportMetric(last.GeneDiversity.Error, "GD-se")
					b.ReportMetric(last.Inbreeding.Mean, "F")
					b.ReportMetric(last.Inbreeding.Error, "F-se")
					b.ReportMetric(most, "F-highest")
				}
			})
		}
	}
}

// TestStrategies holds the table against what other simulations of the same cases gave
// (ten generations, a hundred runs, standard errors up to 0.003 each).
func TestStrategies(t *testing.T) {
	for _, row := range []struct {
		start, strategy       int
		diversity, inbreeding float64
	}{
		{0, 0, 0.7605, 0.2008},
		{1, 0, 0.7009, 0.2631},
		{2, 0, 0.8715, 0.1067},
		{0, 1, 0.8567, 0.1148},
		{1, 1, 0.7867, 0.1951},
		{2, 1, 0.9266, 0.0593},
		{0, 3, 0.8533, 0.0879},
		{1, 3, 0.8000, 0.1447},
		{2, 3, 0.9256, 0.0383},
	} {
		got := discrete(starts[row.start].line, strategies[row.strategy].f).Years[10]
		name := starts[row.start].name + ", " + strategies[row.strategy].name
		assert.InDelta(t, row.diversity, got.GeneDiversity.Mean, 0.006, name)
		assert.InDelta(t, row.inbreeding, got.Inbreeding.Mean, 0.012, name)
	}
}

// TestMinimisingKinshipKeepsMore: with unequal founders minimising kinship keeps more
// diversity than avoiding kin alone or chance (Montgomery et al. 1997, Zoo
// Biology 16:377, with flies).
func TestMinimisingKinshipKeepsMore(t *testing.T) {
	of := func(strategy int) float64 {
		return discrete(starts[1].line, strategies[strategy].f).Years[10].GeneDiversity.Mean
	}
	random, avoid, plan := of(0), of(2), of(3)
	assert.Greater(t, plan, avoid+0.01)
	assert.Greater(t, plan, random+0.01)
}
