package horizon

import (
	"math"
	"math/rand/v2"
	"slices"
	"sync"
)

// Simulate plays the future of a line many times. It panics when the line or the
// future make no sense. Cost: for Plan about Size³ a year and run, less for the others; each
// worker holds some tables of Size² numbers, so that a line of thousands is a matter of
// hours and gigabytes.
func Simulate(l Line, f Future) Outlook {
	l.mustBeSound()
	f.mustBeSound()
	runs := make([][]state, f.Runs)
	next := make(chan int)
	var wait sync.WaitGroup
	var told, asked sync.Mutex
	done := 0
	stop := func() bool {
		asked.Lock()
		defer asked.Unlock()
		return f.Stop != nil && f.Stop()
	}
	for range max(1, f.Workers) {
		wait.Go(func() {
			for i := range next {
				runs[i] = play(l, f, uint64(i), stop)
				if runs[i] == nil {
					continue
				}
				told.Lock()
				done++
				if f.Progress != nil {
					f.Progress(done)
				}
				told.Unlock()
			}
		})
	}
	for i := range runs {
		if stop() {
			break
		}
		next <- i
	}
	close(next)
	wait.Wait()
	return summary(slices.DeleteFunc(runs, func(r []state) bool { return r == nil }), f)
}

// state is what is kept of a year of a run.
type state struct {
	diversity, inbreeding, young float64 // young is NaN when there were none
	lost                         bool
}

// play gives the years of one run, or nil when it was stopped.
func play(l Line, f Future, run uint64, stop func() bool) []state {
	h := newHerd(l, rand.New(rand.NewPCG(f.Seed, run)), stop)
	out := []state{h.state(math.NaN())}
	for year := 1; year <= f.Years; year++ {
		if year == f.Arrive {
			h.welcome(f)
		}
		young := h.season(f, year)
		if stop() {
			return nil
		}
		out = append(out, h.state(young))
	}
	return out
}

func (h *herd) state(young float64) state {
	males, females := 0, 0
	s := state{young: young}
	sum := 0.0
	for i, row := range h.kin {
		if h.male[i] {
			males++
		} else {
			females++
		}
		s.inbreeding += 2*row[i] - 1
		for _, k := range row {
			sum += k
		}
	}
	if n := float64(len(h.kin)); n > 0 {
		s.inbreeding /= n
		s.diversity = 1 - sum/(n*n)
	}
	s.lost = males == 0 || females == 0
	return s
}

func summary(runs [][]state, f Future) Outlook {
	o := Outlook{Runs: len(runs)}
	if len(runs) == 0 {
		return o
	}
	pick := func(year int, value func(state) float64) []float64 {
		out := make([]float64, 0, len(runs))
		for _, r := range runs {
			if x := value(r[year]); !math.IsNaN(x) {
				out = append(out, x)
			}
		}
		return out
	}
	for year := range f.Years + 1 {
		y := Year{
			Year:          year,
			GeneDiversity: bandOf(pick(year, func(s state) float64 { return s.diversity })),
			Inbreeding:    bandOf(pick(year, func(s state) float64 { return s.inbreeding })),
			Young:         bandOf(pick(year, func(s state) float64 { return s.young })),
		}
		for _, r := range runs {
			if r[year].diversity < f.Goal {
				y.Below += 1 / float64(len(runs))
			}
			if r[year].lost {
				y.Lost += 1 / float64(len(runs))
			}
		}
		o.Years = append(o.Years, y)
	}
	return o
}

// bandOf sums values up; all are 0 when there are none.
func bandOf(xs []float64) Band {
	if len(xs) == 0 {
		return Band{}
	}
	n := float64(len(xs))
	var b Band
	for _, x := range xs {
		b.Mean += x / n
	}
	for _, x := range xs {
		b.Error += (x - b.Mean) * (x - b.Mean)
	}
	b.Error = math.Sqrt(b.Error / max(1, n-1) / n)
	slices.Sort(xs)
	b.Low, b.High = quantile(xs, 0.1), quantile(xs, 0.9)
	return b
}

// quantile goes straight between neighbours.
func quantile(sorted []float64, p float64) float64 {
	at := p * float64(len(sorted)-1)
	low := int(at)
	high := min(low+1, len(sorted)-1)
	return sorted[low] + (at-float64(low))*(sorted[high]-sorted[low])
}
