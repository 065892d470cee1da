package pairing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

func TestBlocking(t *testing.T) {
	p, err := pedigree.New([]pedigree.Record{{ID: "Bram"}, {ID: "Falk"}, {ID: "Gerda"}, {ID: "Hilde"}})
	require.NoError(t, err)
	pair := func(m, f int) Option {
		return Option{Sires: []int{m}, Dams: []int{f}, MinYoung: 1, MaxYoung: 2}
	}
	options := []Option{pair(0, 2), pair(0, 3), pair(1, 2)}
	for _, row := range []struct {
		why     string
		options []Option
		limits  []Limit
		want    []int
		blocked bool
	}{
		{"nothing in the way", options, []Limit{{Options: []int{0, 1}, AtMost: 1}}, nil, false},
		{"no options at all", nil, []Limit{{AtMost: 1}}, []int{}, true},
		{"one pairing has too few young for four", options, []Limit{{Options: []int{0}, AtMost: 1}, {Options: []int{0, 1, 2}, AtMost: 1}}, []int{1}, true},
		{
			"two wanted pairings of a male that is used once", options,
			[]Limit{
				{Name: "season", Options: []int{0, 1, 2}, AtMost: 3},
				{Name: "Bram once", Options: []int{0, 1}, AtMost: 1},
				{Name: "wanted", Options: []int{0}, AtLeast: 1, AtMost: 1},
				{Name: "also wanted", Options: []int{1}, AtLeast: 1, AtMost: 1},
			},
			[]int{1, 2, 3},
			true,
		},
		{"more wanted than there are", options, []Limit{{Options: []int{0, 1}, AtMost: 2}, {Options: []int{2}, AtLeast: 2, AtMost: 2}}, []int{1}, true},
	} {
		t.Run(row.why, func(t *testing.T) {
			got, blocked := Choice{Pool: NewBreedingSet(p, nil), Options: row.options, Limits: row.limits, Young: 4}.Blocking()
			assert.Equal(t, row.want, got)
			assert.Equal(t, row.blocked, blocked)
		})
	}
}

// TestBlockingAgainstEnumeration tries every subset of the limits.
func TestBlockingAgainstEnumeration(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, c := drawChoice(t)
		leavesNone := func(set []int) bool {
			some := c
			some.Limits = nil
			for _, l := range set {
				some.Limits = append(some.Limits, c.Limits[l])
			}
			return len(enumerate(some, func([]int) float64 { return 0 })) == 0
		}
		var smallest []int
		for mask := range 1 << len(c.Limits) {
			set := []int{}
			for l := range c.Limits {
				if mask&(1<<l) != 0 {
					set = append(set, l)
				}
			}
			if leavesNone(set) && (smallest == nil || len(set) < len(smallest)) {
				smallest = set
			}
		}
		got, blocked := c.Blocking()
		require.Equal(t, smallest != nil, blocked)
		require.Len(t, got, len(smallest))
		require.True(t, !blocked || leavesNone(got))
	})
}
