package diversity

import (
	"github.com/spawnwright/spawnwright/pkg/internal/genepair"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// PartialInbreeding splits the mean inbreeding coefficient of the animals over
// the founders whose genes they are homozygous for by descent; of a single animal
// with one number in animals (Lacy, Alaks and Walsh 1996, Conservation Biology
// 10:1053). The shares add up to the mean of [pedigree.Pedigree.Inbreeding]:
// unknown parents are founders too, and genes that were one in a source already
// come from [OneSource]. Founders with a share above 0 are listed, by number. With
// groups in the ancestry it is the exact expectation.
//
// Two genes are followed from the parents of each animal up to where they are
// one: the same gene with chance 1/2, and from there by halves to the founders.
// Time and memory grow with the number of pairs of ancestors.
func PartialInbreeding(p *pedigree.Pedigree, animals []int) Contributions {
	t := newTree(p, animals)
	m := meeting{
		tree: t, pairs: genepair.New(t.len()),
		met: make([]float64, t.len()), metBefore: make([]float64, len(t.sources)),
	}
	for _, i := range animals {
		m.addParents(t.node[i], 1/float64(len(animals)))
	}
	for k := int32(t.len() - 1); k >= 0; k-- {
		m.expand(k)
	}
	split := t.collect(m.met)
	for s, share := range m.metBefore {
		if share > 0 {
			split = append(split, Contribution{Founder{Animal: -1, Role: OneSource, Source: t.sources[s].id}, share})
		}
	}
	split.sort()
	return split
}

// meeting follows pairs of genes up the tree.
type meeting struct {
	tree  *tree
	pairs genepair.Pairs
	met   []float64 // by node: the chance that both are one gene there

	metBefore []float64 // by source: the chance that both are one gene in it
}

// add notes a pair; a source counts as a node, below none.
func (m *meeting) add(a, b int32, chance float64) {
	switch {
	case a == none || b == none:
	case max(a, b) > none:
		m.pairs.Add(a, b, chance)
	case a == b:
		s := none - 1 - a
		m.metBefore[s] += chance * m.tree.sources[s].kinship
	}
}

// parents gives the nodes from which an animal has its genes.
func (m *meeting) parents(k int32) (sire, dam int32) {
	from := func(parent, source int32) int32 {
		if source != none {
			return none - 1 - source
		}
		return parent
	}
	return from(m.tree.sire[k], m.tree.source[k][0]), from(m.tree.dam[k], m.tree.source[k][1])
}

func (m *meeting) addParents(k int32, chance float64) {
	sire, dam := m.parents(k)
	m.add(sire, dam, chance)
}

// expand moves on all pairs of which k is the younger node.
func (m *meeting) expand(k int32) {
	for _, pair := range m.pairs.Take(k) {
		switch {
		case pair.Node != k && m.tree.group[k] != none:
			m.tree.above(k, func(parent int32, weight float64) { m.add(parent, pair.Node, pair.Chance*weight) })
		case pair.Node != k:
			sire, dam := m.parents(k)
			m.add(sire, pair.Node, pair.Chance/2)
			m.add(dam, pair.Node, pair.Chance/2)
		case m.tree.group[k] != none:
			m.draw(m.tree.groups[m.tree.group[k]], pair.Chance)
		default:
			m.met[k] += pair.Chance / 2
			m.addParents(k, pair.Chance/2)
		}
	}
}

// draw moves a pair of which both genes are in a group.
func (m *meeting) draw(g group, chance float64) {
	candidate := func(i int) (int32, float64) { return g.terms[i].node, g.terms[i].weight }
	genepair.Draw(len(g.terms), candidate, g.kind == pedigree.OneUnknown, chance, m.add)
}
