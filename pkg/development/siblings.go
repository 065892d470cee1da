package development

import (
	"fmt"
	"math"
	"sort"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Siblings is when the first, the half and the last of a clutch reach a stage.
// A window of one of them counts both how sure the date of the clutch is and how
// far siblings may lie apart.
type Siblings struct {
	Stage             Stage
	First, Half, Last civil.Window
}

// Siblings gives the dates of FrontLegs, OutOfWater and SaleReady, where they
// are known, for a clutch in which so many live to reach them. A sibling takes the
// time of the clutch since laying times a lognormal factor of its own, whose
// spread the profile gives (`siblings` of the tadpole; 8 % where it says nothing);
// the first of n is the least of n such. It panics when heads is not above 0.
func (o Outlook) Siblings(heads int) []Siblings {
	if heads < 1 {
		panic(fmt.Sprintf("development: the siblings of %d", heads))
	}
	n := float64(heads)
	var all []Siblings
	for _, e := range o.Events {
		if e.Stage < FrontLegs || !e.Dist.Known() {
			continue
		}
		all = append(all, Siblings{
			Stage: e.Stage,
			First: o.window(e, func(p float64) float64 { return -math.Expm1(n * math.Log1p(-p)) }),
			Half:  e.Window,
			Last:  o.window(e, func(p float64) float64 { return math.Pow(p, n) }),
		})
	}
	return all
}

// window gives the window of a day by which some number of siblings is there; of
// gives the chance of it when each is there with the chance p.
func (o Outlook) window(e Event, of func(p float64) float64) civil.Window {
	chance := func(day int) float64 {
		sum := 0.0
		for half := e.Dist.First(); half <= e.Dist.Last(); half++ {
			sum += e.Dist.Mass(half) * of(o.share(half, float64(day)+0.5))
		}
		return sum
	}
	from := o.day0()
	// Five spreads beyond the clutch's own days there is nobody.
	factor := math.Exp(5 * o.model.siblings)
	first := from + int(float64(e.Dist.First()-from)/factor)
	last := from + int(float64(e.Dist.Last()-from)*factor) + 1
	quantile := func(p float64) civil.Date {
		return o.From.Add(first + sort.Search(last-first, func(i int) bool { return chance(first+i) >= p }))
	}
	return civil.Window{Early: quantile(0.1), Likely: quantile(0.5), Late: quantile(0.9)}
}

// day0 is the likely day of laying, from o.From.
func (o Outlook) day0() int {
	if !o.Laid.Known() {
		return 0
	}
	return o.Laid.Likely.Sub(o.From)
}

// share gives the share of siblings that are there at a time, when half of them
// are on the day half.
func (o Outlook) share(half int, time float64) float64 {
	from := float64(o.day0())
	middle := max(float64(half)-from, 0.25)
	if time <= from {
		return 0
	}
	return normalCDF(math.Log((time-from)/middle) / max(o.model.siblings, leastSpread))
}
