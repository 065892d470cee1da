package pedigree_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// A pedigree that grew in two steps says what the whole says, and the first step
// still says what it said.
func TestGrowTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		records, groups := uncertainPedigree(t)
		records, more := withSources(t, records)
		groups = append(groups, more...)
		early, late, earlyGroups, lateGroups := split(t, records, groups)
		p, err := pedigree.New(early, earlyGroups...)
		require.NoError(t, err)
		before := p.KinshipTo(max(0, p.Len()-1))
		grown, err := p.Grow(late, lateGroups...)
		require.NoError(t, err)
		all := append(append([]pedigree.Record(nil), early...), late...)
		agrees(t, grown, expected(all, append(earlyGroups, lateGroups...)))
		for i, r := range all {
			at, ok := grown.Index(r.ID)
			require.True(t, ok)
			require.Equal(t, i, at)
		}
		require.Equal(t, before, p.KinshipTo(max(0, p.Len()-1)), "the old one is as it was")
		whole, err := pedigree.New(all, append(earlyGroups, lateGroups...)...)
		require.NoError(t, err)
		for i := range all {
			require.Equal(t, whole.Ancestors(i), grown.Ancestors(i))
			require.Equal(t, whole.Generation(i), grown.Generation(i))
			require.InDelta(t, whole.CompleteGenerations(i), grown.CompleteGenerations(i), 1e-12)
			require.InDelta(t, whole.KnownAncestry(i), grown.KnownAncestry(i), 1e-12)
			require.Equal(t, whole.Uncertain(i), grown.Uncertain(i))
		}
	})
}

// split puts some animals off with everything that descends from them, and the
// groups that need any of these.
func split(t *rapid.T, records []pedigree.Record, groups []pedigree.Group) (early, late []pedigree.Record, earlyGroups, lateGroups []pedigree.Group) {
	isLate := map[string]bool{"": false}
	for _, r := range records {
		isLate[r.ID] = rapid.IntRange(0, 3).Draw(t, "late") == 0
	}
	for changed := true; changed; {
		changed = false
		put := func(id string, late bool) {
			changed = changed || late && !isLate[id]
			isLate[id] = isLate[id] || late
		}
		for _, g := range groups {
			for _, c := range g.Candidates {
				put(g.ID, isLate[c.ID])
			}
		}
		for _, r := range records {
			put(r.ID, isLate[r.Sire] || isLate[r.Dam])
		}
	}
	for _, r := range records {
		if isLate[r.ID] {
			late = append(late, r)
		} else {
			early = append(early, r)
		}
	}
	for _, g := range groups {
		if isLate[g.ID] {
			lateGroups = append(lateGroups, g)
		} else {
			earlyGroups = append(earlyGroups, g)
		}
	}
	if len(early) == 0 {
		t.Skip("nothing to grow from")
	}
	return early, late, earlyGroups, lateGroups
}

func TestGrowErrors(t *testing.T) {
	p := build(t, "a,0,0 b,0,0 x,m,0 y,0,w",
		pedigree.Group{ID: "m", Candidates: []pedigree.Candidate{{ID: "a"}, {ID: "b"}}}, source("w", .1))
	for _, test := range []struct {
		name   string
		record pedigree.Record
		groups []pedigree.Group
		want   string
	}{
		{"an old animal again", pedigree.Record{ID: "a"}, nil, `pedigree: entry 1 is called "a", as one that is there already; ids must differ`},
		{"called like an old group", pedigree.Record{ID: "m"}, nil, `pedigree: entry 1 is called "m", as one that is there already; ids must differ`},
		{"an old group again", pedigree.Record{ID: "z"}, []pedigree.Group{{ID: "m", Candidates: []pedigree.Candidate{{ID: "a"}}}}, `pedigree: entry 2 is called "m", as one that is there already; ids must differ`},
		{"unknown", pedigree.Record{ID: "z", Sire: "q"}, nil, `pedigree: sire "q" of "z" has no record; add one, or leave the parent empty`},
		{"mated to a candidate", pedigree.Record{ID: "z", Sire: "m", Dam: "b"}, nil, `pedigree: group "m": "b" may be both the sire and the dam of "z"; list it on one side only`},
		{"an old group as a candidate", pedigree.Record{ID: "z"}, []pedigree.Group{{ID: "n", Candidates: []pedigree.Candidate{{ID: "m"}}}}, `pedigree: group "n": candidate "m" is itself a group; list its candidates instead`},
		{"an old source as a candidate", pedigree.Record{ID: "z"}, []pedigree.Group{{ID: "n", Candidates: []pedigree.Candidate{{ID: "w"}}}}, `pedigree: group "n": candidate "w" is a source; add a record of an animal from it and list that`},
		{"its own parent", pedigree.Record{ID: "z", Sire: "z"}, nil, `pedigree: "z" descends from itself: "z" is from "z"; one of these parents must be wrong`},
	} {
		t.Run(test.name, func(t *testing.T) {
			_, err := p.Grow([]pedigree.Record{test.record}, test.groups...)
			assert.EqualError(t, err, test.want)
		})
	}
}

// Two pedigrees that grew from one know nothing of each other.
func TestGrowApart(t *testing.T) {
	p := build(t, mrode)
	left, err := p.Grow([]pedigree.Record{{ID: "l", Sire: "5", Dam: "6"}})
	require.NoError(t, err)
	right, err := p.Grow([]pedigree.Record{{ID: "r", Sire: "1", Dam: "2"}})
	require.NoError(t, err)
	assert.Equal(t, "l", left.ID(6))
	assert.Equal(t, "r", right.ID(6))
	assert.Equal(t, p.Kinship(4, 5), left.Inbreeding(6))
	assert.Zero(t, right.Inbreeding(6))
	_, ok := p.Index("l")
	assert.False(t, ok)
	_, ok = right.Index("l")
	assert.False(t, ok)
}
