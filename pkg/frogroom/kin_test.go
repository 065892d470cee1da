package frogroom_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/kin"
)

// TestYoungOfGroups is about the inbreeding of young that are wished for or growing.
func TestYoungOfGroups(t *testing.T) {
	r := room(t, basic+`
  - {id: G, species: clockwork, sex: female, sire: A, dam: D}
clutches:
  - {id: C1, laid: 2026-12-01, dam: G, sire: [A, B]}
  - {id: C2, laid: 2026-12-01, dam: [D, E], sire: A}
  - {id: C3, laid: 2026-12-01, sire: A, species: clockwork}
pairings:
  - {id: P, dam: [G, D], sire: [A, B], start: 2027-02-01}
`)
	want := map[string]kin.Young{
		"C1": {Inbreeding: 1.0 / 8, Expected: true, Known: true},
		"C2": {Inbreeding: 0, Expected: true, Known: true},
		"C3": {},
	}
	for _, k := range r.Clutches(day("2027-01-01")) {
		assert.Equal(t, want[k.ID], k.Young, k.ID)
	}
	s, err := r.Season(day("2027-01-01"))
	require.NoError(t, err)
	assert.Equal(t, kin.Young{Inbreeding: 1.0 / 16, Expected: true, Known: true}, s.Pairings[0].Young,
		"daughter and sire, 1/4, are one of four couples")
}
