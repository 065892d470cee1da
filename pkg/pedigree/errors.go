package pedigree

import (
	"fmt"
	"strings"
)

// BlankIDError is an animal or a group without an id.
type BlankIDError struct {
	Place int // the record, counted from 0; groups count on after the records
}

func (e *BlankIDError) Error() string {
	return fmt.Sprintf("pedigree: entry %d has no id; give it one", e.Place+1)
}

// DuplicateError is an id that several animals or groups have.
type DuplicateError struct {
	ID            string
	First, Second int // the two, counted from 0; groups count on after the records
	// First is -1 when it was there before [Pedigree.Grow].
}

func (e *DuplicateError) Error() string {
	if e.First < 0 {
		return fmt.Sprintf("pedigree: entry %d is called %q, as one that is there already; ids must differ", e.Second+1, e.ID)
	}
	return fmt.Sprintf("pedigree: entries %d and %d are both called %q; ids must differ", e.First+1, e.Second+1, e.ID)
}

// UnknownParentError is a parent, or a candidate for one, that has no record.
type UnknownParentError struct {
	Child  string // the animal that names it; the group, for a candidate
	Role   string // "sire", "dam" or "candidate"
	Parent string
}

func (e *UnknownParentError) Error() string {
	return fmt.Sprintf("pedigree: %s %q of %q has no record; add one, or leave the parent empty", e.Role, e.Parent, e.Child)
}

// GroupError is a group that cannot be computed with.
type GroupError struct {
	Group   string // its id
	Message string // what is wrong and what to do, without a full stop
}

func (e *GroupError) Error() string {
	return fmt.Sprintf("pedigree: group %q: %s", e.Group, e.Message)
}

// LoopError is an animal that descends from itself.
type LoopError struct {
	// Members are the ids around the loop. Each is followed by one of its
	// parents, a group by one of its candidates, and the last by the first. The
	// first is the one that was given first.
	Members []string
}

// loopShown is how many members of a loop the text of an error names.
const loopShown = 10

func (e *LoopError) Error() string {
	var b strings.Builder
	fmt.Fprintf(&b, "pedigree: %q descends from itself: ", e.Members[0])
	for i, id := range e.Members {
		if i == loopShown {
			fmt.Fprintf(&b, "... %d more ..., ", len(e.Members)-loopShown)
			break
		}
		fmt.Fprintf(&b, "%q is from ", id)
	}
	fmt.Fprintf(&b, "%q; one of these parents must be wrong", e.Members[0])
	return b.String()
}
