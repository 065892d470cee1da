package pedigree

import "math"

// Range gives the least and the greatest inbreeding coefficient that animal i can
// have, over all ways in which its parents and ancestors could have been, where
// [Pedigree.Inbreeding] is their mean by probability. They are the same when no
// [Group] of candidates stands in the ancestry.
//
// Every way is computed by itself. ok is false, and the range is not known, when
// the number of ways times that of the ancestors is above a million.
func (p *Pedigree) Range(i int) (low, high float64, ok bool) {
	if !p.Uncertain(i) {
		f := p.Inbreeding(i)
		return f, f, true
	}
	w := p.ways(i)
	animal := w.place[p.node(i)]
	return w.span(func(g *graph) float64 { return g.familyOf(animal).f })
}

// KinshipRange gives the least and the greatest kinship that animals i and j can
// have, over all ways in which their parents and ancestors could have been, as
// [Pedigree.Range] does for the inbreeding coefficient.
func (p *Pedigree) KinshipRange(i, j int) (low, high float64, ok bool) {
	if !p.Uncertain(i) && !p.Uncertain(j) {
		f := p.Kinship(i, j)
		return f, f, true
	}
	w := p.ways(i, j)
	a, b := w.place[p.node(i)], w.place[p.node(j)]
	return w.span(func(g *graph) float64 {
		if a == b {
			return g.self[a]
		}
		return newWalker(g.len()).cross(g, []term{{a, 1}}, []term{{b, 1}})
	})
}

// ways are all ways in which some animals and their ancestors could have been.
type ways struct {
	place   map[int32]int32 // in the graph, by node of the pedigree
	graph   graph           // parents only; those that are open are set way by way
	choices []choice
}

// choice is one animal of several, and the places that name it as a parent.
type choice struct {
	candidates []term
	children   []*int32
}

// ways gives the ways of some animals.
func (p *Pedigree) ways(animals ...int) *ways {
	g := &p.graph
	wanted := make([]bool, g.len())
	for _, i := range animals {
		wanted[p.node(i)] = true
	}
	g.markAncestors(wanted)
	w := &ways{place: map[int32]int32{}}
	var nodes []int32
	for k, is := range wanted {
		if is {
			w.place[int32(k)] = int32(len(nodes))
			nodes = append(nodes, int32(k))
		}
	}
	w.place[none] = none
	w.graph.sire, w.graph.dam, w.graph.group = make([]int32, len(nodes)), make([]int32, len(nodes)), make([]int32, len(nodes))
	shared := map[int32]int{}
	for i, k := range nodes {
		w.graph.group[i] = none
		if g.isSource(k) {
			w.graph.group[i] = int32(len(w.graph.groups))
			w.graph.groups = append(w.graph.groups, g.groups[g.group[k]])
		}
		w.link(&w.graph.sire[i], g, g.sire[k], shared)
		w.link(&w.graph.dam[i], g, g.dam[k], shared)
	}
	return w
}

// link sets a parent, or adds it to what is open: to the choice that all young of
// one unknown animal share, or as a choice of its own.
func (w *ways) link(at *int32, g *graph, parent int32, shared map[int32]int) {
	*at = w.place[parent]
	if parent == none || g.group[parent] == none || g.isSource(parent) {
		return
	}
	group := g.groups[g.group[parent]]
	number, known := shared[parent]
	if !known || group.kind == Several {
		number = len(w.choices)
		shared[parent] = number
		w.choices = append(w.choices, choice{candidates: group.terms})
	}
	w.choices[number].children = append(w.choices[number].children, at)
}

// mostWork limits ways times ancestors.
const mostWork = 1_000_000

// span gives the least and the greatest value over all ways.
func (w *ways) span(value func(*graph) float64) (low, high float64, ok bool) {
	work := len(w.graph.sire)
	for _, c := range w.choices {
		if work *= len(c.candidates); work > mostWork {
			return 0, 0, false
		}
	}
	low, high = math.Inf(1), math.Inf(-1)
	w.each(0, func() {
		g := w.graph.bare()
		g.fill(0)
		v := value(&g)
		low, high = min(low, v), max(high, v)
	})
	return low, high, true
}

// each calls f for every way of the choices from one on.
func (w *ways) each(from int, f func()) {
	if from == len(w.choices) {
		f()
		return
	}
	for _, c := range w.choices[from].candidates {
		for _, child := range w.choices[from].children {
			*child = w.place[c.node]
		}
		w.each(from+1, f)
	}
}
