package pairing

import (
	"encoding/binary"
	"hash/fnv"
	"slices"
)

// Plans that are the same but for twins are one plan: what a keeper gains and gives
// up with them is the same. Each is a graph with parents as points and pairs as
// lines; two are alike when the points of one can be put on those of the other, each
// on one that is interchangeable with it, so that line lies on line.

// same reports whether two plans have the same pairings, but for twins.
func (s *search) same(a, b Plan) bool {
	if len(a.Picks) != len(b.Picks) {
		return false
	}
	if s.twins == nil || samePairings(a, b) {
		return samePairings(a, b)
	}
	x, y := options(a), options(b)
	return slices.Equal(s.twins.kinds(x), s.twins.kinds(y)) && s.twins.same(x, y)
}

// kinds gives what kinds of pairs there are, by the classes of the parents or by themselves, in
// order: plans that differ in them are soon told apart.
func (tw *twins) kinds(options []int32) [][2]int32 {
	out := make([][2]int32, len(options))
	for i, p := range options {
		for side, a := range [2]int32{tw.sire[p], tw.dam[p]} {
			if out[i][side] = -1 - a; tw.class[a] >= 0 {
				out[i][side] = tw.class[a]
			}
		}
	}
	slices.SortFunc(out, func(a, b [2]int32) int { return slices.Compare(a[:], b[:]) })
	return out
}

func options(p Plan) []int32 {
	out := make([]int32, len(p.Picks))
	for i, pick := range p.Picks {
		out[i] = int32(pick.Option)
	}
	return out
}

// same tells it of as many options, part by part: whether two parts are alike does not hang on the others, and
// what is like a third is alike.
func (tw *twins) same(a, b []int32) bool {
	left := tw.parts(b)
	for _, part := range tw.parts(a) {
		at := slices.IndexFunc(left, func(other []int32) bool { return tw.samePart(part, other) })
		if at < 0 {
			return false
		}
		left = slices.Delete(left, at, at+1)
	}
	return true
}

// parts takes options apart into those that hang together by their parents, each after
// one that it hangs on.
func (tw *twins) parts(options []int32) [][]int32 {
	var parts [][]int32
	left := slices.Clone(options)
	for len(left) > 0 {
		part := []int32{left[0]}
		left = left[1:]
		for k := 0; k < len(part); k++ {
			var rest []int32
			for _, p := range left {
				if tw.touch(part[k], p) {
					part = append(part, p)
				} else {
					rest = append(rest, p)
				}
			}
			left = rest
		}
		parts = append(parts, part)
	}
	return parts
}

func (tw *twins) touch(p, q int32) bool {
	a, b, c, d := tw.sire[p], tw.dam[p], tw.sire[q], tw.dam[q]
	return a == c || a == d || b == c || b == d
}

// samePart puts one part on another line by line, and takes back what does not go.
func (tw *twins) samePart(part, other []int32) bool {
	if len(part) != len(other) {
		return false
	}
	m := matching{to: make(map[int32]int32), from: make(map[int32]int32), looks: [2]map[int32]uint64{tw.looks(part), tw.looks(other)}}
	taken := make([]bool, len(other))
	var put func(k int) bool
	put = func(k int) bool {
		if k == len(part) {
			return true
		}
		for i, q := range other {
			if taken[i] {
				continue
			}
			p := part[k]
			sires, fit := m.join(tw.sire[p], tw.sire[q])
			if fit {
				dams, fits := m.join(tw.dam[p], tw.dam[q])
				if taken[i] = fits; fits && put(k+1) {
					return true
				}
				taken[i] = false
				m.part(tw.dam[p], dams)
			}
			m.part(tw.sire[p], sires)
		}
		return false
	}
	return put(0)
}

// matching is which point of one part lies on which of another.
type matching struct {
	to, from map[int32]int32
	looks    [2]map[int32]uint64
}

// join puts a on b, and reports whether that is new, and whether it goes.
func (m *matching) join(a, b int32) (anew, fits bool) {
	on, there := m.to[a]
	under, taken := m.from[b]
	switch {
	case there || taken:
		return false, there && taken && on == b && under == a
	case m.looks[0][a] != m.looks[1][b]:
		return false, false
	}
	m.to[a], m.from[b] = b, a
	return true, true
}

// part takes a off again, if it was put there anew.
func (m *matching) part(a int32, anew bool) {
	if anew {
		delete(m.from, m.to[a])
		delete(m.to, a)
	}
}

// looks gives each parent of some options a number that goes by its class, or by itself where
// it has none, and by those of the parents around it, and those around them, and so on. Those that
// differ cannot lie on each other (Weisfeiler and Leman 1968, as told from memory).
func (tw *twins) looks(options []int32) map[int32]uint64 {
	look := make(map[int32]uint64)
	for _, p := range options {
		for _, a := range [2]int32{tw.sire[p], tw.dam[p]} {
			look[a] = uint64(tw.class[a])
			if tw.class[a] < 0 {
				look[a] = 1<<32 + uint64(a)
			}
		}
	}
	for range len(options) {
		around := make(map[int32][]uint64)
		for _, p := range options {
			s, d := tw.sire[p], tw.dam[p]
			around[s] = append(around[s], 2*look[d])
			around[d] = append(around[d], 2*look[s]+1)
		}
		next := make(map[int32]uint64, len(look))
		for a, list := range around {
			slices.Sort(list)
			sum := fnv.New64a()
			for _, x := range append(list, look[a]) {
				sum.Write(binary.LittleEndian.AppendUint64(nil, x))
			}
			next[a] = sum.Sum64()
		}
		look = next
	}
	return look
}
