package diversity_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/diversity"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// rounding is what sums of exact binary fractions may be off by.
const rounding = 1e-14

// within allows for chance in a gene drop: five standard errors of a share.
func within(t *testing.T, want, got float64, drops int, what ...any) {
	t.Helper()
	assert.InDelta(t, want, got, 5*math.Sqrt(want*(1-want)/float64(drops))+1e-9, what...)
}

func sameContributions(t *testing.T, p *pedigree.Pedigree, want map[string]float64, got diversity.Contributions) {
	t.Helper()
	close := cmp.Comparer(func(x, y float64) bool { return math.Abs(x-y) < rounding })
	if diff := cmp.Diff(want, named(p, got), close); diff != "" {
		t.Errorf("contributions (-want +got):\n%s", diff)
	}
}

// The pedigrees of published examples. The values below are our own, in exact
// fractions, where no source stands beside them.
const (
	// Mrode 2014, Linear Models for the Prediction of Animal Breeding Values, 3rd
	// ed., Table 2.1.
	mrode = "1,0,0 2,0,0 3,1,2 4,1,0 5,4,3 6,5,2"
	// Christensen, population genetics course, KVL Copenhagen, section 4.4.
	christensen = "1,0,0 2,1,0 3,1,0 4,1,0 5,2,3 6,4,3 7,5,6"
	// An animal breeding course sheet (author not named).
	courseSheet = "Z,0,0 T,0,0 R,Z,T A,R,T B,R,T D,A,B S,R,D X,S,D"
	// A small case of our own.
	small = "1,0,0 2,0,0 3,0,0 4,1,2 5,1,2 6,3,4 7,3,4"
	// Four founders of which all comes through two.
	bottleneck = "1,0,0 2,0,0 3,0,0 4,0,0 S,1,2 D,3,4 a,S,D b,S,D c,S,D d,S,D"
)

func TestPartialInbreeding(t *testing.T) {
	for _, test := range []struct {
		name, text, of string
		want           map[string]float64
		reason         string
	}{
		{"Mrode 5", mrode, "5", map[string]float64{"1": 1. / 8}, "both parents descend from 1"},
		{"Mrode 6", mrode, "6", map[string]float64{"2": 1. / 8}, "mated back to 2"},
		{"Mrode both", mrode, "5 6", map[string]float64{"1": 1. / 16, "2": 1. / 16}, "the mean of two"},
		{"Christensen 5", christensen, "5", map[string]float64{"1": 1. / 8}, "half sibs by 1"},
		{"Christensen 7", christensen, "7", map[string]float64{"1": 5. / 32, "dam of 3": 1. / 16}, "F is 7/32; 3 stands on both sides"},
		{"course sheet X", courseSheet, "X", map[string]float64{"T": 25. / 64, "Z": 9. / 64}, "F is 17/32"},
		{"not inbred", mrode, "3 4", map[string]float64{}, "nothing to split"},
		{"no animals", mrode, "", map[string]float64{}, "nothing to split"},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := build(t, test.text)
			got := diversity.PartialInbreeding(p, numbers(t, p, test.of))
			sameContributions(t, p, test.want, got)
		})
	}
}

func TestCompletenessIndex(t *testing.T) {
	p := build(t, mrode)
	two, three := diversity.CompletenessOf(p, numbers(t, p, "5 6 4"), 2), diversity.CompletenessOf(p, numbers(t, p, "5 6"), 3)
	assert.InDelta(t, 6./7, two[0].Index, rounding)
	assert.InDelta(t, 2./3, two[1].Index, rounding)
	assert.Zero(t, two[2].Index, "one parent is unknown")
	assert.InDelta(t, 4./7, three[0].Index, rounding)
	assert.InDelta(t, 22./45, three[1].Index, rounding)

	assert.Equal(t, []float64{1, 3. / 4}, two[0].Generations, "one grandparent of 5 is unknown")
	assert.InDelta(t, 5./6, two[0].Simple, rounding, "five of six")
	assert.InDelta(t, 1./6, two[2].Simple, rounding, "one parent of 4 and nobody else")
	assert.Equal(t, numbers(t, p, "5")[0], two[0].Animal)
	assert.InDelta(t, 5./14, three[0].Simple, rounding)
	assert.Panics(t, func() { diversity.CompletenessOf(p, nil, 0) })
}

// Definitions after Lacy 1989, Zoo Biology 8:111, and Lacy 1995, Zoo Biology
// 14:565. The two estimators of founder genomes differ.
func TestFounderStatistics(t *testing.T) {
	p := build(t, small)
	living := numbers(t, p, "4 5 6 7")
	founders := diversity.FounderContributions(p, living)
	sameContributions(t, p, map[string]float64{"1": 3. / 8, "2": 3. / 8, "3": 1. / 4}, founders)
	assert.Zero(t, founders.Unknown())
	assert.InDelta(t, 32./11, diversity.FounderEquivalents(p, living), rounding)
	assert.InDelta(t, 16./9, diversity.FounderGenomeEquivalents(p, living), rounding)

	const drops = 100_000
	drop := diversity.Drop(p, living, diversity.Drops{Count: drops, Seed: 1})
	for _, f := range drop.Founders {
		assert.InDelta(t, 3./4, f.Retained, .005, name(p, f.Founder))
	}
	assert.InDelta(t, 24./11, drop.FounderGenomeEquivalents(), .01)
	assert.Zero(t, drop.Founders[0].Lost, "4 is living and has a gene of 1")

	drop = diversity.Drop(p, numbers(t, p, "6 7"), diversity.Drops{Count: drops, Seed: 1})
	within(t, 1./4, drop.Founders[0].Lost, drops, "4 passes 2's gene on to both of 6 and 7")
}

func TestAncestors(t *testing.T) {
	for _, test := range []struct {
		name, text, living string
		want               []string
		marginals          []float64
		fe, fa, fg         float64
	}{
		{"two young", small, "6 7", []string{"3", "4"}, []float64{1. / 2, 1. / 2}, 8. / 3, 2, 4. / 3},
		{"two generations", small, "4 5 6 7", []string{"4", "3", "5"}, []float64{1. / 2, 1. / 4, 1. / 4}, 32. / 11, 8. / 3, 16. / 9},
		{"bottleneck", bottleneck, "a b c d", []string{"D", "S"}, []float64{1. / 2, 1. / 2}, 4, 2, 8. / 5},
		{"founders only", small, "1 2 3", []string{"1", "2", "3"}, []float64{1. / 3, 1. / 3, 1. / 3}, 3, 3, 3},
		{"one of two parents", "1,0,0 2,1,0", "2", []string{"2"}, []float64{1}, 2, 1, 1},
		{
			"not at most fe", "a,0,0 b,0,0 c,0,a d,a,b e,a,d f,c,e", "b e f",
			[]string{"e", "b", "c"},
			[]float64{1. / 2, 1. / 3, 1. / 6},
			96. / 41, 18. / 7, 48. / 31,
		},
		{"nobody", small, "", nil, nil, 0, 0, 0},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := build(t, test.text)
			living := numbers(t, p, test.living)
			var ids []string
			var marginals []float64
			for _, a := range diversity.AncestorContributions(p, living) {
				ids = append(ids, p.ID(a.Animal))
				marginals = append(marginals, a.Marginal)
			}
			assert.Equal(t, test.want, ids)
			assert.InDeltaSlice(t, test.marginals, marginals, rounding)
			assert.InDelta(t, test.fe, diversity.FounderEquivalents(p, living), rounding)
			assert.InDelta(t, test.fa, diversity.AncestorEquivalents(p, living), rounding)
			assert.InDelta(t, test.fg, diversity.FounderGenomeEquivalents(p, living), rounding)
		})
	}
}

// Lines of brother and sister matings. F is Table 5.1 of Falconer and Mackay 1996,
// Introduction to Quantitative Genetics. The true ancestral inbreeding is our own,
// by enumeration; the recursions are those of Ballou 1997 and of Kalinowski,
// Hedrick and Miller 2000, which is exact here.
func TestAncestralInbreeding(t *testing.T) {
	p := fullSibLine(t, 6)
	line := numbers(t, p, "s1 s2 s3 s4 s5 s6")
	const drops = 100_000
	drop := diversity.Drop(p, line, diversity.Drops{Count: drops, Seed: 7})
	ballou := diversity.OverstatedAncestralInbreeding(p)
	for g, want := range []struct{ f, ancestral, ballou, again, fresh float64 }{
		{0, 0, 0, 0, 0},
		{1. / 4, 0, 0, 0, 1. / 4},
		{3. / 8, 1. / 4, 1. / 4, 3. / 16, 3. / 16},
		{1. / 2, 1. / 2, 17. / 32, 3. / 8, 1. / 8},
		{19. / 32, 43. / 64, 49. / 64, 131. / 256, 21. / 256},
		{43. / 64, .7852, .90478515625, .6182, .0537},
	} {
		a := drop.Animals[g]
		assert.Equal(t, line[g], a.Animal)
		assert.InDelta(t, want.f, p.Inbreeding(line[g]), rounding)
		within(t, want.f, a.Inbreeding, drops, "F of generation %d", g+1)
		within(t, want.ancestral, a.Ancestral, drops, "ancestral inbreeding of generation %d", g+1)
		within(t, want.again, a.Again, drops, "inbred again in generation %d", g+1)
		within(t, want.fresh, a.New, drops, "newly inbred in generation %d", g+1)
		assert.InDelta(t, want.ballou, ballou[line[g]], rounding, "the recursion in generation %d", g+1)
	}
}

// An ideal population is as large as it is: selfing alone halves what is left in
// each generation, which is the rate of one animal; brother and sister matings
// have a rate of (3 - sqrt 5)/4 in the long run (Falconer and Mackay 1996).
func TestRealisedSize(t *testing.T) {
	selfing := build(t, "0th,0,0 1st,0th,0th 2nd,1st,1st 3rd,2nd,2nd 4th,3rd,3rd")
	size, ok := diversity.RealisedSize(selfing, numbers(t, selfing, "4th"))
	assert.True(t, ok)
	increase := 1 - math.Pow(1./16, 1./3)
	assert.InDelta(t, 1/(2*increase), size.Size, rounding)
	assert.Zero(t, size.StandardError)
	assert.Equal(t, 1, size.Counted)

	sibs := fullSibLine(t, 40)
	size, ok = diversity.RealisedSize(sibs, numbers(t, sibs, "s40 d40"))
	assert.True(t, ok)
	assert.InDelta(t, 2/(3-math.Sqrt(5)), size.Size, .02)
	assert.InDelta(t, 0, size.StandardError, 1e-9, "both are alike")

	// By hand: F is 1/8 and 0 with t of 7/4 and 2; 1, 3 and 4 have t of 0, 1 and
	// 1/2 and are left out.
	p := build(t, mrode+" 7,3,8 8,9,10 9,0,0 10,0,0")
	size, ok = diversity.RealisedSize(p, numbers(t, p, "1 3 4 5 7"))
	assert.True(t, ok)
	one := 1 - math.Pow(7./8, 4./3)
	assert.InDelta(t, 1/one, size.Size, 1e-12)
	assert.InDelta(t, 2/(one*one)*(one/2), size.StandardError, 1e-12)
	assert.Equal(t, 2, size.Counted)

	none, ok := diversity.RealisedSize(p, numbers(t, p, "1 7"))
	assert.False(t, ok, "nobody is inbred")
	assert.Equal(t, diversity.EffectiveSize{Counted: 1}, none)
}
