package horizon

import (
	"math"
	"math/rand/v2"
	"slices"
)

// herd is the line in one run.
type herd struct {
	rng  *rand.Rand
	kin  [][]float64
	male []bool
	age  []int
	stop func() bool // true when what is played is no longer wanted
}

func newHerd(l Line, rng *rand.Rand, stop func() bool) *herd {
	h := &herd{rng: rng, stop: stop, male: slices.Clone(l.Male), age: slices.Clone(l.Age)}
	for _, row := range l.Kinship {
		h.kin = append(h.kin, slices.Clone(row))
	}
	return h
}

// welcome adds the newcomers.
func (h *herd) welcome(f Future) {
	for i := range f.Newcomers {
		for j := range h.kin {
			h.kin[j] = append(h.kin[j], 0)
		}
		row := make([]float64, len(h.kin)+1)
		row[len(h.kin)] = 0.5
		h.kin = append(h.kin, row)
		h.male = append(h.male, i%2 == 0)
		h.age = append(h.age, f.Matures)
	}
}

// young is an animal that is held back.
type young struct{ sire, dam int }

// season plays a year: deaths, matings, those that are too old leave, and young fill their
// places. It gives the mean inbreeding of the young.
func (h *herd) season(f Future, year int) float64 {
	h.keep(func(int) bool { return h.rng.Float64() >= f.Death })
	var males, females []int // breeders
	var stay []int
	wantMales, wantFemales := (f.Size+1)/2, f.Size/2
	for i := range h.kin {
		if h.age[i] >= f.Matures {
			if h.male[i] {
				males = append(males, i)
			} else {
				females = append(females, i)
			}
		}
		if h.age[i] >= f.Lives {
			continue
		}
		stay = append(stay, i)
		if h.male[i] {
			wantMales--
		} else {
			wantFemales--
		}
	}
	wantMales, wantFemales = max(0, wantMales), max(0, wantFemales)
	h.shuffle(males)
	h.shuffle(females)
	var litter []young
	if n := wantMales + wantFemales; n > 0 && len(males) > 0 && len(females) > 0 {
		switch f.Strategy {
		case EqualFamilies:
			litter = h.equal(males, females, n)
		case Random:
			litter = h.random(males, females, n)
		default:
			litter = h.planned(males, females, stay, n, f, year)
		}
		h.rng.Shuffle(len(litter), func(i, j int) { litter[i], litter[j] = litter[j], litter[i] })
	}
	return h.replace(stay, litter, wantMales)
}

// keep drops the animals that do not stay.
func (h *herd) keep(stays func(i int) bool) {
	var on []int
	for i := range h.kin {
		if stays(i) {
			on = append(on, i)
		}
	}
	h.replace(on, nil, 0)
	for i := range h.age {
		h.age[i]-- // replace lets them age, and the year is not over
	}
}

func (h *herd) shuffle(xs []int) {
	h.rng.Shuffle(len(xs), func(i, j int) { xs[i], xs[j] = xs[j], xs[i] })
}

func (h *herd) equal(males, females []int, n int) []young {
	litter := make([]young, n)
	sires, dams := h.evenly(males, n), h.evenly(females, n)
	for i := range litter {
		litter[i] = young{sires[i], dams[i]}
	}
	return litter
}

// evenly names each as often as any other, give or take one, n in all, in a
// random order.
func (h *herd) evenly(xs []int, n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = xs[i%len(xs)]
	}
	h.shuffle(out)
	return out
}

func (h *herd) random(males, females []int, n int) []young {
	litter := make([]young, n)
	for i := range litter {
		litter[i] = young{males[h.rng.IntN(len(males))], females[h.rng.IntN(len(females))]}
	}
	return litter
}

// replace makes the next year's herd of those that stay and the young, of which the first are
// males, and gives the mean inbreeding of the young.
func (h *herd) replace(stay []int, litter []young, males int) float64 {
	n := len(stay) + len(litter)
	next := &herd{kin: make([][]float64, n), male: make([]bool, n), age: make([]int, n)}
	cells := make([]float64, n*n)
	for i := range next.kin {
		next.kin[i] = cells[i*n : (i+1)*n : (i+1)*n] // newcomers append to rows
	}
	for i, old := range stay {
		next.male[i], next.age[i] = h.male[old], h.age[old]+1
		for j, other := range stay {
			next.kin[i][j] = h.kin[old][other]
		}
	}
	inbreeding := 0.0
	for y, one := range litter {
		i := len(stay) + y
		next.male[i], next.age[i] = y < males, 1
		s, d := h.kin[one.sire], h.kin[one.dam]
		for j, other := range stay {
			k := (s[other] + d[other]) / 2
			next.kin[i][j], next.kin[j][i] = k, k
		}
		for z, two := range litter[:y] {
			j := len(stay) + z
			k := (s[two.sire] + s[two.dam] + d[two.sire] + d[two.dam]) / 4
			next.kin[i][j], next.kin[j][i] = k, k
		}
		next.kin[i][i] = (1 + s[one.dam]) / 2
		inbreeding += s[one.dam]
	}
	h.kin, h.male, h.age = next.kin, next.male, next.age
	if len(litter) == 0 {
		return math.NaN()
	}
	return inbreeding / float64(len(litter))
}
