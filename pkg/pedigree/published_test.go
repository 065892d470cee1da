package pedigree_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// build makes a pedigree from words "id,sire,dam", 0 for an unknown parent.
func build(t testing.TB, text string, groups ...pedigree.Group) *pedigree.Pedigree {
	t.Helper()
	var records []pedigree.Record
	for word := range strings.FieldsSeq(text) {
		part := strings.Split(word, ",")
		require.Len(t, part, 3, word)
		for i := range part {
			if part[i] == "0" {
				part[i] = ""
			}
		}
		records = append(records, pedigree.Record{ID: part[0], Sire: part[1], Dam: part[2]})
	}
	p, err := pedigree.New(records, groups...)
	require.NoError(t, err)
	return p
}

func at(t testing.TB, p *pedigree.Pedigree, id string) int {
	t.Helper()
	i, ok := p.Index(id)
	require.True(t, ok, id)
	return i
}

func kinship(t testing.TB, p *pedigree.Pedigree, a, b string) float64 {
	t.Helper()
	return p.Kinship(at(t, p, a), at(t, p, b))
}

// rounding is what sums of exact binary fractions may be off by.
const rounding = 1e-15

// inbred is the F that a pedigree must give; animals not named must have 0.
func inbred(t *testing.T, p *pedigree.Pedigree, want map[string]float64) {
	t.Helper()
	for i := range p.Len() {
		assert.InDelta(t, want[p.ID(i)], p.Inbreeding(i), rounding, "F of %s", p.ID(i))
	}
}

// additive compares the lower triangle of A = 2K, in the order of the animals.
func additive(t *testing.T, p *pedigree.Pedigree, rows [][]float64, tolerance float64) {
	t.Helper()
	for i, row := range rows {
		for j, a := range row {
			assert.InDelta(t, a, 2*p.Kinship(i, j), tolerance, "A of %s and %s", p.ID(i), p.ID(j))
		}
	}
}

// Mrode 2014, Linear Models for the Prediction of Animal Breeding Values, 3rd
// ed., Table 2.1 and pages 24-27.
const mrode = "1,0,0 2,0,0 3,1,2 4,1,0 5,4,3 6,5,2"

func TestMrode(t *testing.T) {
	p := build(t, mrode)
	inbred(t, p, map[string]float64{"5": 0.125, "6": 0.125})
	additive(t, p, [][]float64{
		{1},
		{0, 1},
		{.5, .5, 1},
		{.5, 0, .25, 1},
		{.5, .25, .625, .625, 1.125},
		{.25, .625, .5625, .3125, .6875, 1.125},
	}, rounding)
	// Computed by hand from the definition: sums of (1/2)^n over known ancestors.
	for id, want := range map[string]float64{"1": 0, "3": 1, "4": 0.5, "5": 1.75, "6": 1.875} {
		assert.Equal(t, want, p.CompleteGenerations(at(t, p, id)), "complete generations of %s", id)
	}
	for id, want := range map[string]int{"1": 0, "3": 1, "4": 1, "5": 2, "6": 3} {
		assert.Equal(t, want, p.Generation(at(t, p, id)), "generation of %s", id)
	}
	// Fathers and mothers' fathers only, same book: A of animals 1, 4 and 5.
	assert.InDelta(t, .625, 2*kinship(t, p, "4", "5"), rounding)
}

// Christensen, population genetics course, KVL Copenhagen, section 4.4. Values
// are cut to three digits there.
func TestChristensen(t *testing.T) {
	p := build(t, "1,0,0 2,1,0 3,1,0 4,1,0 5,2,3 6,4,3 7,5,6")
	inbred(t, p, map[string]float64{"5": .125, "6": .125, "7": 7. / 32})
	for id, row := range map[string][]float64{
		"1": {1, .5, .5, .5, .5, .5, .5},
		"2": {.5, 1, .25, .25, .625, .25, .437},
		"3": {.5, .25, 1, .25, .625, .625, .625},
	} {
		for j, a := range row {
			assert.InDelta(t, a, 2*p.Kinship(at(t, p, id), j), 0.0006, "A of %s and %s", id, p.ID(j))
		}
	}
}

// A covariance table from an animal breeding course sheet (author not named):
// mating back to the sire and full sibs in eight animals.
func TestCourseSheet(t *testing.T) {
	p := build(t, "Z,0,0 T,0,0 R,Z,T A,R,T B,R,T D,A,B S,R,D X,S,D")
	for id, want := range map[string]float64{"A": 1.25, "B": 1.25, "D": 1.375, "S": 1.375, "X": 1.53125} {
		assert.InDelta(t, want, 2*kinship(t, p, id, id), rounding, "A of %s", id)
		assert.InDelta(t, want-1, p.Inbreeding(at(t, p, id)), rounding, "F of %s", id)
	}
	for couple, want := range map[string]float64{"ZX": .3125, "RA": .75, "AS": .875, "SX": 1.21875} {
		assert.InDelta(t, want, 2*kinship(t, p, couple[:1], couple[1:]), rounding, "A of %s", couple)
	}
	mates := func(sire, dam string) float64 {
		return p.ExpectedInbreeding([]int{at(t, p, sire)}, []int{at(t, p, dam)})
	}
	assert.InDelta(t, .15625, mates("Z", "X"), rounding)
	assert.InDelta(t, .609375, mates("X", "S"), rounding)
	assert.InDelta(t, .125, mates("Z", "D"), rounding)
	for id, want := range map[string]float64{"R": 1, "A": 1.5, "B": 1.5, "D": 2.5, "S": 2.75, "X": 29. / 8} {
		assert.InDelta(t, want, p.CompleteGenerations(at(t, p, id)), rounding, "complete generations of %s", id)
	}
}

// The bull Roan Gauntlet: Wright 1922, American Naturalist 56:330, as given in
// Lynch and Walsh 1998, Genetics and Analysis of Quantitative Traits, chapter 7,
// page 155. The side of Lord Raglan is drawn from the path lengths given there.
func TestRoanGauntlet(t *testing.T) {
	p := build(t, `LordRaglan,0,0 Champion,0,0 Duchess12,LordRaglan,0 Mistletoe,LordRaglan,0
		Link,LordRaglan,0 Carmine,Link,0 GrandDuke,Champion,Duchess12 Mimulus,Champion,Mistletoe
		PrincessRoyal,Champion,Carmine RoyalDuke,GrandDuke,Mimulus RoanGauntlet,RoyalDuke,PrincessRoyal`)
	assert.InDelta(t, 9./64, p.Inbreeding(at(t, p, "RoanGauntlet")), rounding)
	assert.InDelta(t, 1./4, kinship(t, p, "Mimulus", "Champion"), rounding)
	assert.InDelta(t, 1./32, kinship(t, p, "Mimulus", "Carmine"), rounding)
	assert.InDelta(t, 1./32, kinship(t, p, "GrandDuke", "Carmine"), rounding)
	assert.Equal(t, []pedigree.SharedAncestor{
		{Animal: at(t, p, "Champion"), Share: 2. / 16},    // two paths over four animals
		{Animal: at(t, p, "LordRaglan"), Share: 2. / 128}, // two paths over seven
	}, p.SharedAncestors(at(t, p, "RoyalDuke"), at(t, p, "PrincessRoyal")))
}

// Lynch and Walsh 1998, chapter 26, example 8, page 775 (sire and dam are not
// told apart there). A52 and 1 + 1/8 as computed, where the print has slips.
func TestLynchWalshExample(t *testing.T) {
	p := build(t, "1,0,0 2,0,0 x,0,0 3,1,x 4,1,2 5,3,4")
	for couple, want := range map[string]float64{"15": .5, "25": .25, "35": .625, "45": .625, "34": .25, "55": 1.125} {
		assert.InDelta(t, want, 2*kinship(t, p, couple[:1], couple[1:]), rounding, "A of %s", couple)
	}
}

// Lynch and Walsh 1998, Table 7.1, page 158: relatives without inbreeding.
func TestRelatives(t *testing.T) {
	p := build(t, `
		ggp,0,0 mate1,0,0 grandparent,ggp,mate1 mate2,0,0 parent,grandparent,mate2 aunt,grandparent,mate2
		mate3,0,0 mate4,0,0 me,parent,mate3 sib,parent,mate3 half,parent,mate4
		stranger,0,0 cousin,stranger,aunt
		mate5,0,0 mate6,0,0 child,me,mate5 cousinschild,cousin,mate6
		bro1,mate5,mate6 bro2,mate5,mate6 sis1,mate3,mate4 sis2,mate3,mate4 double1,bro1,sis1 double2,bro2,sis2`)
	for _, test := range []struct {
		relation, a, b string
		want           float64
	}{
		{"parent and child", "parent", "me", 1. / 4},
		{"full sibs", "me", "sib", 1. / 4},
		{"half sibs", "me", "half", 1. / 8},
		{"grandparent", "grandparent", "me", 1. / 8},
		{"great-grandparent", "ggp", "me", 1. / 16},
		{"aunt", "aunt", "me", 1. / 8},
		{"first cousins", "me", "cousin", 1. / 16},
		{"second cousins", "child", "cousinschild", 1. / 64},
		{"double first cousins", "double1", "double2", 1. / 8},
		{"an animal and itself", "me", "me", 1. / 2},
		{"founders", "ggp", "stranger", 0},
	} {
		assert.Equal(t, test.want, kinship(t, p, test.a, test.b), test.relation)
	}
}

// The pedigree of example 5.1 of Falconer and Mackay 1996, Introduction to
// Quantitative Genetics; the coefficients are our own, by the tabular method in
// exact fractions.
func TestFalconerMackayPedigree(t *testing.T) {
	p := build(t, `A,0,0 B,0,0 C,0,0 G,0,0 H,0,0 I,0,0 O,0,0
		D,A,B E,A,B F,C,B J,E,F K,G,F L,H,D M,I,J N,K,J P,L,M Q,N,O X,P,Q`)
	inbred(t, p, map[string]float64{"J": 1. / 8, "N": 5. / 32, "P": 3. / 64, "X": 31. / 512})
}

// The example pedigree of Henderson 1988, Journal of Animal Science 66:1614; the
// values are our own, the mean over all twelve assignments of sires in exact
// fractions.
func TestHenderson(t *testing.T) {
	p := build(t, "1,0,0 2,0,0 3,1,2 4,1,2 5,3,4 6,3,0 7,m7,6 8,m8,4 9,m9,6 10,1,4",
		pedigree.Group{ID: "m7", Candidates: []pedigree.Candidate{{"3", .6}, {"5", .4}}},
		pedigree.Group{ID: "m8", Kind: pedigree.Several, Candidates: []pedigree.Candidate{{"1", .3}, {"5", .7}}},
		pedigree.Group{ID: "m9", Candidates: []pedigree.Candidate{{"1", 3}, {"4", 6}, {"5", 1}}},
	)
	const tiny = 1e-14
	for id, want := range map[string]float64{"5": 1. / 4, "7": 9. / 40, "8": 27. / 80, "9": 21. / 160, "10": 1. / 4, "6": 0} {
		assert.InDelta(t, want, p.Inbreeding(at(t, p, id)), tiny, "F of %s", id)
	}
	for _, test := range []struct {
		a, b string
		want float64
	}{
		{"7", "8", .500625},
		{"7", "9", .579375},
		{"8", "9", .52875},
		{"7", "10", .4},
		{"8", "10", .70625},
		{"9", "10", .49375},
		{"5", "7", .6625},
		{"5", "8", .8875},
		{"5", "9", .55},
		{"6", "7", .725},
	} {
		assert.InDelta(t, test.want, 2*kinship(t, p, test.a, test.b), tiny, "A of %s and %s", test.a, test.b)
	}
}

// A small case of our own; definitions after Lacy 1995, Zoo Biology 14:565. The
// mean was also found as the expected sum of squared frequencies of the founders'
// genes, over all 256 ways in which they can have come down.
func TestMeanKinship(t *testing.T) {
	p := build(t, "1,0,0 2,0,0 3,0,0 4,1,2 5,1,2 6,3,4 7,3,4")
	living := []int{3, 4, 5, 6}
	mk := p.MeanKinship(living)
	assert.InDeltaSlice(t, []float64{5. / 16, 1. / 4, 9. / 32, 9. / 32}, mk[3:], rounding)
	assert.InDelta(t, 23./32, p.GeneDiversity(living), rounding)
	assert.InDelta(t, 1-1./2, p.GeneDiversity([]int{0}), rounding, "one founder keeps half")
	assert.Zero(t, p.GeneDiversity(nil))
	assert.Equal(t, make([]float64, 7), p.MeanKinship(nil))
}
