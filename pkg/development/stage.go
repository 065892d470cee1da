package development

import "fmt"

// Stage is a point in the life of a clutch that a keeper can see being
// reached. Stages compare with <: a later one is the larger.
type Stage int

// The stages in their order. Hatched, Feeding, FrontLegs, OutOfWater and SaleReady
// are the ends of the steps of a species profile; HindLegs, Toes and Eating lie within
// a step, HindLegs and Toes at a share of it.
const (
	Laid       Stage = iota // eggs were laid
	Hatched                 // Gosner 20, or later in species that hatch late
	Feeding                 // Gosner 25
	HindLegs                // Gosner 26: buds of the hind legs
	Toes                    // Gosner 37: all toes of the hind feet are free
	FrontLegs               // Gosner 42
	OutOfWater              // Gosner 46: the tail is gone
	Eating                  // the froglet takes food
	SaleReady               // old and long enough to leave
)

var stageWords = [...]string{
	"laid", "hatched", "feeding", "hind-legs", "toes", "front-legs", "out-of-water", "eating", "sale-ready",
}

func (s Stage) valid() bool { return s >= Laid && s <= SaleReady }

func (s Stage) mustBeValid() {
	if !s.valid() {
		panic("development: no such stage: " + s.String())
	}
}

// String gives the word that a diary has for s, such as "front-legs".
func (s Stage) String() string {
	if !s.valid() {
		return fmt.Sprintf("Stage(%d)", int(s))
	}
	return stageWords[s]
}

// Milestones gives the stages at which a step begins or ends, in their order; those
// of [DayHeads.Stages].
func Milestones() []Stage {
	all := []Stage{Laid}
	for _, l := range links {
		all = append(all, l.end)
	}
	return all
}

// ParseStage reads what [Stage.String] writes, and nothing else.
func ParseStage(word string) (_ Stage, ok bool) {
	for s, w := range stageWords {
		if w == word {
			return Stage(s), true
		}
	}
	return 0, false
}

// FromGosner gives the latest stage that an animal at stage n of Gosner 1960
// (A simplified table for staging anuran embryos and larvae, Herpetologica 16)
// has reached: up to 19 it is an egg, from 20 a hatchling, from 25 it feeds.
// Species that hatch late are the exception: an egg of Agalychnis callidryas
// may be at 27, so do not let a stage of an egg say that it has hatched.
//
// It panics unless n is from 1 to 46.
func FromGosner(n int) Stage {
	switch {
	case n < 1 || n > 46:
		panic(fmt.Sprintf("development: Gosner stage %d is not from 1 to 46", n))
	case n >= 46:
		return OutOfWater
	case n >= 42:
		return FrontLegs
	case n >= 37:
		return Toes
	case n >= 26:
		return HindLegs
	case n == 25:
		return Feeding
	case n >= 20:
		return Hatched
	}
	return Laid
}
