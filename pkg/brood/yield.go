package brood

import (
	"math"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// Yield has the chances of the numbers of young that clutches bring for a target, from
// [NoYield] or one of those that give one. The numbers are kept in buckets of so many
// young each; all that are enough are in the last.
type Yield struct {
	each   float64
	chance []float64
}

// MostBuckets keeps yields small; a target for more young is looked at in steps of
// more than one.
const MostBuckets = 200

// NoYield is that of no clutch, for a target of so many young; not below 0.
func NoYield(wanted int) Yield {
	y := Yield{each: max(1, math.Ceil(float64(wanted)/MostBuckets))}
	y.chance = make([]float64, int(math.Ceil(float64(wanted)/y.each))+1)
	y.chance[0] = 1
	return y
}

// Enough is the chance that all young that are wanted are there.
func (y Yield) Enough() float64 { return min(y.chance[len(y.chance)-1], 1) }

// And gives the yield of two that know nothing of each other. It panics when they are
// for targets of different numbers. Cost: the square of the buckets, [MostBuckets] at most.
func (y Yield) And(z Yield) Yield {
	if y.each != z.each || len(y.chance) != len(z.chance) {
		panic("brood: yields for targets of different numbers")
	}
	sum := Yield{y.each, make([]float64, len(y.chance))}
	last := len(sum.chance) - 1
	for i, p := range y.chance {
		for j, q := range z.chance {
			sum.chance[min(i+j, last)] += p * q
		}
	}
	return sum
}

// add counts a number of young with a chance.
func (y Yield) add(young, chance float64) {
	k := min(max(young, 0)/y.each, float64(len(y.chance)-1))
	y.chance[int(k)] += chance
}

// InTime is more days than any young take to be ready, see [Brood.Yield].
const InTime = math.MaxInt

// The points at which the sizes of clutches, their survival and their pace are
// looked at.
const (
	sizePoints     = 15
	survivalPoints = 20
	pacePoints     = 15
)

// shareFrom is how sure the usual share of survivors is: as if it had been found
// in so many animals, which is what [development.Outlook.Heads] takes.
const shareFrom = 10

// Yield gives the young of one usual clutch that are ready so many days after
// the first night of rain, or [InTime], where at most raise tadpoles are kept; 0 stands
// for all.
// Sizes are two-piece lognormal through the percentiles of the profile, the share
// that lives is a beta distribution about the usual one, and siblings are ready
// lognormally about the day of half of them. That there are eggs is taken for
// granted. ok is false where the profile does not say enough.
func (b *Brood) Yield(wanted, raise, days int) (_ Yield, ok bool) {
	eggs := b.Profile.Breeding.ClutchEggs
	if !eggs.Known() || days != InTime && !b.Ready.Known() {
		return Yield{}, false
	}
	y := NoYield(wanted)
	y.chance[0] = b.Model.Stall()
	moves := 1 - y.chance[0]
	for _, n := range Sizes(eggs) {
		tadpoles := n * b.Survival(development.Laid, development.Hatched)
		if raise > 0 {
			tadpoles = min(tadpoles, float64(raise))
		}
		for _, lives := range shares(b.Survival(development.Hatched, development.SaleReady)) {
			for _, ready := range b.readyShares(days) {
				y.add(math.Floor(tadpoles*lives.at*ready+1e-9), moves*lives.chance/sizePoints/pacePoints)
			}
		}
	}
	return y, true
}

// Yield gives the young of a clutch that is there which are ready for a day:
// normally distributed about what is expected. Of one that was never counted there are none.
func (h *Running) Yield(wanted int, by civil.Date) Yield {
	y := NoYield(wanted)
	counts := h.broods.rearing.Counts(h.clutch, h.Outlook, h.SeenOn)
	if len(counts) == 0 {
		return y
	}
	heads, _ := h.Outlook.Heads(counts, civil.Span{First: by, Last: by})
	ready := heads[0].Stages[len(heads[0].Stages)-1]
	const between = 2 * 1.2815515655446004 // standard deviations from the 10th to the 90th percentile
	sd := float64(ready.High-ready.Low) / between
	y.chance[0] = 0
	for i := range sizePoints {
		z := math.Sqrt2 * math.Erfinv(2*(float64(i)+0.5)/sizePoints-1)
		y.add(math.Round(ready.Expected+z*sd), 1.0/sizePoints)
	}
	return y
}

// Sizes are sizes of clutches, in eggs, that are as likely as each other, from small to
// large. The percentiles are known.
func Sizes(eggs species.Percentiles) []float64 {
	const z90 = 1.2815515655446004
	var out []float64
	for i := range sizePoints {
		z := math.Sqrt2 * math.Erfinv(2*(float64(i)+0.5)/sizePoints-1)
		spread := math.Log(eggs.P90/eggs.P50) / z90
		if z < 0 {
			spread = math.Log(eggs.P50/eggs.P10) / z90
		}
		out = append(out, eggs.P50*math.Exp(z*spread))
	}
	return out
}

type livingShare struct{ at, chance float64 }

// shares are shares of survivors with their chances.
func shares(usual float64) []livingShare {
	if usual <= 0 || usual >= 1 {
		return []livingShare{{usual, 1}}
	}
	var out []livingShare
	sum := 0.0
	for i := range survivalPoints {
		x := (float64(i) + 0.5) / survivalPoints
		p := math.Pow(x, shareFrom*usual-1) * math.Pow(1-x, shareFrom*(1-usual)-1)
		out = append(out, livingShare{x, p})
		sum += p
	}
	for i := range out {
		out[i].chance /= sum
	}
	return out
}

// readyShares are, for paces that are as likely as each other, the shares of the
// siblings that are ready by a day.
func (b *Brood) readyShares(days int) []float64 {
	if days == InTime {
		return slices.Repeat([]float64{1}, pacePoints)
	}
	spread, laid := b.Model.SiblingSpread(), b.After[development.Laid].Quantile(0.5)
	var out []float64
	for i := range pacePoints {
		half := max(b.Ready.Quantile((float64(i)+0.5)/pacePoints)-laid, 1)
		ready := 0.0
		switch {
		case days <= laid:
		case spread <= 0 && days-laid >= half:
			ready = 1
		case spread > 0:
			ready = 0.5 * math.Erfc(-math.Log(float64(days-laid)/float64(half))/spread/math.Sqrt2)
		}
		out = append(out, ready)
	}
	return out
}
