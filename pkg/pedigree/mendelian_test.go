package pedigree

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is new in each animal, on the scale of A = 2K. The order of these
// pedigrees is kept, so that nodes are rows.
func TestOwnVariance(t *testing.T) {
	for _, test := range []struct {
		source  string
		records []Record
		want    []float64
	}{
		{
			"Mrode 2014, 3rd ed., page 27",
			[]Record{{"1", "", ""}, {"2", "", ""}, {"3", "1", "2"}, {"4", "1", ""}, {"5", "4", "3"}, {"6", "5", "2"}},
			[]float64{1, 1, .5, .75, .5, 15. / 32},
		},
		{
			"Lynch and Walsh 1998, chapter 26, page 777",
			[]Record{{"1", "", ""}, {"2", "", ""}, {"3", "", ""}, {"4", "1", "2"}, {"5", "2", "3"}},
			[]float64{1, 1, 1, .5, .5},
		},
	} {
		t.Run(test.source, func(t *testing.T) {
			p, err := New(test.records)
			require.NoError(t, err)
			for k, want := range test.want {
				assert.Equal(t, int32(k), p.rows[k])
				assert.InDelta(t, want, 2*p.graph.own[k], 1e-15)
			}
		})
	}
}

// A walk that stops early leaves nothing behind for the next.
func TestWalkerIsClearAfterwards(t *testing.T) {
	p, err := New([]Record{{"a", "", ""}, {"b", "", ""}, {"c", "a", ""}, {"d", "c", ""}, {"e", "b", "d"}, {"f", "", ""}})
	require.NoError(t, err)
	w := newWalker(p.graph.len())
	clean := newWalker(p.graph.len())
	for i := range int32(p.graph.len()) {
		for j := range int32(p.graph.len()) {
			w.cross(&p.graph, []term{{i, 1}}, []term{{j, 1}})
			w.steps = 0
			require.Equal(t, clean, w, "after %d and %d", i, j)
		}
	}
}
