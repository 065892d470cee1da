package pedigree

import (
	"cmp"
	"encoding/binary"
	"math"
	"slices"
	"strconv"
)

// Relationship is one way of being related, as in half siblings or first cousins,
// and what it adds to the kinship of two animals A and B.
//
// A path that leads straight up from one animal to the other makes them parent
// and young, grandparent and grandchild, and so on. Every other path turns round
// at an ancestor; the two animals below it, one on either side, are siblings:
//
//   - full siblings when they share both parents, half siblings when one;
//   - A and B themselves, or A and an ancestor of B (uncle or aunt and nephew or
//     niece), or ancestors of both: cousins, first when the siblings are parents,
//     second when the nearer ones are grandparents, once removed for each
//     generation of difference; half cousins when the siblings are half.
//
// Being related in the same way twice makes double cousins; other ways are said to
// hold twice over. A parent that is one of several ([Group]) makes what rests on
// him possible; but all young of one unknown parent share him, whoever he is.
type Relationship struct {
	// Words have the role of A first where the roles differ: "parent and young"
	// when A is the parent. They leave out whether it is only possible.
	Words string
	// UpA and UpB are the steps from A and B up to the ancestors that are shared.
	UpA, UpB int
	// Through are those ancestors, or those that may be, the largest share first;
	// the animal itself when it is an ancestor of the other. The parents that may
	// make half relatives full ones are not among them.
	Through []int
	// Either is set when only one of Through is the ancestor, and it is not known
	// which.
	Either bool
	// Full is set when both parents are shared at the turn.
	Full bool
	// Possible is set when a parent on the way is one of several and the
	// relationship may not be there.
	Possible bool
	// MaybeFull is set for half relatives that may be full ones.
	MaybeFull bool
	Ways      int
	Share     float64 // of the kinship, over all ways
}

// kind is what relationships with the same words have in common.
type kind struct {
	upA, upB            int
	full                bool
	possible, maybeFull bool
	either              bool
}

// relater gathers relationships from paths.
type relater struct {
	lines   *lines
	kinds   map[kind]int // place in found
	found   []Relationship
	through []map[int]float64 // by place in found: shares by animal
	seen    map[string]bool   // ways up to a pair of siblings
}

// add takes a path that is finished. Paths that differ only in the parent through
// which they turn are one way of being related.
func (r *relater) add(w way) {
	key := w.below(r.lines)
	if r.seen[key] {
		return
	}
	r.seen[key] = true
	upA, upB := r.steps(w.a), r.steps(w.b)
	if upA == 0 || upB == 0 {
		top := SharedAncestor{r.lines.animal[w.a.node], w.share(r.lines)}
		r.note(kind{upA: upA, upB: upB, possible: w.chance < 1}, top.Share, 1, top)
		return
	}
	x, y := r.lines.child(w.a), r.lines.child(w.b)
	s := r.lines.siblings(x, y)
	k := s.kind(upA, upB)
	k.possible = k.possible || r.lines.doubt(x) || r.lines.doubt(y)
	r.note(k, x.share*y.share*s.share, x.share*y.share, s.through(k)...)
}

// note adds a way of being related, what it brings, and its ancestors, whose
// shares count so much.
func (r *relater) note(k kind, share, weight float64, through ...SharedAncestor) {
	at, known := r.kinds[k]
	if !known {
		at = len(r.found)
		r.kinds[k] = at
		r.found = append(r.found, Relationship{UpA: k.upA, UpB: k.upB, Full: k.full, Possible: k.possible, MaybeFull: k.maybeFull, Either: k.either})
		r.through = append(r.through, map[int]float64{})
	}
	r.found[at].Ways++
	r.found[at].Share += share
	for _, t := range through {
		r.through[at][t.Animal] += weight * t.Share
	}
}

// relationships gives what was found, the closest first.
func (r *relater) relationships() []Relationship {
	for n := range r.found {
		x := &r.found[n]
		var through []SharedAncestor
		for animal, share := range r.through[n] {
			through = append(through, SharedAncestor{animal, share})
		}
		slices.SortFunc(through, SharedAncestor.compare)
		for _, t := range through {
			x.Through = append(x.Through, t.Animal)
		}
		x.Words = words(x.UpA, x.UpB, x.Full, x.Ways)
	}
	slices.SortStableFunc(r.found, func(x, y Relationship) int {
		return cmp.Or(
			cmp.Compare(x.distance(), y.distance()),
			cmp.Compare(nearly(y.Share), nearly(x.Share)),
			cmp.Compare(x.UpA, y.UpA),
		)
	})
	return r.found
}

// distance is n where one way brings a kinship of (1/2) to the n+1 without
// inbreeding.
func (r Relationship) distance() int {
	if r.Full {
		return r.UpA + r.UpB - 1
	}
	return r.UpA + r.UpB
}

// steps counts the animals below the end of a chain.
func (r *relater) steps(s *step) int { return len(r.lines.animals(s)) - 1 }

// child gives the animal below the end of a chain.
func (l *lines) child(s *step) *step {
	for s = s.before; l.animal[s.node] < 0; {
		s = s.before
	}
	return s
}

// doubt reports whether there is a group on a chain.
func (l *lines) doubt(s *step) bool {
	for ; s != nil; s = s.before {
		if l.animal[s.node] < 0 && len(l.up[s.node]) > 1 {
			return true
		}
	}
	return false
}

// below is a key for the two chains of a path: as they are when one is a single
// animal, otherwise without their common end and the groups right below it.
func (w way) below(l *lines) string {
	straight := w.a.before == nil || w.b.before == nil
	var key []byte
	for _, s := range []*step{w.a, w.b} {
		if !straight {
			s = l.child(s)
		}
		for ; s != nil; s = s.before {
			key = binary.AppendVarint(key, int64(s.node))
			key = append(key, s.side)
		}
		key = binary.AppendVarint(key, none)
	}
	return strconv.FormatBool(straight) + string(key)
}

// nearly makes shares equal that differ by rounding only.
func nearly(x float64) float64 { return math.Round(x*(1<<50)) / (1 << 50) }
