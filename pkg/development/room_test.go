package development

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/species"
)

// eggsOnly is a species of one step of 45 days, 35.3 to 57.4 in the middle 80 %.
func eggsOnly(t testing.TB) *Model {
	m, err := NewModel(profile(step(species.Egg, 35.28, 45, 57.40, 1)))
	require.NoError(t, err)
	return m
}

func hatchedAfter(days ...int) []Clutch {
	var all []Clutch
	for _, d := range days {
		all = append(all, Clutch{Laid: day(0), Looks: []Look{{Hatched, day(d), Reached}}})
	}
	return all
}

func notHatchedBy(days int) Clutch {
	return Clutch{Laid: day(0), Looks: []Look{{Hatched, day(days), NotYet}}}
}

// predicted gives a percentile of the days that a room predicts for a step.
func predicted(m *Model, rooms []room, step int, p float64) float64 {
	low, high := 0.0, 3000.0
	for range 80 {
		middle := (low + high) / 2
		sum := 0.0
		for _, r := range rooms {
			sum += r.weight * normalCDF((m.shapes[step].z(middle)-r.mean)/math.Sqrt(r.spread*r.spread+r.variance))
		}
		if sum < p {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// Worked by hand: y = ln days has a normal and inverse gamma prior with middle
// 45 days, k0 = 4, a0 = 6, b0 = 0.1536. Its prediction is 35.3 to 57.4 days,
// and after 41, 47 and 44 days it is 36.2, 44.5 and 54.9 (a Student distribution
// with 15 degrees of freedom about 3.7964; 36.1, 44.5 and 54.9 by simulation).
func TestLearnWorkedExample(t *testing.T) {
	m := eggsOnly(t)
	r := m.Learn(hatchedAfter(41, 47, 44))
	for _, c := range []struct{ p, want float64 }{{0.1, 36.2}, {0.5, 44.5}, {0.9, 54.9}} {
		assert.InDelta(t, c.want, predicted(m, r.steps[0].rooms, 0, c.p), 0.1, "percentile %v", c.p)
	}
	finished, running := r.Clutches(Hatched)
	assert.Equal(t, []int{3, 0}, []int{finished, running})
	o := m.Outlook(Clutch{Laid: day(0)}, r)
	assert.Equal(t, "your 3 clutches and the book (counts as 4 clutches)", o.Events[0].Basis.String())
}

// Worked by hand: of 41, 47 and 44 days alone the likeliest lognormal has a
// median of 43.9 and a spread of 0.056. With one more clutch that is not through
// on day 55 it has 47.3 and 0.141.
func TestLikeliestWithARunningClutch(t *testing.T) {
	exact := func(days float64) length { return length{math.Log(days - 0.01), math.Log(days + 0.01), 1} }
	three := []length{exact(41), exact(47), exact(44)}
	for _, c := range []struct {
		name           string
		lengths        []length
		median, spread float64
	}{
		{"the running one left out", three, 43.9, 0.056},
		{"the running one counted", append(three, length{math.Log(55), math.Inf(1), 1}), 47.3, 0.141},
	} {
		t.Run(c.name, func(t *testing.T) {
			best, median, spread := math.Inf(-1), 0.0, 0.0
			for m := 40.0; m < 55; m += 0.05 {
				for s := 0.03; s < 0.3; s += 0.001 {
					sum := 0.0
					for _, n := range c.lengths {
						sum += n.lnChance(math.Log(m), s, 0)
					}
					if sum > best {
						best, median, spread = sum, m, s
					}
				}
			}
			assert.InDelta(t, c.median, median, 0.1)
			assert.InDelta(t, c.spread, spread, 0.002)
		})
	}
}

// The slow twin of the grid: with exact lengths the answer is known in closed
// form. Given its spread, a room predicts a normal, and the spread is
// integrated finely.
func TestGridAgainstTheClosedForm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 40).Draw(t, "n")
		middle := rapid.Float64Range(-2, 2).Draw(t, "middle")
		spread := rapid.Float64Range(0.1, 2).Draw(t, "spread")
		var lengths []length
		var sum, squares float64
		for range n {
			u := middle + spread*rapid.Float64Range(-2, 2).Draw(t, "u")
			lengths = append(lengths, length{u - 1e-4, u + 1e-4, 1})
			sum, squares = sum+u, squares+u*u
		}
		mean := sum / float64(n)
		kn := bookClutches + float64(n)
		mn := sum / kn
		an := bookShape + float64(n)/2
		bn := bookScale + (squares-float64(n)*mean*mean)/2 + bookClutches*float64(n)*mean*mean/(2*kn)
		want := func(x float64) float64 {
			total, below := 0.0, 0.0
			for ln := -4.0; ln < 3; ln += 0.002 { // ln of the spread
				s := math.Exp(ln)
				w := math.Exp(-2*an*ln - bn/(s*s) + an*math.Log(bn/an) + an)
				total += w
				below += w * normalCDF((x-mn)/(s*math.Sqrt(1+1/kn)))
			}
			return below / total
		}
		rooms := newGrid(lengths, 0).rooms()
		for _, x := range []float64{-3, -1, 0, 0.5, 1, 3} {
			got := 0.0
			for _, r := range rooms {
				got += r.weight * normalCDF((x-r.mean)/math.Sqrt(r.spread*r.spread+r.variance))
			}
			if w := want(x); math.Abs(got-w) > 2e-3 {
				t.Fatalf("at most %v: %v, want %v", x, got, w)
			}
		}
	})
}

// The book of a room that was never used is the profile itself.
func TestLearnNothing(t *testing.T) {
	m := leafFrog(t)
	bare := m.Outlook(Clutch{Laid: day(0)}, nil)
	for _, clutches := range [][]Clutch{nil, {{Laid: day(0)}}, {{}}} {
		o := m.Outlook(Clutch{Laid: day(0)}, m.Learn(clutches))
		for i := range o.Events {
			sameDistribution(t, bare.Events[i].Dist, o.Events[i].Dist)
		}
	}
}

func TestRunningClutchesCount(t *testing.T) {
	m := eggsOnly(t)
	median := func(clutches ...Clutch) float64 { return predicted(m, m.Learn(clutches).steps[0].rooms, 0, 0.5) }
	three := hatchedAfter(41, 47, 44)
	alone := median(three...)
	assert.Greater(t, median(append(three, notHatchedBy(55))...), alone+1, "a clutch that is late already makes all later")
	assert.InDelta(t, alone, median(append(three, notHatchedBy(10))...), 0.05, "one that is young says nothing yet")
	r := m.Learn(append(three, notHatchedBy(55)))
	assert.Equal(t, "your 3 clutches, 1 still on the way and the book (counts as 4 clutches)",
		m.Outlook(Clutch{Laid: day(0)}, r).Events[0].Basis.String())
}

// A clutch must not teach itself.
func TestWithout(t *testing.T) {
	m := leafFrog(t)
	all := finished(m, 6)
	all = append(all, Clutch{Laid: day(0), Looks: []Look{{Hatched, day(7), Reached}, {FrontLegs, day(90), NotYet}}})
	for i, c := range all {
		got := m.Learn(all).Without(c)
		want := m.Learn(slices.Delete(slices.Clone(all), i, i+1))
		for s := range links {
			for _, p := range []float64{0.05, 0.5, 0.95} {
				x, y := predicted(m, want.steps[s].rooms, s, p), predicted(m, got.steps[s].rooms, s, p)
				assert.InDelta(t, x, y, 0.002*x+0.001, "clutch %d, step %d, percentile %v", i, s, p)
			}
			assert.Equal(t, want.steps[s].finished, got.steps[s].finished)
			assert.Equal(t, want.steps[s].running, got.steps[s].running)
		}
	}
	only := all[:1]
	assert.Equal(t, book, m.Learn(only).Without(only[0]).steps[0].rooms, "nothing is left but the book")
}

// Clutches of a room that is warmer than the profile's teach nothing but that
// it is warm, if the thermometer was read.
func TestLearnByTheClock(t *testing.T) {
	s := step(species.Egg, 35.28, 45, 57.40, 1)
	s.AtC = species.Range{Low: 20, High: 20, Source: invented}
	s.CoversC = species.Range{Low: 15, High: 30, Source: invented}
	s.Law = species.Law{Kind: species.ThermalSum, ThresholdC: 10, Source: invented}
	m := mustModel(t, profile(s))
	warm := hatchedAfter(30, 30, 30, 30) // 45 days at 20 °C are 30 at 25 °C
	for i := range warm {
		warm[i].Water = Temperatures{{day(0), 25}}
	}
	assert.InDelta(t, 45, predicted(m, m.Learn(warm).steps[0].rooms, 0, 0.5), 0.1)
	for i := range warm {
		warm[i].Water = Temperatures{{day(0), 33}}
	}
	finished, _ := m.Learn(warm).Clutches(Hatched)
	assert.Zero(t, finished, "three degrees outside what the law covers nothing is learned")
}

func TestLearnFromIntervals(t *testing.T) {
	m := leafFrog(t)
	for _, c := range []struct {
		name              string
		looks             []Look
		stage             Stage
		finished, running int
	}{
		{"between two looks", []Look{{Hatched, day(5), NotYet}, {Hatched, day(9), By}}, Hatched, 1, 0},
		{"already there at the first look", []Look{{Hatched, day(9), By}}, Hatched, 1, 0},
		{"the begin between two looks, the end seen", []Look{{Hatched, day(5), NotYet}, {Hatched, day(9), By}, {Feeding, day(11), Reached}}, Feeding, 1, 0},
		{"the begin not known to have been", []Look{{Feeding, day(5), NotYet}}, Feeding, 0, 0},
		{"begun, not ended", []Look{{Hatched, day(5), Reached}, {Feeding, day(6), NotYet}}, Feeding, 0, 1},
		{"some of them", []Look{{Hatched, day(8), Some}}, Hatched, 1, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			finished, running := m.Learn([]Clutch{{Laid: day(0), Looks: c.looks}}).Clutches(c.stage)
			assert.Equal(t, []int{c.finished, c.running}, []int{finished, running})
		})
	}
}

// Of a clutch that was not seen being laid only those steps count whose begin and
// end were seen.
func TestLearnWithoutLaying(t *testing.T) {
	m := leafFrog(t)
	r := m.Learn([]Clutch{{Looks: []Look{{Feeding, day(0), Reached}, {FrontLegs, day(58), Reached}, {OutOfWater, day(65), By}}}})
	for _, c := range []struct {
		stage             Stage
		finished, running int
	}{{Hatched, 0, 0}, {Feeding, 0, 0}, {FrontLegs, 1, 0}, {OutOfWater, 1, 0}, {SaleReady, 0, 0}} {
		finished, running := r.Clutches(c.stage)
		assert.Equal(t, []int{c.finished, c.running}, []int{finished, running}, "%v", c.stage)
	}
	finished, _ := m.Learn([]Clutch{{Looks: []Look{{OutOfWater, day(65), Reached}}}}).Clutches(FrontLegs)
	assert.Zero(t, finished, "nobody knows when its tadpole step began")
}

// Of clutches of which only the end was seen the longest step is learned, neither
// too short nor too long, and no other.
func TestLearnFromTheWhole(t *testing.T) {
	m := leafFrog(t)
	for _, c := range []struct {
		name     string
		slower   float64 // tadpoles, in standard deviations
		from, to float64
	}{
		{"a room as in the book", 0, 57, 64},
		{"slower tadpoles", 1, 68, 79},
	} {
		t.Run(c.name, func(t *testing.T) {
			random := rand.New(rand.NewPCG(3, 4))
			var all []Clutch
			for range 200 {
				at := 0
				for i, l := range links[:4] {
					z := random.NormFloat64()
					if i == tadpole {
						z += c.slower
					}
					at += int(m.shapes[i].days(z) + 0.5)
					if l.end == OutOfWater {
						all = append(all, Clutch{Laid: day(0), Looks: []Look{{OutOfWater, day(at), Reached}}})
					}
				}
			}
			r := m.Learn(all)
			median := predicted(m, r.steps[tadpole].rooms, tadpole, 0.5)
			assert.Greater(t, median, c.from)
			assert.Less(t, median, c.to)
			for _, s := range []Stage{Hatched, Feeding, OutOfWater} {
				finished, running := r.Clutches(s)
				assert.Zero(t, finished+running, "%v", s)
			}
		})
	}
}

func TestRoomOfAnotherModelPanics(t *testing.T) {
	assert.Panics(t, func() { leafFrog(t).Outlook(Clutch{Laid: day(0)}, leafFrog(t).Learn(nil)) })
}
