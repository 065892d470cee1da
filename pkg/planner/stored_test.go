package planner_test

import (
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/planner"
)

// stored is where the seasons are whose best cost another solver has proven; see
// its README.md.
const stored = "../../testdata/season"

var writeSeasons = flag.Int("write-seasons", 0, "write the problems of this many seasons into testdata/season, for another solver to prove")

// storedFile is a problem with the cost of its best plan.
type storedFile struct {
	Problem planner.Problem `json:"problem"`
	Cost    int             `json:"cost"`
	Solver  string          `json:"solver"` // who has proven it; empty when nobody has
}

// TestStoredSeasons plans seasons whose best cost was proven by a mixed-integer
// solver, HiGHS.
func TestStoredSeasons(t *testing.T) {
	for seed := range uint64(*writeSeasons) {
		b, err := json.Marshal(storedFile{Problem: storedSeason(seed)})
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(stored, fmt.Sprintf("room-%02d.json", seed)), b, 0o644))
	}
	names, err := filepath.Glob(filepath.Join(stored, "*.json"))
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(names), 26)
	for _, name := range names {
		t.Run(filepath.Base(name), func(t *testing.T) {
			t.Parallel()
			b, err := os.ReadFile(name)
			require.NoError(t, err)
			var f storedFile
			require.NoError(t, json.Unmarshal(b, &f))
			require.NotEmpty(t, f.Solver)
			plan := planner.Solve(t.Context(), f.Problem, planner.Options{Steps: 20_000})
			assert.Empty(t, planner.Check(f.Problem, plan))
			assert.Equal(t, f.Cost, plan.Cost)
			assert.LessOrEqual(t, plan.Bound, f.Cost)
		})
	}
}
