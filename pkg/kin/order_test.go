package kin_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// TestRowsInAnyOrder shuffles the rows of a table, and leaves out those of the
// founders: the answers stay.
func TestRowsInAnyOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 30).Draw(t, "animals")
		var rows []string
		for i := range n {
			parent := func(side string, odd int) string {
				if p := rapid.IntRange(-2, i-1).Draw(t, side); p >= 0 && p%2 == odd {
					return fmt.Sprint("a", p)
				}
				return ""
			}
			rows = append(rows, fmt.Sprintf("a%d,%s,%s", i, parent("sire", 0), parent("dam", 1)))
		}
		table := func(rows []string) string { return "id,sire,dam\n" + strings.Join(rows, "\n") + "\n" }
		a, err := readTable(table(rows))
		require.NoError(t, err)
		var shuffled []string
		for _, row := range rapid.Permutation(rows).Draw(t, "order") {
			if id, parents, _ := strings.Cut(row, ","); parents != "," || !named(rows, id) {
				shuffled = append(shuffled, row)
			}
		}
		b, err := readTable(table(shuffled))
		require.NoError(t, err)
		require.Equal(t, a.Pedigree.Len(), b.Pedigree.Len())
		for want := range a.Rows(0, nil) {
			for got := range b.Rows(0, nil) {
				if got.ID != want.ID {
					continue
				}
				require.InDelta(t, want.Inbreeding, got.Inbreeding, 1e-12)
				require.InDelta(t, want.MeanKinship, got.MeanKinship, 1e-12)
				require.InDelta(t, want.CompleteGenerations, got.CompleteGenerations, 1e-12)
				got.Inbreeding, got.MeanKinship, got.CompleteGenerations = want.Inbreeding, want.MeanKinship, want.CompleteGenerations
				require.Equal(t, want, got)
			}
		}
	})
}

// named reports whether an animal is a parent in one of the rows.
func named(rows []string, id string) bool {
	for _, row := range rows {
		if _, parents, _ := strings.Cut(row, ","); strings.HasPrefix(parents, id+",") || strings.HasSuffix(parents, ","+id) {
			return true
		}
	}
	return false
}
