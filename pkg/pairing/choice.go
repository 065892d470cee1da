package pairing

import (
	"fmt"
	"math"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Choice is what there is to choose from in a season, and within which limits.
// [Choice.Best] finds the plan that serves the line best.
type Choice struct {
	Pool    *BreedingSet // the animals that stay on; may be none
	Options []Option
	Limits  []Limit
	// Young is how many young are held back for breeding in all, exactly.
	Young int
	// Weight is what a unit of the mean inbreeding of the young that are held
	// back weighs against one of the mean kinship of the pool. With a negative one
	// kin are sought; see [Ahead].
	Weight float64
}

// Ahead is the weight with which a plan leaves the lowest mean kinship one generation on, if
// then all breed alike, and not only now. What an animal loses of its genes by chance when it
// breeds is (1 − F)/4 of the kinship of a young with itself: the inbred have less
// to lose. So young of kin, who keep lines apart, are sought, but only so far as they serve the diversity;
// the size is that of the pool with the young.
func Ahead(size, young int) float64 {
	return -float64(young) / (4 * float64(size) * float64(size))
}

// Option is a pairing that may be chosen.
type Option struct {
	Sires, Dams []int              // places in the pedigree; one of each for a pair, more for a group in one chamber
	Mix         pedigree.GroupKind // with several on a side: whether the young share the parent
	// MinYoung and MaxYoung are the least and the most young that are held back
	// if the option is chosen; at least 1.
	MinYoung, MaxYoung int
}

// Limit holds how many of some options are chosen. All that bounds a plan is
// one: an animal is used at most so often, a season has at most so many
// pairings, a wanted pairing is chosen at least once.
type Limit struct {
	Name            string // for the keeper, such as "AC-14 spawns once"
	Options         []int  // places in Choice.Options
	AtLeast, AtMost int
}

// NoLimit is an AtMost that never binds.
const NoLimit = 1 << 30

// mustBeSound panics for what only a bug of the caller can bring about.
func (c *Choice) mustBeSound() {
	switch {
	case c.Pool == nil:
		panic("pairing: Choice without a pool")
	case c.Young < 1:
		panic("pairing: Choice without young to hold back")
	case math.IsNaN(c.Weight):
		panic("pairing: Choice with a weight that is no number")
	}
	for i, o := range c.Options {
		switch {
		case len(o.Sires) == 0 || len(o.Dams) == 0:
			panic(fmt.Sprintf("pairing: option %d lacks a male or a female", i))
		case o.MinYoung < 1 || o.MaxYoung < o.MinYoung:
			panic(fmt.Sprintf("pairing: option %d has %d to %d young", i, o.MinYoung, o.MaxYoung))
		}
	}
	for _, l := range c.Limits {
		for _, p := range l.Options {
			if p < 0 || p >= len(c.Options) {
				panic(fmt.Sprintf("pairing: limit %q has option %d of %d", l.Name, p, len(c.Options)))
			}
		}
	}
}

// Pick is an option that is chosen.
type Pick struct {
	Option int // place in Choice.Options
	Young  int // how many of its young are held back
}

// Plan is what may be done in a season.
type Plan struct {
	Picks []Pick // by option
	// Score is MeanKinship plus Choice.Weight times YoungInbreeding: the less
	// the better.
	Score float64
	// MeanKinship is that of the pool with the young, each with itself included;
	// 1 less it is the gene diversity (Lacy 1995, Zoo Biol. 14:565).
	MeanKinship float64
	// YoungInbreeding is the mean expected inbreeding of the young held back.
	YoungInbreeding float64
}

// Outcome is what a search found.
type Outcome struct {
	// Plans are the best plans with different pairings, the best first. Pairings
	// that differ only by animals that are alike, with the same kinships, limits and
	// possible mates, are not different. There is no plan when the limits leave none, or
	// when none was found in time.
	Plans []Plan
	// Bound is a score that no plan can be below; +Inf when there is proof that
	// there is no plan.
	Bound float64
	// Proven says that the search went to its end: the first of Plans is the best there
	// is, to 1e-10 of the score. Otherwise it is only the best found, and
	// [Outcome.Gap] says how far from the best it can be.
	Proven bool
	// OthersProven says that the other plans are the next best there are, and all that
	// there are where they are fewer than wanted.
	OthersProven bool
	// Alike are animals that can be exchanged for each other in any plan, by their
	// places in the pedigree: those with whose exchange a plan is the same. It is
	// only given when several plans are wanted.
	Alike [][]int
	Nodes int // how many partial plans were looked at
}

// Gap is how much of the score of the first plan could still be saved at most, as a
// share of it: 0 when it is proven. It is 1 when there is no plan.
func (o Outcome) Gap() float64 {
	switch {
	case len(o.Plans) == 0:
		return 1
	case o.Proven || o.Plans[0].Score <= 0:
		return 0
	}
	return max(0, 1-o.Bound/o.Plans[0].Score)
}

// Effort bounds a search.
type Effort struct {
	Plans int         // how many plans with different pairings are wanted; 0 is 1
	Nodes int         // most partial plans to look at; 0 is no limit
	Stop  func() bool // asked now and then; true ends the search. May be nil
}
