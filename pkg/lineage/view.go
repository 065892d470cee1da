package lineage

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// View is which animals of a pedigree are drawn.
type View struct {
	of                     []int
	ancestors, descendants bool
	living, families       bool
}

// Everything shows all animals.
func Everything() View { return View{} }

// Ancestors shows these animals of the pedigree and all their ancestors.
func Ancestors(of ...int) View { return View{of: of, ancestors: true} }

// Descendants shows these animals of the pedigree and all their descendants,
// with the other parents of the descendants.
func Descendants(of ...int) View { return View{of: of, descendants: true} }

// Around shows what [Ancestors] and [Descendants] show together.
func Around(of ...int) View { return View{of: of, ancestors: true, descendants: true} }

// Living gives the view without the animals that died or left, but for those
// that it is about.
func (v View) Living() View {
	v.living = true
	return v
}

// Families gives the view with the young of a mating drawn as one box, those that
// have no young in the view themselves, when there are two of them or more. Those
// that the view is about keep boxes of their own.
func (v View) Families() View {
	v.families = true
	return v
}

// shown marks the animals in the view. It panics if one that was asked for is
// not in the pedigree.
func (v View) shown(p *pedigree.Pedigree, animals []Animal) []bool {
	in := v.related(p)
	if v.living {
		for i := range in {
			in[i] = in[i] && !animals[i].Gone
		}
		mark(in, v.of)
	}
	return in
}

func (v View) related(p *pedigree.Pedigree) []bool {
	in := make([]bool, p.Len())
	if !v.ancestors && !v.descendants {
		for i := range in {
			in[i] = true
		}
		return in
	}
	for _, i := range v.of {
		if i < 0 || i >= p.Len() {
			panic(fmt.Sprintf("lineage: the pedigree has no animal %d", i))
		}
		in[i] = true
		if v.ancestors {
			mark(in, p.Ancestors(i))
		}
		if v.descendants {
			young := p.Descendants(i)
			mark(in, young)
			for _, y := range young {
				mark(in, parents(p, y))
			}
		}
	}
	return in
}

func mark(in []bool, animals []int) {
	for _, i := range animals {
		in[i] = true
	}
}

// parents gives all animals that are or may be a parent of i.
func parents(p *pedigree.Pedigree, i int) []int {
	sire, dam := p.Parents(i)
	var out []int
	for _, s := range sire.Candidates {
		out = append(out, s.Animal)
	}
	for _, d := range dam.Candidates {
		out = append(out, d.Animal)
	}
	return out
}
