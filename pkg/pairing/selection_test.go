package pairing

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// TestSelectAgainstEnumeration tries every subset.
func TestSelectAgainstEnumeration(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		col := drawColony(t)
		p, err := pedigree.New(col.records, col.groups...)
		require.NoError(t, err)
		order := make([]int, p.Len())
		for i := range order {
			order[i] = i
		}
		order = rapid.Permutation(order).Draw(t, "order")
		cut := rapid.IntRange(0, len(order)).Draw(t, "that are there")
		there, candidates := order[:cut], order[cut:]
		k := rapid.IntRange(0, len(candidates)).Draw(t, "k")
		got := Select(p, there, candidates, k, Effort{})
		require.True(t, got.Proven)
		require.Len(t, got.Members, k)
		if cut+k == 0 {
			return
		}
		best := math.Inf(1)
		for mask := range 1 << len(candidates) {
			set := append([]int{}, there...)
			for i, c := range candidates {
				if mask&(1<<i) != 0 {
					set = append(set, c)
				}
			}
			if len(set) == cut+k {
				best = min(best, 1-p.GeneDiversity(set))
			}
		}
		require.InDelta(t, best, got.MeanKinship, 1e-9)
		require.InDelta(t, best, 1-p.GeneDiversity(append(append([]int{}, there...), got.Members...)), 1e-9)
		if k > 0 {
			s := newSelector(p, there, candidates, k, Effort{})
			size := float64((cut + k) * (cut + k))
			require.LessOrEqual(t, s.bound(nil, 0, s.base, k)/size, best+1e-9, "the bound at the root")
		}
		cutOff := Select(p, there, candidates, k, Effort{Nodes: 1})
		require.LessOrEqual(t, cutOff.Bound, best+1e-9)
		require.GreaterOrEqual(t, cutOff.MeanKinship, best-1e-9)
	})
}

func TestSelectTakesNoSiblings(t *testing.T) {
	p, err := pedigree.New([]pedigree.Record{
		{ID: "Bram"},
		{ID: "Greta"},
		{ID: "Falk"},
		{ID: "Hilde"},
		{ID: "a", Sire: "Bram", Dam: "Greta"},
		{ID: "b", Sire: "Bram", Dam: "Greta"},
		{ID: "c", Sire: "Falk", Dam: "Hilde"},
		{ID: "d", Sire: "Falk", Dam: "Greta"},
	})
	require.NoError(t, err)
	got := Select(p, nil, []int{7, 6, 5, 4}, 2, Effort{})
	assert.Equal(t, []int{5, 6}, got.Members, "b and c are unrelated; so are a and c, but b comes first in the list")
	assert.InDelta(t, 0.25, got.MeanKinship, 1e-12)
	got = Select(p, []int{0, 1}, []int{4, 5, 6, 7}, 1, Effort{})
	assert.Equal(t, []int{6}, got.Members, "the one that is related to nobody there")
	assert.Panics(t, func() { Select(p, nil, []int{1}, 2, Effort{}) })
	assert.Panics(t, func() { Select(p, []int{1}, []int{1}, 1, Effort{}) })
}

// BenchmarkSelect takes 8 of 60.
func BenchmarkSelect(b *testing.B) {
	p, m, f := herd(newSource(3), 30, 30, 4)
	for b.Loop() {
		Select(p, nil, append(append([]int{}, m...), f...), 8, Effort{Nodes: 100_000})
	}
}

func newSource(seed uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, 7)) }
