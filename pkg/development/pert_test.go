package development

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pert is the textbook beta distribution of a length with a hard earliest and
// latest day: alpha = 1+4(m-a)/(b-a), beta = 1+4(b-m)/(b-a). Each whole day
// takes the chance from half a day before it to half a day after it, summed
// over a thousand slices a day.
func pert(a, m, b float64) Distribution {
	const slices = 1000
	alpha, beta := 1+4*(m-a)/(b-a), 1+4*(b-m)/(b-a)
	var masses []float64
	for day := math.Floor(a); day <= math.Ceil(b); day++ {
		mass := 0.0
		for i := range slices {
			x := (day - 0.5 + (float64(i)+0.5)/slices - a) / (b - a)
			if x > 0 && x < 1 {
				mass += math.Pow(x, alpha-1) * math.Pow(1-x, beta-1)
			}
		}
		masses = append(masses, mass)
	}
	return FromMasses(int(math.Floor(a)), masses)
}

// The four steps of the worked example: egg 3, 5, 9 days; tadpole 35, 45, 70;
// metamorph 8, 12, 18; grow-out 35, 45, 75. All figures of this file were
// worked out apart from this package, by numeric integration of the beta
// densities and convolution, and checked there by simulation.
var (
	pertEgg       = pert(3, 5, 9)
	pertTadpole   = pert(35, 45, 70)
	pertMetamorph = pert(8, 12, 18)
	pertGrowOut   = pert(35, 45, 75)
	pertChain     = pertEgg.Plus(pertTadpole).Plus(pertMetamorph).Plus(pertGrowOut)
)

func TestPertStep(t *testing.T) {
	// mean (a+4m+b)/6, variance (mu-a)(b-mu)/7; whole days add 1/12
	assert.InDelta(t, 47.50, pertTadpole.Mean(), 0.005)
	assert.InDelta(t, math.Sqrt(6.34*6.34+1.0/12), pertTadpole.SD(), 0.005)
}

func TestPertChain(t *testing.T) {
	assert.InDelta(t, 113.50, pertChain.Mean(), 0.005)
	assert.InDelta(t, 9.80, pertChain.SD(), 0.02)
	for _, q := range []struct {
		p   float64
		day int
	}{{0.05, 98}, {0.50, 113}, {0.80, 122}, {0.90, 127}, {0.95, 131}} {
		assert.Equal(t, q.day, pertChain.Quantile(q.p), "%v", q.p)
	}
	assert.InDelta(t, 0.7634, pertChain.CDF(120), 0.00005)
	assert.InDelta(t, 0.289, pertChain.CDF(5+45+12+45), 0.0005, "the sum of the likely lengths is no likely sum")
}

func TestPertNotYet(t *testing.T) {
	for _, row := range []struct {
		day  int
		mean float64
		p90  int
	}{{45, 51.8, 58}, {55, 58.8, 63}} {
		left, ok := pertTadpole.After(row.day)
		require.True(t, ok)
		assert.InDelta(t, row.mean, left.Mean(), 0.05, "%d", row.day)
		assert.Equal(t, row.p90, left.Quantile(0.9), "%d", row.day)
	}
	assert.InDelta(t, 0.029, 1-pertTadpole.CDF(60), 0.0005)
}

func TestPertBetween(t *testing.T) {
	// seen as a tadpole on day 46, as a metamorph on day 50
	between, ok := pertTadpole.Between(47, 50)
	require.True(t, ok)
	for day, want := range map[int]float64{47: .267, 48: .257, 49: .245, 50: .231} {
		assert.InDelta(t, want, between.Mass(day), 0.0005, "%d", day)
	}
	assert.InDelta(t, 48.44, between.Mean(), 0.005)
}

func TestPertStillTadpole(t *testing.T) {
	rest := pertMetamorph.Plus(pertGrowOut)
	before := pertTadpole.Plus(rest)
	assert.Equal(t, []int{108, 121}, []int{before.Quantile(0.5), before.Quantile(0.9)})
	still, ok := pertTadpole.After(55)
	require.True(t, ok)
	after := still.Plus(rest)
	assert.Equal(t, []int{119, 130}, []int{after.Quantile(0.5), after.Quantile(0.9)})
}
