package pairing

import "slices"

// keeps reports whether an exchange leaves a node as it is.
func (tw *twins) keeps(n *node, x exchange) bool {
	for _, s := range x {
		for _, a := range s {
			for _, p := range tw.of[a] {
				if q := tw.image(x, p); n.lo[p] != n.lo[q] || n.hi[p] != n.hi[q] {
					return false
				}
			}
		}
	}
	return true
}

// orbits gives for each option of a node the first one that exchanges make of it while
// they leave the node as it is: exchanges of two parents, or of the parents of two
// chosen pairs.
func (s *search) orbits(n *node) []int32 {
	tw := s.twins
	if tw == nil {
		return nil
	}
	first := make([]int32, len(n.lo))
	for p := range first {
		first[p] = int32(p)
	}
	var root func(p int32) int32
	root = func(p int32) int32 {
		if first[p] != p {
			first[p] = root(first[p])
		}
		return first[p]
	}
	none := true
	join := func(x exchange) {
		none = false
		for _, s := range x {
			for _, a := range s {
				for _, p := range tw.of[a] {
					q := root(tw.image(x, p))
					p := root(p)
					first[max(p, q)] = min(p, q)
				}
			}
		}
	}
	for _, class := range tw.classes {
		var kinds []int32
		for _, a := range class {
			c := slices.IndexFunc(kinds, func(b int32) bool { return tw.keeps(n, exchange{{a, b}}) })
			if c < 0 {
				kinds = append(kinds, a)
			} else {
				join(exchange{{a, kinds[c]}})
			}
		}
	}
	var kinds []int32
	for p := range int32(len(n.lo)) {
		if n.lo[p] == 0 {
			continue
		}
		c := slices.IndexFunc(kinds, func(q int32) bool { x := tw.both(p, q); return x != nil && tw.keeps(n, x) })
		if c < 0 {
			kinds = append(kinds, p)
		} else {
			join(tw.both(p, kinds[c]))
		}
	}
	if none {
		return nil
	}
	for p := range first {
		first[p] = root(int32(p))
	}
	return first
}

// both gives the exchange of the sires and of the dams of two options, or nil when one of
// them are not interchangeable.
func (tw *twins) both(p, q int32) exchange {
	var x exchange
	for _, s := range [2][2]int32{{tw.sire[p], tw.sire[q]}, {tw.dam[p], tw.dam[q]}} {
		switch {
		case s[0] == s[1]:
		case tw.class[s[0]] < 0 || tw.class[s[0]] != tw.class[s[1]]:
			return nil
		default:
			x = append(x, s)
		}
	}
	if len(x) == 2 && (x[0][0] == x[1][0] || x[0][0] == x[1][1] || x[0][1] == x[1][0] || x[0][1] == x[1][1]) {
		return nil
	}
	return x
}
