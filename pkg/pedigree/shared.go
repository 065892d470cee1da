package pedigree

import (
	"cmp"
	"slices"
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
	m := meeting{graph: p.computed(), pairs: make([][]term, max(a, b)+1)}
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

// meeting follows two genes up the pedigree until both are in one animal. It
// always moves the one in the younger node, so that no way up is missed, and
// keeps one sum for each pair of nodes, however many ways lead there.
type meeting struct {
	graph *graph
	pairs [][]term // by younger node: the older node and the chance of the pair
}

func (m *meeting) add(a, b int32, chance float64) {
	if a == none || b == none || chance == 0 {
		return
	}
	m.pairs[max(a, b)] = append(m.pairs[max(a, b)], term{min(a, b), chance})
}

// expand moves on all pairs of which k is the younger node, and gives the chance
// that both genes are in k when that is an animal.
func (m *meeting) expand(k int32) (met float64) {
	pairs := merge(m.pairs[k])
	m.pairs[k] = nil
	animal := m.graph.group[k] == none
	for _, pair := range pairs {
		switch {
		case pair.node != k && animal:
			m.add(m.graph.sire[k], pair.node, pair.weight/2)
			m.add(m.graph.dam[k], pair.node, pair.weight/2)
		case pair.node != k:
			for _, c := range m.graph.groups[m.graph.group[k]].terms {
				m.add(c.node, pair.node, pair.weight*c.weight)
			}
		case animal:
			met = pair.weight
		default:
			m.split(m.graph.groups[m.graph.group[k]], pair.weight)
		}
	}
	return met
}

// split moves a pair of which both genes are in a group: to one candidate when
// the group is one animal, to two draws when each of the young has its own.
func (m *meeting) split(group candidates, chance float64) {
	for _, c := range group.terms {
		if group.kind == OneUnknown {
			m.add(c.node, c.node, chance*c.weight)
			continue
		}
		for _, d := range group.terms {
			m.add(c.node, d.node, chance*c.weight*d.weight)
		}
	}
}

// merge adds up the terms of each node, in order of nodes.
func merge(terms []term) []term {
	slices.SortStableFunc(terms, func(x, y term) int { return cmp.Compare(x.node, y.node) })
	merged := terms[:0]
	for _, t := range terms {
		if last := len(merged) - 1; last >= 0 && merged[last].node == t.node {
			merged[last].weight += t.weight
		} else {
			merged = append(merged, t)
		}
	}
	return merged
}
