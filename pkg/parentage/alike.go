package parentage

import (
	"bytes"
	"unicode"
	"unicode/utf8"
)

// checkAlike notes ids that differ only in case or blanks, each once with the
// first that it is like.
func (r *reader) checkAlike() {
	if r.kinds&special == 0 && r.kinds&(small|capital) != small|capital {
		return // without blanks and in one case there are none
	}
	var keyed []uint32 // ids that are not their own key
	var key []byte
	for number := range uint32(r.names.len()) {
		if key = appendKey(key[:0], r.names.id(number)); len(key) > 0 {
			keyed = append(keyed, number)
		}
	}
	if len(keyed) == 0 {
		return
	}
	plain := len(keyed) < r.names.len()
	firsts := newFirsts(r.names, len(keyed))
	partner := make(map[uint32]uint32) // by the one that comes later
	for _, number := range keyed {
		key = appendKey(key[:0], r.names.id(number))
		like := firsts.of(key, number)
		if like == number && plain {
			if own, ok := r.names.find(key); ok {
				like = own
			}
		}
		if like != number {
			partner[max(like, number)] = min(like, number)
		}
	}
	r.tellAlike(partner)
}

// tellAlike goes through the rows for the places.
func (r *reader) tellAlike(partner map[uint32]uint32) {
	if len(partner) == 0 {
		return
	}
	for _, a := range r.animals {
		for _, number := range [3]uint32{a.id, a.sire, a.dam} {
			other, ok := partner[number]
			if !ok {
				continue
			}
			delete(partner, number)
			r.alike.addLine(a.line, "give one animal one spelling", "%s and %s differ only in case or blanks and count as two animals",
				quoted(r.names.id(other)), quoted(r.names.id(number)))
		}
	}
}

// appendKey appends an id in small letters and without blanks and marks that
// cannot be seen, or nothing when that changes nothing.
func appendKey(key, id []byte) []byte {
	at := 0
	for at < len(id) && keepsItself[id[at]] {
		at++
	}
	if at == len(id) {
		return key
	}
	key = append(key, id[:at]...)
	for at < len(id) {
		c := id[at]
		if c >= utf8.RuneSelf {
			return appendKeyUnicode(key[:0], id)
		}
		if c != ' ' {
			if 'A' <= c && c <= 'Z' {
				c += 'a' - 'A'
			}
			key = append(key, c)
		}
		at++
	}
	return key
}

// keepsItself has the ASCII characters that stand in keys as they are.
var keepsItself = func() (is [256]bool) {
	for c := ' ' + 1; c < utf8.RuneSelf; c++ {
		is[c] = c < 'A' || c > 'Z'
	}
	return is
}()

func appendKeyUnicode(key, id []byte) []byte {
	for _, c := range string(id) {
		if !unicode.IsSpace(c) && !unicode.Is(unicode.Cf, c) {
			key = utf8.AppendRune(key, unicode.ToLower(c))
		}
	}
	if bytes.Equal(key, id) {
		return key[:0]
	}
	return key
}

// firsts finds the first id of each key. It keeps no keys: they are made again
// when two may be equal.
type firsts struct {
	names *names
	slots []uint64 // hash in the upper half, number + 1 in the lower; 0 is free
	spare []byte
}

func newFirsts(n *names, expected int) *firsts {
	size := 64
	for size < 2*expected {
		size *= 2
	}
	return &firsts{names: n, slots: make([]uint64, size)}
}

// of gives the first id with a key, which is number itself when there was none.
func (f *firsts) of(key []byte, number uint32) uint32 {
	hash := f.names.hash(key)
	mask := len(f.slots) - 1
	for slot := int(hash) & mask; ; slot = (slot + 1) & mask {
		s := f.slots[slot]
		if s == 0 {
			f.slots[slot] = uint64(hash)<<32 | uint64(number) + 1
			return number
		}
		if uint32(s>>32) == hash {
			f.spare = appendKey(f.spare[:0], f.names.id(uint32(s)-1))
			if bytes.Equal(f.spare, key) {
				return uint32(s) - 1
			}
		}
	}
}
