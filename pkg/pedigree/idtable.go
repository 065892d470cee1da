package pedigree

import (
	"hash/maphash"
	"slices"
)

// idTable finds the rows of ids. It keeps rows only, in a table of which a quarter
// or more is free; the ids stand in a list beside it. Nothing depends on the order
// of its slots.
type idTable struct {
	seed  maphash.Seed
	slots []int32 // 1 + row, or 0 when free; as many as a power of 2
}

// grown gives a copy with room for ids, of which those from first on are to be
// added.
func (t idTable) grown(ids []string, first int) idTable {
	size := 4
	for size*3 < len(ids)*4 {
		size *= 2
	}
	if size == len(t.slots) {
		return idTable{t.seed, slices.Clone(t.slots)}
	}
	larger := idTable{maphash.MakeSeed(), make([]int32, size)}
	for row := range first {
		larger.add(ids, row)
	}
	return larger
}

// add enters a row. When another one has the same id already, it gives that and
// enters nothing.
func (t idTable) add(ids []string, row int) (before int, taken bool) {
	slot, taken := t.find(ids, ids[row])
	if taken {
		return int(t.slots[slot]) - 1, true
	}
	t.slots[slot] = int32(row) + 1
	return 0, false
}

// row gives the row of an id.
func (t idTable) row(ids []string, id string) (int, bool) {
	if len(t.slots) == 0 {
		return 0, false
	}
	slot, ok := t.find(ids, id)
	return int(t.slots[slot]) - 1, ok
}

// find gives the slot of an id, or the free one that it would have.
func (t idTable) find(ids []string, id string) (int, bool) {
	mask := uint64(len(t.slots) - 1)
	for slot := maphash.String(t.seed, id) & mask; ; slot = (slot + 1) & mask {
		switch row := t.slots[slot]; {
		case row == 0:
			return int(slot), false
		case ids[row-1] == id:
			return int(slot), true
		}
	}
}
