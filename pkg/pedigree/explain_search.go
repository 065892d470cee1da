package pedigree

import (
	"cmp"
	"container/heap"
)

// search gives the ways by which two animals are related, the strongest first. A
// way that is not finished is ranked by the best that can come of it, which the
// table of pairs knows exactly, so that nothing is followed in vain.
type search struct {
	table *pairTable
	open  []way
	count int
}

// way is where the two genes are and how they came there.
type way struct {
	a, b   *step
	chance float64 // of the candidates on the way
	halves int     // steps up so far, from both animals
	moves  int     // and those from a group to a candidate
	best   float64 // the share that the best end brings
	number int     // of ways that are equal otherwise the first found comes first
}

// step is a place on a chain that leads down to one of the two animals.
type step struct {
	node   int32
	side   uint8   // of the edge that led here
	share  float64 // of the animal's genes that comes from here by this chain
	before *step
}

func newSearch(t *pairTable) *search {
	l := t.lines
	s := &search{table: t}
	s.push(way{a: &step{node: l.a, share: 1}, b: &step{node: l.b, share: 1}, chance: 1, best: t.best(l.a, l.b)})
	return s
}

func (s *search) push(w way) {
	if w.best > 0 {
		s.count++
		w.number = s.count
		heap.Push(s, w)
	}
}

// next gives the strongest way that was not given yet, which ends in an animal.
func (s *search) next() (way, bool) {
	l := s.table.lines
	for len(s.open) > 0 {
		w := heap.Pop(s).(way)
		if w.a.node == w.b.node && l.kind[w.a.node] == lineAnimal {
			return w, true
		}
		l.moves(w.a.node, w.b.node, func(toA, toB *edge, weight float64) { s.push(s.on(w, toA, toB, weight)) })
	}
	return way{}, false
}

// on moves a way on.
func (s *search) on(w way, toA, toB *edge, weight float64) way {
	l := s.table.lines
	next := w
	if toA != nil {
		next.a = &step{toA.to, toA.side, w.a.share * toA.weight, w.a}
	}
	if toB != nil {
		next.b = &step{toB.to, toB.side, w.b.share * toB.weight, w.b}
	}
	next.moves++
	if moved := max(w.a.node, w.b.node); l.kind[moved] == lineAnimal {
		next.halves++
	} else {
		next.chance *= weight
	}
	next.best = next.soFar() * s.table.best(next.a.node, next.b.node)
	return next
}

// soFar gives the chance of the way up to here.
func (w way) soFar() float64 {
	x := w.chance
	for range w.halves {
		x /= 2
	}
	return x
}

// share gives what a finished way adds to the kinship.
func (w way) share(l *lines) float64 { return w.soFar() * l.self[w.a.node] }

func (s *search) Len() int      { return len(s.open) }
func (s *search) Swap(i, j int) { s.open[i], s.open[j] = s.open[j], s.open[i] }
func (s *search) Push(x any)    { s.open = append(s.open, x.(way)) }

func (s *search) Less(i, j int) bool {
	x, y := s.open[i], s.open[j]
	return cmp.Or(
		cmp.Compare(y.best, x.best),
		cmp.Compare(y.moves, x.moves), // finish one before beginning all that are as good
		cmp.Compare(x.number, y.number),
	) < 0
}

func (s *search) Pop() any {
	last := len(s.open) - 1
	x := s.open[last]
	s.open = s.open[:last]
	return x
}
