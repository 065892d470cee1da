package pedigree

import (
	"errors"
	"fmt"
)

// none stands for a parent that is unknown.
const none = -1

// links are the records and the groups with places instead of ids: records from
// 0, groups after them.
type links struct {
	ids     []string
	index   map[string]int // place by id
	records int
	parents [][2]int // sire and dam of each record; none when unknown
	groups  []Group
	members [][]int // candidates of each group
}

// link replaces ids with places and reports everything that is wrong with them.
func link(records []Record, groups []Group) (*links, error) {
	l := &links{
		ids:     make([]string, 0, len(records)+len(groups)),
		index:   make(map[string]int, len(records)+len(groups)),
		records: len(records),
		parents: make([][2]int, len(records)),
		groups:  groups,
		members: make([][]int, len(groups)),
	}
	var errs []error
	add := func(id string) {
		place := len(l.ids)
		l.ids = append(l.ids, id)
		if id == "" {
			errs = append(errs, &BlankIDError{Place: place})
		} else if first, taken := l.index[id]; taken {
			errs = append(errs, &DuplicateError{ID: id, First: first, Second: place})
		} else {
			l.index[id] = place
		}
	}
	for _, r := range records {
		add(r.ID)
	}
	for _, g := range groups {
		add(g.ID)
	}
	errs = append(errs, l.linkGroups()...)
	errs = append(errs, l.linkRecords(records)...)
	if len(errs) == 0 {
		errs = l.overlaps()
	}
	return l, errors.Join(errs...)
}

func (l *links) linkGroups() (errs []error) {
	for i, g := range l.groups {
		if wrong := g.check(); wrong != "" {
			errs = append(errs, &GroupError{Group: g.ID, Message: wrong})
			continue
		}
		for _, c := range g.Candidates {
			place, ok := l.index[c.ID]
			switch {
			case !ok:
				errs = append(errs, &UnknownParentError{Child: g.ID, Role: "candidate", Parent: c.ID})
			case place >= l.records && l.groups[place-l.records].Kind == Source:
				errs = append(errs, &GroupError{Group: g.ID, Message: fmt.Sprintf("candidate %q is a source; add a record of an animal from it and list that", c.ID)})
			case place >= l.records:
				errs = append(errs, &GroupError{Group: g.ID, Message: fmt.Sprintf("candidate %q is itself a group; list its candidates instead", c.ID)})
			}
			l.members[i] = append(l.members[i], place)
		}
	}
	return errs
}

func (l *links) linkRecords(records []Record) (errs []error) {
	for i, r := range records {
		for side, parent := range [2]string{r.Sire, r.Dam} {
			l.parents[i][side] = none
			if parent == "" {
				continue
			}
			place, ok := l.index[parent]
			if !ok {
				errs = append(errs, &UnknownParentError{Child: r.ID, Role: [2]string{"sire", "dam"}[side], Parent: parent})
				continue
			}
			l.parents[i][side] = place
		}
	}
	return errs
}

// overlaps reports couples of which one animal may be both, once each.
func (l *links) overlaps() (errs []error) {
	if len(l.groups) == 0 {
		return nil
	}
	seen := map[[2]int]bool{}
	for child, couple := range l.parents {
		sire, dam := couple[0], couple[1]
		if sire == none || dam == none || max(sire, dam) < l.records || seen[couple] {
			continue
		}
		seen[couple] = true
		if both, ok := firstInBoth(l.choices(sire), l.choices(dam)); ok {
			errs = append(errs, &GroupError{
				Group:   l.ids[max(sire, dam)],
				Message: fmt.Sprintf("%q may be both the sire and the dam of %q; list it on one side only", l.ids[both], l.ids[child]),
			})
		}
	}
	return errs
}

// choices gives the records that a parent may be.
func (l *links) choices(place int) []int {
	if place < l.records {
		return []int{place}
	}
	return l.members[place-l.records]
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

// above gives the places one step up from a place.
func (l *links) above(place int) []int {
	if place < l.records {
		return l.parents[place][:]
	}
	return l.members[place-l.records]
}
