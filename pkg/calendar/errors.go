package calendar

import (
	"cmp"
	"fmt"
	"math"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// CalendarError says why a calendar as a whole cannot be written.
type CalendarError struct {
	Field  string // "ID", "Name", "Events" or "days"
	Reason string // without a full stop
}

func (e *CalendarError) Error() string {
	return fmt.Sprintf("the calendar cannot be written: %s: %s", e.Field, e.Reason)
}

// EventError says why an event cannot be written.
type EventError struct {
	Key    string // of the event; empty when that is what is missing
	Field  string // name of the field of [Event]
	Reason string // without a full stop
}

func (e *EventError) Error() string {
	return fmt.Sprintf("event %q cannot be written: %s: %s", e.Key, e.Field, e.Reason)
}

// DuplicateKeyError says that two events of a calendar have the same key.
type DuplicateKeyError struct {
	Key           string
	First, Second int // places in Calendar.Events
}

func (e *DuplicateKeyError) Error() string {
	return fmt.Sprintf("events %d and %d of the calendar have the same key %q", e.First, e.Second, e.Key)
}

// check gives the first thing that keeps c from being written in any form.
func (c Calendar) check() error {
	if c.ID == "" {
		return &CalendarError{Field: "ID", Reason: "it is empty, and every UID is made from it"}
	}
	if oneLine(c.Name) == "" {
		return &CalendarError{Field: "Name", Reason: "it is empty"}
	}
	seen := make(map[string]int, len(c.Events))
	for i, e := range c.Events {
		if err := e.check(); err != nil {
			return err
		}
		uid := e.uid(c.ID)
		if first, ok := seen[uid]; ok {
			return &DuplicateKeyError{Key: cmp.Or(e.Key, e.UID), First: first, Second: i}
		}
		seen[uid] = i
	}
	return nil
}

func (e Event) check() error {
	fail := func(field, reason string) error {
		return &EventError{Key: e.Key, Field: field, Reason: reason}
	}
	switch {
	case e.Key == "" && e.UID == "":
		return fail("Key", "it is empty, and the UID is made from it")
	case e.Key == "" && (oneLine(e.UID) != e.UID):
		return fail("UID", "it is not a single line of text")
	case oneLine(e.Summary) == "":
		return fail("Summary", "it is empty")
	case !e.Span.First.Known() || !e.Span.Last.Known():
		return fail("Span", "a date is unknown")
	case e.Span.Days() == 0:
		return fail("Span", "it ends before it begins")
	case e.Span.First < civil.First || e.Span.Last > civil.Last:
		return fail("Span", "a date is out of range")
	case e.Sequence < 0:
		return fail("Sequence", "it is negative")
	case e.Sequence > math.MaxInt32: // RFC 5545, section 3.3.8
		return fail("Sequence", "it does not fit in 32 bits")
	}
	return nil
}
