package diversity

import "github.com/spawnwright/spawnwright/pkg/pedigree"

// Completeness says how much of the ancestry of an animal is known, up to some
// depth.
type Completeness struct {
	Animal int
	// Generations has the share of the ancestors that are known: of the parents,
	// of the grandparents, and so on.
	Generations []float64
	// Simple is the number of known ancestors over that of all, 2^(d+1) - 2.
	Simple float64
	// Index is the pedigree completeness index: the harmonic mean, over sire and
	// dam, of the mean share of known ancestors per generation on that side. It is
	// 0 when a parent is unknown, as inbreeding cannot be seen then (MacCluer et
	// al. 1983, Journal of Heredity 74:394).
	Index float64
}

// CompletenessOf gives the completeness of the ancestry of the animals, in their
// order, up to depth generations; an ancestor counts in every place in which it
// stands. With groups in the ancestry shares and Simple are exact expectations,
// and Index is computed from them; a group is a known parent.
//
// It panics when depth is below 1. Time grows with the number of ancestors times
// depth.
func CompletenessOf(p *pedigree.Pedigree, animals []int, depth int) []Completeness {
	if depth < 1 {
		panic("diversity: completeness of no generations")
	}
	t := newTree(p, animals)
	all := make([]Completeness, len(animals))
	sides := make([][2]float64, len(animals)) // sums over the generations
	known := make([]float64, t.len())         // share that is known g generations up
	for k := range known {
		known[k] = 1
	}
	places, known0 := 0.0, make([]float64, len(animals))
	for g := range depth {
		places += float64(uint64(2) << g)
		for n, i := range animals {
			sire, dam := at(known, t.sire[t.node[i]]), at(known, t.dam[t.node[i]])
			sides[n][0] += sire
			sides[n][1] += dam
			share := (sire + dam) / 2
			all[n].Generations = append(all[n].Generations, share)
			known0[n] += share * float64(uint64(2)<<g)
		}
		known = t.oneUp(known)
	}
	for n, i := range animals {
		all[n].Animal = i
		all[n].Simple = known0[n] / places
		if s, d := sides[n][0], sides[n][1]; s > 0 && d > 0 {
			all[n].Index = 2 * s * d / (s + d) / float64(depth)
		}
	}
	return all
}

// oneUp gives, for every animal, the mean of v over its parents, and for every
// group over its candidates.
func (t *tree) oneUp(v []float64) []float64 {
	next := make([]float64, t.len())
	for k := range int32(t.len()) {
		from := v
		if t.group[k] != none {
			from = next // a group is no generation of its own
		}
		t.above(k, func(parent int32, weight float64) { next[k] += weight * from[parent] })
	}
	return next
}

func at(v []float64, k int32) float64 {
	if k == none {
		return 0
	}
	return v[k]
}
