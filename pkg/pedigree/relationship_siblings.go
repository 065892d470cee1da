package pedigree

// siblings is what is known of the parents that two animals may share. Its two
// places are sire with sire and dam with dam, or crosswise, whichever is likelier,
// and of these the likelier first.
type siblings struct {
	first, second sharedParent
	share         float64 // kinship through shared parents, in all places
}

// sharedParent is a parent of one animal that may be a parent of the other.
type sharedParent struct {
	chance float64 // that it is
	may    []SharedAncestor
}

// certainly allows for rounding in a sum of chances.
const certainly = 1 - 1e-12

// siblings compares the parents of the animals at the ends of two chains.
func (l *lines) siblings(x, y *step) siblings {
	var s siblings
	var at [2][2]sharedParent
	for _, a := range l.up[x.node] {
		for _, b := range l.up[y.node] {
			if l.settled(a.to, y) || l.settled(b.to, x) {
				continue
			}
			both := &at[a.side][b.side]
			l.same(a.to, b.to, func(parent int32, chance float64) {
				share := chance * l.self[parent] / 4
				both.chance += chance
				both.may = append(both.may, SharedAncestor{l.animal[parent], share})
				s.share += share
			})
		}
	}
	s.first, s.second = at[0][0], at[1][1]
	if at[0][1].chance+at[1][0].chance > s.first.chance+s.second.chance {
		s.first, s.second = at[0][1], at[1][0]
	}
	if s.second.chance > s.first.chance {
		s.first, s.second = s.second, s.first
	}
	return s
}

// settled reports whether a parent is one unknown animal and who it is follows from
// the other chain, which goes through the same group: it is on that chain then, and
// no parent above it.
func (l *lines) settled(parent int32, other *step) bool {
	for ; l.kind[parent] == lineOne && other != nil; other = other.before {
		if other.node == parent {
			return true
		}
	}
	return false
}

// same calls f for each animal that two parents may both be, with the chance.
func (l *lines) same(a, b int32, f func(parent int32, chance float64)) {
	if a == b && l.kind[a] == lineOne {
		for _, c := range l.up[a] {
			f(c.to, c.weight)
		}
		return
	}
	for _, c := range l.candidates(a) {
		for _, d := range l.candidates(b) {
			if c.to == d.to {
				f(c.to, c.weight*d.weight)
			}
		}
	}
}

// candidates gives the animals that a parent may be; a source has none.
func (l *lines) candidates(k int32) []edge {
	if l.kind[k] == lineAnimal {
		return []edge{{to: k, weight: 1}}
	}
	return l.up[k]
}

// kind says how two animals are related that descend from them, or are them.
func (s siblings) kind(upA, upB int) kind {
	return kind{
		upA: upA, upB: upB,
		full:      s.second.chance >= certainly,
		maybeFull: s.second.chance > 0 && s.second.chance < certainly,
		possible:  s.first.chance < certainly,
		either:    s.second.chance < certainly && len(s.first.may) > 1,
	}
}

// through gives the parents that the kind of relationship rests on.
func (s siblings) through(k kind) []SharedAncestor {
	if k.full {
		return append(s.first.may, s.second.may...)
	}
	return s.first.may
}
