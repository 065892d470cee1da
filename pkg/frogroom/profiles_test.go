package frogroom_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/species"
)

func TestProfiles(t *testing.T) {
	r := room(t, `
species:
  - CLOCKWORK
  - {use: hyla-cinerea, safe_c: [15, 29]}
`)
	all := r.Profiles()
	assert.Len(t, all, len(species.Builtin())+1)
	assert.True(t, slices.IsSortedFunc(all, func(a, b *species.Profile) int {
		if a.ID < b.ID {
			return -1
		}
		return 1
	}))
	changed, err := frogroom.FindProfile(all, "hyla-cinerea")
	require.NoError(t, err)
	assert.Equal(t, 15.0, changed.Safe.Low, "as the file has it")
	own, err := frogroom.FindProfile(all, "Rana horologia")
	require.NoError(t, err, "by its scientific name")
	assert.Equal(t, "clockwork", own.ID)
	_, err = frogroom.FindProfile(all, "hyla-cineria")
	var unknown *collection.UnknownError
	require.ErrorAs(t, err, &unknown)
	assert.EqualError(t, err, `there is no species "hyla-cineria"; did you mean "hyla-cinerea"?`)
	common, err := frogroom.FindProfile(all, "red-Eyed tree frog")
	require.NoError(t, err, "by its common name, in any case")
	assert.Equal(t, "agalychnis-callidryas", common.ID)
	_, err = frogroom.FindProfile(all, "bombina")
	assert.EqualError(t, err, `there is no species "bombina"; did you mean "bombina-orientalis"?`, "a part of one name")
	_, err = frogroom.FindProfile(all, "frog")
	assert.EqualError(t, err, `there is no species "frog"`, "a part of several")
	_, err = frogroom.FindProfile(nil, "x")
	assert.EqualError(t, err, `there is no species "x"`)
}
