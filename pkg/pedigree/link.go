package pedigree

import (
	"errors"
	"fmt"
	"maps"
	"slices"
)

// none stands for a parent that is unknown.
const none = -1

// links are new records and groups with places instead of ids: records from 0,
// groups after them. A node that the pedigree has already is below none.
type links struct {
	old     *Pedigree
	ids     []string // by place
	records int
	parents [][2]int // sire and dam of each record; none when unknown
	groups  []Group
	members [][]int // candidates of each group

	rowIDs     []string // by row, old and new
	table      idTable  // of these
	groupPlace map[string]int
}

// placeOf and nodeAt turn nodes of the old pedigree into places and back.
func placeOf(node int32) int { return -2 - int(node) }
func nodeAt(place int) int32 { return int32(-2 - place) }

// link replaces ids with places and reports everything that is wrong with them.
func link(old *Pedigree, records []Record, groups []Group) (*links, error) {
	l := &links{
		old:        old,
		ids:        make([]string, 0, len(records)+len(groups)),
		records:    len(records),
		parents:    make([][2]int, len(records)),
		groups:     groups,
		members:    make([][]int, len(groups)),
		rowIDs:     slices.Grow(slices.Clip(old.ids), len(records)),
		groupPlace: make(map[string]int, len(old.groups)+len(groups)),
	}
	for id, node := range old.groups {
		l.groupPlace[id] = placeOf(node)
	}
	var errs []error
	errs = append(errs, l.addRecords(records)...)
	errs = append(errs, l.addGroups()...)
	errs = append(errs, l.linkGroups()...)
	errs = append(errs, l.linkRecords(records)...)
	if len(errs) == 0 {
		errs = l.overlaps()
	}
	return l, errors.Join(errs...)
}

// addRecords enters the ids of the animals.
func (l *links) addRecords(records []Record) (errs []error) {
	first := len(l.rowIDs)
	for _, r := range records {
		l.ids = append(l.ids, r.ID)
		l.rowIDs = append(l.rowIDs, r.ID)
	}
	l.table = l.old.table.grown(l.rowIDs, first)
	for place, id := range l.ids {
		if id == "" {
			errs = append(errs, &BlankIDError{Place: place})
		} else if _, taken := l.groupPlace[id]; taken {
			errs = append(errs, &DuplicateError{ID: id, First: none, Second: place})
		} else if before, taken := l.table.add(l.rowIDs, first+place); taken {
			errs = append(errs, &DuplicateError{ID: id, First: max(none, before-first), Second: place})
		}
	}
	return errs
}

// addGroups enters the ids of the groups.
func (l *links) addGroups() (errs []error) {
	for _, g := range l.groups {
		place := len(l.ids)
		l.ids = append(l.ids, g.ID)
		if g.ID == "" {
			errs = append(errs, &BlankIDError{Place: place})
		} else if before, taken := l.place(g.ID); taken {
			errs = append(errs, &DuplicateError{ID: g.ID, First: max(none, before), Second: place})
		} else {
			l.groupPlace[g.ID] = place
		}
	}
	return errs
}

// place finds an id.
func (l *links) place(id string) (int, bool) {
	if row, ok := l.table.row(l.rowIDs, id); ok {
		if row < len(l.old.nodes) {
			return placeOf(l.old.nodes[row]), true
		}
		return row - len(l.old.nodes), true
	}
	place, ok := l.groupPlace[id]
	return place, ok
}

// group gives the kind of a group, and whether a place is one.
func (l *links) group(place int) (GroupKind, bool) {
	if place >= 0 {
		if place < l.records {
			return 0, false
		}
		return l.groups[place-l.records].Kind, true
	}
	g := &l.old.graph
	if place == none || g.group[nodeAt(place)] == none {
		return 0, false
	}
	return g.groups[g.group[nodeAt(place)]].kind, true
}

func (l *links) linkGroups() (errs []error) {
	for i, g := range l.groups {
		if wrong := g.check(); wrong != "" {
			errs = append(errs, &GroupError{Group: g.ID, Message: wrong})
			continue
		}
		for _, c := range g.Candidates {
			place, ok := l.place(c.ID)
			kind, isGroup := l.group(place)
			switch {
			case !ok:
				errs = append(errs, &UnknownParentError{Child: g.ID, Role: "candidate", Parent: c.ID})
			case isGroup && kind == Source:
				errs = append(errs, &GroupError{Group: g.ID, Message: fmt.Sprintf("candidate %q is a source; add a record of an animal from it and list that", c.ID)})
			case isGroup:
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
			place, ok := l.place(parent)
			if !ok {
				errs = append(errs, &UnknownParentError{Child: r.ID, Role: [2]string{"sire", "dam"}[side], Parent: parent})
				continue
			}
			l.parents[i][side] = place
		}
	}
	return errs
}

// above gives the places one step up from a new place.
func (l *links) above(place int) []int {
	if place < l.records {
		return l.parents[place][:]
	}
	return l.members[place-l.records]
}

// groupNodes gives the groups, old and new, by id, when it is known where the new
// ones stand.
func (l *links) groupNodes(node []int32) map[string]int32 {
	all := make(map[string]int32, len(l.groupPlace))
	maps.Copy(all, l.old.groups)
	for i, g := range l.groups {
		all[g.ID] = node[l.records+i]
	}
	return all
}
