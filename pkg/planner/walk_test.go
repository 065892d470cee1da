package planner

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// crowded gives a stored season with its pairings three times over, far more than
// its room holds.
func crowded(t *testing.T, name string) Problem {
	t.Helper()
	f, err := os.Open(filepath.Join("../../testdata/season", name))
	require.NoError(t, err)
	defer f.Close()
	d, err := ReadDocument(f)
	require.NoError(t, err)
	p := d.Problem
	for range 2 {
		for _, c := range d.Problem.Chains {
			c.ID = "one more " + p.Chains[len(p.Chains)-1].ID
			p.Chains = append(p.Chains, c)
		}
	}
	return p
}

// TestVacancies: what is kept up to date beside a plan that changes gives the same
// days as working all out from the load.
func TestVacancies(t *testing.T) {
	m := newModel(crowded(t, "room-13.json"))
	pick := rand.New(rand.NewPCG(1, 1))
	p := m.newPrices()
	for _, row := range p.day {
		for d := range row {
			row[d] = pick.Int64N(3 * unit)
		}
	}
	p.sum(m.left)
	v, table := newVacancies(m), newCrew(m, 1).tables[0]
	planned := make([][]int, len(m.chains))
	placed := 0
	for range 400 {
		i := pick.IntN(len(m.chains))
		if planned[i] != nil {
			v.book(i, planned[i], -1)
			planned[i] = nil
			continue
		}
		with := prices{sums: [][][]int64{nil, p.sums}[pick.IntN(2)]}
		want := m.placeOne(m.chains[i], with, table, v.load)
		path, worked := v.place(i, table, with.sums)
		require.Equal(t, want, path)
		assert.True(t, worked || path == nil)
		if path != nil {
			placed++
			v.book(i, path, 1)
			planned[i] = path
		}
	}
	assert.Greater(t, placed, 50)
	assert.Less(t, placed, 250, "the room is never full")
}

// TestWander: walks find better plans of a crowded room, that keep its limits and
// cost what they say, and the same ones with any number of workers.
func TestWander(t *testing.T) {
	p := crowded(t, "room-13.json")
	wander := func(workers int) (before, after solution) {
		v := newSolving(t.Context(), p, Options{Workers: workers})
		v.bounds.round()
		v.begin()
		v.lift(30)
		before = v.improve.best
		v.wander(4000)
		return before, v.improve.best
	}
	before, after := wander(1)
	m := newModel(p)
	assert.Less(t, after.cost, before.cost)
	assert.Equal(t, m.costOf(after.paths), after.cost)
	for i, path := range after.paths {
		assert.True(t, path == nil || m.chains[i].allows(path))
	}
	assert.True(t, m.feasible(after.paths))
	_, again := wander(3)
	assert.Equal(t, after, again)
}
