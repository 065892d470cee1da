package pairing

import "slices"

// Blocking gives the smallest set of limits that together leave no plan, by
// their places in Limits; the earliest such set when there are several. It is
// empty, and ok is true, when there are too few young to hold back even without
// limits. ok is false when the limits do leave a plan, or when none was ruled
// out in the time.
//
// Sets of up to three limits are all tried, as long as there are not too many of a
// size; beyond that a set is only sure to be such that it leaves a plan without any one of its
// limits. Cost: some seconds for 10,000 options.
func (c Choice) Blocking() (limits []int, ok bool) {
	c.mustBeSound()
	steps := mostWork / max(20, len(c.Options))
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
	for size, sets := 0, 1; size <= min(3, len(needed)) && sets <= mostSets/max(200, len(c.Options)); size++ {
		if set := firstSubset(all, size, blocked); set != nil {
			return set, true
		}
		sets = sets * (len(all) - size) / (size + 1)
	}
	return needed, true
}

// What is done at most, in looks at an option: steps that rule plans out, and sets of a size.
const (
	mostWork = 20_000_000
	mostSets = 4_000_000
)

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
	return s.overbooked() || !s.feasible(s.root(), steps)
}

// overbooked reports whether a limit wants more options chosen than others let it have, when
// each of its options counts for the first, or for the last, of the limits that it is in. That
// many pairings of few animals are too many is seen at once that way, and hard to see one by one.
func (s *search) overbooked() bool {
	order := make([]int, len(s.limits))
	for i := range order {
		order[i] = i
	}
	for range 2 {
		first := make([]int, len(s.most)) // by option: its first limit, from 1
		for _, l := range order {
			for _, p := range s.limits[l].options {
				if first[p] == 0 && s.limits[l].least == 0 && s.limits[l].most < len(s.limits[l].options) {
					first[p] = l + 1
				}
			}
		}
		for _, want := range s.limits {
			if want.least > 0 && s.within(want, first) < want.least {
				return true
			}
		}
		slices.Reverse(order)
	}
	return false
}

// within gives how many options of a limit can be chosen at most.
func (s *search) within(want limit, first []int) int {
	in := make(map[int]int)
	total := 0
	for _, p := range want.options {
		l := first[p]
		if l == 0 {
			total++
			continue
		}
		if in[l] < s.limits[l-1].most {
			total++
		}
		in[l]++
	}
	return total
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
