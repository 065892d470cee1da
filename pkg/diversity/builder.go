package diversity

import "github.com/spawnwright/spawnwright/pkg/pedigree"

// builder finds which animals, groups and sources belong into a tree.
type builder struct {
	p         *pedigree.Pedigree
	levels    [][]int32  // animals by generation
	wanted    []bool     // by animal
	parents   [][2]int32 // by animal: an animal, none, or none - 1 - group
	from      [][2]int32 // by animal: source, or none
	known     map[string]int32
	members   []pedigree.Parent // by group
	lastLevel []int             // by group: the highest generation of its candidates
	sources   []source
}

func newBuilder(p *pedigree.Pedigree) *builder {
	return &builder{
		p: p, known: map[string]int32{},
		wanted: make([]bool, p.Len()), parents: make([][2]int32, p.Len()), from: make([][2]int32, p.Len()),
	}
}

// collect marks the animals and their ancestors, those of the last generation
// first.
func (b *builder) collect(animals []int) {
	for _, i := range animals {
		b.p.ID(i) // panics when there is no such animal
		b.wanted[i] = true
	}
	for i := range b.p.Len() {
		generation := b.p.Generation(i)
		for len(b.levels) <= generation {
			b.levels = append(b.levels, nil)
		}
		b.levels[generation] = append(b.levels[generation], int32(i))
	}
	for l := len(b.levels) - 1; l >= 0; l-- {
		for _, i := range b.levels[l] {
			if b.wanted[i] {
				sire, dam := b.p.Parents(int(i))
				b.parents[i] = [2]int32{b.want(sire), b.want(dam)}
				b.from[i] = [2]int32{b.sourceOf(sire), b.sourceOf(dam)}
			}
		}
	}
}

// want marks the animals that a parent may be and gives its reference.
func (b *builder) want(parent pedigree.Parent) int32 {
	if !parent.Known {
		return none
	}
	for _, c := range parent.Candidates {
		b.wanted[c.Animal] = true
	}
	if parent.Group == "" {
		return int32(parent.Candidates[0].Animal)
	}
	g, known := b.known[parent.Group]
	if !known {
		g = int32(len(b.members))
		b.known[parent.Group] = g
		b.members = append(b.members, parent)
		last := 0
		for _, c := range parent.Candidates {
			last = max(last, b.p.Generation(c.Animal))
		}
		b.lastLevel = append(b.lastLevel, last)
	}
	return none - 1 - g
}

func (b *builder) sourceOf(parent pedigree.Parent) int32 {
	if parent.Group == "" || parent.Kind != pedigree.Source {
		return none
	}
	s, known := b.known[parent.Group]
	if !known {
		s = int32(len(b.sources))
		b.known[parent.Group] = s
		b.sources = append(b.sources, source{parent.Group, parent.Kinship})
	}
	return s
}
