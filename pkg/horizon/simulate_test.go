package horizon

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// TestDrift holds the loss without selection against (1 - 1/(2Ne))^t (Wright
// 1931, Genetics 16:97): Ne = 4MF/(M+F) with random parents, and about 2N with
// equal families.
func TestDrift(t *testing.T) {
	for _, row := range []struct {
		why      string
		strategy Strategy
		n        int
		ne       float64
		within   float64
	}{
		{"random parents, 10 males and 10 females", Random, 20, 20, 0.006},
		{"random parents, 30 and 30", Random, 60, 60, 0.003},
		{"equal families, 10 and 10", EqualFamilies, 20, 40, 0.006},
		{"equal families, 30 and 30", EqualFamilies, 60, 120, 0.003},
	} {
		o := Simulate(founders(row.n), Future{
			Years: 10, Runs: 400, Seed: 2, Workers: 2, Strategy: row.strategy, Size: row.n, Matures: 1, Lives: 1,
		})
		for year, y := range o.Years {
			want := o.Years[0].GeneDiversity.Mean * math.Pow(1-1/(2*row.ne), float64(year))
			assert.InDelta(t, want, y.GeneDiversity.Mean, row.within, "%s, year %d", row.why, year)
		}
	}
}

// TestUnequalSexes: few males among many females drift as 4MF/(M+F) says.
func TestUnequalSexes(t *testing.T) {
	l := founders(20)
	for i := range l.Male {
		l.Male[i] = i < 4
	}
	h := newHerd(l, newRand(1), never)
	var sum float64
	const runs = 4000
	for range runs {
		litter := h.random([]int{0, 1, 2, 3}, []int{4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19}, 2)
		if litter[0].sire == litter[1].sire {
			sum += 0.125
		}
		if litter[0].dam == litter[1].dam {
			sum += 0.125
		}
	}
	// Kinship of two young of unrelated parents is 1/(2Ne): 1/8 (1/M + 1/F).
	assert.InDelta(t, 1/(2*4.0*4*16/20), sum/runs, 0.005)
}

// TestWorkersMakeNoDifference plays small futures with one worker and with several.
func TestWorkersMakeNoDifference(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := Future{
			Years: rapid.IntRange(1, 4).Draw(t, "years"), Runs: rapid.IntRange(1, 9).Draw(t, "runs"),
			Seed: rapid.Uint64().Draw(t, "seed"), Strategy: Strategy(rapid.IntRange(0, 2).Draw(t, "strategy")),
			Size: rapid.IntRange(2, 8).Draw(t, "size"), Matures: rapid.IntRange(0, 2).Draw(t, "matures"),
			Weight: rapid.SampledFrom([]float64{0, 0.1, 2}).Draw(t, "weight"), Goal: 0.7,
			Death: rapid.SampledFrom([]float64{0, 0.2, 0.9}).Draw(t, "death"), Pairings: rapid.IntRange(0, 3).Draw(t, "pairings"),
			Newcomers: rapid.IntRange(0, 3).Draw(t, "newcomers"), Arrive: rapid.IntRange(0, 3).Draw(t, "arrive"),
			CrossEvery: rapid.IntRange(0, 2).Draw(t, "cross"), Ceiling: rapid.SampledFrom([]float64{0, 0.2}).Draw(t, "ceiling"),
		}
		f.Lives = f.Matures + rapid.IntRange(0, 3).Draw(t, "more years")
		l := families(rapid.SliceOfN(rapid.IntRange(1, 3), 1, 4).Draw(t, "families")...)
		one := Simulate(l, f)
		f.Workers = 5
		if diff := cmp.Diff(one, Simulate(l, f)); diff != "" {
			t.Fatalf("(-one +five workers):\n%s", diff)
		}
		require.Equal(t, f.Runs, one.Runs)
		require.Len(t, one.Years, f.Years+1)
		for _, y := range one.Years {
			for _, b := range []Band{y.GeneDiversity, y.Inbreeding, y.Young} {
				require.True(t, b.Low <= b.Mean+1e-9 || b.Mean == 0 || f.Runs > 2, "%+v", b)
				require.True(t, b.Low >= -1e-9 && b.High <= 1 && b.Low <= b.High+1e-12, "%+v", b)
			}
		}
	})
}

// TestPlannedIsNoWorseThanOneAtATime: moving young about never costs more than
// taking each where it is cheapest.
func TestPlannedIsNoWorseThanOneAtATime(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := families(rapid.SliceOfN(rapid.IntRange(1, 4), 2, 4).Draw(t, "families")...)
		h := newHerd(l, newRand(rapid.Uint64().Draw(t, "seed")), never)
		var males, females, all []int
		for i, m := range l.Male {
			all = append(all, i)
			if m {
				males = append(males, i)
			} else {
				females = append(females, i)
			}
		}
		if len(males) == 0 || len(females) == 0 {
			t.Skip("one sex")
		}
		n := rapid.IntRange(1, 6).Draw(t, "young")
		f := Future{Weight: rapid.SampledFrom([]float64{0, 0.5}).Draw(t, "weight"), Pairings: rapid.IntRange(0, 3).Draw(t, "pairings")}
		litter := h.planned(males, females, all, n, f, 1)
		pairs := map[young]bool{}
		for _, y := range litter {
			pairs[y] = true
		}
		require.True(t, f.Pairings == 0 || len(pairs) <= f.Pairings)
		size := float64(len(all) + n)
		score := func(litter []young) float64 {
			next := newHerd(l, newRand(1), never)
			inbreeding := next.replace(all, litter, 0)
			return (1 - next.state(0).diversity) + f.Weight*inbreeding
		}
		if f.Pairings > 0 {
			return
		}
		got := score(litter)
		for i := range litter {
			for _, m := range males {
				for _, d := range females {
					other := append([]young{}, litter...)
					other[i] = young{m, d}
					require.GreaterOrEqual(t, score(other), got-1e-7, "size %v: a young moves to a better pair", size)
				}
			}
		}
	})
}

func TestNewcomersBringDiversity(t *testing.T) {
	f := Future{Years: 8, Runs: 50, Seed: 1, Size: 10, Matures: 1, Lives: 2, Weight: 0.1, Goal: 0.8}
	without := Simulate(families(5, 5), f)
	f.Newcomers, f.Arrive = 2, 4
	with := Simulate(families(5, 5), f)
	assert.Equal(t, without.Years[3], with.Years[3])
	assert.Greater(t, with.Years[4].GeneDiversity.Mean, without.Years[4].GeneDiversity.Mean+0.02)
	assert.Less(t, with.Years[8].Below, without.Years[8].Below)
}

// never is the stop of a simulation that goes on to its end.
func never() bool { return false }

// TestStopAndProgress stops a simulation at every call: runs that are not at their end do not
// count, and the others are as they would be.
func TestStopAndProgress(t *testing.T) {
	f := Future{Years: 2, Runs: 6, Size: 4, Matures: 1, Lives: 1}
	for _, f.Strategy = range []Strategy{Plan, EqualFamilies, Random} {
		whole := 0
		f.Stop = func() bool { whole++; return false }
		Simulate(founders(4), f)
		for most := range whole + 1 {
			last, calls := 0, 0
			f.Progress = func(done int) { last = done }
			f.Stop = func() bool { calls++; return calls > most }
			o := Simulate(founders(4), f)
			require.Equal(t, o.Runs, last)
			f.Stop, f.Progress = nil, nil
			if o.Runs == 0 {
				require.Empty(t, o.Years)
				continue
			}
			fewer := f
			fewer.Runs = o.Runs
			require.Empty(t, cmp.Diff(Simulate(founders(4), fewer), o), "stopped at call %d of %d", most, whole)
		}
	}
}

// TestStopWithinARun: a run of a large line takes long, and is not waited for.
func TestStopWithinARun(t *testing.T) {
	calls := 0
	f := Future{Years: 1000, Runs: 1, Size: 60, Matures: 1, Lives: 1}
	f.Stop = func() bool { calls++; return calls > 30 }
	assert.Zero(t, Simulate(founders(60), f).Runs)
	assert.Less(t, calls, 40, "times it was asked, once a young")
}

func TestCallersBugsPanic(t *testing.T) {
	good := Future{Years: 1, Runs: 1, Size: 2, Matures: 1, Lives: 1}
	assert.Panics(t, func() { Simulate(Line{}, good) })
	assert.Panics(t, func() {
		Simulate(Line{Kinship: [][]float64{{0.5}, {0}}, Male: []bool{true, false}, Age: []int{1, 1}}, good)
	})
	for _, f := range []Future{{}, {Years: 1, Runs: 1, Size: 2, Matures: 2, Lives: 1}, {Years: 1, Runs: 1, Size: 2, Lives: 1, Death: 1}, {Years: 1, Runs: 1, Size: 2, Lives: 1, Weight: math.NaN()}} {
		assert.Panics(t, func() { Simulate(founders(2), f) }, "%+v", f)
	}
}

// BenchmarkSimulate plays 60 animals for 10 years, 1,000 times.
func BenchmarkSimulate(b *testing.B) {
	f := Future{Years: 10, Runs: 1000, Seed: 1, Workers: 2, Weight: 0.1, Size: 60, Matures: 1, Lives: 4, Goal: 0.9}
	for b.Loop() {
		Simulate(founders(60), f)
	}
}
