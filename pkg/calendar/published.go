package calendar

import (
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Published is a calendar file as it was written earlier. The file itself is all
// that has to be remembered of it: [ReadICS] reads it, [Calendar.Since] goes on
// from it.
type Published struct {
	// UID is that of the calendar as a whole, made from Calendar.ID; it may be
	// empty.
	UID string
	// Product says which program wrote the file.
	Product string
	Name    string
	// Events stand in the order of the file. They have a UID instead of a Key,
	// and Changed is the day of their DTSTAMP.
	Events []Event
}

// NotOursError says why a file is not the earlier version of a calendar.
type NotOursError struct {
	Reason string // without a full stop
}

func (e *NotOursError) Error() string { return e.Reason }

// Of reports whether p is an earlier version of c and nothing else: written by
// this package with the ID of c, and without events of others, which would be
// lost when c is written over it. The error is a *[NotOursError].
func (p Published) Of(c Calendar) error {
	name := oneLine(c.Name)
	switch {
	case p.UID == "" && p.Product == productID: // before calendars had a UID
		if p.Name != name {
			return otherRoom(p.Name, name)
		}
	case !strings.HasSuffix(p.UID, uidSuffix):
		return &NotOursError{"it was written by another program"}
	case p.UID != c.uid():
		return otherRoom(p.Name, name)
	}
	for _, e := range p.Events {
		if !strings.HasSuffix(e.UID, uidSuffix) {
			return &NotOursError{fmt.Sprintf("it has events of others, such as %q on %s", oneLine(e.Summary), e.Span.First)}
		}
	}
	return nil
}

func otherRoom(is, want string) error {
	return &NotOursError{fmt.Sprintf("it is the calendar of %q, not of %q", is, want)}
}

// Announced is the days that a calendar has told people.
type Announced struct{ days map[string]civil.Date }

// Announced gives the first day of each event that was not cancelled.
func (p Published) Announced() Announced {
	a := Announced{make(map[string]civil.Date, len(p.Events))}
	for _, e := range p.Events {
		if !e.Cancelled {
			a.days[e.UID] = e.Span.First
		}
	}
	return a
}

// Day gives the announced day of the event with this UID, which [UID] makes of
// the ID of its calendar and its key.
func (a Announced) Day(uid string) (civil.Date, bool) {
	d, ok := a.days[uid]
	return d, ok
}
