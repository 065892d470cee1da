// Package breedingplan chooses the pairings of a season for all species of a room.
//
// A [Stock] is the animals that there are, with the rules of the keeper; a [Wish] is what is
// asked of the season. [Stock.Plan] gives the best pairings of each species, how many young
// of each to hold back, and for every animal that is left out the reason; [Stock.Groups] does
// the same for several males and females in one rain chamber. [Stock.WhyPair] and
// [Stock.WhyAnimal] hold single animals against all rules. [Stock.Keep] selects young to hold
// back, [Stock.Unrelated] animals for a buyer, and [Stock.Exchange] says what an animal from
// outside would do.
//
// Everything is decided by package pairing, which knows one line; here the pairings of a
// season are shared out among the lines, and what was found is put into words. When there is
// no plan, a [NoPlanError] has the smallest set of rules and wishes that leave none.
package breedingplan

import (
	"fmt"
	"math"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/pairing"
)

// Stock is the animals of a room, and what bounds their season. Nothing in it
// changes while a question is answered. Its methods panic when Terms is not whole or
// Animals are not those of its pedigree, for these are the caller's.
type Stock struct {
	Terms   pairing.Terms // the pedigree, the day, and the rules of the keeper
	Species []string      // in the order in which they are planned
	Animals []Animal      // by their place in the pedigree; all of it
	// PairingsASeason and RainChambers are the keeper's.
	PairingsASeason, RainChambers Count
	// MayGo says why an animal, by its place, may not go to another keeper yet, and a day
	// to come from which it may, when that is known. Only [Stock.Unrelated] asks.
	MayGo func(i int) (why []string, from civil.Date)
}

// Animal is an animal with what a plan tells of it.
type Animal struct {
	pairing.Animal
	Name string
	Here bool // in the room on the day
}

// Count is a number that may not be known.
type Count struct {
	Value int
	Known bool
}

// animal gives an animal by its place.
func (s *Stock) animal(i int) *Animal { return &s.Animals[i] }

// find gives the place of an animal of a wish.
func (s *Stock) find(id string) (int, error) {
	if i, ok := s.Terms.Pedigree.Index(id); ok {
		return i, nil
	}
	return 0, &WishError{fmt.Sprintf("there is no animal %q", id)}
}

func noSpecies(id string) *WishError { return &WishError{fmt.Sprintf("there is no species %q", id)} }

// number gives the place of an animal.
func (s *Stock) number(id string) int {
	i, ok := s.Terms.Pedigree.Index(id)
	if !ok {
		panic(fmt.Sprintf("breedingplan: there is no animal %q", id))
	}
	return i
}

func (s *Stock) numbers(ids []string) []int {
	out := make([]int, len(ids))
	for i, id := range ids {
		out[i] = s.number(id)
	}
	return out
}

// breeders gives animals as the rules see them.
func (s *Stock) breeders(ids ...string) []pairing.Animal {
	out := make([]pairing.Animal, len(ids))
	for i, id := range ids {
		out[i] = s.animal(s.number(id)).Animal
	}
	return out
}

// level takes from a kinship what sums in another order differ by.
func level(x float64) float64 { return math.Round(x * 1e9) }

// joined writes "A, B and C".
func joined(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}
