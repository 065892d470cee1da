package diversity_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/diversity"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// everyCoin plays all ways in which the genes can come down, each once, and gives
// the exact chances that a gene drop estimates. Keys are words.
func everyCoin(p *pedigree.Pedigree, living []int, into map[string]float64, chance float64) {
	type gene struct {
		founder string
		before  bool
	}
	genes := make([][2]gene, p.Len())
	ages := byAge(p)
	var born func(n int, chance float64)
	born = func(n int, chance float64) {
		if n == len(ages) {
			kept := map[string]bool{}
			for place, i := range living {
				a, b := genes[i][0], genes[i][1]
				kept[a.founder], kept[b.founder] = true, true
				key := fmt.Sprint(place)
				for _, g := range genes[i] {
					if g.before {
						into["ancestral "+key] += chance / 2
					}
				}
				if a.founder == b.founder {
					into["inbred "+key] += chance
					if a.before || b.before {
						into["again "+key] += chance
					}
				}
			}
			for _, f := range allFounders(p) {
				both := 0.0
				for gene := range 2 {
					if kept[fmt.Sprint(name(p, f), gene)] {
						both++
					}
				}
				into["kept "+name(p, f)] += chance * both / 2
				if both == 0 {
					into["lost "+name(p, f)] += chance
				}
			}
			return
		}
		i := ages[n]
		parents := certain(p, i)
		role := diversity.Itself
		if parents[1] >= 0 {
			role = diversity.UnknownSire
		} else if parents[0] >= 0 {
			role = diversity.UnknownDam
		}
		options := [2][]gene{}
		for side, parent := range parents {
			if parent < 0 {
				options[side] = []gene{{founder: fmt.Sprint(name(p, diversity.Founder{Animal: i, Role: role}), side)}}
				continue
			}
			auto := genes[parent][0].founder == genes[parent][1].founder
			for _, g := range genes[parent] {
				options[side] = append(options[side], gene{g.founder, g.before || auto})
			}
		}
		for _, a := range options[0] {
			for _, b := range options[1] {
				genes[i] = [2]gene{a, b}
				born(n+1, chance/float64(len(options[0])*len(options[1])))
			}
		}
	}
	born(0, chance)
}

// Seven standard errors: one in 10^11.
func near(t require.TestingT, want, got float64, drops int, what string) {
	require.InDelta(t, want, got, 7*math.Sqrt(max(want*(1-want), 1/float64(drops))/float64(drops)), what)
}

func TestDropTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fam := draw(t, kinds{animals: 7, groups: 2})
		want := map[string]float64{}
		assignments(t, fam, func(p *pedigree.Pedigree, chance float64) { everyCoin(p, fam.living, want, chance) })
		const drops = 4000
		got := diversity.Drop(fam.p, fam.living, diversity.Drops{Count: drops, Seed: rapid.Uint64().Draw(t, "seed")})
		sum := 0.0
		for _, f := range got.Founders {
			near(t, want["kept "+name(fam.p, f.Founder)], f.Retained, drops, "kept "+name(fam.p, f.Founder))
			near(t, want["lost "+name(fam.p, f.Founder)], f.Lost, drops, "lost "+name(fam.p, f.Founder))
			if f.Retained > 0 {
				sum += f.Contribution * f.Contribution / f.Retained
			}
		}
		require.InDelta(t, 1/sum, got.FounderGenomeEquivalents(), 1e-9)
		for n, a := range got.Animals {
			near(t, want[fmt.Sprint("inbred ", n)], a.Inbreeding, drops, fmt.Sprint("inbred ", n))
			near(t, want[fmt.Sprint("ancestral ", n)], a.Ancestral, drops, fmt.Sprint("ancestral ", n))
			near(t, want[fmt.Sprint("again ", n)], a.Again, drops, fmt.Sprint("again ", n))
			require.InDelta(t, a.Inbreeding, a.Again+a.New, 1e-12)
			require.Equal(t, fam.living[n], a.Animal)
		}
	})
}

// Larger pedigrees, with groups and a source, against the exact coefficients.
func TestDropEstimatesInbreeding(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fam := draw(t, kinds{animals: 25, groups: 4, sources: true})
		const drops = 2000
		got := diversity.Drop(fam.p, fam.living, diversity.Drops{Count: drops, Seed: rapid.Uint64().Draw(t, "seed")})
		for n, i := range fam.living {
			near(t, fam.p.Inbreeding(i), got.Animals[n].Inbreeding, drops, fam.p.ID(i))
		}
		for n, f := range diversity.FounderContributions(fam.p, fam.living) {
			require.Equal(t, f.Founder, got.Founders[n].Founder)
			require.InDelta(t, f.Share, got.Founders[n].Contribution, 1e-15)
		}
	})
}

// Young of a clutch share the father, or do not.
func TestDropOfGroups(t *testing.T) {
	const drops = 40_000
	for _, test := range []struct {
		kind pedigree.GroupKind
		want float64
	}{
		{pedigree.OneUnknown, 1. / 4},
		{pedigree.Several, 13. / 64},
	} {
		p := build(t, "A,0,0 B,0,0 D,0,0 x,m,D y,m,D z,x,y", pedigree.Group{
			ID: "m", Kind: test.kind, Candidates: []pedigree.Candidate{{ID: "A", Weight: 3}, {ID: "B", Weight: 1}},
		})
		d := diversity.Drop(p, numbers(t, p, "z"), diversity.Drops{Count: drops, Seed: 3})
		within(t, test.want, d.Animals[0].Inbreeding, drops, test.kind.String())
	}
}

// A source of kinship 1/2 is a single animal: two of its young and that animal's
// two young lose the same genes.
func TestDropFromSource(t *testing.T) {
	const drops = 40_000
	for _, kinship := range []float64{0, .01, .125, .4, .5, .7, 1} {
		p := build(t, "x,pond,0 y,pond,0 z,x,y i,pond,pond", pedigree.Group{ID: "pond", Kind: pedigree.Source, Kinship: kinship})
		d := diversity.Drop(p, numbers(t, p, "z i"), diversity.Drops{Count: drops, Seed: 5})
		within(t, kinship/4, d.Animals[0].Inbreeding, drops, "young of half sibs")
		within(t, kinship, d.Animals[1].Inbreeding, drops, "a founder from the source")
	}
}

func TestDropIsTheSameForAnyNumberOfWorkers(t *testing.T) {
	p := build(t, courseSheet)
	d := diversity.Drops{Count: 1001, Seed: 42, Workers: 1}
	one := diversity.Drop(p, everyone(p), d)
	for _, workers := range []int{0, 2, 7, 5000} {
		d.Workers = workers
		assert.Empty(t, cmp.Diff(one, diversity.Drop(p, everyone(p), d)), "%d workers", workers)
	}
	d.Seed++
	assert.NotEmpty(t, cmp.Diff(one, diversity.Drop(p, everyone(p), d)), "another seed")
}

func TestEveryDropIsAnother(t *testing.T) {
	p := build(t, courseSheet)
	differ := 0
	for seed := range uint64(20) {
		if diversity.Drop(p, numbers(t, p, "X"), diversity.Drops{Count: 2, Seed: seed}).Animals[0].Inbreeding == .5 {
			differ++
		}
	}
	assert.Greater(t, differ, 3, "a half of the pairs, about")
}

func TestDropRefuses(t *testing.T) {
	p := build(t, courseSheet)
	assert.Panics(t, func() { diversity.Drop(p, nil, diversity.Drops{}) })
	assert.Panics(t, func() { diversity.Drop(p, nil, diversity.Drops{Count: 1, Workers: -1}) })
	assert.Panics(t, func() { diversity.Drop(p, nil, diversity.Drops{Count: 1_000_000_001}) })
	assert.Panics(t, func() { diversity.Drop(p, []int{99}, diversity.Drops{Count: 1}) })
	assert.Zero(t, diversity.Drop(p, nil, diversity.Drops{Count: 1}).FounderGenomeEquivalents())
}
