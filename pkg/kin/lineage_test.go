package kin_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/kin"
)

// TestLineage is about who is drawn; how is the business of the package lineage.
func TestLineage(t *testing.T) {
	r := ancestry(t, basic+`
  - {id: K, species: clockwork, sex: male, sire: [A, B], dam: D}
  - {id: L, species: clockwork, sire: K, dam: E}
  - {id: Z, species: hyla-cinerea}
`)
	for _, row := range []struct {
		name      string
		direction kin.Direction
		of        string
		want      string
	}{
		{"all", kin.Both, "", "A B D E K L Z"},
		{"all, whatever the direction", kin.Ancestors, "", "A B D E K L Z"},
		{"possible sires are ancestors", kin.Ancestors, "K", "A B D K"},
		{"descendants come with their other parent", kin.Descendants, "K", "E K L"},
		{"both", kin.Both, "K", "A B D E K L"},
		{"two at once", kin.Ancestors, "K Z", "A B D K Z"},
		{"one twice", kin.Ancestors, "Z Z", "Z"},
	} {
		dot, err := r.Lineage(day("2027-01-01"), kin.LineageWish{Direction: row.direction, IDs: strings.Fields(row.of)})
		require.NoError(t, err)
		for _, id := range strings.Fields("A B D E K L Z") {
			assert.Equal(t, strings.Contains(row.want, id), strings.Contains(dot.DOT(), `"animal-`+id+`"`), "%s: %s", row.name, id)
		}
	}
	assert.PanicsWithValue(t, "kin: no such direction: 7", func() { _, _ = r.Lineage(day("2027-01-01"), kin.LineageWish{Direction: 7, IDs: []string{"K"}}) })
}

// TestWhoIsGone: the dead and those that left are drawn as gone from that day
// on, those that are still to come never.
func TestWhoIsGone(t *testing.T) {
	r := ancestry(t, `
animals:
  - {id: A, species: hyla-cinerea, acquired: 2024-01-01, died: 2026-01-01}
`)
	graph := func(on string) string {
		dot, err := r.Lineage(day(on), kin.LineageWish{})
		require.NoError(t, err)
		return dot.DOT()
	}
	assert.Equal(t, graph("2020-01-01"), graph("2025-12-31"))
	assert.NotEqual(t, graph("2025-12-31"), graph("2026-01-01"))
	sold := ancestry(t, "animals: [{id: A, species: hyla-cinerea, acquired: 2024-01-01, left: 2026-01-01}]\n")
	dot, err := sold.Lineage(day("2026-01-01"), kin.LineageWish{})
	require.NoError(t, err)
	assert.Equal(t, graph("2026-01-01"), dot.DOT(), "who left is gone as the dead are")
	unknown, err := r.Lineage(0, kin.LineageWish{})
	require.NoError(t, err)
	assert.Equal(t, graph("2026-01-01"), unknown.DOT(), "an unknown day is the end of the records")
}

func TestLineageOfTheLiving(t *testing.T) {
	r := ancestry(t, basic+"  - {id: X, species: clockwork, died: 2026-01-01}\n")
	living, err := r.Lineage(day("2027-01-01"), kin.LineageWish{Living: true})
	require.NoError(t, err)
	assert.Contains(t, living.DOT(), `"animal-A"`)
	assert.NotContains(t, living.DOT(), `"animal-X"`)
}

// TestLineageOfAPair: the young has a name that is free.
func TestLineageOfAPair(t *testing.T) {
	a, err := readTable("id;sire;dam\nA;;\nD;;\nyoung of A, D;A;D\n")
	require.NoError(t, err)
	pair, err := a.Lineage(0, kin.LineageWish{IDs: []string{"A", "D"}, Pair: true})
	require.NoError(t, err)
	assert.Contains(t, pair.DOT(), `"animal-young of A, D,"`)
	assert.NotContains(t, pair.DOT(), `"animal-young of A, D"`, "the one that is there is no ancestor")
	assert.PanicsWithValue(t, "kin: a pair of 1 animals", func() { _, _ = a.Lineage(0, kin.LineageWish{IDs: []string{"A"}, Pair: true}) })
}
