package diversity_test

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/diversity"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Slow, obvious twins of what the package computes.

// family is a random pedigree, its records in shuffled order.
type family struct {
	records []pedigree.Record
	groups  []pedigree.Group
	p       *pedigree.Pedigree
	living  []int
}

// kinds says what a random pedigree may have.
type kinds struct {
	animals int
	groups  int // at most so many young of groups
	sources bool
}

func draw(t *rapid.T, k kinds) family {
	var f family
	n := rapid.IntRange(2, k.animals).Draw(t, "animals")
	id := func(i int) string { return fmt.Sprint("a", i) }
	if k.sources {
		f.groups = append(f.groups, pedigree.Group{ID: "pond", Kind: pedigree.Source, Kinship: rapid.SampledFrom([]float64{0, .125, .3, .5, 1}).Draw(t, "k0")})
	}
	open := 0
	for i := range n {
		r := pedigree.Record{ID: id(i)}
		for _, side := range []*string{&r.Sire, &r.Dam} {
			switch kind := rapid.IntRange(0, 9).Draw(t, "kind of parent"); {
			case kind == 0 && k.sources:
				*side = "pond"
			case kind <= 1 || i == 0:
			case kind <= 3 && open < k.groups && side == &r.Sire && i > 2:
				open++
				r.Sire = groupFor(t, &f, i, id)
			default:
				*side = id(rapid.IntRange(max(0, i-8), i-1).Draw(t, "parent"))
			}
		}
		if strings := candidates(f.groups, r.Sire); slices.Contains(strings, r.Dam) {
			r.Dam = "" // may be both parents: refused
		}
		f.records = append(f.records, r)
	}
	f.records = rapid.Permutation(f.records).Draw(t, "order")
	p, err := pedigree.New(f.records, f.groups...)
	require.NoError(t, err)
	f.p = p
	f.living = rapid.SliceOfN(rapid.IntRange(0, n-1), 1, n).Draw(t, "living")
	return f
}

func groupFor(t *rapid.T, f *family, child int, id func(int) string) string {
	for _, g := range f.groups {
		if g.Kind != pedigree.Source && rapid.Bool().Draw(t, "group again") && !slices.ContainsFunc(g.Candidates, func(c pedigree.Candidate) bool { return c.ID >= id(child) }) {
			return g.ID
		}
	}
	g := pedigree.Group{ID: fmt.Sprint("g", len(f.groups)), Kind: pedigree.GroupKind(rapid.IntRange(0, 1).Draw(t, "one or several"))}
	first := rapid.IntRange(0, child-2).Draw(t, "first candidate")
	for c := first; c < min(first+3, child); c++ {
		g.Candidates = append(g.Candidates, pedigree.Candidate{ID: id(c), Weight: float64(1 + c%3)})
	}
	f.groups = append(f.groups, g)
	return g.ID
}

func candidates(groups []pedigree.Group, id string) (all []string) {
	for _, g := range groups {
		if g.ID == id {
			for _, c := range g.Candidates {
				all = append(all, c.ID)
			}
		}
	}
	return all
}

// certain gives the parents of animal i, -1 when unknown.
func certain(p *pedigree.Pedigree, i int) [2]int {
	sire, dam := p.Parents(i)
	both := [2]int{-1, -1}
	for side, parent := range []pedigree.Parent{sire, dam} {
		if parent.Known {
			both[side] = parent.Candidates[0].Animal
		}
	}
	return both
}

// byAge gives the animals with parents first.
func byAge(p *pedigree.Pedigree) []int {
	all := everyone(p)
	slices.SortStableFunc(all, func(a, b int) int { return cmp.Compare(p.Generation(a), p.Generation(b)) })
	return all
}

// assignments calls f with every pedigree of certain parents that the groups
// leave open, and its chance.
func assignments(t require.TestingT, fam family, f func(p *pedigree.Pedigree, chance float64)) {
	type choice struct {
		group pedigree.Group
		young []int // records
	}
	var open []choice
	for _, g := range fam.groups {
		var young []int
		for i, r := range fam.records {
			if r.Sire == g.ID && g.Kind != pedigree.Source {
				young = append(young, i)
			}
		}
		if g.Kind == pedigree.OneUnknown {
			open = append(open, choice{g, young})
			continue
		}
		for _, y := range young {
			open = append(open, choice{g, []int{y}})
		}
	}
	records := slices.Clone(fam.records)
	var next func(n int, chance float64)
	next = func(n int, chance float64) {
		if n == len(open) {
			sources := slices.DeleteFunc(slices.Clone(fam.groups), func(g pedigree.Group) bool { return g.Kind != pedigree.Source })
			p, err := pedigree.New(records, sources...)
			require.NoError(t, err)
			f(p, chance)
			return
		}
		total := 0.0
		for _, c := range open[n].group.Candidates {
			total += c.Weight
		}
		for _, c := range open[n].group.Candidates {
			for _, y := range open[n].young {
				records[y].Sire = c.ID
			}
			next(n+1, chance*c.Weight/total)
		}
	}
	next(0, 1)
}

// founderShare is the share of i's genes that comes from the founder, by
// recursion.
func founderShare(p *pedigree.Pedigree, i int, f diversity.Founder) float64 {
	parents := certain(p, i)
	if parents == [2]int{-1, -1} {
		if f == (diversity.Founder{Animal: i}) {
			return 1
		}
		return 0
	}
	share := 0.0
	for side, parent := range parents {
		switch {
		case parent >= 0:
			share += founderShare(p, parent, f) / 2
		case f == (diversity.Founder{Animal: i, Role: diversity.Role(1 + side)}):
			share += 0.5
		}
	}
	return share
}

func allFounders(p *pedigree.Pedigree) (all []diversity.Founder) {
	for i := range p.Len() {
		switch parents := certain(p, i); {
		case parents == [2]int{-1, -1}:
			all = append(all, diversity.Founder{Animal: i})
		case parents[0] < 0:
			all = append(all, diversity.Founder{Animal: i, Role: diversity.UnknownSire})
		case parents[1] < 0:
			all = append(all, diversity.Founder{Animal: i, Role: diversity.UnknownDam})
		}
	}
	return all
}

func TestFounderContributionsTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fam := draw(t, kinds{animals: 9, groups: 3, sources: true})
		want := map[string]float64{}
		assignments(t, fam, func(p *pedigree.Pedigree, chance float64) {
			for _, f := range allFounders(p) {
				for _, i := range fam.living {
					if x := founderShare(p, i, f); x > 0 {
						want[name(p, f)] += chance * x / float64(len(fam.living))
					}
				}
			}
		})
		got := diversity.FounderContributions(fam.p, fam.living)
		sum, unknown, known := 0.0, 0.0, 0.0
		for who, share := range named(fam.p, got) {
			require.InDelta(t, want[who], share, 1e-12, who)
		}
		require.Len(t, named(fam.p, got), len(want))
		for _, c := range got {
			sum += c.Share
		}
		require.InDelta(t, 1, sum, 1e-12)
		for _, i := range fam.living {
			known += fam.p.KnownAncestry(i) / float64(len(fam.living))
		}
		unknown = got.Unknown()
		require.InDelta(t, 1-known, unknown, 1e-12)
	})
}

// partialTable fills the table of kinships by one founder (Lacy, Alaks and Walsh
// 1996): 1/2 for the founder with itself, and for every other animal half of its
// kinship to the founder and half of that of its parents.
func partialTable(p *pedigree.Pedigree, f diversity.Founder) [][]float64 {
	k := make([][]float64, p.Len())
	for i := range k {
		k[i] = make([]float64, p.Len())
	}
	var done []int
	for _, i := range byAge(p) {
		parents := certain(p, i)
		value := func(a, b int) float64 {
			if a < 0 || b < 0 {
				return 0
			}
			return k[a][b]
		}
		for _, j := range done {
			k[i][j] = (value(parents[0], j) + value(parents[1], j)) / 2
			k[j][i] = k[i][j]
		}
		k[i][i] = founderShare(p, i, f)/2 + value(parents[0], parents[1])/2
		done = append(done, i)
	}
	return k
}

func TestPartialInbreedingTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fam := draw(t, kinds{animals: 8, groups: 3})
		i := fam.living[0]
		want := map[string]float64{}
		assignments(t, fam, func(p *pedigree.Pedigree, chance float64) {
			parents := certain(p, i)
			if parents[0] < 0 || parents[1] < 0 {
				return
			}
			for _, f := range allFounders(p) {
				if x := partialTable(p, f)[parents[0]][parents[1]]; x > 0 {
					want[name(p, f)] += chance * x
				}
			}
		})
		got := named(fam.p, diversity.PartialInbreeding(fam.p, []int{i}))
		require.Len(t, got, len(want))
		for who, share := range want {
			require.InDelta(t, share, got[who], 1e-12, who)
		}
	})
}

func TestPartialInbreedingAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fam := draw(t, kinds{animals: 30, groups: 5, sources: true})
		sum, want := 0.0, 0.0
		for _, c := range diversity.PartialInbreeding(fam.p, fam.living) {
			require.Positive(t, c.Share)
			sum += c.Share
		}
		for _, i := range fam.living {
			want += fam.p.Inbreeding(i) / float64(len(fam.living))
		}
		require.InDelta(t, want, sum, 1e-12)
	})
}

// boichard makes two whole passes for each ancestor, as the paper has it.
func boichard(p *pedigree.Pedigree, living []int) (order []string, marginals []float64) {
	chosen := make([]bool, p.Len())
	ages := byAge(p)
	for {
		share := make([]float64, p.Len())
		explained := make([]float64, p.Len())
		for _, i := range living {
			share[i] += 1 / float64(len(living))
		}
		for _, i := range slices.Backward(ages) {
			for _, parent := range certain(p, i) {
				if parent >= 0 && !chosen[i] {
					share[parent] += share[i] / 2
				}
			}
		}
		best, value := -1, 1e-12
		round := func(x float64) float64 { return math.Round(x*1e12) / 1e12 }
		for _, i := range ages {
			for _, parent := range certain(p, i) {
				if parent >= 0 {
					explained[i] += explained[parent] / 2
				}
			}
			if chosen[i] {
				explained[i] = 1
				continue
			}
			marginal := round(share[i] * (1 - explained[i]))
			first := best >= 0 && marginal == value && p.Generation(i) == p.Generation(best) && p.ID(i) < p.ID(best)
			if marginal > value || first {
				best, value = i, marginal
			}
		}
		if best < 0 {
			return order, marginals
		}
		chosen[best] = true
		order, marginals = append(order, p.ID(best)), append(marginals, value)
	}
}

func TestAncestorsTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fam := draw(t, kinds{animals: 30})
		wantOrder, want := boichard(fam.p, fam.living)
		var order []string
		var got []float64
		sum := 0.0
		for _, a := range diversity.AncestorContributions(fam.p, fam.living) {
			order = append(order, fam.p.ID(a.Animal))
			got = append(got, a.Marginal)
			sum += a.Marginal
		}
		require.Equal(t, wantOrder, order)
		require.InDeltaSlice(t, want, got, 1e-11)
		require.InDelta(t, 1, sum, 1e-9)
	})
}

// Kinship counts what founder and ancestor equivalents leave out. That founder
// equivalents are not below founder genomes follows from K = T D T'. That ancestor
// equivalents lie between the two is usual, and no law: the choice of ancestors
// looks one step ahead only.
func TestOrderOfEquivalents(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fam := draw(t, kinds{animals: 25, groups: 3, sources: true})
		fe := diversity.FounderEquivalents(fam.p, fam.living)
		fg := diversity.FounderGenomeEquivalents(fam.p, fam.living)
		require.GreaterOrEqual(t, fe, fg-1e-9)
	})
	rapid.Check(t, func(t *rapid.T) {
		fam := draw(t, kinds{animals: 25})
		fa := diversity.AncestorEquivalents(fam.p, fam.living)
		fg := diversity.FounderGenomeEquivalents(fam.p, fam.living)
		require.GreaterOrEqual(t, fa, fg-1e-9)
	})
}

func TestCompletenessTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fam := draw(t, kinds{animals: 12, sources: true})
		depth := rapid.IntRange(1, 6).Draw(t, "depth")
		for n, got := range diversity.CompletenessOf(fam.p, fam.living, depth) {
			// All places in the family tree, generation by generation.
			places := []int{fam.living[n]}
			var generations, sides []float64
			known, all := 0.0, 0.0
			side := [2]float64{}
			for range depth {
				var up []int
				for _, i := range places {
					parents := [2]int{-1, -1}
					if i >= 0 {
						parents = certain(fam.p, i)
					}
					up = append(up, parents[:]...)
				}
				here := 0.0
				for at, i := range up {
					if i >= 0 {
						here++
						side[at*2/len(up)] += 1 / float64(len(up)/2)
					}
				}
				generations = append(generations, here/float64(len(up)))
				known, all = known+here, all+float64(len(up))
				places = up
			}
			for _, x := range side {
				sides = append(sides, x/float64(depth))
			}
			require.InDeltaSlice(t, generations, got.Generations, 1e-12)
			require.InDelta(t, known/all, got.Simple, 1e-12)
			index := 0.0
			if sides[0] > 0 && sides[1] > 0 {
				index = 2 / (1/sides[0] + 1/sides[1])
			}
			require.InDelta(t, index, got.Index, 1e-12)
			require.Equal(t, fam.living[n], got.Animal)
		}
	})
}

func TestCompletenessIsTheMeanOverEveryAssignment(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fam := draw(t, kinds{animals: 9, groups: 3})
		got := diversity.CompletenessOf(fam.p, fam.living, 4)
		for n := range fam.living {
			want, simple := make([]float64, 4), 0.0
			assignments(t, fam, func(p *pedigree.Pedigree, chance float64) {
				c := diversity.CompletenessOf(p, fam.living, 4)[n]
				for g := range want {
					want[g] += chance * c.Generations[g]
				}
				simple += chance * c.Simple
			})
			require.InDeltaSlice(t, want, got[n].Generations, 1e-12)
			require.InDelta(t, simple, got[n].Simple, 1e-12)
		}
	})
}

func TestOverstatedAncestralInbreedingTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fam := draw(t, kinds{animals: 15})
		var recursion func(i int) float64
		recursion = func(i int) float64 {
			sum := 0.0
			for _, parent := range certain(fam.p, i) {
				if parent >= 0 {
					fa := recursion(parent)
					sum += (fa + (1-fa)*fam.p.Inbreeding(parent)) / 2
				}
			}
			return sum
		}
		for i, got := range diversity.OverstatedAncestralInbreeding(fam.p) {
			require.InDelta(t, recursion(i), got, 1e-12)
		}
	})
}

// A pedigree rebuilt with the young, without those that left.
func TestWhatIfTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fam := draw(t, kinds{animals: 20, groups: 4, sources: true})
		var change diversity.Change
		records := slices.Clone(fam.records)
		after := slices.Clone(fam.living)
		left := rapid.IntRange(0, len(after)).Draw(t, "left")
		change.Left, after = after[:left], after[left:]
		for range rapid.IntRange(0, 3).Draw(t, "broods") {
			b := diversity.Brood{
				Sire:  rapid.IntRange(0, fam.p.Len()-1).Draw(t, "sire"),
				Dam:   rapid.IntRange(0, fam.p.Len()-1).Draw(t, "dam"),
				Count: rapid.IntRange(0, 4).Draw(t, "count"),
			}
			change.Born = append(change.Born, b)
			for range b.Count {
				after = append(after, len(records))
				records = append(records, pedigree.Record{ID: fmt.Sprint("young", len(records)), Sire: fam.p.ID(b.Sire), Dam: fam.p.ID(b.Dam)})
			}
		}
		rebuilt, err := pedigree.New(records, fam.groups...)
		require.NoError(t, err)
		got := diversity.WhatIf(fam.p, fam.living, change)
		require.Equal(t, len(after), got.Animals)
		require.InDelta(t, rebuilt.GeneDiversity(after), got.GeneDiversity, 1e-12)
		if len(after) > 0 {
			require.InDelta(t, 1-rebuilt.GeneDiversity(after), got.MeanKinship, 1e-12)
		}
	})
}
