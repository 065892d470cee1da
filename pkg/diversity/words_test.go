package diversity_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/diversity"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

func TestRoleNames(t *testing.T) {
	for role, want := range map[diversity.Role]string{
		diversity.Itself: "itself", diversity.UnknownSire: "unknown sire", diversity.UnknownDam: "unknown dam",
		diversity.OneSource: "one source", 9: "Role(9)",
	} {
		assert.Equal(t, want, role.String())
	}
}

func TestWhatIfRefuses(t *testing.T) {
	p := build(t, small)
	for name, change := range map[string]diversity.Change{
		"not living":       {Left: []int{0}},
		"leaves twice":     {Left: []int{3, 3}},
		"fewer than none":  {Born: []diversity.Brood{{Sire: 0, Dam: 1, Count: -1}}},
		"no such parent":   {Born: []diversity.Brood{{Sire: 0, Dam: 7, Count: 1}}},
		"no such animal":   {Left: []int{7}},
		"nobody like that": {Left: []int{-1}},
	} {
		assert.Panics(t, func() { diversity.WhatIf(p, []int{3, 4}, change) }, name)
	}
	assert.Equal(t, diversity.Outcome{}, diversity.WhatIf(p, []int{3, 4}, diversity.Change{Left: []int{3, 4}}), "all are gone")
}

// A source is nobody that can be named; its kinship makes inbreeding that no
// founder in the records explains.
func TestFoundersFromOneSource(t *testing.T) {
	p := build(t, "x,pond,pond y,pond,0 z,x,y", pedigree.Group{ID: "pond", Kind: pedigree.Source, Kinship: .25})
	sameContributions(t, p, map[string]float64{"from pond": .25}, diversity.PartialInbreeding(p, numbers(t, p, "x")))
	sameContributions(t, p, map[string]float64{"from pond": .125}, diversity.PartialInbreeding(p, numbers(t, p, "z")))
	sameContributions(t, p, map[string]float64{"x": .5, "y": .5}, diversity.FounderContributions(p, numbers(t, p, "z")))

	p = build(t, "x,pond,0 y,lake,0 z,x,y",
		pedigree.Group{ID: "pond", Kind: pedigree.Source, Kinship: .25}, pedigree.Group{ID: "lake", Kind: pedigree.Source, Kinship: .5})
	assert.Empty(t, diversity.PartialInbreeding(p, numbers(t, p, "z")), "two sources are unrelated")
	assert.Zero(t, diversity.Drop(p, numbers(t, p, "z"), diversity.Drops{Count: 100}).Animals[0].Inbreeding)
}
