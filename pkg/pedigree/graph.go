package pedigree

// graph is the pedigree in an order that puts parents before children. Its
// nodes are animals and groups: what an animal has of its ancestors comes half
// through its sire node and half through its dam node, what a group has comes
// from its candidates by their shares.
type graph struct {
	sire, dam []int32 // parents of an animal; none when unknown, and for groups
	group     []int32 // place in groups; none for an animal
	groups    []candidates

	self []float64 // kinship of each node to itself, the diagonal of K
	own  []float64 // what is new in each node, the diagonal of D

	family   []int32 // of each node
	families []family
}

// candidates are a group: nodes of animals and their probabilities.
type candidates struct {
	id    string
	kind  GroupKind
	terms []term  // none for a Source
	base  float64 // kinship of a Source
}

// term is a node with a weight.
type term struct {
	node   int32
	weight float64
}

func newGraph(l *links, order []int) graph {
	n := len(order)
	node := make([]int32, n)
	for k, place := range order {
		node[place] = int32(k)
	}
	at := func(place int) int32 {
		if place == none {
			return none
		}
		return node[place]
	}
	g := graph{
		sire: make([]int32, n), dam: make([]int32, n), group: make([]int32, n),
		self: make([]float64, n), own: make([]float64, n), family: make([]int32, n),
	}
	for k, place := range order {
		g.sire[k], g.dam[k], g.group[k] = none, none, none
		if place < l.records {
			g.sire[k], g.dam[k] = at(l.parents[place][0]), at(l.parents[place][1])
			continue
		}
		from := place - l.records
		c := candidates{id: l.groups[from].ID, kind: l.groups[from].Kind, base: l.groups[from].Kinship}
		for i, share := range l.groups[from].shares() {
			c.terms = append(c.terms, term{at(l.members[from][i]), share})
		}
		g.group[k] = int32(len(g.groups))
		g.groups = append(g.groups, c)
	}
	return g
}

func (g *graph) familyOf(k int32) *family { return &g.families[g.family[k]] }

func (g *graph) len() int { return len(g.sire) }

// times replaces v with K v.
func (g *graph) times(v []float64) { g.sweep(v, g.len()-1, g.len()-1) }

// sweep replaces v, which is 0 after node from, with K v up to node to, in three
// passes (Colleau 2002, Genetics Selection Evolution 34:409): what the nodes hold
// goes up to their ancestors, is weighted with what is new in each, and comes
// down again.
func (g *graph) sweep(v []float64, from, to int) {
	for k := from; k >= 0; k-- {
		if v[k] != 0 {
			g.up(v, k)
			v[k] *= g.own[k] // nothing comes up to k any more
		}
	}
	for k := range v[:to+1] {
		v[k] += g.down(v, k)
	}
}

// up adds what node k holds to the nodes one step up.
func (g *graph) up(v []float64, k int) {
	if g.group[k] != none {
		for _, c := range g.groups[g.group[k]].terms {
			v[c.node] += v[k] * c.weight
		}
		return
	}
	if s := g.sire[k]; s != none {
		v[s] += v[k] / 2
	}
	if d := g.dam[k]; d != none {
		v[d] += v[k] / 2
	}
}

// down gives what node k has from the nodes one step up.
func (g *graph) down(v []float64, k int) (sum float64) {
	if s := g.sire[k]; s != none {
		sum = v[s]
	}
	if d := g.dam[k]; d != none {
		sum += v[d]
	}
	sum /= 2
	if g.group[k] != none {
		for _, c := range g.groups[g.group[k]].terms {
			sum += v[c.node] * c.weight
		}
	}
	return sum
}
