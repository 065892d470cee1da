package season

import (
	"cmp"
	"fmt"
	"slices"
)

// hold is the days on which a pairing, by its index, holds a place or an animal.
type hold struct {
	pairing int
	run
}

// holdsOf gives for each place who holds it on which days, and its name in the
// order in which the pairings name them.
func holdsOf(jobs []*job) (names []string, holds map[string][]hold) {
	holds = map[string][]hold{}
	for i, j := range jobs {
		for k, p := range j.Phases {
			if p.Place == "" || j.plan[k] == j.plan[k+1] {
				continue
			}
			if holds[p.Place] == nil {
				names = append(names, p.Place)
			}
			holds[p.Place] = append(holds[p.Place], hold{i, run{j.plan[k], j.plan[k+1] - 1}})
		}
	}
	return names, holds
}

// crowd is a run of days on which the same pairings hold a place together.
type crowd struct {
	run
	pairings []int // ascending
}

// crowds gives the longest runs from the day first on with the same pairings in
// a place, where these are more than there is room for. It sorts the holds, and
// copies the pairings of each crowd.
func crowds(holds []hold, capacity, first int) []crowd {
	type change struct {
		day, by int // by: +1 comes, -1 goes
		pairing int
	}
	var changes []change
	for _, h := range holds {
		if h.last >= first {
			changes = append(changes, change{max(h.first, first), 1, h.pairing}, change{h.last + 1, -1, h.pairing})
		}
	}
	// Who is in is asked only after all changes of a day, so that who goes makes
	// room for who comes, and the order within a day does not matter.
	slices.SortFunc(changes, func(a, b change) int { return cmp.Compare(a.day, b.day) })
	var found []crowd
	var in []int
	for i, c := range changes {
		at, _ := slices.BinarySearch(in, c.pairing)
		if c.by > 0 {
			in = slices.Insert(in, at, c.pairing)
		} else {
			in = slices.Delete(in, at, at+1)
		}
		if len(in) > capacity && changes[i+1].day > c.day {
			found = appendCrowd(found, crowd{run{c.day, changes[i+1].day - 1}, in})
		}
	}
	return found
}

// appendCrowd appends a crowd, or lengthens the one before it when that ends on
// the day before with the same pairings.
func appendCrowd(found []crowd, next crowd) []crowd {
	if n := len(found); n > 0 && found[n-1].last+1 == next.first && slices.Equal(found[n-1].pairings, next.pairings) {
		found[n-1].last = next.last
		return found
	}
	next.pairings = slices.Clone(next.pairings)
	return append(found, next)
}

// places gives the conflicts over places, and the places that were not checked.
func (y *yard) places() (conflicts []Conflict, unchecked []string) {
	for _, place := range y.placeNames {
		capacity, known := y.capacity[place]
		if !known {
			unchecked = append(unchecked, fmt.Sprintf("%ss, for how many there are is not given", place))
			continue
		}
		for _, c := range crowds(y.holds[place], capacity, y.today) {
			conflicts = append(conflicts, y.full(place, capacity, c))
		}
	}
	return conflicts, unchecked
}

func (y *yard) full(place string, capacity int, c crowd) Conflict {
	needed := len(c.pairings)
	names := y.ids(c.pairings)
	message := fmt.Sprintf("%s: %d needed and %d there on %s (%s)", place, needed, capacity, c.span(), listed(names))
	more := count(needed-capacity, "more "+place)
	if move := y.cure(c.pairings); capacity > 0 && needed == capacity+1 && move != "" {
		message += fmt.Sprintf("; %s, and so does %s", move, more)
	} else {
		message += "; needs " + more
	}
	return Conflict{
		Kind: PlaceFull, Pairings: names, Place: place, Days: c.span(),
		Capacity: capacity, Needed: needed, Message: message,
	}
}
