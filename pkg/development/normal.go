package development

import "math"

// The standard normal distribution is needed a million times for a clutch, so
// it is read from a table: its values and slopes, and a cubic between them. The
// error is below 1e-9.
const (
	normalEnd   = 8  // beyond it the chance is 1e-15, and taken for nothing
	normalSteps = 64 // to a standard deviation
)

const rootTwoPi = 2.5066282746310002

type normalNode struct{ p, slope float64 }

var normalTable = func() (table [2*normalEnd*normalSteps + 2]normalNode) {
	for i := range table {
		x := float64(i)/normalSteps - normalEnd
		table[i] = normalNode{math.Erfc(-x/math.Sqrt2) / 2, math.Exp(-x*x/2) / (rootTwoPi * normalSteps)}
	}
	return table
}()

// normalCDF is the chance that a standard normal number is at most x.
func normalCDF(x float64) float64 {
	switch {
	case x <= -normalEnd:
		return 0
	case x >= normalEnd:
		return 1
	}
	at := (x + normalEnd) * normalSteps
	i := int(at)
	return between(normalTable[i], normalTable[i+1], at-float64(i))
}

// normalBoth gives the chance of at most x and the density at x; the error of the
// density is below 1e-6.
func normalBoth(x float64) (p, density float64) {
	if x <= -normalEnd || x >= normalEnd {
		return normalCDF(x), 0
	}
	at := (x + normalEnd) * normalSteps
	i := int(at)
	a, b, t := normalTable[i], normalTable[i+1], at-float64(i)
	slope := a.slope + t*(2*(3*(b.p-a.p)-2*a.slope-b.slope)+3*t*(2*(a.p-b.p)+a.slope+b.slope))
	return between(a, b, t), slope * normalSteps
}

// between gives the cubic that has the values and slopes of a and b, at the
// share t of the way.
func between(a, b normalNode, t float64) float64 {
	return a.p + t*(a.slope+t*(3*(b.p-a.p)-2*a.slope-b.slope+t*(2*(a.p-b.p)+a.slope+b.slope)))
}

// normalBetween is the chance of a standard normal number from a to b, exact in
// either tail.
func normalBetween(a, b float64) float64 {
	if a > 0 {
		a, b = -b, -a
	}
	return (math.Erfc(-b/math.Sqrt2) - math.Erfc(-a/math.Sqrt2)) / 2
}

// lnNormalBetween is its logarithm, also where the chance is too small for a
// number: there the density falls off so fast that the end nearer the middle
// tells.
func lnNormalBetween(a, b float64) float64 {
	if p := normalBetween(a, b); p > 1e-280 {
		return math.Log(p)
	}
	near := max(a, -b, 0)
	return -near*near/2 - math.Log(max(near, 1)) - math.Log(2*math.Pi)/2 + math.Log(min(1, max(near, 1)*(b-a)))
}
