package pedigree

import (
	"cmp"
	"slices"
)

// lines are the ancestors of two animals, with the groups and the sources between
// them, in an order that puts parents first.
type lines struct {
	a, b   int32 // nodes of the two
	animal []int // number in the pedigree; -1 for a group or a source
	up     [][]edge
	kind   []lineKind
	self   []float64 // kinship of an animal with itself, or of two draws from a source
	id     []string  // of a group or a source
}

// edge leads one step up: from an animal to a parent, or from a group to one of
// its candidates.
type edge struct {
	to     int32
	weight float64 // share of the genes
	side   uint8   // 0 sire, 1 dam; the candidate's place in a group
}

type lineKind uint8

const (
	lineAnimal lineKind = iota
	lineOne             // a group that is one animal
	lineSeveral
	lineSource
)

// lineNode is a node before it has its place in the order.
type lineNode struct {
	generation, animal int
	group              Parent
}

func newLines(p *Pedigree, i, j int) *lines {
	nodes, parents := gather(p, i, j)
	slices.SortFunc(nodes, func(x, y lineNode) int {
		return cmp.Or(
			cmp.Compare(x.generation, y.generation),
			cmp.Compare(min(y.animal, 0), min(x.animal, 0)), // animals before groups
			cmp.Compare(x.animal, y.animal),
			cmp.Compare(x.group.Group, y.group.Group),
		)
	})
	l := &lines{}
	animals, groups := map[int]int32{}, map[string]int32{}
	for k, n := range nodes {
		if n.animal >= 0 {
			animals[n.animal] = int32(k)
			l.addAnimal(p, n.animal, parents[n.animal], animals, groups)
		} else {
			groups[n.group.Group] = int32(k)
			l.addGroup(n.group, animals)
		}
	}
	l.a, l.b = animals[i], animals[j]
	return l
}

// gather finds the nodes above two animals.
func gather(p *Pedigree, i, j int) (nodes []lineNode, parents map[int][2]Parent) {
	parents = map[int][2]Parent{}
	groups := map[string]bool{}
	left := []int{i, j}
	for len(left) > 0 {
		animal := left[len(left)-1]
		left = left[:len(left)-1]
		if _, known := parents[animal]; known {
			continue
		}
		sire, dam := p.Parents(animal)
		parents[animal] = [2]Parent{sire, dam}
		nodes = append(nodes, lineNode{generation: p.Generation(animal), animal: animal})
		for _, parent := range parents[animal] {
			last := -1
			for _, c := range parent.Candidates {
				left = append(left, c.Animal)
				last = max(last, p.Generation(c.Animal))
			}
			if parent.Group != "" && !groups[parent.Group] {
				groups[parent.Group] = true
				nodes = append(nodes, lineNode{last, -1, parent})
			}
		}
	}
	return nodes, parents
}

func (l *lines) addAnimal(p *Pedigree, animal int, parents [2]Parent, animals map[int]int32, groups map[string]int32) {
	var up []edge
	for side, parent := range parents {
		switch {
		case parent.Group != "":
			up = append(up, edge{groups[parent.Group], 0.5, uint8(side)})
		case parent.Known:
			up = append(up, edge{animals[parent.Candidates[0].Animal], 0.5, uint8(side)})
		}
	}
	l.add(animal, lineAnimal, up, (1+p.Inbreeding(animal))/2, "")
}

func (l *lines) addGroup(group Parent, animals map[int]int32) {
	var up []edge
	for place, c := range group.Candidates {
		up = append(up, edge{animals[c.Animal], c.Probability, uint8(min(place, 255))})
	}
	kind := map[GroupKind]lineKind{OneUnknown: lineOne, Several: lineSeveral, Source: lineSource}[group.Kind]
	l.add(-1, kind, up, group.Kinship, group.Group)
}

func (l *lines) add(animal int, kind lineKind, up []edge, self float64, id string) {
	l.animal = append(l.animal, animal)
	l.kind = append(l.kind, kind)
	l.up = append(l.up, up)
	l.self = append(l.self, self)
	l.id = append(l.id, id)
}

// moves calls f for each way on of two genes that have not met in an animal or in
// a source: the one in the younger node moves up, so that no way is missed.
func (l *lines) moves(a, b int32, f func(toA, toB *edge, weight float64)) {
	switch {
	case a == b && l.kind[a] == lineOne:
		for n := range l.up[a] {
			f(&l.up[a][n], &l.up[a][n], l.up[a][n].weight)
		}
	case a == b && l.kind[a] == lineSeveral:
		for n := range l.up[a] {
			for m := range l.up[a] {
				f(&l.up[a][n], &l.up[a][m], l.up[a][n].weight*l.up[a][m].weight)
			}
		}
	case a == b: // met
	case a > b:
		for n := range l.up[a] {
			f(&l.up[a][n], nil, l.up[a][n].weight)
		}
	default:
		for n := range l.up[b] {
			f(nil, &l.up[b][n], l.up[b][n].weight)
		}
	}
}
