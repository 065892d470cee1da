package pairing

import (
	"math"
	"slices"
)

// twins are the parents that are interchangeable: the same kinships, limits and pairings,
// so that a plan with two of them exchanged is as good and as much allowed. Young of
// the same parents are often such, and so are all the animals of a new room. Of plans
// that are the same but for twins one has to be looked at (Ostrowski and others
// 2011, Mathematical Programming 126:147). Only pairs are gone into, not groups.
type twins struct {
	*pairs
	classes [][]int32 // parents that are interchangeable, where there are several
	class   []int32   // of each parent: place in classes, or -1
}

// exchange is a permutation of the parents: each pair is swapped.
type exchange [][2]int32

func (x exchange) of(a int32) int32 {
	for _, s := range x {
		switch a {
		case s[0]:
			return s[1]
		case s[1]:
			return s[0]
		}
	}
	return a
}

// newTwins gives nil when no two parents are interchangeable.
func newTwins(s *search) *twins {
	if s.pairs == nil {
		return nil
	}
	tw := &twins{pairs: s.pairs, class: make([]int32, len(s.scoring.kin))}
	var all [][]int32
	for a := range int32(len(tw.of)) {
		c := slices.IndexFunc(all, func(class []int32) bool { return tw.alike(s, class[0], a) })
		if c < 0 {
			all = append(all, []int32{a})
		} else {
			all[c] = append(all[c], a)
		}
	}
	for _, class := range all {
		at := int32(-1)
		if len(class) > 1 {
			at = int32(len(tw.classes))
			tw.classes = append(tw.classes, class)
		}
		for _, a := range class {
			tw.class[a] = at
		}
	}
	if len(tw.classes) == 0 {
		return nil
	}
	return tw
}

// image gives the option that an exchange makes of p, or -1.
func (tw *twins) image(x exchange, p int32) int32 {
	return tw.at[x.of(tw.sire[p])][x.of(tw.dam[p])]
}

// exchangeable is by how much kinships and the costs of a plan may differ by the rounding of
// sums: far less than a plan has to be better to count.
const exchangeable = 1e-13

// alike reports whether two parents are interchangeable.
func (tw *twins) alike(s *search, a, b int32) bool {
	if len(tw.of[a]) != len(tw.of[b]) {
		return false
	}
	sc := s.scoring
	young := float64(s.young)
	near := func(x, y, times float64) bool { return math.Abs(x-y)*times <= exchangeable }
	if !near(sc.kin[a][a], sc.kin[b][b], young*young) {
		return false
	}
	for c := range sc.kin {
		if c := int32(c); c != a && c != b && !near(sc.kin[a][c], sc.kin[b][c], young*young) {
			return false
		}
	}
	x := exchange{{a, b}}
	to := make(map[int]int) // limits that are exchanged as well
	for _, p := range tw.of[a] {
		q := tw.image(x, p)
		if q < 0 || s.least[p] != s.least[q] || s.most[p] != s.most[q] ||
			!near(sc.lin[p], sc.lin[q], young) || !near(sc.square[p], sc.square[q], young*young) ||
			!s.exchanges(to, s.limitsOf[p], s.limitsOf[q]) || !s.exchanges(to, s.limitsOf[q], s.limitsOf[p]) {
			return false
		}
	}
	for l, other := range to {
		if l != other && len(s.limits[l].options) != tw.touched(s.limits[l].options, a, b) {
			return false
		}
	}
	return true
}

// touched counts the options of one of two parents.
func (tw *twins) touched(options []int32, a, b int32) int {
	n := 0
	for _, p := range options {
		if s, d := tw.sire[p], tw.dam[p]; s == a || s == b || d == a || d == b {
			n++
		}
	}
	return n
}

// exchanges notes which limits of an option become which of another, at most one that is not
// its own, and reports whether that goes with what was noted before.
func (s *search) exchanges(to map[int]int, limits, others []int) bool {
	var from, into []int
	note := func(l, other int) bool {
		before, known := to[l]
		to[l] = other
		return !known || before == other
	}
	for _, l := range limits {
		switch {
		case !slices.Contains(others, l):
			from = append(from, l)
		case !note(l, l):
			return false
		}
	}
	for _, l := range others {
		if !slices.Contains(limits, l) {
			into = append(into, l)
		}
	}
	if len(from) != len(into) || len(from) > 1 {
		return false
	}
	if len(from) == 0 {
		return true
	}
	one, other := &s.limits[from[0]], &s.limits[into[0]]
	return one.least == other.least && one.most == other.most && len(one.options) == len(other.options) && note(from[0], into[0])
}
