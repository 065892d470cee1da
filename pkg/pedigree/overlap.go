package pedigree

import "fmt"

// overlaps reports couples of which one animal may be both, once each.
func (l *links) overlaps() (errs []error) {
	seen := map[[2]int]bool{}
	for child, couple := range l.parents {
		sire, dam := couple[0], couple[1]
		_, sireIsGroup := l.group(sire)
		_, damIsGroup := l.group(dam)
		if sire == none || dam == none || !sireIsGroup && !damIsGroup || seen[couple] {
			continue
		}
		seen[couple] = true
		if both, ok := firstInBoth(l.choices(sire), l.choices(dam)); ok {
			group := sire
			if !sireIsGroup || damIsGroup && dam > sire {
				group = dam
			}
			errs = append(errs, &GroupError{
				Group:   l.name(group),
				Message: fmt.Sprintf("%q may be both the sire and the dam of %q; list it on one side only", l.name(both), l.ids[child]),
			})
		}
	}
	return errs
}

// choices gives the animals that a parent may be.
func (l *links) choices(place int) []int {
	if _, isGroup := l.group(place); !isGroup {
		return []int{place}
	}
	if place >= 0 {
		return l.members[place-l.records]
	}
	g := &l.old.graph
	var members []int
	for _, t := range g.groups[g.group[nodeAt(place)]].terms {
		members = append(members, placeOf(t.node))
	}
	return members
}

// name gives the id of a place.
func (l *links) name(place int) string {
	if place >= 0 {
		return l.ids[place]
	}
	k := nodeAt(place)
	if g := &l.old.graph; g.group[k] != none {
		return g.groups[g.group[k]].id
	}
	return l.old.ids[l.old.rows[k]]
}

func firstInBoth(a, b []int) (int, bool) {
	in := make(map[int]bool, len(b))
	for _, place := range b {
		in[place] = true
	}
	for _, place := range a {
		if in[place] {
			return place, true
		}
	}
	return 0, false
}
