package pedigree_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Who is what to whom. Small letters are where nothing else is said of a parent.
func TestRelationships(t *testing.T) {
	const tree = `Odo,0,0 Lene,0,0 Mara,0,0 Pelle,0,0 Ida,0,0 Finn,0,0 Ylva,0,0 Tove,0,0
		Bram,Odo,Lene Isa,Odo,Lene Rune,Odo,Mara
		Juna,Bram,Ida Tess,Bram,Ida Alma,Pelle,Isa Sten,Rune,Ida
		Kai,Finn,Juna Lars,Finn,Alma Nora,Ylva,Kai Esa,Ylva,Lars Vera,Tove,Nora Ture,Tove,Esa
		Ragna,Finn,Sten`
	for _, test := range []struct{ a, b, want string }{
		{"Bram", "Bram", "the same animal"},
		{"Odo", "Lene", "not known to be related"},
		{"Odo", "Bram", "parent and young"},
		{"Bram", "Odo", "young and parent"},
		{"Odo", "Juna", "grandparent and grandchild"},
		{"Kai", "Odo", "great-grandchild and great-grandparent"},
		{"Odo", "Nora", "great-great-grandparent and great-great-grandchild"},
		{"Odo", "Vera", "ancestor 5 generations up and descendant 5 generations down"},
		{"Bram", "Isa", "full siblings"},
		{"Juna", "Tess", "full siblings"},
		{"Bram", "Rune", "half siblings through Odo"},
		{"Isa", "Juna", "uncle or aunt and nephew or niece through Odo and Lene"},
		{"Juna", "Isa", "nephew or niece and uncle or aunt through Odo and Lene"},
		{"Rune", "Juna", "half uncle or aunt and half nephew or niece through Odo"},
		{"Isa", "Kai", "great-uncle or great-aunt and great-nephew or great-niece through Odo and Lene"},
		{"Juna", "Alma", "first cousins through Odo and Lene"},
		{"Alma", "Sten", "half first cousins through Odo"},
		{"Alma", "Kai", "first cousins once removed through Odo and Lene"},
		{"Kai", "Alma", "first cousins once removed through Odo and Lene"},
		{"Alma", "Nora", "first cousins twice removed through Odo and Lene"},
		{"Juna", "Sten", "half siblings through Ida, and also half first cousins"},
		{"Kai", "Lars", "half siblings through Finn, and also second cousins"},
		{"Vera", "Ture", "half siblings through Tove, and also half first cousins, half second cousins and fourth cousins"},
		{"Tess", "Ragna", "half uncle or aunt and half nephew or niece through Ida, and also half first cousins once removed"},
		{"Ragna", "Kai", "half siblings through Finn, and also half first cousins and half second cousins"},
	} {
		t.Run(test.a+" and "+test.b, func(t *testing.T) { assert.Equal(t, test.want, related(t, build(t, tree), test.a, test.b)) })
	}
}

func related(t testing.TB, p *pedigree.Pedigree, a, b string) string {
	t.Helper()
	return p.Explain(at(t, p, a), at(t, p, b), 10).Words(p.ID)
}

func TestRelationshipsThatHoldTwice(t *testing.T) {
	for _, test := range []struct{ name, tree, want string }{
		{"two brothers with two sisters", "P,0,0 Q,0,0 R,0,0 S,0,0 b,P,Q c,P,Q d,R,S e,R,S x,b,d y,c,e", "double first cousins through P, Q, R and S"},
		{"their young", "P,0,0 Q,0,0 R,0,0 S,0,0 b,P,Q c,P,Q d,R,S e,R,S k,b,d l,c,e x,k,0 y,l,0", "double second cousins through P, Q, R and S"},
		{"both parents half related", "P,0,0 R,0,0 b,P,0 c,P,0 d,R,0 e,R,0 x,b,d y,c,e", "half first cousins twice over through P and R"},
		{"one side full, the other half", "P,0,0 Q,0,0 R,0,0 b,P,Q c,P,Q d,R,0 e,R,0 x,b,d y,c,e", "first cousins through P and Q, and also half first cousins"},
		{"mated back to the sire", "P,0,0 Q,0,0 x,P,Q y,P,x", "parent and young, and also half siblings"},
		{"full sibs' young with their aunt", "P,0,0 Q,0,0 b,P,Q c,P,Q y,b,c x,P,Q", "uncle or aunt and nephew or niece twice over through P and Q"},
		{"grandparent on both sides", "x,0,0 b,x,0 c,x,0 y,b,c", "grandparent and grandchild twice over"},
		{"more than four kinds", "x,0,0 b,x,0 c,b,x d,c,x e,d,x y,e,x", "parent and young, and also grandparent and grandchild, great-grandparent and great-grandchild, great-great-grandparent and great-great-grandchild and related in more distant ways"},
		{"selfed", "x,0,0 y,x,x", "parent and young twice over"},
		{"selfed sibs", "P,0,0 x,P,P y,P,P", "full siblings"},
		{"sire here and dam there", "P,0,0 Q,0,0 x,P,Q y,Q,P", "full siblings"},
		{"parents that are related", "P,0,0 Q,P,0 x,P,Q y,P,Q", "full siblings, and also half uncle or aunt and half nephew or niece and half nephew or niece and half uncle or aunt"},
	} {
		t.Run(test.name, func(t *testing.T) {
			assert.Equal(t, test.want, related(t, build(t, test.tree), "x", "y"))
		})
	}
}

func TestPossibleRelationships(t *testing.T) {
	group := func(id string, kind pedigree.GroupKind, candidates ...string) pedigree.Group {
		g := pedigree.Group{ID: id, Kind: kind}
		for _, c := range candidates {
			g.Candidates = append(g.Candidates, pedigree.Candidate{ID: c})
		}
		return g
	}
	one, several := pedigree.OneUnknown, pedigree.Several
	for _, test := range []struct {
		name, tree, a, b, want string
		groups                 []pedigree.Group
	}{
		{"one unknown father", "A,0,0 B,0,0 D,0,0 x,m,D y,m,D", "x", "y", "full siblings", []pedigree.Group{group("m", one, "A", "B")}},
		{"a father each", "A,0,0 B,0,0 D,0,0 x,m,D y,m,D", "x", "y", "half siblings through D, possibly full siblings", []pedigree.Group{group("m", several, "A", "B")}},
		{"unknown mothers, one father each", "A,0,0 B,0,0 x,m,0 y,m,0", "x", "y", "half siblings through A or B", []pedigree.Group{group("m", one, "A", "B")}},
		{"only fathers, each his own", "A,0,0 B,0,0 x,m,0 y,m,0", "x", "y", "possibly half siblings through A or B", []pedigree.Group{group("m", several, "A", "B")}},
		{"a candidate", "A,0,0 B,0,0 D,0,0 x,m,D", "A", "x", "possibly parent and young", []pedigree.Group{group("m", one, "A", "B")}},
		{"the only candidate", "A,0,0 D,0,0 x,m,D", "A", "x", "parent and young", []pedigree.Group{group("m", one, "A")}},
		{"a candidate's young", "A,0,0 B,0,0 D,0,0 E,0,0 x,m,D y,A,E", "x", "y", "possibly half siblings through A", []pedigree.Group{group("m", one, "A", "B")}},
		{"of the same mother", "A,0,0 B,0,0 D,0,0 x,m,D y,A,D", "x", "y", "half siblings through D, possibly full siblings", []pedigree.Group{group("m", one, "A", "B")}},
		{"two clutches of the same males", "A,0,0 B,0,0 x,m,0 y,n,0", "x", "y", "possibly half siblings through A or B", []pedigree.Group{group("m", one, "A", "B"), group("n", one, "A", "B")}},
		{"aunt", "P,0,0 Q,0,0 y,P,Q A,P,Q B,0,0 x,m,0", "x", "y", "possibly nephew or niece and uncle or aunt through P and Q", []pedigree.Group{group("m", one, "A", "B")}},
		{"brothers may be the father", "P,0,0 Q,0,0 A,P,Q B,P,Q x,m,0 y,A,0", "x", "y", "possibly half siblings through A, and also possibly first cousins", []pedigree.Group{group("m", one, "A", "B")}},
		{"uncle", "P,0,0 Q,0,0 y,P,Q A,P,Q B,0,0 x,m,0", "y", "x", "possibly uncle or aunt and nephew or niece through P and Q", []pedigree.Group{group("m", one, "A", "B")}},
		{
			"the unknown parent of both is not its own sibling", "P,0,0 Q,0,0 A,P,Q x,m,0 y,P,m", "x", "y",
			"half siblings through Q or A, and also possibly half nephew or niece and half uncle or aunt",
			[]pedigree.Group{group("m", one, "Q", "A")},
		},
		{"from one source", "x,pond,pond y,pond,0", "x", "y", "from one source (pond)", []pedigree.Group{{ID: "pond", Kind: pedigree.Source, Kinship: .1}}},
		{"siblings, and from one source", "P,pond,0 Q,pond,0 x,P,Q y,P,Q", "x", "y", "full siblings, and also from one source (pond)", []pedigree.Group{{ID: "pond", Kind: pedigree.Source, Kinship: .1}}},
		{"a source without kinship", "x,pond,pond y,pond,0", "x", "y", "not known to be related", []pedigree.Group{{ID: "pond", Kind: pedigree.Source}}},
	} {
		t.Run(test.name, func(t *testing.T) {
			assert.Equal(t, test.want, related(t, build(t, test.tree, test.groups...), test.a, test.b))
		})
	}
}

// TestManySharedAncestors: a hall of males in one chamber is not read out.
func TestManySharedAncestors(t *testing.T) {
	for _, row := range []struct {
		males int
		want  string
	}{
		{11, "possibly half siblings through M0, M1, M2, M3, M4, M5, M6, M7, M8, M9 or M10"},
		{12, "possibly half siblings through M0, M1, M2, M3, M4, M5, M6, M7, M8, M9 or 2 more"},
	} {
		group := pedigree.Group{ID: "hall"}
		records := []pedigree.Record{{ID: "A", Sire: "hall"}, {ID: "B", Sire: "hall 2"}}
		for i := range row.males {
			id := fmt.Sprintf("M%d", i)
			records = append(records, pedigree.Record{ID: id})
			group.Candidates = append(group.Candidates, pedigree.Candidate{ID: id})
		}
		other := group
		other.ID = "hall 2"
		p, err := pedigree.New(records, group, other)
		require.NoError(t, err)
		require.Equal(t, row.want, p.Explain(0, 1, 3).Words(p.ID))
	}
}

// What a relationship adds to the kinship without inbreeding is known from its
// name (Lynch and Walsh 1998, Table 7.1).
func TestSharesOfRelationships(t *testing.T) {
	p := build(t, "P,0,0 Q,0,0 b,P,Q c,P,Q x,b,0 y,c,0 F,0,0 k,F,x l,F,y")
	e := p.Explain(at(t, p, "k"), at(t, p, "l"), 0)
	require.Len(t, e.Relationships, 2)
	half, second := e.Relationships[0], e.Relationships[1]
	assert.Equal(t, pedigree.Relationship{Words: "half siblings", UpA: 1, UpB: 1, Through: []int{at(t, p, "F")}, Ways: 1, Share: 1. / 8}, half)
	assert.Equal(t, pedigree.Relationship{Words: "second cousins", UpA: 3, UpB: 3, Full: true, Through: []int{at(t, p, "P"), at(t, p, "Q")}, Ways: 1, Share: 1. / 64}, second)
	assert.Zero(t, e.Unnamed)
}

// The relationships stand for the whole kinship, whatever the pedigree.
func TestRelationshipsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		records, groups := uncertainPedigree(t)
		p, err := pedigree.New(records, groups...)
		require.NoError(t, err)
		for i := range p.Len() {
			for j := range p.Len() {
				e := p.Explain(i, j, 3)
				require.InDelta(t, 0, e.Unnamed, 1e-12, "%s and %s: %+v", p.ID(i), p.ID(j), e)
				last := 0
				for _, r := range e.Relationships {
					distance := r.UpA + r.UpB
					if r.Full {
						distance--
					}
					require.GreaterOrEqual(t, distance, last, "the closest first")
					last = distance
					require.Positive(t, r.Ways)
					require.NotEmpty(t, r.Through)
				}
				require.Equal(t, e.Kinship > 0, e.Words(p.ID) != "not known to be related")
			}
		}
	})
}
