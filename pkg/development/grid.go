package development

import "math"

// A grid holds how likely a room is that is mean standard deviations of the book
// slower and has so many times its spread: the logarithm of prior and
// likelihood, at points that lie close where they count.
type grid struct {
	means   axis
	spreads axis // of the logarithm of the spread
	ln      []float64
}

type axis struct{ low, step float64 }

func (a axis) at(i int) float64 { return a.low + float64(i)*a.step }

const (
	// Points along the axes. What counts is about eleven standard deviations
	// wide, and a sum over points less than one apart is as good as an integral.
	gridMeans, gridSpreads = 21, 15
	gridDrop               = 16.0 // what is e^-16 as likely as the best counts for nothing
	gridZoom               = 6    // at most so often is the grid drawn closer
)

// newGrid gives the grid of lengths. It begins wide and closes in on what
// counts.
func newGrid(lengths []length, stall float64) grid {
	far := 6.0
	for _, n := range lengths {
		for _, z := range []float64{n.from, n.to} {
			if !math.IsInf(z, 0) {
				far = max(far, 1.5*math.Abs(z))
			}
		}
	}
	g := grid{means: across(-far, far, gridMeans), spreads: across(math.Log(0.02), math.Log(4*far), gridSpreads)}
	g.fill(lengths, stall)
	for range gridZoom {
		means, spreads := g.counting()
		if means.step > 0.8*g.means.step && spreads.step > 0.8*g.spreads.step {
			break
		}
		g.means, g.spreads = means, spreads
		g.fill(lengths, stall)
	}
	return g
}

func across(low, high float64, points int) axis { return axis{low, (high - low) / float64(points-1)} }

// fill works out ln for the axes of g.
func (g *grid) fill(lengths []length, stall float64) {
	g.ln = make([]float64, gridSpreads*gridMeans)
	for i := range gridSpreads {
		s := math.Exp(g.spreads.at(i))
		for j := range gridMeans {
			m := g.means.at(j)
			sum := lnPrior(m, s)
			for _, n := range lengths {
				sum += float64(n.count) * n.lnChance(m, s, stall)
			}
			g.ln[i*gridMeans+j] = sum
		}
	}
}

// lnPrior is the logarithm of how likely the book has a room to be, by its mean
// and the logarithm of its spread: normal for the mean, given the spread, and
// inverse gamma for the square of the spread.
func lnPrior(mean, spread float64) float64 {
	ln := math.Log(spread)
	return -ln - bookClutches*mean*mean/(2*spread*spread) - 2*bookShape*ln - bookScale/(spread*spread)
}

// lnChance is the logarithm of the chance of what a clutch told, in such a
// room. One that is not through a step may have stalled in it.
func (n length) lnChance(mean, spread, stall float64) float64 {
	ln := lnNormalBetween((n.from-mean)/spread, (n.to-mean)/spread)
	if stall > 0 && math.IsInf(n.to, 1) {
		return math.Log(stall + (1-stall)*math.Exp(ln))
	}
	return ln
}

func (g *grid) best() float64 {
	best := math.Inf(-1)
	for _, x := range g.ln {
		best = max(best, x)
	}
	return best
}

// counting gives axes about the part of g that counts, with a point to spare.
func (g *grid) counting() (means, spreads axis) {
	lo, hi := [2]int{gridSpreads, gridMeans}, [2]int{-1, -1}
	least := g.best() - gridDrop
	for k, x := range g.ln {
		if x >= least {
			at := [2]int{k / gridMeans, k % gridMeans}
			for d := range at {
				lo[d], hi[d] = min(lo[d], at[d]), max(hi[d], at[d])
			}
		}
	}
	return across(g.means.at(lo[1]-1), g.means.at(hi[1]+1), gridMeans), across(g.spreads.at(lo[0]-1), g.spreads.at(hi[0]+1), gridSpreads)
}

// without gives g without one clutch that told n.
func (g grid) without(n length, stall float64) grid {
	ln := make([]float64, len(g.ln))
	for k := range ln {
		ln[k] = g.ln[k] - n.lnChance(g.means.at(k%gridMeans), math.Exp(g.spreads.at(k/gridMeans)), stall)
	}
	g.ln = ln
	return g
}

// rooms gives a room for each spread, with the mean and the variance of what its
// middle may be. Without clutches that still run that is exact; with them the
// middle is taken for normal.
func (g grid) rooms() []room {
	best := g.best()
	var all []room
	total := 0.0
	for i := range gridSpreads {
		var sum, first, second float64
		for j := range gridMeans {
			x := math.Exp(g.ln[i*gridMeans+j] - best)
			m := g.means.at(j)
			sum, first, second = sum+x, first+x*m, second+x*m*m
		}
		if sum == 0 {
			continue
		}
		mean := first / sum
		all = append(all, room{sum, mean, max(second/sum-mean*mean, 0), math.Exp(g.spreads.at(i))})
		total += sum
	}
	kept, sum := all[:0], 0.0
	for _, r := range all {
		if r.weight > rareRoom*total {
			kept = append(kept, r)
			sum += r.weight
		}
	}
	for i := range kept {
		kept[i].weight /= sum
	}
	return kept
}

// rareRoom is how unlikely a room is that is passed over.
const rareRoom = 1e-4
