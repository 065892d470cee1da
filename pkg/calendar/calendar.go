// Package calendar hands dated events on: as an iCalendar file for a
// subscription or an import, as a plain CSV table, and as an agenda to read.
// It also knows public holidays and, from them, the days on which a parcel with
// live animals may be handed over.
//
// Put the events into a [Calendar] and call [WriteICS], [WriteCSV] or
// [WriteText]. An event keeps its [UID] when it is moved or renamed, so that a
// calendar program moves it too instead of adding another:
//
//	c := calendar.Calendar{
//		ID:   "lindenhof",
//		Name: "Lindenhof frog room",
//		Events: []calendar.Event{{
//			Key:      "clutch/C-27-03/hatched",
//			Span:     civil.Span{First: first, Last: last},
//			Summary:  "C-27-03 hatches",
//			Category: "hatch",
//			Changed:  today,
//		}},
//	}
//	err := calendar.WriteICS(w, c)
//
// To go on from a file that people already have, read it with [ReadICS] and hand
// it to [Calendar.Since]: what moved gets a higher SEQUENCE, and what fell away is
// cancelled.
//
// How the events were found is none of its business, and it reads no clock: the
// same calendar gives the same bytes.
package calendar

import (
	"cmp"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Calendar is a set of events under one name.
type Calendar struct {
	// ID says which calendar this is, and goes into the UID of every event. It
	// stays when the calendar is renamed.
	ID string
	// Name is what people see; it may change.
	Name string
	// Events may stand in any order.
	Events []Event
}

// Event is something on one or more whole days.
type Event struct {
	// Key says what the event is, and never when: "clutch/C-27-03/hatched".
	// No two events of a calendar share one.
	Key string
	// UID is for an event whose key is not known, such as one from an earlier
	// file ([ReadICS]). With a Key it is not looked at: then [UID] makes it.
	UID string
	// Span is the days, both ends included.
	Span civil.Span
	// Summary is the title, a single line.
	Summary string
	// Description has further lines; it may be empty.
	Description string
	// Category is one word or a few, such as "hatch"; it may be empty.
	Category string
	// Cancelled marks an event that will not be. It is still written, since
	// leaving it out does not take it from a calendar that imported it.
	Cancelled bool
	// Sequence starts at 0 and rises whenever the days or the state change;
	// [Calendar.Since] sees to that.
	Sequence int
	// Changed is the day of the last change; an iCalendar file needs it.
	Changed civil.Date
	// Alarm is nil for none; see [Calendar.Alarmed].
	Alarm *Alarm
}

// inOrder gives a copy of the events by first day, last day, key and UID.
func inOrder(events []Event) []Event {
	sorted := slices.Clone(events)
	slices.SortFunc(sorted, func(a, b Event) int {
		return cmp.Or(
			cmp.Compare(a.Span.First, b.Span.First),
			cmp.Compare(a.Span.Last, b.Span.Last),
			cmp.Compare(a.Key, b.Key),
			cmp.Compare(a.UID, b.UID),
		)
	})
	return sorted
}
