package pedigree_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// K v and blocks of K against the table.
func TestProductsTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		records, groups := uncertainPedigree(t)
		records, more := withSources(t, records)
		groups = append(groups, more...)
		p, err := pedigree.New(records, groups...)
		require.NoError(t, err)
		want := expected(records, groups)

		v := rapid.SliceOfN(rapid.Float64Range(-1, 1), p.Len(), p.Len()).Draw(t, "v")
		for i, got := range p.Times(v) {
			sum := 0.0
			for j, k := range want[i] {
				sum += k * v[j]
			}
			require.InDelta(t, sum, got, 1e-12)
		}

		some := rapid.SliceOfN(rapid.IntRange(0, p.Len()-1), 0, 40)
		rows, cols := some.Draw(t, "rows"), some.Draw(t, "cols")
		block := p.Block(rows, cols)
		require.Len(t, block, len(rows))
		for r, i := range rows {
			require.Len(t, block[r], len(cols))
			for c, j := range cols {
				require.InDelta(t, want[i][j], block[r][c], 1e-12)
			}
		}
	})
}

// Contributions against descent animal by animal: what i hands to a is the share
// of a in i, which is that of a in the parents of i, by halves.
func TestContributionsTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		records, groups := uncertainPedigree(t)
		records, more := withSources(t, records)
		p, err := pedigree.New(records, append(groups, more...)...)
		require.NoError(t, err)
		v := rapid.SliceOfN(rapid.Float64Range(0, 1), p.Len(), p.Len()).Draw(t, "v")
		var share func(of, in int) float64
		share = func(of, in int) float64 {
			if of == in {
				return 1
			}
			sire, dam := p.Parents(in)
			sum := 0.0
			for _, parent := range []pedigree.Parent{sire, dam} {
				for _, c := range parent.Candidates {
					sum += c.Probability * share(of, c.Animal) / 2
				}
			}
			return sum
		}
		for a, got := range p.Contributions(v) {
			want := 0.0
			for i := range v {
				want += v[i] * share(a, i)
			}
			require.InDelta(t, want, got, 1e-12)
		}
	})
}

func TestContributionsLost(t *testing.T) {
	p := build(t, "a,0,0 x,a,0 y,x,w", source("w", .2))
	assert.Equal(t, []float64{1. / 4, 1. / 2, 1}, p.Contributions([]float64{0, 0, 1}), "three quarters are lost")
	assert.PanicsWithValue(t, "pedigree: not one number for each animal", func() { p.Times([]float64{1}) })
	assert.PanicsWithValue(t, "pedigree: not one number for each animal", func() { p.Contributions(nil) })
	assert.PanicsWithValue(t, "pedigree: no animal 3 among 3", func() { p.Block([]int{0}, []int{3}) })
}

func TestRangeTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		records, groups := uncertainPedigree(t)
		records, more := withSources(t, records)
		groups = append(groups, more...)
		p, err := pedigree.New(records, groups...)
		require.NoError(t, err)
		var base []float64
		for _, s := range sources(groups) {
			base = append(base, s.Kinship)
		}
		var low, high [][]float64
		assignments(records, groups, func(parents [][2]int, _ float64) {
			k := tabularFrom(parents, base)
			if low == nil {
				low, high = clone(k), clone(k)
			}
			for i := range k {
				for j := range k {
					low[i][j], high[i][j] = min(low[i][j], k[i][j]), max(high[i][j], k[i][j])
				}
			}
		})
		for i := range p.Len() {
			l, h, ok := p.Range(i)
			require.True(t, ok)
			require.InDelta(t, 2*low[i][i]-1, l, 1e-12)
			require.InDelta(t, 2*high[i][i]-1, h, 1e-12)
			j := rapid.IntRange(0, p.Len()-1).Draw(t, "j")
			l, h, ok = p.KinshipRange(i, j)
			require.True(t, ok)
			require.InDelta(t, low[i][j], l, 1e-12)
			require.InDelta(t, high[i][j], h, 1e-12)
		}
	})
}

// Two young of a dam and one of two unrelated sires.
func TestRangeOfSiblings(t *testing.T) {
	for _, test := range []struct {
		kind      pedigree.GroupKind
		low, high float64
		reason    string
	}{
		{pedigree.OneUnknown, 1. / 4, 1. / 4, "they share him, whoever he is"},
		{pedigree.Several, 1. / 8, 1. / 4, "half or full siblings"},
	} {
		p := build(t, "a,0,0 b,0,0 d,0,0 x,m,d y,m,d",
			pedigree.Group{ID: "m", Kind: test.kind, Candidates: []pedigree.Candidate{{ID: "a"}, {ID: "b"}}})
		low, high, ok := p.KinshipRange(3, 4)
		assert.True(t, ok)
		assert.Equal(t, test.low, low, test.reason)
		assert.Equal(t, test.high, high, test.reason)
	}
}

func clone(table [][]float64) [][]float64 {
	var c [][]float64
	for _, row := range table {
		c = append(c, append([]float64(nil), row...))
	}
	return c
}

// Twenty-one clutches one from another, each of one of two: two million ways.
func TestRangeNotKnown(t *testing.T) {
	var groups []pedigree.Group
	father := "a"
	for _, id := range "cdefghijklmnopqrstuvw" {
		groups = append(groups, pedigree.Group{ID: "of " + string(id), Candidates: []pedigree.Candidate{{ID: father}, {ID: "b"}}})
		father = string(id)
	}
	records := []pedigree.Record{{ID: "a"}, {ID: "b"}}
	for _, g := range groups {
		records = append(records, pedigree.Record{ID: g.ID[3:], Sire: g.ID})
	}
	p, err := pedigree.New(records, groups...)
	require.NoError(t, err)
	_, _, ok := p.Range(p.Len() - 1)
	assert.False(t, ok)
	_, _, ok = p.KinshipRange(p.Len()-1, 5)
	assert.False(t, ok)
	low, high, ok := p.Range(5)
	assert.True(t, ok)
	assert.Zero(t, low)
	assert.Zero(t, high)
}
