package frogroom_test

import (
	"errors"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/breedingplan"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

// TestGroupsOfOneAreEveryonesPairs: a group of one and one is a pair that is used once.
func TestGroupsOfOneAreEveryonesPairs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := randomFile(t)
		r, _ := frogroom.Read("room.yaml", []byte(f.text(f.diary)))
		on := civil.Date(rapid.IntRange(int(day("2023-06-01")), int(day("2028-12-31"))).Draw(t, "on"))
		for _, p := range r.Collection.Species {
			w := breedingplan.Wish{Species: p.ID, Weight: 0.1, Pairings: 3, MaleUses: 1}
			pairs, errPairs := r.Pairs(on, w)
			groups, errGroups := r.Groups(on, w, 1, 1)
			if errPairs != nil {
				require.Error(t, errGroups)
				continue
			}
			require.NoError(t, errGroups)
			require.InDelta(t, score(1-pairs.Species[0].WithYoung, pairs.Species[0].YoungInbreeding), score(1-groups.WithYoung, groups.YoungInbreeding), 1e-9)

			together, err := r.Groups(on, w, 2, 1)
			if err != nil {
				var none *breedingplan.NoPlanError
				require.True(t, errors.As(err, &none), "%v", err)
				continue
			}
			var used []string
			for _, g := range together.Groups {
				used = append(used, slices.Concat(g.Males, g.Females)...)
				require.Len(t, g.Males, 2)
				sum := 0.0
				for _, m := range g.Males {
					why, err := r.WhyPair(on, m, g.Females[0], w)
					require.NoError(t, err)
					require.True(t, why.Allowed)
					require.LessOrEqual(t, why.Inbreeding, g.Highest+1e-9)
					sum += why.Inbreeding / 2
				}
				require.InDelta(t, sum, g.Inbreeding, 1e-9)
			}
			slices.Sort(used)
			require.Equal(t, used, slices.Compact(slices.Clone(used)), "nobody is in two groups")
		}
	})
}

func TestGroupsSayWhatIsUnknown(t *testing.T) {
	r := room(t, basic)
	on := day("2027-03-01")
	g, err := r.Groups(on, breedingplan.Wish{}, 2, 2)
	require.NoError(t, err)
	assert.Equal(t, "which of A and B is the sire of a clutch, and which of D and E laid it", g.Groups[0].Unknown)
	g, err = r.Groups(on, breedingplan.Wish{Without: [][2]string{{"A", "E"}}}, 2, 1)
	require.NoError(t, err)
	assert.Equal(t, []string{"D"}, g.Groups[0].Females, "A may not be with E")
	assert.Equal(t, "which of A and B is the sire of a clutch", g.Groups[0].Unknown)
	g, err = r.Groups(on, breedingplan.Wish{Want: [][2]string{{"B", "E"}}, Pairings: 1}, 1, 1)
	require.NoError(t, err)
	assert.Equal(t, []string{"B", "E"}, append(g.Groups[0].Males, g.Groups[0].Females...))
	assert.Equal(t, "nothing", g.Groups[0].Unknown)

	for _, size := range [][2]int{{0, 1}, {1, 11}} {
		_, err = r.Groups(on, breedingplan.Wish{}, size[0], size[1])
		var wrong *breedingplan.WishError
		require.True(t, errors.As(err, &wrong))
	}
	var none *breedingplan.NoPlanError
	_, err = r.Groups(on, breedingplan.Wish{}, 3, 1)
	require.True(t, errors.As(err, &none))
	_, err = r.Groups(on, breedingplan.Wish{Want: [][2]string{{"A", "D"}, {"A", "E"}}}, 1, 1)
	require.True(t, errors.As(err, &none), "%v", err)
	assert.Contains(t, none.Error(), "A is in one group at most; A × D is wanted; A × E is wanted")
}
