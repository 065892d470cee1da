package development

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// point is a temperature in °C and the time to hatching there.
type point struct{ c, time float64 }

// Moore 1939, Ecology 20: hours to hatching, as in the script of the package
// hatchR_nonfish.
var moore = map[string][]point{
	"Rana sylvatica": {{10, 305}, {15.3, 128}, {18.5, 87}, {19.9, 79}, {23.7, 52}},
	"Rana pipiens":   {{15.3, 168}, {18.6, 116}, {19.8, 99}, {26, 57}},
	"Rana palustris": {{15.5, 190}, {18.6, 126}, {19.9, 106}, {25.7, 63}},
	"Rana clamitans": {{15, 263}, {19.8, 112}, {25.3, 62}, {33.4, 45}},
}

// Brown 1975, Comparative Biochemistry and Physiology, in the same script: days
// to hatching of Ascaphus truei.
var brown = []point{{7.6, 44}, {9.8, 27.1}, {11, 22.6}, {13, 16.1}, {14.5, 13.4}, {15, 12.7}, {18, 10.7}}

// line fits y = a + b x by least squares.
func line(points []point, x, y func(point) float64) (a, b float64) {
	var n, sx, sy, sxx, sxy float64
	for _, p := range points {
		n, sx, sy = n+1, sx+x(p), sy+y(p)
		sxx, sxy = sxx+x(p)*x(p), sxy+x(p)*y(p)
	}
	b = (n*sxy - sx*sy) / (n*sxx - sx*sx)
	return (sy - b*sx) / n, b
}

// thermalSum fits the rate as a straight line.
func thermalSum(points []point) (species.Law, func(c float64) float64) {
	a, b := line(points, func(p point) float64 { return p.c }, func(p point) float64 { return 1 / p.time })
	law := species.Law{Kind: species.ThermalSum, ThresholdC: -a / b, Source: invented}
	return law, timesBy(law, 20, 1/(a+b*20))
}

// fixedFactor fits ln time as a straight line.
func fixedFactor(points []point) (species.Law, func(c float64) float64) {
	a, b := line(points, func(p point) float64 { return p.c }, func(p point) float64 { return math.Log(p.time) })
	law := species.Law{Kind: species.FallingQ10, At: []species.Factor{{AtC: 20, Q10: math.Exp(-10 * b)}}, Source: invented}
	return law, timesBy(law, 20, math.Exp(a+b*20))
}

// fallingFactor fits ln time as a parabola, so that the logarithm of the factor
// is a straight line.
func fallingFactor(points []point) (species.Law, func(c float64) float64) {
	var sums [3][4]float64 // normal equations of a + b t + c t², t from 20 °C
	for _, p := range points {
		t := p.c - 20
		powers := [3]float64{1, t, t * t}
		for i := range powers {
			for j := range powers {
				sums[i][j] += powers[i] * powers[j]
			}
			sums[i][3] += powers[i] * math.Log(p.time)
		}
	}
	for i := range sums {
		for k := range sums {
			if k != i {
				f := sums[k][i] / sums[i][i]
				for j := range sums[k] {
					sums[k][j] -= f * sums[i][j]
				}
			}
		}
	}
	a, b, c := sums[0][3]/sums[0][0], sums[1][3]/sums[1][1], sums[2][3]/sums[2][2]
	law := species.Law{Kind: species.FallingQ10, Source: invented}
	for _, at := range []float64{points[0].c, points[len(points)-1].c} {
		law.At = append(law.At, species.Factor{AtC: at, Q10: math.Exp(-10 * (b + 2*c*(at-20)))})
	}
	return law, timesBy(law, 20, math.Exp(a))
}

// timesBy gives the time at c by the rates that the package takes from a law
// that holds everywhere.
func timesBy(law species.Law, reference, time float64) func(c float64) float64 {
	w := newWarmth(species.Step{
		AtC: species.Range{Low: reference, High: reference, Source: invented}, Law: law,
		CoversC: species.Range{Low: 5, High: 40, Source: invented},
	})
	return func(c float64) float64 { return time / w.rate(c) }
}

// worst gives the largest error in parts of what was measured.
func worst(points []point, by func(c float64) float64) float64 {
	most := 0.0
	for _, p := range points {
		most = max(most, math.Abs(by(p.c)/p.time-1))
	}
	return most
}

// One ten-degree factor for all temperatures is wrong, a falling one is not, and
// a thermal sum holds except near its threshold.
func TestLawsAgainstMoore1939(t *testing.T) {
	for _, c := range []struct {
		species             string
		fixed, falling, sum float64 // worst errors
		threshold           float64 // of the sum, °C
		cold, warm          float64 // ten-degree factors at the ends
	}{
		{"Rana sylvatica", 0.105, 0.047, 0.354, 7.9, 5.74, 2.22},
		{"Rana pipiens", 0.047, 0.015, 0.093, 10.4, 3.49, 2.17},
		{"Rana palustris", 0.064, 0.010, 0.060, 10.8, 4.41, 1.99},
		{"Rana clamitans", 0.284, 0.020, 0.108, 10.8, 7.33, 0.92},
	} {
		t.Run(c.species, func(t *testing.T) {
			points := moore[c.species]
			_, fixed := fixedFactor(points)
			law, falling := fallingFactor(points)
			sum, bySum := thermalSum(points)
			assert.InDelta(t, c.fixed, worst(points, fixed), 0.001, "one factor")
			assert.InDelta(t, c.falling, worst(points, falling), 0.001, "a falling factor")
			assert.InDelta(t, c.sum, worst(points, bySum), 0.001, "a thermal sum")
			assert.InDelta(t, c.threshold, sum.ThresholdC, 0.1)
			assert.InDelta(t, c.cold, law.At[0].Q10, 0.01)
			assert.InDelta(t, c.warm, law.At[1].Q10, 0.01)
			assert.Less(t, 2*worst(points, falling), worst(points, fixed))
		})
	}
}

type fit func(points []point) (species.Law, func(c float64) float64)

// leftOut gives the error, in parts, at each temperature when the law is fitted
// to all others.
func leftOut(points []point, fit fit) []float64 {
	var errors []float64
	for i, p := range points {
		_, by := fit(slices.Concat(points[:i], points[i+1:]))
		errors = append(errors, by(p.c)/p.time-1)
	}
	return errors
}

// Between temperatures that were measured a left-out one is predicted within
// 7 % by a falling factor and 14 % by a thermal sum, and missed by up to 41 % by
// one factor. Beyond them every law fails: that is why none is followed there
// without a warning.
func TestLeftOutTemperatures(t *testing.T) {
	for _, c := range []struct {
		name            string
		fit             fit
		inside, outside float64 // worst error
	}{
		{"one factor", fixedFactor, 0.408, 0.579},
		{"a falling factor", fallingFactor, 0.068, 0.259},
		{"a thermal sum: Rana sylvatica at 10 °C is 0.1 degrees above the threshold of the others", thermalSum, 0.135, 22.04},
	} {
		t.Run(c.name, func(t *testing.T) {
			inside, outside := 0.0, 0.0
			for _, points := range moore {
				errors := leftOut(points, c.fit)
				for i, e := range errors {
					if i == 0 || i == len(errors)-1 {
						outside = max(outside, math.Abs(e))
					} else {
						inside = max(inside, math.Abs(e))
					}
				}
			}
			assert.InDelta(t, c.inside, inside, 0.001)
			assert.InDelta(t, c.outside, outside, 0.01)
		})
	}
}

// In Ascaphus a thermal sum above 4.5 °C predicts each temperature that is left
// out within 8 %. One factor misses 18 °C by 31 %.
func TestLawsAgainstBrown1975(t *testing.T) {
	law, by := thermalSum(brown)
	assert.InDelta(t, 4.5, law.ThresholdC, 0.1)
	assert.InDelta(t, 0.054, worst(brown, by), 0.001)
	for _, c := range []struct {
		name string
		fit  fit
		want []float64
	}{
		{"a thermal sum", thermalSum, []float64{0.032, -0.044, -0.065, 0.019, 0.047, 0.056, -0.074}},
		{"a falling factor", fallingFactor, []float64{0.019, 0.054, 0.000, 0.044, 0.052, 0.058, 0.062}},
		{"one factor", fixedFactor, []float64{-0.258, 0.040, 0.056, 0.132, 0.106, 0.088, -0.311}},
	} {
		for i, got := range leftOut(brown, c.fit) {
			assert.InDelta(t, c.want[i], got, 0.001, "%s, %v °C left out", c.name, brown[i].c)
		}
	}
}

// warmEggs is a step of 60 days at 18 °C that ends after 480 degree-days above
// 10 °C; its source covers 14 to 24 °C, and 12 to 26 °C are safe.
func warmEggs(t testing.TB, law species.Law) *Model {
	s := step(species.Egg, 50, 60, 72, 1)
	s.AtC = species.Range{Low: 18, High: 18, Source: invented}
	s.CoversC = species.Range{Low: 14, High: 24, Source: invented}
	s.Law = law
	p := profile(s)
	p.Safe = species.Range{Low: 12, High: 26, Source: invented}
	m, err := NewModel(p)
	require.NoError(t, err)
	return m
}

var degreeDays = species.Law{Kind: species.ThermalSum, ThresholdC: 10, Source: invented}

func hatching(m *Model, water ...Reading) (Event, []string) {
	o := m.Outlook(Clutch{Laid: day(0), Water: water}, nil)
	return o.Events[0], texts(o)
}

func TestDaysFollowTheTemperature(t *testing.T) {
	m := warmEggs(t, degreeDays)
	for _, c := range []struct {
		name  string
		water []Reading
		want  int // likely day
	}{
		{"nothing known: the days of the profile", nil, 60},
		{"as in the profile", []Reading{{day(0), 18}}, 60},
		{"480 degree-days at 22 °C", []Reading{{day(0), 22}}, 40},
		{"and at 14 °C", []Reading{{day(-9), 14}}, 120},
		{"20 days at 22, 10 at 15, then 20 °C: 240 + 50 + 19 days of 10", []Reading{{day(0), 22}, {day(20), 15}, {day(30), 20}}, 49},
		{"the order of readings does not matter", []Reading{{day(30), 20}, {day(0), 22}, {day(20), 15}}, 49},
		{"the later of two on a day counts", []Reading{{day(0), 15}, {day(0), 22}}, 40},
		{"the first holds before its day too", []Reading{{day(5), 22}}, 40},
		{"what comes after does not matter", []Reading{{day(0), 22}, {day(90), 14}}, 40},
	} {
		t.Run(c.name, func(t *testing.T) {
			e, warnings := hatching(m, c.water...)
			assert.InDelta(t, c.want, e.Dist.Quantile(0.5), 1)
			assert.Empty(t, warnings)
			assert.InDelta(t, 72.0/60*float64(c.want), e.Dist.Quantile(0.9), 3, "the spread keeps in proportion, where the rate stays")
		})
	}
}

// Worked by hand: 480 degree-days above 8 °C are 40 days at 20 °C; 20 days at
// 22, 10 at 19 and then 23 °C end on day 36.
func TestClockWorkedExample(t *testing.T) {
	w := newWarmth(species.Step{
		AtC: species.Range{Low: 20, High: 20, Source: invented}, CoversC: species.Range{Low: 10, High: 30, Source: invented},
		Law: species.Law{Kind: species.ThermalSum, ThresholdC: 8, Source: invented},
	})
	c := newClock(w, Temperatures{{day(0), 22}, {day(20), 19}, {day(30), 23}}, day(0))
	assert.InDelta(t, 36, c.reaches(0, 40), 0.5)
	for _, row := range []struct{ c, days float64 }{{18, 48}, {20, 40}, {22, 34.3}, {24, 30}} {
		even := newClock(w, Temperatures{{day(0), row.c}}, day(0))
		assert.InDelta(t, row.days, 40/(even.end(10)-even.end(9)), 0.05)
	}
}

// Nothing is extrapolated in silence.
func TestOutsideWhatIsCovered(t *testing.T) {
	m := warmEggs(t, degreeDays)
	inside, _ := hatching(m, Reading{day(0), 24})
	outside, warnings := hatching(m, Reading{day(0), 25})
	assert.Less(t, outside.Dist.Quantile(0.5), inside.Dist.Quantile(0.5), "a degree more is still faster")
	width := func(e Event) float64 { return math.Log(float64(e.Dist.Quantile(0.9)) / float64(e.Dist.Quantile(0.1))) }
	assert.Greater(t, width(outside), width(inside)*1.02)
	require.Len(t, warnings, 1)
	assert.Equal(t, "temperatures outside what is known, so these windows are wider and rough: egg (law over 14 to 24 °C) with the water at 25 °C", warnings[0])

	far, warnings := hatching(m, Reading{day(0), 29})
	farther, _ := hatching(m, Reading{day(0), 34})
	assert.Equal(t, far.Dist.Quantile(0.5), farther.Dist.Quantile(0.5), "no law is followed more than 5 degrees out")
	assert.GreaterOrEqual(t, width(farther), width(far))
	require.Len(t, warnings, 2)
	assert.Equal(t, "the water is at 29 °C, outside the safe range of 12 to 26 °C: bring it back slowly, and ask a veterinarian when animals look unwell", warnings[1])

	cold, _ := hatching(m, Reading{day(0), 11})
	assert.Less(t, cold.Dist.Quantile(0.5), 60*8*2, "a threshold is no guide to the rate near it")
	lawless := warmEggs(t, species.Law{})
	same, warnings := hatching(lawless, Reading{day(0), 21})
	assert.InDelta(t, 60, same.Dist.Quantile(0.5), 1, "without a law nothing moves")
	require.Len(t, warnings, 1)
	assert.Equal(t, "temperatures outside what is known, so these windows are wider and rough: egg (known at 18 °C only, so not moved) with the water at 21 °C", warnings[0])
	known, _ := hatching(lawless)
	assert.Greater(t, width(same), width(known)*1.5)
}

// What is over needs no warning any more, and a look may come before its day.
func TestWarningsOfTheDaysThatMatter(t *testing.T) {
	m := warmEggs(t, degreeDays)
	o := m.Outlook(Clutch{
		Laid: day(0), Water: Temperatures{{day(0), 22}, {day(41), 35}},
		Looks: []Look{{Hatched, day(40), Reached}},
	}, nil)
	assert.Empty(t, o.Warnings)
	o = m.Outlook(Clutch{Laid: day(0), Water: Temperatures{{day(-30), 35}, {day(0), 22}}}, nil)
	assert.Empty(t, o.Warnings, "who was warm before they were laid does not matter")
	short := Temperatures{{day(0), 22}, {day(5), 27}, {day(6), 22}}
	o = m.Outlook(Clutch{Laid: day(0), Water: short}, nil)
	require.Len(t, o.Warnings, 2, "one hot day is told, of the law and of the welfare")
	assert.Contains(t, o.Warnings[1].Text, "27 °C on "+civil.Date(day(5)).String())
}
