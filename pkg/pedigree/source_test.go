package pedigree_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

func source(id string, kinship float64) pedigree.Group {
	return pedigree.Group{ID: id, Kind: pedigree.Source, Kinship: kinship}
}

// withSources lets some of the unknown parents come from one of two sources.
func withSources(t *rapid.T, records []pedigree.Record) ([]pedigree.Record, []pedigree.Group) {
	var groups []pedigree.Group
	for s := range 2 {
		groups = append(groups, source(fmt.Sprint("s", s), rapid.Float64Range(0, 1).Draw(t, "base kinship")))
	}
	for i := range records {
		for _, side := range []*string{&records[i].Sire, &records[i].Dam} {
			if *side == "" && rapid.Bool().Draw(t, "from a source") {
				*side = rapid.SampledFrom(groups).Draw(t, "source").ID
			}
		}
	}
	return records, groups
}

// Sources and uncertain parents together, over every assignment.
func TestSourcesTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		records, groups := uncertainPedigree(t)
		records, more := withSources(t, records)
		groups = append(groups, more...)
		p, err := pedigree.New(records, groups...)
		require.NoError(t, err)
		agrees(t, p, expected(records, groups))
	})
}

func TestSources(t *testing.T) {
	for _, test := range []struct {
		name   string
		text   string
		groups []pedigree.Group
		want   map[string]float64 // kinships of couples, by ids of one letter
		reason string
	}{
		{
			"founders from one source", "a,w,w b,w,w x,a,b",
			[]pedigree.Group{source("w", .1)},
			map[string]float64{"aa": .55, "ab": .1, "xx": .55, "ax": .325},
			"any two genes from the source have its kinship: F is 0.1 for all, and (0.55 + 0.1)/2 with the young",
		},
		{
			"brother and sister from a clutch of unknown parents", "a,m,f b,m,f x,a,b",
			[]pedigree.Group{source("m", .5), source("f", .5)},
			map[string]float64{"aa": .5, "ab": .25, "xx": .625},
			"a source of kinship 1/2 is one animal: full siblings, and inbreeding of 1/4 of their young",
		},
		{
			"half siblings by an unknown father", "a,m,0 b,m,0",
			[]pedigree.Group{source("m", .5)},
			map[string]float64{"ab": .125},
			"",
		},
		{
			"two sources", "a,v,v b,w,w",
			[]pedigree.Group{source("v", .2), source("w", .3)},
			map[string]float64{"aa": .6, "bb": .65, "ab": 0},
			"sources are unrelated to each other",
		},
		{
			"no kinship", "a,w,0 b,w,w",
			[]pedigree.Group{source("w", 0)},
			map[string]float64{"aa": .5, "bb": .5, "ab": 0},
			"the same as unknown parents",
		},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := build(t, test.text, test.groups...)
			for couple, want := range test.want {
				assert.InDelta(t, want, kinship(t, p, couple[:1], couple[1:]), rounding, "%s: %s", couple, test.reason)
			}
		})
	}
}

func TestFromSource(t *testing.T) {
	records := []pedigree.Record{{ID: "a"}, {ID: "b", Sire: "a"}}
	assert.Equal(t, []pedigree.Record{{ID: "a", Sire: "w", Dam: "w"}, {ID: "b", Sire: "a", Dam: "w"}}, pedigree.FromSource(records, "w"))
	assert.Equal(t, []pedigree.Record{{ID: "a"}, {ID: "b", Sire: "a"}}, records, "what was given stays")
}

func TestParentFromSource(t *testing.T) {
	p := build(t, "a,w,0 x,a,w", source("w", .25))
	sire, dam := p.Parents(1)
	assert.Equal(t, pedigree.Parent{Known: true, Candidates: []pedigree.Share{{Animal: 0, Probability: 1}}}, sire)
	assert.Equal(t, pedigree.Parent{Group: "w", Kind: pedigree.Source, Kinship: .25}, dam)
	assert.Equal(t, 0, p.Generation(0), "a source is no ancestor")
	assert.Equal(t, 1, p.Generation(1))
	assert.Equal(t, .5, p.CompleteGenerations(1))
	assert.False(t, p.Uncertain(1), "a source leaves nothing open")
	assert.Equal(t, []int{0}, p.Ancestors(1))
	_, isAnimal := p.Index("w")
	assert.False(t, isAnimal)
}

func TestKnownAncestry(t *testing.T) {
	p := build(t, "a,0,0 b,w,w c,a,b d,c,0 e,d,w f,d,e g,0,m", source("w", .1),
		pedigree.Group{ID: "m", Candidates: []pedigree.Candidate{{ID: "a", Weight: 3}, {ID: "d", Weight: 1}}})
	for id, want := range map[string]float64{
		"a": 1, "b": 1, // founders, wherever they come from
		"c": 1, "d": 1. / 2, "e": 1. / 4, "f": 3. / 8,
		"g": (3./4 + 1./4*1./2) / 2,
	} {
		assert.Equal(t, want, p.KnownAncestry(at(t, p, id)), id)
	}
}

func TestSourceErrors(t *testing.T) {
	for _, test := range []struct {
		name   string
		groups []pedigree.Group
		want   string
	}{
		{"negative", []pedigree.Group{source("w", -.1)}, `pedigree: group "w": the kinship of the source is -0.1; it must be from 0 to 1`},
		{"above one", []pedigree.Group{source("w", 1.5)}, `pedigree: group "w": the kinship of the source is 1.5; it must be from 0 to 1`},
		{"no number", []pedigree.Group{source("w", math.NaN())}, `pedigree: group "w": the kinship of the source is NaN; it must be from 0 to 1`},
		{
			"with candidates",
			[]pedigree.Group{{ID: "w", Kind: pedigree.Source, Candidates: []pedigree.Candidate{{ID: "a"}}}},
			`pedigree: group "w": it is a source and has candidates; it can be one or the other`,
		},
		{
			"kinship of a group that is none",
			[]pedigree.Group{{ID: "m", Kinship: .1, Candidates: []pedigree.Candidate{{ID: "a"}}}},
			`pedigree: group "m": it has a kinship of its own; only a Source has`,
		},
		{
			"as a candidate",
			[]pedigree.Group{source("w", .1), {ID: "m", Candidates: []pedigree.Candidate{{ID: "w"}}}},
			`pedigree: group "m": candidate "w" is a source; add a record of an animal from it and list that`,
		},
	} {
		t.Run(test.name, func(t *testing.T) {
			_, err := pedigree.New([]pedigree.Record{{ID: "a"}}, test.groups...)
			assert.EqualError(t, err, test.want)
		})
	}
}
