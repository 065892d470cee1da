package pairing

import "slices"

// Blocking gives the smallest set of limits that together leave no plan, by
// their places in Limits; the earliest such set when there are several. It is
// empty, and ok is true, when there are too few young to hold back even without
// limits. ok is false when the limits do leave a plan, or when none was ruled
// out in a million steps.
//
// Sets of up to three limits are all tried, as long as there are not more than 20,000 of a
// size; beyond that a set is only sure to be such that it leaves a plan without any one of its
// limits.
func (c Choice) Blocking() (limits []int, ok bool) {
	c.mustBeSound()
	steps := 1_000_000
	blocked := func(set []int) bool { return c.blocked(set, &steps) }
	all := make([]int, len(c.Limits))
	for l := range all {
		all[l] = l
	}
	if !blocked(all) {
		return nil, false
	}
	needed := all
	for _, l := range all {
		without := slices.DeleteFunc(slices.Clone(needed), func(x int) bool { return x == l })
		if blocked(without) {
			needed = without
		}
	}
	for size, sets := 0, 1; size <= min(3, len(needed)) && sets <= mostSets; size++ {
		if set := firstSubset(all, size, blocked); set != nil {
			return set, true
		}
		sets = sets * (len(all) - size) / (size + 1)
	}
	return needed, true
}

// mostSets is how many sets of limits of a size are tried.
const mostSets = 20_000

// firstSubset gives the first set of a size, in lexical order, that is as wanted.
func firstSubset(from []int, size int, wanted func([]int) bool) []int {
	set := []int{}
	var try func(next int) bool
	try = func(next int) bool {
		if len(set) == size {
			return wanted(set)
		}
		for i := next; i <= len(from)-(size-len(set)); i++ {
			set = append(set, from[i])
			if try(i + 1) {
				return true
			}
			set = set[:len(set)-1]
		}
		return false
	}
	if try(0) {
		return set
	}
	return nil
}

// blocked reports whether some limits leave no plan. When the steps run out it says
// that they do leave one.
func (c Choice) blocked(limits []int, steps *int) bool {
	some := c
	some.Limits = nil
	for _, l := range limits {
		some.Limits = append(some.Limits, c.Limits[l])
	}
	s := newSearch(&some, Effort{})
	return !s.feasible(s.root(), steps)
}

// feasible reports whether a node has a plan, or may have one for all that was
// found in the steps.
func (s *search) feasible(n *node, steps *int) bool {
	if !s.tighten(n) {
		return false
	}
	if *steps--; *steps < 0 {
		return true
	}
	for i := range n.lo {
		p := int32(i)
		if !n.undecided(p) {
			continue
		}
		in, out := n.clone(), n.clone()
		in.lo[p], out.hi[p] = s.least[p], 0
		return s.feasible(in, steps) || s.feasible(out, steps)
	}
	return true // tighten holds the young between what is fixed and what is left
}
