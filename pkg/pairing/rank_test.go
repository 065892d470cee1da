package pairing

import (
	"fmt"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

func TestRankOrder(t *testing.T) {
	terms := terms(t)
	terms.Rules.MaxInbreeding = 0.2
	var members []int
	for i := range terms.Pedigree.Len() {
		members = append(members, i)
	}
	females := []Animal{animal(terms, "Tilde", Female), animal(terms, "Ottilie", Female), animal(terms, "Fenna", Female)}
	moss := animal(terms, "Moss", Male)
	moss.Died = day("2026-08-08")
	males := []Animal{animal(terms, "Quill", Male), moss, animal(terms, "Bram", Male)}

	var got []string
	for _, p := range Rank(terms, NewBreedingSet(terms.Pedigree, members), males, females) {
		got = append(got, fmt.Sprintf("%s x %s %s %s %.4f", p.Male, p.Female, p.Verdict.Worst(),
			coefficient(p.Verdict.YoungInbreeding), p.MaleKinship+p.FemaleKinship))
	}
	// The kinships with all ten add up, worked out by hand from the halves, to
	// 21/16 for Quill, Moss and Fenna, 24/16 for Bram, 23/16 for Ottilie and
	// 29/16 for Tilde.
	assert.Equal(t, []string{
		"Quill x Fenna unknown 0 0.2625",
		"Bram x Fenna unknown 0 0.2812", // same inbreeding, more kinship
		"Bram x Tilde warn 0.125 0.3313",
		"Moss x Fenna refuse 0 0.2625", // dead, though not related
		"Moss x Ottilie refuse 0 0.2750",
		"Moss x Tilde refuse 0.125 0.3125",
		"Quill x Ottilie refuse 0.25 0.2750",
		"Bram x Ottilie refuse 0.25 0.2938",
		"Quill x Tilde refuse 0.25 0.3125",
	}, got)
}

func TestRankLeavesOutAnAnimalWithItself(t *testing.T) {
	terms := terms(t)
	bram, greta := animal(terms, "Bram", SexUnknown), animal(terms, "Greta", SexUnknown)
	got := Rank(terms, NewBreedingSet(terms.Pedigree, nil), []Animal{bram, greta}, []Animal{greta, bram})
	require.Len(t, got, 2)
	assert.Equal(t, []string{"Bram", "Greta"}, []string{got[0].Male, got[0].Female}, "all else equal: by id")
	assert.Equal(t, []string{"Greta", "Bram"}, []string{got[1].Male, got[1].Female})
	assert.Empty(t, Rank(terms, NewBreedingSet(terms.Pedigree, nil), nil, []Animal{greta}))
}

// TestRankAgainstJudge judges each pair by itself.
func TestRankAgainstJudge(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawColony(t)
		p, err := pedigree.New(c.records, c.groups...)
		require.NoError(t, err)
		terms := Terms{Pedigree: p, Rules: DefaultRules(), On: day("2027-03-01")}
		var animals []Animal
		for i := range p.Len() {
			animals = append(animals, Animal{
				ID: p.ID(i), Node: i, Species: rapid.SampledFrom([]string{species, "hyla-cinerea"}).Draw(t, "species"),
				Sex: Sex(1 + i%2), Died: rapid.SampledFrom([]civil.Date{0, 0, 1}).Draw(t, "died"),
			})
		}
		males, females := drawSome(t, animals, "males"), drawSome(t, animals, "females")
		set := NewBreedingSet(p, []int{0, 1})
		got := Rank(terms, set, males, females)

		want := map[[2]string]Pair{}
		for _, m := range males {
			for _, f := range females {
				if m.ID != f.ID {
					want[[2]string{m.ID, f.ID}] = Pair{
						m.ID, f.ID, Judge(terms, []Animal{m}, []Animal{f}),
						(p.Kinship(m.Node, 0) + p.Kinship(m.Node, 1)) / 2, (p.Kinship(f.Node, 0) + p.Kinship(f.Node, 1)) / 2,
					}
				}
			}
		}
		require.Len(t, got, len(want))
		for _, pair := range got {
			if diff := cmp.Diff(want[[2]string{pair.Male, pair.Female}], pair, close9); diff != "" {
				t.Fatalf("(-want +got):\n%s", diff)
			}
		}
		require.True(t, slices.IsSortedFunc(got, func(a, b Pair) int {
			switch x, y := a.Verdict, b.Verdict; {
			case x.Allowed() != y.Allowed():
				if x.Allowed() {
					return -1
				}
				return 1
			case x.YoungInbreeding < y.YoungInbreeding-1e-8:
				return -1
			case x.YoungInbreeding > y.YoungInbreeding+1e-8:
				return 1
			}
			return 0
		}))
	})
}
