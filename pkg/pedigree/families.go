package pedigree

import "iter"

// family is what all animals with the same parents have in common. Families of
// which a parent is unknown are families too, and each group is one by itself.
type family struct {
	f          float64 // inbreeding coefficient; 0 for groups
	complete   float64 // equivalent complete generations
	known      float64 // share of the genes from known founders
	generation int32   // longest way to a founder
	uncertain  bool    // whether a group of candidates stands in the ancestry
}

// addFamilies puts the nodes from first on into families of their own, which are
// numbered in the order of their first members. Time and memory grow with the
// number of nodes.
//
// Brothers and sisters mostly follow each other, and a run of them is looked at
// once. Runs are put together when they have the same sire, and then for each
// sire by dam.
func (g *graph) addFamilies(first int) {
	runs := g.runs(first)
	same := g.sameParents(runs)
	number := make([]int32, len(runs))
	next := int32(len(g.families))
	for r, start := range runs {
		if int(same[r]) == r {
			number[r] = next
			next++
		} else {
			number[r] = number[same[r]]
		}
		end := g.len()
		if r+1 < len(runs) {
			end = int(runs[r+1])
		}
		for k := int(start); k < end; k++ {
			g.family[k] = number[r]
		}
	}
	g.families = longer(g.families, int(next)-len(g.families))
}

// runs gives the first node of each run of nodes with the same parents.
func (g *graph) runs(first int) []int32 {
	var runs []int32
	for k := first; k < g.len(); k++ {
		if k == first || g.sire[k] != g.sire[k-1] || g.dam[k] != g.dam[k-1] || g.group[k] != none || g.group[k-1] != none {
			runs = append(runs, int32(k))
		}
	}
	return runs
}

// sameParents gives for each run the first one that has the same parents.
func (g *graph) sameParents(runs []int32) []int32 {
	bySire := sorted(len(runs), g.len()+1, func(r int) int32 { return g.sire[runs[r]] + 1 })
	same := make([]int32, len(runs))
	withDam := make([]int32, g.len()+1) // by dam: 1 + the last run that was a first one
	for _, r := range bySire {
		k := runs[r]
		same[r] = r
		if g.group[k] != none {
			continue
		}
		if before := withDam[g.dam[k]+1] - 1; before != none && g.sire[runs[before]] == g.sire[k] {
			same[r] = before
		} else {
			withDam[g.dam[k]+1] = r + 1
		}
	}
	return same
}

// firstOfFamilies goes through the first members of the families from one on, all
// of which stand among the nodes from first on.
func (g *graph) firstOfFamilies(first, family int) iter.Seq[int32] {
	return func(yield func(int32) bool) {
		for k := first; k < g.len(); k++ {
			if int(g.family[k]) == family {
				family++
				if !yield(int32(k)) {
					return
				}
			}
		}
	}
}

// sorted gives the numbers from 0 to n-1 by rising key, which is below keys;
// those with equal keys rise.
func sorted(n, keys int, key func(int) int32) []int32 {
	next := make([]int32, keys+1)
	for i := range n {
		next[key(i)+1]++
	}
	for k := range keys {
		next[k+1] += next[k]
	}
	order := make([]int32, n)
	for i := range n {
		k := key(i)
		order[next[k]] = int32(i)
		next[k]++
	}
	return order
}
