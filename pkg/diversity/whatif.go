package diversity

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Brood is a number of young of two animals of the pedigree.
type Brood struct {
	Sire, Dam int
	Count     int // 0 or more
}

// Change is what may happen to a set of living animals.
type Change struct {
	Born []Brood // their parents need not be living
	Left []int   // animals that die or go
}

// Outcome is a set of living animals after a [Change].
type Outcome struct {
	Animals                    int
	MeanKinship, GeneDiversity float64 // both 0 when no animals are left
}

// WhatIf gives the mean kinship and the gene diversity of the living animals if
// some young were born and some animals left (the method of Lacy 1995, Zoo Biology
// 14:565, who adds hypothetical young one by one). It is what a pedigree rebuilt
// with the young would give, without rebuilding it: for kinship with others, a
// young is half of either parent, and only its kinship with itself is more than
// that, by 1/2 less a quarter of its parents' kinships with themselves.
//
// An animal living twice leaves once for each time it is named. WhatIf panics
// when an animal leaves that is not living, or a count is negative. Four passes
// over the pedigree, however many young there are.
func WhatIf(p *pedigree.Pedigree, living []int, change Change) Outcome {
	v := make([]float64, p.Len()) // how often each animal stands in the set, young by halves
	for _, i := range living {
		p.ID(i) // panics when there is no such animal
		v[i]++
	}
	for _, i := range change.Left {
		p.ID(i)
		if v[i]--; v[i] < 0 {
			panic(fmt.Sprintf("diversity: animal %d leaves and is not living", i))
		}
	}
	animals, own := len(living)-len(change.Left), 0.0
	for _, b := range change.Born {
		if b.Count < 0 {
			panic("diversity: a negative number of young")
		}
		n := float64(b.Count)
		v[b.Sire] += n / 2
		v[b.Dam] += n / 2
		animals += b.Count
		own += n * (0.5 - (self(p, b.Sire)+self(p, b.Dam))/4)
	}
	if animals == 0 {
		return Outcome{}
	}
	sum := own
	for i, k := range p.Times(v) {
		sum += v[i] * k
	}
	mean := sum / (float64(animals) * float64(animals))
	return Outcome{Animals: animals, MeanKinship: mean, GeneDiversity: 1 - mean}
}

// self gives the kinship of an animal with itself.
func self(p *pedigree.Pedigree, i int) float64 { return (1 + p.Inbreeding(i)) / 2 }
