package pedigree

import (
	"cmp"
	"slices"
)

// Explanation says why two animals are related: through whom, by which ways up
// and down the pedigree, and in words.
type Explanation struct {
	A, B    int
	Kinship float64
	// Ancestors are those of [Pedigree.SharedAncestors], in that order, with
	// their paths. Their shares, those of Sources, and Beyond add up to Kinship,
	// to the rounding of the last digits.
	Ancestors []ExplainedAncestor
	// Sources are those from which parents of both come, by id: a part of the
	// kinship that no animal stands for.
	Sources []SharedSource
	// Beyond is the part that comes through ancestors too far up: 0 unless there
	// are more than 500,000 pairs of ancestors, of which those of the latest
	// generations are looked at.
	Beyond float64
	// Relationships are what the paths mean, the closest first. See
	// [Explanation.Words].
	Relationships []Relationship
	// Unnamed is the part of Kinship that no relationship and no source stands
	// for: 0 but for rounding, unless the paths are too many to look at all.
	Unnamed float64
}

// ExplainedAncestor is an animal through which two others are related.
type ExplainedAncestor struct {
	SharedAncestor
	// PathCount is how many paths lead through it, or 1<<64 - 1 if more.
	PathCount uint64
	// Paths are the strongest of them, the strongest first: all, unless there are
	// fewer than PathCount.
	Paths []Path
}

// Path is a way by which one gene can have come down to both animals.
type Path struct {
	// Up leads from animal A to the ancestor and Down from there to B, both with
	// their ends. They have nothing but the ancestor in common. Up is only A
	// itself when B descends from A.
	Up, Down []int
	// Chance is below 1 when a parent on the way is one of several.
	Chance float64
	// Share is what the path adds to the kinship: (1/2) to the number of steps,
	// times Chance, times the ancestor's kinship to itself.
	Share float64
}

// SharedSource is a [Source] from which two animals have parents, and what that
// adds to their kinship.
type SharedSource struct {
	ID    string
	Share float64
}

// Explain explains the kinship of animals i and j. At most so many paths are
// listed as paths says, the strongest over all ancestors; PathCount tells how
// many there are, which may be very many. For the relationships at least 1,000
// paths are looked at, listed or not.
//
// It panics when paths is negative. Time and memory grow with the number of pairs
// of ancestors, up to the limit that Beyond speaks of.
func (p *Pedigree) Explain(i, j, paths int) Explanation {
	if paths < 0 {
		panic("pedigree: a negative number of paths")
	}
	l := newLines(p, i, j)
	table := newPairTable(l)
	table.fill()
	e := Explanation{A: i, B: j, Kinship: p.Kinship(i, j)}
	for _, met := range table.met {
		a := SharedAncestor{Animal: l.animal[met.node], Share: met.chance * l.self[met.node]}
		e.Ancestors = append(e.Ancestors, ExplainedAncestor{SharedAncestor: a, PathCount: met.ways})
	}
	slices.SortFunc(e.Ancestors, func(x, y ExplainedAncestor) int { return x.compare(y.SharedAncestor) })
	for _, from := range table.from {
		e.Sources = append(e.Sources, SharedSource{ID: l.id[from.node], Share: from.chance * l.self[from.node]})
	}
	if table.cut {
		e.Beyond = e.Kinship - e.explained()
	}
	e.follow(table, paths)
	e.Unnamed = e.unnamed()
	return e
}

// follow lists the strongest paths and finds what they mean.
func (e *Explanation) follow(t *pairTable, paths int) {
	l := t.lines
	place := map[int]int{}
	for at, a := range e.Ancestors {
		place[a.Animal] = at
	}
	r := relater{lines: l, kinds: map[kind]int{}, seen: map[string]bool{}}
	search := newSearch(t)
	for found := range max(paths, relationshipPaths) {
		way, ok := search.next()
		if !ok {
			break
		}
		r.add(way)
		if found < paths {
			a := &e.Ancestors[place[l.animal[way.a.node]]]
			a.Paths = append(a.Paths, l.path(way))
		}
	}
	e.Relationships = r.relationships()
}

// explained sums up ancestors and sources.
func (e Explanation) explained() (sum float64) {
	for _, a := range e.Ancestors {
		sum += a.Share
	}
	for _, s := range e.Sources {
		sum += s.Share
	}
	return sum
}

// unnamed gives what relationships and sources leave.
func (e Explanation) unnamed() float64 {
	rest := e.Kinship
	for _, x := range e.Relationships {
		rest -= x.Share
	}
	for _, s := range e.Sources {
		rest -= s.Share
	}
	return rest
}

// relationshipPaths is how many paths are looked at for the relationships.
const relationshipPaths = 1000

// compare puts the largest share first, equal ones by number.
func (s SharedAncestor) compare(t SharedAncestor) int {
	return cmp.Or(cmp.Compare(t.Share, s.Share), cmp.Compare(s.Animal, t.Animal))
}

// path writes a way out in animals.
func (l *lines) path(w way) Path {
	up, down := l.animals(w.a), l.animals(w.b)
	slices.Reverse(up)
	return Path{Up: up, Down: down, Chance: w.chance, Share: w.share(l)}
}

// animals gives the animals of a chain, the ancestor first.
func (l *lines) animals(s *step) (all []int) {
	for ; s != nil; s = s.before {
		if l.animal[s.node] >= 0 {
			all = append(all, l.animal[s.node])
		}
	}
	return all
}
