package pedigree

import (
	"cmp"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/internal/genepair"
)

// SharedAncestor is an animal through which two others are related, and what it
// adds to their kinship.
type SharedAncestor struct {
	Animal int
	Share  float64
}

// SharedAncestors gives the animals through which i and j are related, and the
// share of the kinship that comes through each, by the path rule: over all pairs
// of paths that lead from i and from j up to an ancestor without meeting before,
// the sum of (1/2) to the number of steps, times the ancestor's kinship to
// itself (Wright 1922, American Naturalist 56:330). The shares add up to
// [Pedigree.Kinship], to the rounding of the last digits. The largest share
// comes first; equal ones are by number.
//
// i or j is itself in the list when the other descends from it, and stands alone
// when they are one animal. An ancestor of a shared ancestor is in the list only
// for paths that do not meet below it. A [Group] is never in the list: shares
// that come through it are split over its candidates. Kinship that comes from a
// [Source] has no ancestor to show and is left out here: see [Pedigree.Explain].
//
// Time and memory grow with the number of pairs of ancestors.
func (p *Pedigree) SharedAncestors(i, j int) []SharedAncestor {
	a, b := p.node(i), p.node(j)
	m := meeting{graph: p.computed(), pairs: genepair.New(int(max(a, b)) + 1)}
	m.add(a, b, 1)
	var shared []SharedAncestor
	for k := max(a, b); k >= 0; k-- {
		if met := m.expand(k); met > 0 {
			shared = append(shared, SharedAncestor{Animal: int(p.rows[k]), Share: met * m.graph.self[k]})
		}
	}
	slices.SortFunc(shared, func(x, y SharedAncestor) int {
		return cmp.Or(cmp.Compare(y.Share, x.Share), cmp.Compare(x.Animal, y.Animal))
	})
	return shared
}

// meeting follows two genes up the pedigree until both are in one animal.
type meeting struct {
	graph *graph
	pairs genepair.Pairs
}

func (m *meeting) add(a, b int32, chance float64) {
	if a == none || b == none || chance == 0 {
		return
	}
	m.pairs.Add(a, b, chance)
}

// expand moves on all pairs of which k is the younger node, and gives the chance
// that both genes are in k when that is an animal.
func (m *meeting) expand(k int32) (met float64) {
	animal := m.graph.group[k] == none
	for _, pair := range m.pairs.Take(k) {
		switch {
		case pair.Node != k && animal:
			m.add(m.graph.sire[k], pair.Node, pair.Chance/2)
			m.add(m.graph.dam[k], pair.Node, pair.Chance/2)
		case pair.Node != k:
			for _, c := range m.graph.groups[m.graph.group[k]].terms {
				m.add(c.node, pair.Node, pair.Chance*c.weight)
			}
		case animal:
			met = pair.Chance
		default:
			m.draw(m.graph.groups[m.graph.group[k]], pair.Chance)
		}
	}
	return met
}

// draw moves a pair of which both genes are in a group.
func (m *meeting) draw(group candidates, chance float64) {
	candidate := func(i int) (int32, float64) { return group.terms[i].node, group.terms[i].weight }
	genepair.Draw(len(group.terms), candidate, group.kind == OneUnknown, chance, m.add)
}
