package pedigree

import "slices"

// Parent is what is known of one parent of an animal. The zero value means that
// nothing is known. Of a parent from a [Source] only Group, Kind and Kinship are.
type Parent struct {
	Known      bool
	Candidates []Share   // one with probability 1, or those of the group in its order
	Group      string    // id of the group; empty when the parent is certain
	Kind       GroupKind // of the group
	Kinship    float64   // of a source: that of two genes drawn from it
}

// Share is an animal and the probability that it is the one.
type Share struct {
	Animal      int
	Probability float64
}

// Parents gives the parents of animal i.
func (p *Pedigree) Parents(i int) (sire, dam Parent) {
	k := p.node(i)
	return p.parent(p.graph.sire[k]), p.parent(p.graph.dam[k])
}

func (p *Pedigree) parent(k int32) Parent {
	if k == none {
		return Parent{}
	}
	if p.graph.group[k] == none {
		return Parent{Known: true, Candidates: []Share{{int(p.rows[k]), 1}}}
	}
	c := p.graph.groups[p.graph.group[k]]
	parent := Parent{Known: c.kind != Source, Group: c.id, Kind: c.kind, Kinship: c.base}
	for _, t := range c.terms {
		parent.Candidates = append(parent.Candidates, Share{int(p.rows[t.node]), t.weight})
	}
	return parent
}

// Ancestors gives the numbers of all animals that i descends from, or may descend
// from through a [Group], in rising order and without i. One pass over all
// animals.
func (p *Pedigree) Ancestors(i int) []int {
	g := &p.graph
	marked := make([]bool, g.len())
	start := p.node(i)
	marked[start] = true
	g.markAncestors(marked)
	return p.marked(marked, start)
}

// Descendants gives the numbers of all animals that descend from i, or may do so
// through a [Group], in rising order and without i. One pass over all animals.
func (p *Pedigree) Descendants(i int) []int {
	g := &p.graph
	marked := make([]bool, g.len())
	start := p.node(i)
	marked[start] = true
	for k := start; int(k) < g.len(); k++ {
		g.above(k, func(parent int32, _ float64) { marked[k] = marked[k] || marked[parent] })
	}
	return p.marked(marked, start)
}

// marked gives the rows of the marked animals but one, in rising order.
func (p *Pedigree) marked(marked []bool, but int32) []int {
	var rows []int
	for k, is := range marked {
		if is && int32(k) != but && p.rows[k] != none {
			rows = append(rows, int(p.rows[k]))
		}
	}
	slices.Sort(rows)
	return rows
}

// Generation gives the number of steps on the longest way up from animal i to an
// animal without known parents, which itself has 0. Through a [Group] the way
// goes to the candidate with the longest.
func (p *Pedigree) Generation(i int) int { return int(p.computed().familyOf(p.node(i)).generation) }

// KnownAncestry gives the share of the genes of animal i that come from known
// founders, from 0 to 1: 1 for an animal without known parents, which is a
// founder itself, otherwise the mean of its parents' values, where an unknown
// parent and one from a [Source] has 0. A [Group] counts with the mean of its
// candidates, by probability. What is not known is taken as unrelated, or as
// the source says: the smaller the value, the less the kinships of i mean.
func (p *Pedigree) KnownAncestry(i int) float64 { return p.computed().familyOf(p.node(i)).known }

// FounderWarning is what every kinship and inbreeding coefficient rests on, to be
// said beside them.
const FounderWarning = "animals without recorded parents count as unrelated, so kinship and inbreeding are lower bounds"

// CompleteGenerations gives the equivalent complete generations known of animal
// i: the sum over all known ancestors of (1/2) to the number of steps up to each
// (Maignel, Boichard and Verrier 1996, Interbull Bulletin 14:49). Two known
// parents of unknown parents give 1. A [Group] counts with the mean of its
// candidates, by probability.
func (p *Pedigree) CompleteGenerations(i int) float64 {
	return p.computed().familyOf(p.node(i)).complete
}

// Uncertain reports whether a [Group] stands anywhere in the ancestry of animal
// i, so that its values are means over several possibilities.
func (p *Pedigree) Uncertain(i int) bool { return p.computed().familyOf(p.node(i)).uncertain }

// measure computes how deep and how certain the ancestry of each family is. A
// group is as deep as its candidates: the step to it is that to the parent.
func (g *graph) measure(first, firstFamily int) {
	for k := range g.firstOfFamilies(first, firstFamily) {
		own := &g.families[g.family[k]]
		step, founder := int32(1), true
		if g.group[k] != none {
			step, founder = 0, false
			own.uncertain = !g.isSource(k)
		}
		g.above(k, func(parent int32, weight float64) {
			if g.isSource(parent) {
				return
			}
			founder = false
			from := g.familyOf(parent)
			own.known += weight * from.known
			own.generation = max(own.generation, from.generation+step)
			own.complete += weight * (from.complete + float64(step))
			own.uncertain = own.uncertain || from.uncertain
		})
		if founder {
			own.known = 1
		}
	}
}

func (g *graph) isSource(k int32) bool {
	return g.group[k] != none && g.groups[g.group[k]].kind == Source
}

// above calls f for each node one step up from k, with the share from there.
func (g *graph) above(k int32, f func(parent int32, weight float64)) {
	if g.group[k] != none {
		for _, c := range g.groups[g.group[k]].terms {
			f(c.node, c.weight)
		}
		return
	}
	if s := g.sire[k]; s != none {
		f(s, 0.5)
	}
	if d := g.dam[k]; d != none {
		f(d, 0.5)
	}
}
