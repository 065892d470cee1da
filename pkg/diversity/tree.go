package diversity

import "github.com/spawnwright/spawnwright/pkg/pedigree"

// none stands for a parent that is unknown, and for "not in the tree".
const none = -1

// tree is the part of a pedigree above some animals, themselves included, in an
// order that puts parents first. Its nodes are animals and groups.
type tree struct {
	animal    []int32 // number in the pedigree; none for a group
	sire, dam []int32 // nodes; none when unknown, and for groups
	group     []int32 // place in groups; none for an animal
	groups    []group
	node      []int32    // by number of the animal; none when it is not above
	source    [][2]int32 // by node: places in sources of the sire and the dam, or none
	sources   []source
}

// source is where parents come from that are not known.
type source struct {
	id      string
	kinship float64
}

// group is a parent of which only the candidates are known.
type group struct {
	kind  pedigree.GroupKind
	terms []term
}

// term is a node with a weight.
type term struct {
	node   int32
	weight float64
}

// newTree takes the animals and all their ancestors. Two passes over the pedigree.
func newTree(p *pedigree.Pedigree, animals []int) *tree {
	b := newBuilder(p)
	b.collect(animals)
	t := &tree{node: make([]int32, p.Len()), groups: make([]group, len(b.members)), sources: b.sources}
	for i := range t.node {
		t.node[i] = none
	}
	groupNode := make([]int32, len(b.members))
	for generation, level := range b.levels {
		for _, i := range level {
			if b.wanted[i] {
				t.addAnimal(i, b.parents[i], groupNode)
				t.source = append(t.source, b.from[i])
			}
		}
		for g, last := range b.lastLevel {
			if last == generation {
				groupNode[g] = t.addGroup(int32(g), b.members[g])
				t.source = append(t.source, [2]int32{none, none})
			}
		}
	}
	return t
}

func (t *tree) len() int { return len(t.animal) }

func (t *tree) addAnimal(i int32, parents [2]int32, groupNode []int32) {
	at := func(ref int32) int32 {
		switch {
		case ref == none:
			return none
		case ref < none:
			return groupNode[none-1-ref]
		}
		return t.node[ref]
	}
	t.node[i] = int32(t.len())
	t.add(i, at(parents[0]), at(parents[1]), none)
}

func (t *tree) addGroup(g int32, members pedigree.Parent) int32 {
	t.groups[g].kind = members.Kind
	for _, c := range members.Candidates {
		t.groups[g].terms = append(t.groups[g].terms, term{t.node[c.Animal], c.Probability})
	}
	t.add(none, none, none, g)
	return int32(t.len() - 1)
}

func (t *tree) add(animal, sire, dam, group int32) {
	t.animal = append(t.animal, animal)
	t.sire = append(t.sire, sire)
	t.dam = append(t.dam, dam)
	t.group = append(t.group, group)
}

// up adds what node k holds to the nodes one step up; what goes to an unknown
// parent is lost.
func (t *tree) up(v []float64, k int32) {
	t.above(k, func(parent int32, weight float64) { v[parent] += v[k] * weight })
}

// above calls f for each node one step up from k, with the share from there.
func (t *tree) above(k int32, f func(parent int32, weight float64)) {
	if t.group[k] != none {
		for _, c := range t.groups[t.group[k]].terms {
			f(c.node, c.weight)
		}
		return
	}
	if s := t.sire[k]; s != none {
		f(s, 0.5)
	}
	if d := t.dam[k]; d != none {
		f(d, 0.5)
	}
}

// founders calls f for each founder of which node k has genes directly, with the
// share of k's genes.
func (t *tree) founders(k int32, f func(founder Founder, share float64)) {
	i := int(t.animal[k])
	switch sire, dam := t.sire[k], t.dam[k]; {
	case t.group[k] != none:
	case sire == none && dam == none:
		f(Founder{Animal: i, Role: Itself}, 1)
	case sire == none:
		f(Founder{Animal: i, Role: UnknownSire}, 0.5)
	case dam == none:
		f(Founder{Animal: i, Role: UnknownDam}, 0.5)
	}
}
