package calendar

import (
	"math"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Changes counts what became of the events of an earlier calendar.
type Changes struct {
	Same      int // as they were, also those that fell away before and are still told
	Changed   int // on other days, with other words, called off or on again
	New       int
	Cancelled int // fell away now, and are told as cancelled
}

// Since gives c as it goes on from an earlier version of it, so that programs
// which have that one see what changed (RFC 5545, section 3.8.7.4; RFC 5546,
// section 2.1.4):
//
//   - An event that is as it was keeps its Sequence and its Changed.
//   - One that has other days, words, category or state has a Sequence one above
//     the earlier, and was changed on the day on.
//   - One that was not there before stays as it is in c.
//   - One that fell away and has not ended before on is cancelled, with its
//     Sequence raised once. When its days have passed it is dropped, as are
//     others that fell away after their days.
//
// Going on from what was written before with the same c and day gives the
// same calendar. It panics when on is unknown. The cost is O(n) for n events.
func (c Calendar) Since(earlier Published, on civil.Date) (Calendar, Changes) {
	if !on.Known() {
		panic("calendar: going on from an earlier calendar on an unknown day")
	}
	before := make(map[string]Event, len(earlier.Events))
	for _, e := range earlier.Events {
		before[e.UID] = e
	}
	var changes Changes
	next := Calendar{ID: c.ID, Name: c.Name}
	for _, e := range c.Events {
		uid := e.uid(c.ID)
		was, known := before[uid]
		delete(before, uid)
		switch {
		case !known:
			changes.New++
		case was.same(e):
			changes.Same++
			e.Sequence, e.Changed = was.Sequence, was.Changed
		default:
			changes.Changed++
			e.Sequence, e.Changed = was.raised(on)
		}
		next.Events = append(next.Events, e)
	}
	for _, e := range earlier.Events {
		if _, gone := before[e.UID]; !gone || e.Span.Last < on {
			continue
		}
		if e.Cancelled {
			changes.Same++
		} else {
			changes.Cancelled++
			e.Cancelled = true
			e.Sequence, e.Changed = e.raised(on)
		}
		next.Events = append(next.Events, e)
	}
	return next, changes
}

// raised gives the sequence and the day of a change of e.
func (e Event) raised(on civil.Date) (sequence int, changed civil.Date) {
	return min(e.Sequence+1, math.MaxInt32), max(e.Changed, on)
}

// same reports whether two events say the same in a file.
func (e Event) same(f Event) bool {
	return e.Span == f.Span && e.Cancelled == f.Cancelled &&
		clean(e.Summary) == clean(f.Summary) && clean(e.Description) == clean(f.Description) &&
		categoryOf(e) == categoryOf(f)
}
