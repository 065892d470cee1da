package pairing

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// BreedingSet is the living animals whose gene diversity is to be kept.
type BreedingSet struct {
	pedigree    *pedigree.Pedigree
	members     []int
	meanKinship []float64 // of every animal of the pedigree to the members
	mean        float64   // over the members
}

// NewBreedingSet makes a set of the animals at these places of the pedigree,
// which may be none. It panics if one stands there twice or is not in the
// pedigree. Cost: O(n) for a pedigree of n animals.
func NewBreedingSet(p *pedigree.Pedigree, members []int) *BreedingSet {
	s := &BreedingSet{pedigree: p, members: slices.Sorted(slices.Values(members))}
	for i, m := range s.members {
		if m < 0 || m >= p.Len() {
			panic(fmt.Sprintf("pairing: the pedigree has no animal %d", m))
		}
		if i > 0 && m == s.members[i-1] {
			panic(fmt.Sprintf("pairing: %s stands in the breeding set twice", p.ID(m)))
		}
	}
	if len(members) == 0 {
		s.meanKinship = make([]float64, p.Len())
		return s
	}
	s.meanKinship = p.MeanKinship(s.members)
	for _, m := range s.members {
		s.mean += s.meanKinship[m]
	}
	s.mean /= float64(len(s.members))
	return s
}

// Len is the number of animals in the set.
func (s *BreedingSet) Len() int { return len(s.members) }

// MeanKinship is the mean of the kinships of an animal with all members, itself
// included if it is one. It is 0 if the set is empty.
func (s *BreedingSet) MeanKinship(node int) float64 { return s.meanKinship[node] }

// GeneDiversity is the share of the founders' gene diversity that the set
// holds: 1 less the mean kinship of all its members, each with itself included
// (Lacy 1995, Zoo Biol. 14:565; Caballero and Toro 2000). An empty set holds
// none.
func (s *BreedingSet) GeneDiversity() float64 {
	if len(s.members) == 0 {
		return 0
	}
	return 1 - s.mean
}
