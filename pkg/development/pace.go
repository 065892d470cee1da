package development

import "math"

const (
	// paceShare is how much of the variance of ln days, from clutch to clutch,
	// is the pace of the clutch, which it keeps through all steps; the rest is
	// the chance of each step. From memory: nobody was found to have published it.
	paceShare = 0.4

	paceStep = 0.6 // between the points of the grid, in standard deviations
	paceEnd  = 8   // points on either side of the middle
)

// A pace is how slow a clutch is, in standard deviations among clutches: 0 is
// the middle one, 1 is slower than 84 of 100.
type pace struct{ at, weight float64 }

// paces are the paces that are counted with, and how common each is. With
// points as close as that a sum over them is an integral to six places, for all
// that five steps can tell of a pace.
var paces = func() (all [2*paceEnd + 1]pace) {
	sum := 0.0
	for i := range all {
		x := float64(i-paceEnd) * paceStep
		all[i] = pace{x, math.Exp(-x * x / 2)}
		sum += all[i].weight
	}
	for i := range all {
		all[i].weight /= sum
	}
	return all
}()

// blend is a distribution of standardised lengths: a mixture of normals.
type blend []normal

type normal struct{ weight, mean, sd float64 }

// cdf gives the chance of at most z.
func (b blend) cdf(z float64) float64 {
	p := 0.0
	for _, n := range b {
		p += n.weight * normalCDF((z-n.mean)/n.sd)
	}
	return p
}

// reach gives where all that counts of b lies.
func (b blend) reach() (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, n := range b {
		low, high = min(low, n.mean-tails*n.sd), max(high, n.mean+tails*n.sd)
	}
	return low, high
}

// tails is how many standard deviations of a normal are followed; what lies
// beyond is 3e-7, which is less than the least chance that is believed in.
const tails = 5
