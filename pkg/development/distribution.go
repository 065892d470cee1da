package development

import (
	"fmt"
	"math"
	"sort"
)

// tailCut is the chance that is cut from the two ends of a distribution
// together. What is cut goes to the first and the last day that are kept, so
// that the chances of the days between, and all sums up to them, stay exact.
const tailCut = 1e-9

// A Distribution is the chance of each whole day of a count of days. It never
// changes after it is made and may be copied and shared freely. The zero value
// is the distribution of something unknown: see [Distribution.Known].
type Distribution struct {
	first int       // day of p[0]
	p     []float64 // chance of each day; the first and the last are above 0
	cum   []float64 // chance of each day and all days before it
}

// Point is the distribution of what happens on day for certain.
func Point(day int) Distribution { return FromMasses(day, []float64{1}) }

// FromMasses makes a distribution from masses, the first of which belongs to
// the day first and each other to the day after the one before. Their scale
// does not matter: they are divided by their sum. Ends that hold less than
// 1e-9 of it together are cut, and their chance goes to the day next to them.
//
// It panics when a mass is negative or not a number, or when all are 0.
func FromMasses(first int, masses []float64) Distribution {
	total := 0.0
	for i, m := range masses {
		if !(m >= 0) || math.IsInf(m, 1) {
			panic(fmt.Sprintf("development: mass %v of day %d", m, first+i))
		}
		total += m
	}
	if total == 0 {
		panic("development: a distribution needs a mass above 0")
	}
	lo, below := cut(len(masses), total, func(i int) float64 { return masses[i] })
	hi, above := cut(len(masses), total, func(i int) float64 { return masses[len(masses)-1-i] })
	p := make([]float64, len(masses)-lo-hi)
	for i := range p {
		p[i] = masses[lo+i] / total
	}
	p[0] += below / total
	p[len(p)-1] += above / total
	return Distribution{first: first + lo, p: p, cum: sums(p)}
}

// cut counts the masses at one end that hold less than half of [tailCut]
// together, and what they hold. It never takes the last mass above 0, because
// that alone is more.
func cut(n int, total float64, mass func(int) float64) (count int, held float64) {
	for count < n && held+mass(count) < tailCut/2*total {
		held += mass(count)
		count++
	}
	return count, held
}

// sums gives the running sums of p, the last of which is 1 exactly.
func sums(p []float64) []float64 {
	cum := make([]float64, len(p))
	sum := 0.0
	for i, x := range p {
		sum += x
		cum[i] = min(sum, 1)
	}
	cum[len(cum)-1] = 1
	return cum
}

// Known reports whether d is the distribution of something known; false for
// the zero value only. All other methods but Mass and CDF, which give 0, panic
// when it is not.
func (d Distribution) Known() bool { return len(d.p) > 0 }

func (d Distribution) mustKnow() {
	if !d.Known() {
		panic("development: asked an unknown distribution; see Distribution.Known")
	}
}

// First gives the earliest day with a chance above 0.
func (d Distribution) First() int {
	d.mustKnow()
	return d.first
}

// Last gives the latest day with a chance above 0.
func (d Distribution) Last() int {
	d.mustKnow()
	return d.first + len(d.p) - 1
}

// Mass gives the chance of day, 0 to 1.
func (d Distribution) Mass(day int) float64 {
	if day < d.first || day >= d.first+len(d.p) {
		return 0
	}
	return d.p[day-d.first]
}

// CDF gives the chance of day or any day before it, 0 to 1.
func (d Distribution) CDF(day int) float64 {
	switch {
	case !d.Known() || day < d.first:
		return 0
	case day >= d.first+len(d.p):
		return 1
	}
	return d.cum[day-d.first]
}

// quantileSlack lets a quantile that falls on the edge of a day, as it does
// where a percentile was given as half days, not hang on the last bits.
const quantileSlack = 1e-12

// Quantile gives the first day by which it has happened with a chance of at
// least p. It panics unless p is from 0 to 1. The cost is the logarithm of the
// number of days.
func (d Distribution) Quantile(p float64) int {
	d.mustKnow()
	if !(p >= 0 && p <= 1) {
		panic(fmt.Sprintf("development: quantile %v is not from 0 to 1", p))
	}
	return d.first + sort.Search(len(d.cum)-1, func(i int) bool { return d.cum[i] >= p-quantileSlack })
}

// Mean gives the mean in days.
func (d Distribution) Mean() float64 {
	d.mustKnow()
	sum := 0.0
	for i, x := range d.p {
		sum += float64(i) * x
	}
	return float64(d.first) + sum
}

// SD gives the standard deviation in days.
func (d Distribution) SD() float64 {
	mean := d.Mean() - float64(d.first)
	sum := 0.0
	for i, x := range d.p {
		sum += (float64(i) - mean) * (float64(i) - mean) * x
	}
	return math.Sqrt(sum)
}

// Plus gives the distribution of the sum of two independent counts of days, by
// exact convolution. It costs the product of the two numbers of days.
func (d Distribution) Plus(e Distribution) Distribution {
	d.mustKnow()
	e.mustKnow()
	return FromMasses(d.first+e.first, convolve(d.p, e.p))
}

// convolve gives the masses of the sums: (p*q)[n] is the sum of p[k] q[n-k].
func convolve(p, q []float64) []float64 {
	sum := make([]float64, len(p)+len(q)-1)
	for i, x := range p {
		if x == 0 {
			continue
		}
		for j, y := range q {
			sum[i+j] += x * y
		}
	}
	return sum
}

// After gives the distribution when it is known that it had not happened by
// the end of day. ok is false when d says that it must have; there is no such
// distribution then.
func (d Distribution) After(day int) (_ Distribution, ok bool) {
	d.mustKnow()
	return d.Between(day+1, d.Last())
}

// Between gives the distribution when it is known to lie from lo to hi, both
// included. ok is false when d gives those days no chance; there is no such
// distribution then.
func (d Distribution) Between(lo, hi int) (_ Distribution, ok bool) {
	d.mustKnow()
	lo, hi = max(lo, d.First()), min(hi, d.Last())
	if lo > hi {
		return Distribution{}, false
	}
	part := d.p[lo-d.first : hi-d.first+1]
	for _, x := range part {
		if x > 0 {
			return FromMasses(lo, part), true
		}
	}
	return Distribution{}, false
}
