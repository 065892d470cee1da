package pedigree_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// The ancestry of some animals says of each of them, and of their ancestors, what the
// whole pedigree says, holds nobody else, and can grow.
func TestAncestryOfTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		records, groups := uncertainPedigree(t)
		records, more := withSources(t, records)
		whole, err := pedigree.New(records, append(groups, more...)...)
		require.NoError(t, err)
		linked, err := pedigree.Linked(records, append(groups, more...)...)
		require.NoError(t, err)
		animals := rapid.SliceOfN(rapid.IntRange(0, whole.Len()-1), 0, 3).Draw(t, "animals")
		cut := linked.AncestryOf(animals)

		kept := make([]bool, whole.Len())
		for _, i := range animals {
			kept[i] = true
			for _, a := range whole.Ancestors(i) {
				kept[a] = true
			}
		}
		var old []int // numbers, by those of the cut
		for i, is := range kept {
			at, ok := cut.Index(whole.ID(i))
			require.Equal(t, is, ok, "%s is in it", whole.ID(i))
			if ok {
				require.Equal(t, len(old), at, "animals keep their order")
				require.Equal(t, whole.ID(i), cut.ID(at))
				old = append(old, i)
			}
		}
		require.Equal(t, len(old), cut.Len())
		for at, i := range old {
			require.InDelta(t, whole.Inbreeding(i), cut.Inbreeding(at), 1e-14)
			require.Equal(t, whole.Generation(i), cut.Generation(at))
			require.InDelta(t, whole.CompleteGenerations(i), cut.CompleteGenerations(at), 1e-14)
			require.InDelta(t, whole.KnownAncestry(i), cut.KnownAncestry(at), 1e-14)
			require.Equal(t, whole.Uncertain(i), cut.Uncertain(at))
			for other, j := range old {
				require.InDelta(t, whole.Kinship(i, j), cut.Kinship(at, other), 1e-14)
			}
			wholeSire, _ := whole.Parents(i)
			sire, _ := cut.Parents(at)
			require.Equal(t, len(wholeSire.Candidates), len(sire.Candidates))
			for c, s := range sire.Candidates {
				require.Equal(t, whole.ID(wholeSire.Candidates[c].Animal), cut.ID(s.Animal))
			}
		}
		if len(old) > 0 {
			young := []pedigree.Record{{ID: "young", Sire: whole.ID(old[0]), Dam: whole.ID(old[len(old)-1])}}
			grown, err := cut.Grow(young)
			require.NoError(t, err)
			require.InDelta(t, whole.Kinship(old[0], old[len(old)-1]), grown.Inbreeding(cut.Len()), 1e-14)
		}
	})
}

// The animals may be named twice, and be none.
func TestAncestryOfEnds(t *testing.T) {
	p := build(t, mrode)
	require.Zero(t, p.AncestryOf(nil).Len())
	require.Equal(t, p.AncestryOf([]int{4}).Len(), p.AncestryOf([]int{4, 4}).Len())
	require.PanicsWithValue(t, "pedigree: no animal 6 among 6", func() { p.AncestryOf([]int{6}) })
}
