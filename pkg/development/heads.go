package development

import (
	"fmt"
	"math"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// Count is how many of a clutch lived on a day: the eggs that were laid, or
// what was counted later.
type Count struct {
	On     civil.Date
	Living int
}

// Heads is a number of animals that is not known yet: its mean, and its 10th and
// 90th percentile.
type Heads struct {
	Expected  float64
	Low, High int
}

// DayHeads is how many of a clutch there are on a day.
type DayHeads struct {
	On civil.Date
	// Stages are those that have reached each stage and not the next, in the
	// order Laid, Hatched, Feeding, FrontLegs, OutOfWater, SaleReady.
	Stages [len(links) + 1]Heads
	// Living is all of them, InWater those from Hatched until OutOfWater, and
	// OnLand those since.
	Living, InWater, OnLand Heads
	// Litres of water for the 90th percentile of those in it, as densely as the
	// profile allows; 0 where it does not say.
	Litres float64
}

// Bins gives how many bins the 90th percentile of those on land need. It panics
// when froglets, the number for each bin, is not above 0.
func (d DayHeads) Bins(froglets int) int {
	if froglets < 1 {
		panic(fmt.Sprintf("development: bins of %d froglets", froglets))
	}
	return (d.OnLand.High + froglets - 1) / froglets
}

// shareAnimals is how many animals the usual share of survivors in a profile
// counts as, from memory: about a share of 0.8 clutches spread with a standard
// deviation of 0.12.
const shareAnimals = 10

// Parts of chance by which clutches and their siblings are counted: each stands
// for the middle of one part of as many equal ones.
const (
	slowness    = 20
	siblingness = 24
)

// Heads gives the animals of a clutch for each day of a span. They start from
// the last count on or before each day; before the first, and where no event
// is known, nothing is said, and the day has none. Those that die in a step
// do so evenly over it, at the usual share of the profile; where that has none all
// are taken to live, with a warning. How many live differs from clutch to clutch as
// if the share had been found in 10 animals.
//
// A slow clutch is taken to be slow in all that is ahead, so that its days are
// those of one percentile. Low and High take the sum of chances for a normal one.
// Counts that grow are warned of; the later counts. The cost is about 50 µs a day.
func (o Outlook) Heads(counts []Count, span civil.Span) ([]DayHeads, []Warning) {
	var found warnings
	counts = slices.Clone(counts)
	slices.SortStableFunc(counts, func(a, b Count) int { return a.On.Sub(b.On) })
	for i := 1; i < len(counts); i++ {
		if a, b := counts[i-1], counts[i]; b.Living > a.Living {
			found.warn(nil, "%d were counted on %s, and %d on %s before: the later count is taken", b.Living, b.On, a.Living, a.On)
			found[len(found)-1].Count = b
		}
	}
	for i, l := range links {
		if !o.model.survival[i].Known() && o.Events[i].Dist.Known() {
			found.warn(nil, "the profile does not say how many live through the step %s: all are taken to", l.step)
		}
	}
	lives := o.lives()
	var days []DayHeads
	var from start
	for on := span.First; on <= span.Last && on.Known(); on++ {
		d := DayHeads{On: on}
		i := slices.IndexFunc(counts, func(c Count) bool { return c.On > on })
		if i < 0 {
			i = len(counts)
		}
		if i > 0 && len(lives) > 0 {
			if from.Count != counts[i-1] {
				from = o.start(lives, counts[i-1])
			}
			d.fill(o, lives, from)
		}
		days = append(days, d)
	}
	return days, found
}

// A life is the way of a sibling of one clutch: when it ends each step whose end
// is known, in days from the day of laying.
type life struct {
	stage []int
	at    []float64
}

// lives gives all siblings of all clutches, those of a clutch together.
func (o Outlook) lives() []life {
	var known []int
	for i, e := range o.Events {
		if e.Dist.Known() {
			known = append(known, i)
		}
	}
	if len(known) == 0 {
		return nil
	}
	var all []life
	from := float64(o.day0())
	var factors [siblingness]float64
	for s := range factors {
		factors[s] = math.Exp(o.model.siblings * math.Sqrt2 * math.Erfinv(2*(float64(s)+0.5)/siblingness-1))
	}
	for c := range slowness {
		days := make([]float64, len(known))
		for k, i := range known {
			days[k] = max(float64(o.Events[i].Dist.Quantile((float64(c)+0.5)/slowness))-from, 0.25)
		}
		for _, factor := range factors {
			l := life{stage: known, at: make([]float64, len(known))}
			for k := range l.at {
				l.at[k] = days[k] * factor
			}
			all = append(all, l)
		}
	}
	return all
}

// alive gives how far a sibling is at a time: the place of its stage in
// [DayHeads.Stages], the share of its like that lives until then, and the
// variance of the logarithm of that share.
func (m *Model) alive(l life, time float64) (stage int, share, variance float64) {
	begin, first, ln := 0.0, 0, 0.0
	for k, end := range l.at {
		part := 1.0
		if time < end {
			part = max(time-begin, 0) / max(end-begin, 1e-9)
		}
		for _, d := range m.deaths[first : l.stage[k]+1] {
			ln += part * d.ln
			variance += part * (1 - d.share) / d.share / (shareAnimals + 1)
		}
		if time < end {
			break
		}
		stage, begin, first = l.stage[k]+1, end, l.stage[k]+1
	}
	return stage, math.Exp(ln), variance
}

// deaths is the share that lives through a step, and its logarithm; where nobody dies,
// or nobody knows, the share is 1.
type deaths struct{ share, ln float64 }

func newDeaths(survival species.Number) deaths {
	if !survival.Known() || survival.Value >= 1 {
		return deaths{1, 0}
	}
	share := max(survival.Value, leastShare)
	return deaths{share, math.Log(share)}
}

// leastShare stands for a share of 0, so that not all are dead as a step begins.
const leastShare = 1e-3

// A start is a count, and how far each clutch is on its day.
type start struct {
	Count
	share, variance [slowness]float64
}

func (o Outlook) start(lives []life, c Count) start {
	s := start{Count: c}
	time := float64(c.On.Sub(o.From) - o.day0())
	for i, l := range lives {
		_, share, variance := o.model.alive(l, time)
		s.share[i/siblingness] += share
		s.variance[i/siblingness] += variance / siblingness
	}
	return s
}

// fill works out a day from a start.
func (d *DayHeads) fill(o Outlook, lives []life, from start) {
	const living, water, land = len(links) + 1, len(links) + 2, len(links) + 3
	var by [len(links) + 4]crowd
	time := float64(d.On.Sub(o.From) - o.day0())
	for c := range slowness {
		var shares [len(by)]float64
		variance := -from.variance[c]
		for _, l := range lives[c*siblingness : (c+1)*siblingness] {
			stage, share, v := o.model.alive(l, time)
			share /= from.share[c]
			variance += v / siblingness
			shares[stage] += share
			shares[living] += share
			switch {
			case stage >= outOfWater:
				shares[land] += share
			case stage > 0:
				shares[water] += share
			}
		}
		for i, share := range shares {
			by[i].set(c, float64(from.Living), min(share, 1), max(variance, 0))
		}
	}
	for i := range d.Stages {
		d.Stages[i] = by[i].heads(from.Living)
	}
	d.Living, d.InWater, d.OnLand = by[living].heads(from.Living), by[water].heads(from.Living), by[land].heads(from.Living)
	if o.model.litres.Known() {
		d.Litres = float64(d.InWater.High) / o.model.litres.Value
	}
}

// outOfWater is the place of OutOfWater in [DayHeads.Stages].
const outOfWater = 4

// A crowd is a number of animals under each slowness: its mean and its standard
// deviation.
type crowd [slowness]struct{ mean, sd float64 }

func (c *crowd) set(which int, of, share, variance float64) {
	mean := of * share
	c[which].mean = mean
	c[which].sd = math.Sqrt(mean*(1-share) + mean*mean*variance)
}

func (c *crowd) heads(most int) Heads {
	var h Heads
	for _, x := range c {
		h.Expected += x.mean / slowness
	}
	h.Expected = math.Round(h.Expected*1e6) / 1e6 // sums of parts end in dust
	h.Low, h.High = c.quantile(0.1, most), c.quantile(0.9, most)
	return h
}

// quantile gives the least number, up to most, that is not passed with the
// chance p.
func (c *crowd) quantile(p float64, most int) int {
	low, high := 0, most
	for low < high {
		n := (low + high) / 2
		below := 0.0
		for _, x := range c {
			switch {
			case x.sd > 0:
				below += normalCDF((float64(n)+0.5-x.mean)/x.sd) / slowness
			case float64(n)+0.5 >= x.mean:
				below += 1.0 / slowness
			}
		}
		if below >= p {
			high = n
		} else {
			low = n + 1
		}
	}
	return low
}
