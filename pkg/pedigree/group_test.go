package pedigree_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Small cases with values by hand. The founders A, B and D are unrelated; x and y
// are of one clutch of D with one of A and B.
func TestGroups(t *testing.T) {
	candidates := []pedigree.Candidate{{ID: "A"}, {ID: "B"}}
	weighted := []pedigree.Candidate{{ID: "A", Weight: 30}, {ID: "B", Weight: 10}}
	clutch := "A,0,0 B,0,0 D,0,0 x,m,D y,m,D "
	for _, test := range []struct {
		name, text string
		kind       pedigree.GroupKind
		candidates []pedigree.Candidate
		a, b       string
		want       float64
		reason     string
	}{
		{"one unknown father", clutch, pedigree.OneUnknown, candidates, "x", "y", 1. / 4, "full sibs, whoever he is"},
		{"a father each", clutch, pedigree.Several, candidates, "x", "y", 3. / 16, "full sibs or half sibs, each 1/2"},
		{"a father each, unequal", clutch, pedigree.Several, weighted, "x", "y", 13. / 64, "1/8 and 1/8 more with chance 9/16 + 1/16"},
		{"candidate and young", clutch, pedigree.OneUnknown, weighted, "x", "A", 3. / 16, "1/4 with chance 3/4"},
		{"itself", clutch, pedigree.Several, candidates, "x", "x", 1. / 2, "not inbred, whichever father"},
		{"back to a candidate", clutch + "z,A,x", pedigree.OneUnknown, candidates, "z", "z", 9. / 16, "F is 1/4 with chance 1/2"},
		{"brother and sister, one father", clutch + "z,x,y", pedigree.OneUnknown, candidates, "z", "z", 5. / 8, "F is 1/4"},
		{"brother and sister, a father each", clutch + "z,x,y", pedigree.Several, candidates, "z", "z", 19. / 32, "F is 3/16"},
		{"only one candidate, one father", clutch, pedigree.OneUnknown, candidates[:1], "x", "y", 1. / 4, "certain full sibs"},
		{"only one candidate, a father each", clutch, pedigree.Several, candidates[:1], "x", "y", 1. / 4, "certain full sibs"},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := build(t, test.text, pedigree.Group{ID: "m", Kind: test.kind, Candidates: test.candidates})
			assert.InDelta(t, test.want, kinship(t, p, test.a, test.b), rounding, test.reason)
		})
	}
}

// Named pedigrees of the kinds that go wrong first, over every assignment.
func TestGroupsThatMeet(t *testing.T) {
	group := func(id string, kind pedigree.GroupKind, candidates ...string) pedigree.Group {
		g := pedigree.Group{ID: id, Kind: kind}
		for i, c := range candidates {
			g.Candidates = append(g.Candidates, pedigree.Candidate{ID: c, Weight: float64(i + 1)})
		}
		return g
	}
	for _, kind := range []pedigree.GroupKind{pedigree.OneUnknown, pedigree.Several} {
		for _, test := range []struct {
			name, text string
			groups     []pedigree.Group
		}{
			{
				"two clutches share candidates",
				"A,0,0 B,0,0 C,0,0 D,0,0 E,0,0 x,m,D y,m,D u,n,E v,n,E z,x,u",
				[]pedigree.Group{group("m", kind, "A", "B"), group("n", kind, "B", "C")},
			},
			{
				"an uncertain clutch of an uncertain clutch",
				"A,0,0 B,0,0 D,0,0 x,m,D y,m,D u,n,D v,n,D z,u,v",
				[]pedigree.Group{group("m", kind, "A", "B"), group("n", kind, "x", "y", "A")},
			},
			{
				"a candidate is mated back to the clutch",
				"A,0,0 B,A,0 D,0,0 x,m,D y,m,D u,A,x v,B,y z,u,v",
				[]pedigree.Group{group("m", kind, "A", "B")},
			},
			{
				"dams are uncertain too",
				"A,0,0 B,0,0 D,A,0 E,B,0 x,m,f y,m,f z,x,y",
				[]pedigree.Group{group("m", kind, "A", "B"), group("f", pedigree.OneUnknown, "D", "E")},
			},
			{
				"inbred candidates that are sibs",
				"P,0,0 Q,P,P A,P,Q B,P,Q D,Q,0 x,m,D y,m,D z,x,y",
				[]pedigree.Group{group("m", kind, "A", "B")},
			},
		} {
			t.Run(test.name+", "+kind.String(), func(t *testing.T) {
				p := build(t, test.text, test.groups...)
				var records []pedigree.Record
				for i := range p.Len() {
					sire, dam := p.Parents(i)
					records = append(records, pedigree.Record{ID: p.ID(i), Sire: named(p, sire), Dam: named(p, dam)})
				}
				agrees(t, p, expected(records, test.groups))
			})
		}
	}
}

func named(p *pedigree.Pedigree, parent pedigree.Parent) string {
	if parent.Known && parent.Group == "" {
		return p.ID(parent.Candidates[0].Animal)
	}
	return parent.Group
}

func TestSharedAncestorsThroughGroups(t *testing.T) {
	clutch := "A,0,0 B,0,0 D,0,0 x,m,D y,m,D"
	weighted := []pedigree.Candidate{{ID: "A", Weight: 3}, {ID: "B", Weight: 1}}
	shares := func(kind pedigree.GroupKind) []pedigree.SharedAncestor {
		p := build(t, clutch, pedigree.Group{ID: "m", Kind: kind, Candidates: weighted})
		return p.SharedAncestors(at(t, p, "x"), at(t, p, "y"))
	}
	assert.Equal(t, []pedigree.SharedAncestor{{2, 1. / 8}, {0, 3. / 32}, {1, 1. / 32}}, shares(pedigree.OneUnknown),
		"the father's 1/8 is split by chance")
	assert.Equal(t, []pedigree.SharedAncestor{{2, 1. / 8}, {0, 9. / 128}, {1, 1. / 128}}, shares(pedigree.Several),
		"a father is shared with the square of his chance")

	p := build(t, "P,0,0 A,P,0 B,P,0 x,m,0 y,m,0", pedigree.Group{ID: "m", Kind: pedigree.Several, Candidates: []pedigree.Candidate{{"A", 3}, {"B", 1}}})
	assert.Equal(t, []pedigree.SharedAncestor{{1, 9. / 128}, {0, 3. / 256}, {2, 1. / 128}}, p.SharedAncestors(3, 4),
		"different fathers, with chance 3/8, are half-brothers through P")

	p = build(t, "A,0,0 B,0,0 x,A,B")
	assert.Equal(t, []pedigree.SharedAncestor{{0, 1. / 4}}, p.SharedAncestors(2, 0), "an ancestor of the other stands for itself")
	assert.Equal(t, []pedigree.SharedAncestor{{2, 1. / 2}}, p.SharedAncestors(2, 2), "an animal and itself")
	assert.Empty(t, p.SharedAncestors(0, 1), "unrelated")
}

func TestGroupKindNames(t *testing.T) {
	assert.Equal(t, "one", pedigree.OneUnknown.String())
	assert.Equal(t, "several", pedigree.Several.String())
	assert.Equal(t, "GroupKind(5)", pedigree.GroupKind(5).String())
}

func TestParents(t *testing.T) {
	p := build(t, "x,m,D A,0,0 B,0,0 D,0,A",
		pedigree.Group{ID: "m", Kind: pedigree.Several, Candidates: []pedigree.Candidate{{"B", 1}, {"A", 3}}},
		pedigree.Group{ID: "of no young", Candidates: []pedigree.Candidate{{ID: "x"}}})
	assert.Equal(t, 4, p.Len(), "groups are not animals")
	_, isAnimal := p.Index("m")
	assert.False(t, isAnimal, "groups are not animals")

	sire, dam := p.Parents(0)
	assert.Equal(t, pedigree.Parent{Known: true, Group: "m", Kind: pedigree.Several, Candidates: []pedigree.Share{{2, .25}, {1, .75}}}, sire)
	assert.Equal(t, pedigree.Parent{Known: true, Candidates: []pedigree.Share{{3, 1}}}, dam)
	sire, dam = p.Parents(3)
	assert.Equal(t, pedigree.Parent{}, sire)
	assert.Equal(t, pedigree.Parent{Known: true, Candidates: []pedigree.Share{{1, 1}}}, dam)

	assert.True(t, p.Uncertain(0))
	assert.False(t, p.Uncertain(3))
	assert.Equal(t, []int{1, 2, 3}, p.Ancestors(0))
	assert.Equal(t, []int{0, 3}, p.Descendants(1))
}

// Weights only count relative to each other, whatever their size.
func TestWeightsOfAnySize(t *testing.T) {
	for _, unit := range []float64{1e-300, 1, math.MaxFloat64} {
		p := build(t, "x,m,0 A,0,0 B,0,0", pedigree.Group{ID: "m", Candidates: []pedigree.Candidate{{"A", unit}, {"B", unit}}})
		assert.Equal(t, 1./8, kinship(t, p, "x", "A"), "unit %v", unit)
	}
}

func TestGroupErrors(t *testing.T) {
	animals := []pedigree.Record{{ID: "A"}, {ID: "B"}, {ID: "D"}}
	for _, test := range []struct {
		name   string
		child  pedigree.Record
		groups []pedigree.Group
		want   string
	}{
		{
			"no candidates",
			pedigree.Record{ID: "x", Sire: "m"},
			[]pedigree.Group{{ID: "m"}},
			`pedigree: group "m": it has no candidates; leave the parent empty when nothing is known`,
		},
		{
			"candidate twice",
			pedigree.Record{ID: "x"},
			[]pedigree.Group{{ID: "m", Candidates: []pedigree.Candidate{{"A", 1}, {"A", 1}}}},
			`pedigree: group "m": candidate "A" is there twice; add its weights up`,
		},
		{
			"negative weight",
			pedigree.Record{ID: "x"},
			[]pedigree.Group{{ID: "m", Candidates: []pedigree.Candidate{{"A", -1}}}},
			`pedigree: group "m": the weight of candidate "A" is -1; it must be a number from 0`,
		},
		{
			"weight that is no number",
			pedigree.Record{ID: "x"},
			[]pedigree.Group{{ID: "m", Candidates: []pedigree.Candidate{{"A", math.NaN()}}}},
			`pedigree: group "m": the weight of candidate "A" is NaN; it must be a number from 0`,
		},
		{
			"some weights missing",
			pedigree.Record{ID: "x"},
			[]pedigree.Group{{ID: "m", Candidates: []pedigree.Candidate{{"A", 1}, {ID: "B"}}}},
			`pedigree: group "m": some candidates have a weight and others have none; give all of them one, or none`,
		},
		{
			"no such kind",
			pedigree.Record{ID: "x"},
			[]pedigree.Group{{ID: "m", Kind: 7, Candidates: []pedigree.Candidate{{"A", 1}}}},
			`pedigree: group "m": its kind is neither OneUnknown, Several nor Source`,
		},
		{
			"group in a group",
			pedigree.Record{ID: "x"},
			[]pedigree.Group{{ID: "m", Candidates: []pedigree.Candidate{{"A", 1}}}, {ID: "n", Candidates: []pedigree.Candidate{{"m", 1}}}},
			`pedigree: group "n": candidate "m" is itself a group; list its candidates instead`,
		},
		{
			"same group on both sides",
			pedigree.Record{ID: "x", Sire: "m", Dam: "m"},
			[]pedigree.Group{{ID: "m", Candidates: []pedigree.Candidate{{ID: "A"}, {ID: "B"}}}},
			`pedigree: group "m": "A" may be both the sire and the dam of "x"; list it on one side only`,
		},
		{
			"groups that overlap",
			pedigree.Record{ID: "x", Sire: "m", Dam: "n"},
			[]pedigree.Group{{ID: "m", Candidates: []pedigree.Candidate{{ID: "A"}, {ID: "B"}}}, {ID: "n", Candidates: []pedigree.Candidate{{ID: "B"}, {ID: "D"}}}},
			`pedigree: group "n": "B" may be both the sire and the dam of "x"; list it on one side only`,
		},
		{
			"dam among the sires",
			pedigree.Record{ID: "x", Sire: "m", Dam: "B"},
			[]pedigree.Group{{ID: "m", Candidates: []pedigree.Candidate{{ID: "A"}, {ID: "B"}}}},
			`pedigree: group "m": "B" may be both the sire and the dam of "x"; list it on one side only`,
		},
	} {
		t.Run(test.name, func(t *testing.T) {
			_, err := pedigree.New(append(animals, test.child), test.groups...)
			var wrong *pedigree.GroupError
			require.ErrorAs(t, err, &wrong)
			assert.EqualError(t, err, test.want)
		})
	}
}
