package pairing

import (
	"cmp"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Effect is what a pairing would do.
type Effect struct {
	// YoungInbreeding is the expected inbreeding coefficient of the young.
	YoungInbreeding float64
	// Shared are the ancestors through which the young would be inbred, the
	// largest share first. The shares add up to YoungInbreeding.
	Shared []pedigree.SharedAncestor
	// SireKinship and DamKinship are the mean kinships of the parents with the
	// breeding set, in the order in which they were given.
	SireKinship, DamKinship []float64
	// Young is the number of young held back; GeneDiversity is that of the set
	// as it is, and WithYoung that of the set with them.
	Young                    int
	GeneDiversity, WithYoung float64
}

// Change is the gene diversity that the set gains, or loses if it is negative.
func (e Effect) Change() float64 { return e.WithYoung - e.GeneDiversity }

// Effect tells what a pairing of these sires and dams would do if a number of its
// young were added to the set. Each sire, and each dam, has the same chance of
// being the parent; mix says whether all young share one of them
// ([pedigree.OneUnknown], a single clutch) or each has its own draw
// ([pedigree.Several]). With one sire and one dam it makes no difference.
//
// It is exact: the kinship of a young with a member is the mean of that of its
// parents, so that the old kinships give all new ones.
//
// It panics if a side is empty or young is negative. Cost: O(n) for each parent
// in a pedigree of n animals, and the paths from each sire and dam to their
// shared ancestors.
func (s *BreedingSet) Effect(sires, dams []int, young int, mix pedigree.GroupKind) Effect {
	if len(sires) == 0 || len(dams) == 0 {
		panic("pairing: a pairing needs at least one male and one female")
	}
	if young < 0 {
		panic("pairing: a negative number of young")
	}
	e := Effect{
		YoungInbreeding: s.pedigree.ExpectedInbreeding(sires, dams),
		Shared:          s.shared(sires, dams),
		SireKinship:     pick(s.meanKinship, sires),
		DamKinship:      pick(s.meanKinship, dams),
		Young:           young,
		GeneDiversity:   s.GeneDiversity(),
	}
	e.WithYoung = s.withYoung(e, s.siblingKinship(sires, dams, e.YoungInbreeding, mix))
	return e
}

// withYoung gives the gene diversity after e.Young young have joined: the sum of
// all kinships grows by those of young with members (both ways round), of each
// young with itself, (1+F)/2, and of young with each other.
func (s *BreedingSet) withYoung(e Effect, sibling float64) float64 {
	members, young := float64(len(s.members)), float64(e.Young)
	if members+young == 0 {
		return 0
	}
	toMember := (mean(e.SireKinship) + mean(e.DamKinship)) / 2
	sum := members*members*s.mean +
		2*members*young*toMember +
		young*(1+e.YoungInbreeding)/2 +
		young*(young-1)*sibling
	return 1 - sum/((members+young)*(members+young))
}

// siblingKinship gives the expected kinship of two young: each has one of the
// sires and one of the dams, and the two have the same ones or draw anew.
func (s *BreedingSet) siblingKinship(sires, dams []int, between float64, mix pedigree.GroupKind) float64 {
	return (s.drawTwice(sires, mix) + 2*between + s.drawTwice(dams, mix)) / 4
}

// drawTwice gives the expected kinship between the parents that two young drew
// from the same candidates.
func (s *BreedingSet) drawTwice(candidates []int, mix pedigree.GroupKind) float64 {
	sum := 0.0
	if mix == pedigree.OneUnknown {
		for _, c := range candidates {
			sum += (1 + s.pedigree.Inbreeding(c)) / 2
		}
		return sum / float64(len(candidates))
	}
	for _, c := range candidates {
		sum += mean(pick(s.pedigree.KinshipTo(c), candidates))
	}
	return sum / float64(len(candidates))
}

// shared averages the shared ancestors over all sires and dams.
func (s *BreedingSet) shared(sires, dams []int) []pedigree.SharedAncestor {
	share := map[int]float64{}
	for _, sire := range sires {
		for _, dam := range dams {
			for _, a := range s.pedigree.SharedAncestors(sire, dam) {
				share[a.Animal] += a.Share / float64(len(sires)*len(dams))
			}
		}
	}
	out := make([]pedigree.SharedAncestor, 0, len(share))
	for animal, x := range share {
		out = append(out, pedigree.SharedAncestor{Animal: animal, Share: x})
	}
	slices.SortFunc(out, func(a, b pedigree.SharedAncestor) int {
		return cmp.Or(cmp.Compare(rounded(b.Share), rounded(a.Share)), cmp.Compare(a.Animal, b.Animal))
	})
	return out
}

func pick(from []float64, at []int) []float64 {
	out := make([]float64, len(at))
	for i, j := range at {
		out[i] = from[j]
	}
	return out
}

func mean(xs []float64) float64 {
	sum := 0.0
	for _, x := range xs {
		sum += x
	}
	return sum / float64(len(xs))
}
