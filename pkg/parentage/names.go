package parentage

import (
	"bytes"
	"hash/maphash"
)

// names gives ids numbers from 0, in the order in which they are first seen, and
// keeps each once.
//
// Ids that differ in the last letter only, such as 1041 and 1042, have slots in
// one or two lines of the processor's cache, for they stand near each other in
// most tables.
type names struct {
	seed  maphash.Seed // differs from run to run, and nothing that is told depends on it
	room  int
	slots []uint64 // hash in the upper half, number + 1 in the lower; 0 is free
	whole []uint32 // number + 1 of the ids that are small whole numbers, by what they are
	bytes []byte   // all ids, one behind the other
	ends  []uint32 // where each ends
}

// newNames has room for about as many ids, and bytes in them, as are expected.
func newNames(expected, length int) *names {
	room := 64
	for room < 2*expected {
		room *= 2
	}
	return &names{
		seed: maphash.MakeSeed(), room: room, whole: make([]uint32, 2*room),
		bytes: make([]byte, 0, length), ends: make([]uint32, 0, expected),
	}
}

func (n *names) len() int { return len(n.ends) }

// id gives the id with a number.
func (n *names) id(number uint32) []byte {
	from := uint32(0)
	if number > 0 {
		from = n.ends[number-1]
	}
	return n.bytes[from:n.ends[number]]
}

// number gives the number of an id, and whether it is a new one.
func (n *names) number(id []byte) (number uint32, fresh bool) {
	if value, ok := n.value(id); ok {
		if n.whole[value] == 0 {
			n.whole[value] = n.add(id) + 1
			fresh = true
		}
		return n.whole[value] - 1, fresh
	}
	if 4*len(n.ends) >= 3*len(n.slots) {
		n.grow()
	}
	hash := n.hash(id)
	slot := n.slot(id, hash)
	if n.slots[slot] == 0 {
		n.slots[slot] = uint64(hash)<<32 | uint64(n.add(id)) + 1
		fresh = true
	}
	return uint32(n.slots[slot]) - 1, fresh
}

// add keeps an id and gives its number.
func (n *names) add(id []byte) uint32 {
	n.bytes = append(n.bytes, id...)
	n.ends = append(n.ends, uint32(len(n.bytes)))
	return uint32(len(n.ends)) - 1
}

// find gives the number of an id, and whether there is one.
func (n *names) find(id []byte) (number uint32, found bool) {
	if value, ok := n.value(id); ok {
		return n.whole[value] - 1, n.whole[value] != 0
	}
	if len(n.slots) == 0 {
		return 0, false
	}
	s := n.slots[n.slot(id, n.hash(id))]
	return uint32(s) - 1, s != 0
}

// value gives the number that an id is, when it is one as programs count animals:
// without a zero before it, and not much above how many there are.
func (n *names) value(id []byte) (value int, ok bool) {
	if id[0] == '0' || len(id) > 9 {
		return 0, false
	}
	for _, c := range id {
		if c < '0' || c > '9' {
			return 0, false
		}
		value = 10*value + int(c-'0')
	}
	return value, value < len(n.whole)
}

// hash mixes all but the last byte, of which half stands in the lowest bits.
func (n *names) hash(id []byte) uint32 {
	last := len(id) - 1
	return uint32(maphash.Bytes(n.seed, id[:last]))&^15 | uint32(id[last])&15
}

// slot gives the slot of an id, or the free one where it belongs.
func (n *names) slot(id []byte, hash uint32) int {
	mask := len(n.slots) - 1
	for slot := int(hash) & mask; ; slot = (slot + 1) & mask {
		s := n.slots[slot]
		if s == 0 || uint32(s>>32) == hash && bytes.Equal(n.id(uint32(s)-1), id) {
			return slot
		}
	}
}

func (n *names) grow() {
	old := n.slots
	n.slots = make([]uint64, max(n.room, 2*len(old)))
	mask := len(n.slots) - 1
	for _, s := range old {
		if s == 0 {
			continue
		}
		slot := int(s>>32) & mask
		for n.slots[slot] != 0 {
			slot = (slot + 1) & mask
		}
		n.slots[slot] = s
	}
}

// strings gives a function for the ids as strings, which share their memory.
func (n *names) strings() func(number uint32) string {
	all := string(n.bytes)
	return func(number uint32) string {
		from := uint32(0)
		if number > 0 {
			from = n.ends[number-1]
		}
		return all[from:n.ends[number]]
	}
}
