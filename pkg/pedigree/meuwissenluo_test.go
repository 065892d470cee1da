package pedigree

import (
	"fmt"
	"runtime"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// plainMeuwissenLuo computes the inbreeding coefficient of each node by a walk
// over its own ancestors, youngest first (Meuwissen and Luo 1992, Genetics
// Selection Evolution 24:305): a slow twin, with general weights. Ancestors still
// to visit are marked in an array of bits; a linked list, as printed there, is
// slower when there are many.
func (g *graph) plainMeuwissenLuo() []float64 {
	w := newWalker(g.len())
	for k := range int32(g.len()) {
		g.settleByWalk(w, k, func(sire, dam int32) float64 {
			// The row of T is that of both parents; K of the animal is half of each.
			both := []term{{sire, .5}, {dam, .5}}
			return 2*w.cross(g, both, both) - (g.self[sire]+g.self[dam])/2
		})
	}
	return g.inbreedingOfAll()
}

// familyMeuwissenLuo is the same, but each different couple is computed once, with
// the walks from sire and dam made together, which ends when one has run out
// (Quaas 1995, as in Mrode 2014, Linear Models, appendix B.2).
func (g *graph) familyMeuwissenLuo() []float64 {
	w := newWalker(g.len())
	known := map[[2]int32]float64{}
	for k := range int32(g.len()) {
		g.settleByWalk(w, k, func(sire, dam int32) float64 {
			f, ok := known[[2]int32{sire, dam}]
			if !ok {
				f = w.cross(g, []term{{sire, 1}}, []term{{dam, 1}})
				known[[2]int32{sire, dam}] = f
			}
			return f
		})
	}
	return g.inbreedingOfAll()
}

func (g *graph) settleByWalk(w *walker, k int32, couple func(sire, dam int32) float64) {
	if g.group[k] != none {
		terms := g.groups[g.group[k]].terms
		g.settleGroup(k, w.cross(g, terms, terms))
		return
	}
	f := 0.0
	if g.sire[k] != none && g.dam[k] != none {
		f = couple(g.sire[k], g.dam[k])
	}
	g.self[k] = (1 + f) / 2
	g.own[k] = 0.5 - (g.selfOf(g.sire[k])+g.selfOf(g.dam[k]))/4
}

// inbreedingOfAll gives F by node, and for groups what their K says.
func (g *graph) inbreedingOfAll() []float64 {
	all := make([]float64, g.len())
	for k := range all {
		all[k] = 2*g.self[k] - 1
	}
	return all
}

// linked draws a pedigree of some size with everything that there can be in one.
func linked(t *rapid.T) ([]Record, []Group) {
	n := rapid.IntRange(1, 120).Draw(t, "animals")
	reach := rapid.SampledFrom([]int{3, 10, 40, 120}).Draw(t, "reach")
	var records []Record
	var groups []Group
	for i := range n {
		r := Record{ID: fmt.Sprint("a", i)}
		if i > 0 && rapid.IntRange(0, 4).Draw(t, "sib") == 0 {
			r.Sire, r.Dam = records[i-1].Sire, records[i-1].Dam
			records = append(records, r)
			continue
		}
		from := rapid.IntRange(max(-1, i-reach), i-1)
		for _, side := range []*string{&r.Sire, &r.Dam} {
			if parent := from.Draw(t, "parent"); parent >= 0 {
				*side = records[parent].ID
			}
		}
		switch kind := rapid.IntRange(0, 9).Draw(t, "kind"); {
		case kind == 0 && i > 2: // one of two or three males, none of them the dam
			g := Group{ID: fmt.Sprint("g", i), Kind: GroupKind(rapid.IntRange(0, 1).Draw(t, "group kind"))}
			for _, c := range rapid.SliceOfNDistinct(rapid.IntRange(max(0, i-reach), i-1), 1, 3, rapid.ID[int]).Draw(t, "candidates") {
				if records[c].ID != r.Dam {
					g.Candidates = append(g.Candidates, Candidate{records[c].ID, rapid.Float64Range(.1, 1).Draw(t, "weight")})
				}
			}
			if len(g.Candidates) > 0 {
				groups, r.Sire = append(groups, g), g.ID
			}
		case kind == 1 && len(groups) > 0: // a group again, with an unknown mate
			r.Sire, r.Dam = rapid.SampledFrom(groups).Draw(t, "group").ID, ""
		case kind == 2:
			s := Group{ID: fmt.Sprint("s", i), Kind: Source, Kinship: rapid.Float64Range(0, 1).Draw(t, "base")}
			groups, r.Sire = append(groups, s), s.ID
			if rapid.Bool().Draw(t, "both") {
				r.Dam = s.ID
			}
		}
		records = append(records, r)
	}
	return rapid.Permutation(records).Draw(t, "order"), groups
}

// All ways to compute inbreeding agree.
func TestInbreedingTwins(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		records, groups := linked(t)
		p, err := New(records, groups...)
		require.NoError(t, err)
		fast := p.graph.inbreedingOfAll()
		plain, families := p.graph.bare(), p.graph.bare()
		require.InDeltaSlice(t, plain.plainMeuwissenLuo(), fast, 1e-12, "Meuwissen and Luo")
		require.InDeltaSlice(t, families.familyMeuwissenLuo(), fast, 1e-12, "Meuwissen and Luo, families once")
		require.InDeltaSlice(t, families.own, p.graph.own, 1e-12, "what is new")
	})
}

// The bits of the result are the same whatever the number of workers.
func TestWorkersDoNotMatter(t *testing.T) {
	before := runtime.GOMAXPROCS(1)
	defer runtime.GOMAXPROCS(before)
	shape := population{cohorts: 6, sires: 60, dams: 200, young: 3}
	alone, err := New(shape.records(7))
	require.NoError(t, err)
	for _, workers := range []int{2, 3, 8} {
		runtime.GOMAXPROCS(workers)
		p, err := New(shape.records(7))
		require.NoError(t, err)
		require.Equal(t, alone.graph.self, p.graph.self, "%d workers", workers)
		require.Equal(t, alone.graph.own, p.graph.own, "%d workers", workers)
		some := []int{3, 500, 900, 1500, 2000, 3700}
		require.Equal(t, alone.Block(some, some), p.Block(some, some))
	}
}

// A population of thousands against the twin, so that sweeps have many places.
func TestPopulationTwin(t *testing.T) {
	for _, shape := range []population{
		{"clutches", 8, 6, 30, 20},
		{"small families", 8, 20, 200, 2},
		{"each with one mate", 8, 100, 100, 4},
	} {
		t.Run(shape.name, func(t *testing.T) {
			p, err := New(shape.records(11))
			require.NoError(t, err)
			twin := p.graph.bare()
			require.InDeltaSlice(t, twin.familyMeuwissenLuo(), p.graph.inbreedingOfAll(), 1e-12)
		})
	}
}
