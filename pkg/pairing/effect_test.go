package pairing

import (
	"fmt"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

var close9 = cmpopts.EquateApprox(0, 1e-9)

func TestBreedingSet(t *testing.T) {
	// Four founders' worth of genes in two couples, of which one parent has no
	// young; the definitions are those of Lacy 1995, Zoo Biol. 14:565, worked out
	// by hand: all 16 kinships of 4 to 7 add up to 9/2.
	p, err := pedigree.New([]pedigree.Record{
		{ID: "1"},
		{ID: "2"},
		{ID: "3"},
		{ID: "4", Sire: "1", Dam: "2"},
		{ID: "5", Sire: "1", Dam: "2"},
		{ID: "6", Sire: "3", Dam: "4"},
		{ID: "7", Sire: "3", Dam: "4"},
	})
	require.NoError(t, err)
	set := NewBreedingSet(p, []int{6, 3, 5, 4})
	assert.Equal(t, 4, set.Len())
	assert.InDelta(t, 23.0/32, set.GeneDiversity(), 1e-12)
	for node, want := range map[int]float64{3: 5.0 / 16, 4: 1.0 / 4, 5: 9.0 / 32, 6: 9.0 / 32} {
		assert.InDelta(t, want, set.MeanKinship(node), 1e-12, p.ID(node))
	}
	assert.InDelta(t, 1.0/8, set.MeanKinship(2), 1e-12, "an animal outside: half of each of its two young's 1/2")
	assert.Equal(t, p.GeneDiversity([]int{3, 4, 5, 6}), set.GeneDiversity())
}

func TestEffect(t *testing.T) {
	p := room(t)
	at := func(ids ...string) []int {
		var out []int
		for _, id := range ids {
			i, ok := p.Index(id)
			require.True(t, ok, id)
			out = append(out, i)
		}
		return out
	}
	for _, tc := range []struct {
		why         string
		set         []string
		sires, dams []string
		young       int
		mix         pedigree.GroupKind
		want        Effect
	}{
		{
			"two unrelated animals and their only young: kinships 3 x 1/2 + 4 x 1/4 over 9",
			[]string{"Quill", "Sedge"},
			[]string{"Quill"},
			[]string{"Sedge"},
			1, pedigree.OneUnknown,
			Effect{SireKinship: []float64{1. / 4}, DamKinship: []float64{1. / 4}, Young: 1, GeneDiversity: 3. / 4, WithYoung: 13. / 18},
		},
		{
			"two young of theirs: 4 x 1/2 + 8 x 1/4 + 2 x 1/4 over 16",
			[]string{"Quill", "Sedge"},
			[]string{"Quill"},
			[]string{"Sedge"},
			2, pedigree.OneUnknown,
			Effect{SireKinship: []float64{1. / 4}, DamKinship: []float64{1. / 4}, Young: 2, GeneDiversity: 3. / 4, WithYoung: 23. / 32},
		},
		{
			"no young change nothing",
			[]string{"Quill", "Sedge"},
			[]string{"Quill"},
			[]string{"Sedge"},
			0, pedigree.OneUnknown,
			Effect{SireKinship: []float64{1. / 4}, DamKinship: []float64{1. / 4}, GeneDiversity: 3. / 4, WithYoung: 3. / 4},
		},
		{
			"a set of nobody: two full sibs, 2 x 1/2 + 2 x 1/4 over 4",
			nil,
			[]string{"Quill"},
			[]string{"Sedge"},
			2, pedigree.Several,
			Effect{SireKinship: []float64{0}, DamKinship: []float64{0}, Young: 2, WithYoung: 5. / 8},
		},
		{
			"nobody and nothing",
			nil,
			[]string{"Quill"},
			[]string{"Sedge"},
			0, pedigree.OneUnknown,
			Effect{SireKinship: []float64{0}, DamKinship: []float64{0}},
		},
		{
			"full sibs: half of the inbreeding through each of their parents",
			[]string{"Moss"},
			[]string{"Bram"},
			[]string{"Ottilie"},
			1, pedigree.OneUnknown,
			Effect{
				YoungInbreeding: 1. / 4,
				Shared:          []pedigree.SharedAncestor{{Animal: 0, Share: 1. / 8}, {Animal: 1, Share: 1. / 8}},
				SireKinship:     []float64{0}, DamKinship: []float64{0}, Young: 1,
				GeneDiversity: 1. / 2, WithYoung: 1 - (1./2+5./8)/4,
			},
		},
		{
			"two possible fathers, one of them the dam's: his share is halved",
			nil,
			[]string{"Moss", "Quill"},
			[]string{"Ottilie"},
			2, pedigree.OneUnknown,
			Effect{
				YoungInbreeding: 1. / 8,
				Shared:          []pedigree.SharedAncestor{{Animal: 0, Share: 1. / 8}},
				SireKinship:     []float64{0, 0}, DamKinship: []float64{0}, Young: 2,
				// 2 x (1 + 1/8)/2 + 2 x (1/2 + 2/8 + 1/2)/4
				WithYoung: 1 - (9./8+5./8)/4,
			},
		},
		{
			"the same, each young with its own father: two unrelated ones half the time",
			nil,
			[]string{"Moss", "Quill"},
			[]string{"Ottilie"},
			2, pedigree.Several,
			Effect{
				YoungInbreeding: 1. / 8,
				Shared:          []pedigree.SharedAncestor{{Animal: 0, Share: 1. / 8}},
				SireKinship:     []float64{0, 0}, DamKinship: []float64{0}, Young: 2,
				// 2 x (1 + 1/8)/2 + 2 x (1/4 + 2/8 + 1/2)/4
				WithYoung: 1 - (9./8+1./2)/4,
			},
		},
	} {
		t.Run(tc.why, func(t *testing.T) {
			got := NewBreedingSet(p, at(tc.set...)).Effect(at(tc.sires...), at(tc.dams...), tc.young, tc.mix)
			if diff := cmp.Diff(tc.want, got, close9, cmpopts.EquateEmpty()); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
			assert.InDelta(t, tc.want.WithYoung-tc.want.GeneDiversity, got.Change(), 1e-12)
		})
	}
}

// colony is a random pedigree with groups, and the sexes that its animals were
// used as.
type colony struct {
	records []pedigree.Record
	groups  []pedigree.Group
}

func drawColony(t *rapid.T) colony {
	var c colony
	n := rapid.IntRange(2, 14).Draw(t, "animals")
	for i := range n {
		r := pedigree.Record{ID: fmt.Sprint("a", i)}
		// Even places are males and odd ones females, so that nobody is both.
		if i >= 2 {
			r.Sire = c.parent(t, i, 0)
			r.Dam = c.parent(t, i, 1)
		}
		c.records = append(c.records, r)
	}
	return c
}

// parent draws nothing, an animal of one sex before i, or a group of them.
func (c *colony) parent(t *rapid.T, i, sex int) string {
	var before []string
	for k := sex; k < i; k += 2 {
		before = append(before, fmt.Sprint("a", k))
	}
	ids := drawSome(t, before, "parents")
	switch rapid.IntRange(0, 3).Draw(t, "kind of parent") {
	case 0:
		return ""
	case 1:
		g := pedigree.Group{ID: fmt.Sprintf("group of a%d, %d", i, sex), Kind: drawMix(t)}
		for _, id := range ids {
			g.Candidates = append(g.Candidates, pedigree.Candidate{ID: id})
		}
		c.groups = append(c.groups, g)
		return g.ID
	}
	return ids[0]
}

func drawMix(t *rapid.T) pedigree.GroupKind {
	return rapid.SampledFrom([]pedigree.GroupKind{pedigree.OneUnknown, pedigree.Several}).Draw(t, "mix")
}

// drawSome draws one or more.
func drawSome[T any](t *rapid.T, from []T, what string) []T {
	return rapid.Permutation(from).Draw(t, what)[:rapid.IntRange(1, len(from)).Draw(t, "how many "+what)]
}

// TestEffectAgainstRebuiltPedigree adds the young to the records and computes
// the whole pedigree anew.
func TestEffectAgainstRebuiltPedigree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawColony(t)
		p, err := pedigree.New(c.records, c.groups...)
		require.NoError(t, err)

		var all, males, females []int
		for i := range c.records {
			all = append(all, i)
			if i%2 == 0 {
				males = append(males, i)
			} else {
				females = append(females, i)
			}
		}
		members := drawSome(t, all, "members")[1:] // may be none
		sires, dams := drawSome(t, males, "sires"), drawSome(t, females, "dams")
		young, mix := rapid.IntRange(0, 5).Draw(t, "young"), drawMix(t)
		got := NewBreedingSet(p, members).Effect(sires, dams, young, mix)

		records, groups := slices.Clone(c.records), slices.Clone(c.groups)
		for side, parents := range [][]int{sires, dams} {
			g := pedigree.Group{ID: fmt.Sprint("side ", side), Kind: mix}
			for _, i := range parents {
				g.Candidates = append(g.Candidates, pedigree.Candidate{ID: c.records[i].ID})
			}
			groups = append(groups, g)
		}
		with := slices.Clone(members)
		for i := range young {
			with = append(with, len(records))
			records = append(records, pedigree.Record{ID: fmt.Sprint("young ", i), Sire: "side 0", Dam: "side 1"})
		}
		after, err := pedigree.New(records, groups...)
		require.NoError(t, err)

		require.InDelta(t, p.GeneDiversity(members), got.GeneDiversity, 1e-9)
		require.InDelta(t, after.GeneDiversity(with), got.WithYoung, 1e-9)
		for _, i := range with[len(members):] {
			require.InDelta(t, after.Inbreeding(i), got.YoungInbreeding, 1e-9)
		}
		sum := 0.0
		for i, s := range got.Shared {
			sum += s.Share
			require.True(t, i == 0 || got.Shared[i-1].Share >= s.Share-1e-9, "largest first")
		}
		require.InDelta(t, got.YoungInbreeding, sum, 1e-9)
	})
}
