package pedigree

import "math/bits"

// sweeper computes kinships of a few places, the pivots, to others, their mates:
// one sweep up from the pivots and one down to the mates over the ancestors that
// matter, which are found first. It is K e = T (D (T'e)) on a part of the
// pedigree, for several e together (Colleau 2002, Genetics Selection Evolution
// 34:409; Sargolzaei, Iwaisaki and Colleau 2005, Journal of Animal Breeding and
// Genetics 122:325).
//
// What comes out for a pivot does not depend on which others are swept with it,
// to the bit: what a place gets from one that is no ancestor or descendant is 0.
type sweeper struct {
	r      *reduced
	spots  []spot   // by place
	marks  []uint64 // one bit a place: still to visit
	lowest [4]int32 // place marked so far, by side
	visits []visit  // in falling order of places
	slots  int32    // in use
	values []lane   // by slot; slot 0 is that of unknown parents
}

// spot is what a sweep notes of a place.
type spot struct {
	slot int32 // of the last sweep that came by
	side uint8 // 0 unless it is still to visit
}

// visit is a place that a sweep passes, with the slots of its parents; the sire of
// a group is as in reduced.
type visit struct {
	slot, sire, dam int32
	side            uint8
	own             float64
}

// Whose ancestor a place is; it may be both.
const (
	ofPivot uint8 = 1
	ofMate  uint8 = 2
)

func newSweeper(r *reduced) *sweeper {
	return &sweeper{r: r, spots: make([]spot, len(r.node)), marks: make([]uint64, len(r.node)/64+1), values: make([]lane, 64)}
}

// begin makes ready for marking pivots and mates.
func (s *sweeper) begin() {
	s.visits, s.slots = s.visits[:0], 1
	for side := range s.lowest {
		s.lowest[side] = int32(len(s.spots))
	}
}

// mark notes that a place is to be visited, and gives its slot. A new slot is
// clear.
func (s *sweeper) mark(k int32, side uint8) int32 {
	if k == nowhere {
		return 0
	}
	s.lowest[side] = min(s.lowest[side], k)
	spot := &s.spots[k]
	if spot.side == 0 {
		s.marks[k/64] |= 1 << (k % 64)
		if int(s.slots) == len(s.values) {
			s.values = append(s.values, make([]lane, len(s.values))...)
		}
		spot.slot = s.slots
		s.values[s.slots] = lane{}
		s.slots++
	}
	spot.side |= side
	return spot.slot
}

// sweep computes the kinships of pivots, not more than there are lanes, to the
// places that were marked as mates. Then value gives them.
func (s *sweeper) sweep(pivots []int32) {
	for l, k := range pivots {
		s.values[s.mark(k, ofPivot)][l] = 1
	}
	s.up()
	s.values[0] = lane{}
	s.down()
}

func (s *sweeper) value(mate int32, lane int) float64 { return s.values[s.spots[mate].slot][lane] }

// up visits the places that pivots and mates descend from, youngest first, and
// adds what each has of the pivots to its parents. It leaves out places from
// which on nothing can be in common.
func (s *sweeper) up() {
	for word := len(s.marks) - 1; word >= 0; word-- {
		for s.marks[word] != 0 {
			k := int32(word*64 + bits.Len64(s.marks[word]) - 1)
			s.marks[word] &^= 1 << (k % 64)
			spot := &s.spots[k]
			side := spot.side
			spot.side = 0
			if s.lowest[ofPivot|ofMate] >= k && (side == ofPivot && s.lowest[ofMate] >= k || side == ofMate && s.lowest[ofPivot] >= k) {
				continue
			}
			from := &s.r.above[k]
			v := visit{slot: spot.slot, sire: from.sire, side: side, own: from.own}
			if v.sire >= 0 {
				v.sire, v.dam = s.mark(v.sire, side), s.mark(from.dam, side)
				if side&ofPivot != 0 {
					s.values[v.slot].upHalf(&s.values[v.sire], &s.values[v.dam])
				}
			} else {
				s.upToTerms(&v)
			}
			s.visits = append(s.visits, v)
		}
	}
}

func (s *sweeper) upToTerms(v *visit) {
	for _, t := range s.r.terms[-1-v.sire] {
		to := s.mark(t.node, v.side)
		if v.side&ofPivot != 0 {
			s.values[to].add(t.weight, &s.values[v.slot])
		}
	}
}

// down weights that with what is new in each place, and adds what comes from its
// parents.
func (s *sweeper) down() {
	for i := len(s.visits) - 1; i >= 0; i-- {
		v := &s.visits[i]
		switch {
		case v.side&ofMate == 0: // nothing looks at it again
		case v.sire >= 0:
			s.values[v.slot].downMean(v.own, &s.values[v.sire], &s.values[v.dam])
		default:
			to := &s.values[v.slot]
			to.scale(v.own)
			for _, t := range s.r.terms[-1-v.sire] {
				to.add(t.weight, &s.values[s.spots[t.node].slot])
			}
		}
	}
}
