package pedigree_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Wright 1922, American Naturalist 56:330, as in Lynch and Walsh 1998, page 155:
// two paths over four animals, two over seven.
func TestExplainRoanGauntlet(t *testing.T) {
	p := build(t, `LordRaglan,0,0 Champion,0,0 Duchess12,LordRaglan,0 Mistletoe,LordRaglan,0
		Link,LordRaglan,0 Carmine,Link,0 GrandDuke,Champion,Duchess12 Mimulus,Champion,Mistletoe
		PrincessRoyal,Champion,Carmine RoyalDuke,GrandDuke,Mimulus RoanGauntlet,RoyalDuke,PrincessRoyal`)
	e := p.Explain(at(t, p, "RoyalDuke"), at(t, p, "PrincessRoyal"), 100)
	assert.InDelta(t, 9./64, e.Kinship, rounding)
	var lines []string
	for _, a := range e.Ancestors {
		lines = append(lines, fmt.Sprintf("%s %d paths %v", p.ID(a.Animal), a.PathCount, a.Share))
		for _, path := range a.Paths {
			lines = append(lines, fmt.Sprintf("%s | %s %v", names(p, path.Up), names(p, path.Down), path.Share))
		}
	}
	want := []string{
		"Champion 2 paths 0.125",
		"RoyalDuke GrandDuke Champion | Champion PrincessRoyal 0.0625",
		"RoyalDuke Mimulus Champion | Champion PrincessRoyal 0.0625",
		"LordRaglan 2 paths 0.015625",
		"RoyalDuke GrandDuke Duchess12 LordRaglan | LordRaglan Link Carmine PrincessRoyal 0.0078125",
		"RoyalDuke Mimulus Mistletoe LordRaglan | LordRaglan Link Carmine PrincessRoyal 0.0078125",
	}
	assert.Empty(t, cmp.Diff(want, lines))
	assert.Equal(t, "half nephew or niece and half uncle or aunt twice over through Champion, and also half second cousins twice over", e.Words(p.ID))
}

func names(p *pedigree.Pedigree, animals []int) string {
	var ids []string
	for _, i := range animals {
		ids = append(ids, p.ID(i))
	}
	return strings.Join(ids, " ")
}

func TestExplainCutsOff(t *testing.T) {
	// Brother and sister for 40 generations: more paths than anybody can read.
	text := "s0,0,0 d0,0,0"
	for g := range 40 {
		text += fmt.Sprintf(" s%d,s%d,d%d d%d,s%d,d%d", g+1, g, g, g+1, g, g)
	}
	p := build(t, text)
	e := p.Explain(at(t, p, "s40"), at(t, p, "d40"), 5)
	listed, count, share := 0, uint64(0), 0.0
	for _, a := range e.Ancestors {
		listed += len(a.Paths)
		count += a.PathCount
		share += a.Share
	}
	assert.Equal(t, 5, listed)
	assert.Equal(t, "s39", p.ID(e.Ancestors[0].Animal))
	assert.Equal(t, uint64(1), e.Ancestors[0].PathCount)
	assert.Greater(t, count, uint64(1)<<39)
	assert.InDelta(t, e.Kinship, share, 1e-12)
	assert.Greater(t, e.Unnamed, 1e-9, "a thousand paths are not all")
	assert.Equal(t, "full siblings", strings.SplitN(e.Words(p.ID), ",", 2)[0])
	assert.Contains(t, e.Words(p.ID), "related in more distant ways")
	assert.Panics(t, func() { p.Explain(0, 1, -1) })
}

// More pairs of ancestors than are looked at: the latest generations are.
func TestExplainLooksUpToALimit(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	const cohort, generations = 400, 14
	var text strings.Builder
	for i := range cohort {
		fmt.Fprintf(&text, "0/%d,0,0 ", i)
	}
	for g := 1; g < generations; g++ {
		for i := range cohort {
			fmt.Fprintf(&text, "%d/%d,%d/%d,%d/%d ", g, i, g-1, random.IntN(cohort/2), g-1, cohort/2+random.IntN(cohort/2))
		}
	}
	p := build(t, text.String())
	e := p.Explain(at(t, p, "13/3"), at(t, p, "13/9"), 3)
	share := e.Beyond
	for _, a := range e.Ancestors {
		share += a.Share
	}
	assert.InDelta(t, e.Kinship, share, 1e-15)
	assert.Greater(t, e.Beyond, e.Kinship/100)
	assert.Less(t, e.Beyond, e.Kinship)
	assert.Contains(t, e.Words(p.ID), "related in more distant ways")
}

// Counts that are too large stay at the largest. Each animal is selfed, which
// gives four times the paths.
func TestExplainCountsAsFarAsItCan(t *testing.T) {
	text := "P,0,0 x0,P,P y0,P,P"
	for g := range 40 {
		text += fmt.Sprintf(" x%d,x%d,x%d y%d,y%d,y%d", g+1, g, g, g+1, g, g)
	}
	p := build(t, text)
	e := p.Explain(at(t, p, "x40"), at(t, p, "y40"), 1)
	assert.Equal(t, uint64(math.MaxUint64), e.Ancestors[0].PathCount)
	e = p.Explain(at(t, p, "x1"), at(t, p, "y1"), 20)
	assert.Equal(t, uint64(16), e.Ancestors[0].PathCount)
	assert.Len(t, e.Ancestors[0].Paths, 16)
}

// All paths, written out by recursion for every assignment of parents.
func TestExplainByWrittenOutPaths(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		records, groups := uncertainPedigree(t)
		p, err := pedigree.New(records, groups...)
		require.NoError(t, err)
		n := p.Len()
		want := make([]map[string]float64, n*n) // shares by path, by pair of animals
		for pair := range want {
			want[pair] = map[string]float64{}
		}
		assignments(records, groups, func(parents [][2]int, chance float64) {
			k := tabular(parents)
			for pair, shares := range want {
				for _, a := range paths(parents, pair/n) {
					for _, b := range paths(parents, pair%n) {
						end := a[len(a)-1]
						if end == b[len(b)-1] && apart(a[:len(a)-1], b[:len(b)-1]) {
							shares[fmt.Sprint(a, b)] += chance * math.Pow(0.5, float64(len(a)+len(b)-2)) * k[end][end]
						}
					}
				}
			}
		})
		for pair, shares := range want {
			i, j := pair/n, pair%n
			e := p.Explain(i, j, 1<<20)
			got := map[string]float64{}
			var ancestors []pedigree.SharedAncestor
			for _, a := range e.Ancestors {
				ancestors = append(ancestors, a.SharedAncestor)
				require.Equal(t, a.PathCount, uint64(len(a.Paths)))
				sum, last := 0.0, math.Inf(1)
				for _, path := range a.Paths {
					require.Equal(t, a.Animal, path.Up[len(path.Up)-1])
					require.LessOrEqual(t, path.Share, last+1e-15, "the strongest first")
					last = path.Share
					sum += path.Share
					down := make([]int, len(path.Down))
					for n, animal := range path.Down {
						down[len(down)-1-n] = animal
					}
					got[fmt.Sprint(path.Up, down)] += path.Share
				}
				require.InDelta(t, a.Share, sum, 1e-12)
			}
			require.Len(t, got, len(shares), "%s and %s", p.ID(i), p.ID(j))
			for path, share := range shares {
				require.InDelta(t, share, got[path], 1e-12, path)
			}
			shared := p.SharedAncestors(i, j)
			require.Len(t, ancestors, len(shared))
			for n, s := range shared {
				require.InDelta(t, s.Share, ancestors[n].Share, 1e-12)
			}
			require.Equal(t, p.Kinship(i, j), e.Kinship)
		}
	})
}

// Parents from sources, which have a kinship and no ancestors to show.
func TestExplainSources(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		records, groups := uncertainPedigree(t)
		pond := pedigree.Group{ID: "pond", Kind: pedigree.Source, Kinship: rapid.Float64Range(0, 1).Draw(t, "kinship")}
		p, err := pedigree.New(pedigree.FromSource(records, "pond"), append(groups, pond)...)
		require.NoError(t, err)
		for i := range p.Len() {
			for j := range p.Len() {
				e := p.Explain(i, j, 0)
				sum := 0.0
				for _, a := range e.Ancestors {
					sum += a.Share
				}
				for _, s := range e.Sources {
					require.Equal(t, "pond", s.ID)
					require.Positive(t, s.Share)
					sum += s.Share
				}
				require.InDelta(t, e.Kinship, sum, 1e-12)
				require.InDelta(t, 0, e.Unnamed, 1e-12)
				require.Zero(t, e.Beyond)
			}
		}
	})
}

func ExamplePedigree_Explain() {
	p, err := pedigree.New([]pedigree.Record{
		{ID: "Bram"},
		{ID: "Odo"},
		{ID: "Lene"},
		{ID: "Isa", Sire: "Odo", Dam: "Lene"},
		{ID: "Pelle", Sire: "Odo", Dam: "Lene"},
		{ID: "Mara", Sire: "Pelle"},
		{ID: "Alma", Sire: "Isa"},
		{ID: "Juna", Sire: "Bram", Dam: "Mara"},
		{ID: "Tess", Sire: "Bram", Dam: "Alma"},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	e := p.Explain(7, 8, 10)
	fmt.Println(e.Words(p.ID))
	for _, a := range e.Ancestors {
		fmt.Printf("%s brings %v:", p.ID(a.Animal), a.Share)
		for _, path := range a.Paths {
			for _, up := range path.Up {
				fmt.Print(" ", p.ID(up))
			}
			for _, down := range path.Down[1:] {
				fmt.Print(" ", p.ID(down))
			}
		}
		fmt.Println()
	}
	// Output:
	// half siblings through Bram, and also second cousins
	// Bram brings 0.125: Juna Bram Tess
	// Odo brings 0.0078125: Juna Mara Pelle Odo Isa Alma Tess
	// Lene brings 0.0078125: Juna Mara Pelle Lene Isa Alma Tess
}
