// Package pairing says who may be paired and what a pairing would do.
//
// A pairing is one or more males and one or more females that go into a rain
// chamber together. [Judge] holds it against all rules and gives a [Verdict]:
// a finding for every rule, also for those that are kept, with the value that
// was found, the limit, and the day from which time alone cures it. What is not
// known is not passed over: it is a finding of its own, [Unknown].
//
// [Rank] judges every male with every female and puts the best first. A
// [BreedingSet] is the animals whose diversity is to be kept; [BreedingSet.Effect]
// tells how inbred the young of a pairing would be, through which ancestors, and
// what holding back some of them would do to the gene diversity of the set.
//
// A [Choice] is what there is to choose from in a season, with limits; [Choice.Best]
// finds the set of pairings, and the young to hold back from each, that leave the
// line with the lowest mean kinship, and proves it. [Choice.Blocking] says which
// limits leave no plan. [Select] finds animals that go well together, such as young
// to keep.
//
// The rules are a keeper's caution, not the law and not a diagnosis: local codes,
// permits and a veterinarian come first.
package pairing

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Terms is what pairings are judged by.
type Terms struct {
	Pedigree *pedigree.Pedigree
	Needs    map[string]Needs // by the species of [Animal.Species]
	Rules    Rules
	On       civil.Date // the day on which the animals would be put together
}

// Rules are the keeper's limits, taken as they stand: the zero value refuses every
// pairing. [DefaultRules] has the usual ones.
type Rules struct {
	WarnInbreeding float64 // inbreeding coefficient of the young from which a pairing is warned about
	MaxInbreeding  float64 // the same from which it is refused
	// ClutchesASeason is how many clutches a female lays within 12 months at most;
	// 0 is no limit.
	ClutchesASeason int
	// Relaxed are rules that the keeper set aside; see [Relaxable]. What such a rule
	// refuses is only warned about, and what it warns about is fine.
	Relaxed []Rule
}

// DefaultRules warns from young as inbred as those of first cousins, 1/16, and
// refuses from those of half sibs, 1/8 (common practice, no source; the two
// coefficients are those of Wright 1922, Am. Nat. 56:330).
func DefaultRules() Rules {
	return Rules{WarnInbreeding: 0.0625, MaxInbreeding: 0.125}
}

// Needs is what a species asks of the animals that are bred. Zero stands for
// what is not known.
type Needs struct {
	Male, Female Maturity
	// EggDays is the usual time from laying to hatching, TadpoleDays that from hatching to
	// leaving the water, for animals of which no later day was written down.
	EggDays, TadpoleDays int
	// RestLeast and RestUsual are days from a clutch to the next pairing of the
	// same female: what she needs at least, and what she is usually given.
	RestLeast, RestUsual int
	// QuarantineDays is how long an animal from outside is usually kept apart.
	QuarantineDays int
	// MalesPerFemaleLow and MalesPerFemaleHigh are the ends of the range in
	// which the species spawns well.
	MalesPerFemaleLow, MalesPerFemaleHigh float64
}

// Maturity is the least at which an animal is bred. Zero stands for what is not
// known.
type Maturity struct {
	AgeDays  int // after leaving the water
	LengthMM float64
	WeightG  float64
}
