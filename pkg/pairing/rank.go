package pairing

import (
	"cmp"
	"math"
	"slices"
	"strings"
)

// Pair is one male and one female.
type Pair struct {
	Male, Female string // ids
	Verdict      Verdict
	// MaleKinship and FemaleKinship are the mean kinships with the breeding set.
	MaleKinship, FemaleKinship float64
}

// Rank judges every male with every female as a pair of their own and sorts them:
// allowed ones first, then by the expected inbreeding of the young, by the sum
// of the two mean kinships with the set, and by id. Pairs of different species
// are in the list too, as refused ones; only an animal with itself is left out.
// Numbers closer than 1e-9 count as equal.
//
// It panics as [Judge] does, and if the set is of another pedigree. Cost: O(n)
// for each animal of the shorter list in a pedigree of n animals, and about
// 3 kB for each pair.
func Rank(t Terms, set *BreedingSet, males, females []Animal) []Pair {
	t.mustBeWhole()
	if set.pedigree != t.Pedigree {
		panic("pairing: the breeding set is of another pedigree")
	}
	kinship := t.kinships(males, females)
	fs := t.candidates(females, Female)
	pairs := make([]Pair, 0, len(males)*len(females))
	for i, m := range t.candidates(males, Male) {
		for j := range fs {
			if m.ID == fs[j].ID {
				continue
			}
			between := func(int, int) float64 { return kinship(i, j) }
			pairs = append(pairs, Pair{
				Male: m.ID, Female: fs[j].ID,
				Verdict:       judge(t, []candidate{m}, fs[j:j+1], between),
				MaleKinship:   set.MeanKinship(m.Node),
				FemaleKinship: set.MeanKinship(fs[j].Node),
			})
		}
	}
	slices.SortFunc(pairs, comparePairs)
	return pairs
}

func comparePairs(a, b Pair) int {
	return cmp.Or(
		-compareBool(a.Verdict.Allowed(), b.Verdict.Allowed()),
		cmp.Compare(rounded(a.Verdict.YoungInbreeding), rounded(b.Verdict.YoungInbreeding)),
		cmp.Compare(rounded(a.MaleKinship+a.FemaleKinship), rounded(b.MaleKinship+b.FemaleKinship)),
		strings.Compare(a.Male, b.Male),
		strings.Compare(a.Female, b.Female),
	)
}

func compareBool(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}

func rounded(x float64) float64 { return math.Round(x / rounding) }

// kinships gives the kinship of male i with female j, found by one column of
// kinships for each animal of the shorter list.
func (t Terms) kinships(males, females []Animal) func(i, j int) float64 {
	if len(males) <= len(females) {
		columns := t.columns(males, females)
		return func(i, j int) float64 { return columns[i][j] }
	}
	columns := t.columns(females, males)
	return func(i, j int) float64 { return columns[j][i] }
}

func (t Terms) columns(animals, others []Animal) [][]float64 {
	nodes := make([]int, len(others))
	for i, o := range others {
		nodes[i] = o.Node
	}
	out := make([][]float64, len(animals))
	for i, a := range animals {
		out[i] = pick(t.Pedigree.KinshipTo(a.Node), nodes)
	}
	return out
}
