package calendar

import (
	"bufio"
	"io"
	"slices"
	"strings"

	ics "github.com/arran4/golang-ical"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

const (
	productID = "-//spawnwright//frog room calendar//EN"
	// refresh is how often a subscriber is asked to look again.
	refresh = "PT12H"
)

// WriteICS writes c as an iCalendar file (RFC 5545 with the properties of a
// published calendar of RFC 7986): one all-day VEVENT for each event, sorted by
// UID, lines ended by CRLF and folded at 75 octets. Days in the file have no time
// zone and block no time. DTSTAMP and LAST-MODIFIED are Changed at 00:00 UTC,
// so that an unchanged event keeps its bytes.
//
// Control characters are dropped from texts, line ends become one kind, and
// invalid UTF-8 becomes U+FFFD; commas in a category become blanks, because
// some readers split it there.
//
// RFC 5545 allows no file without events: that is a *[CalendarError], as is a
// missing ID or name. An event without what the file needs is an *[EventError],
// and a key that stands twice a *[DuplicateKeyError]. After one of these nothing
// was written; any other error comes from w. The cost is O(n log n) for n events.
func WriteICS(w io.Writer, c Calendar) error {
	if err := c.checkForICS(); err != nil {
		return err
	}
	file := header(c)
	for _, e := range byUID(c) {
		file.AddVEvent(e)
	}
	buffered := bufio.NewWriter(w)
	if err := file.SerializeTo(buffered, ics.WithNewLineWindows); err != nil {
		return err
	}
	return buffered.Flush()
}

func (c Calendar) checkForICS() error {
	if err := c.check(); err != nil {
		return err
	}
	if len(c.Events) == 0 {
		return &CalendarError{Field: "Events", Reason: "an iCalendar file needs at least one event"}
	}
	for _, e := range c.Events {
		if e.Changed < civil.First || e.Changed > civil.Last {
			return &EventError{Key: e.Key, Field: "Changed", Reason: "the date is unknown, and an iCalendar file needs it"}
		}
		if e.Span.Last == civil.Last {
			return &EventError{Key: e.Key, Field: "Span", Reason: "an iCalendar file needs the day after the last, and there is none"}
		}
	}
	return nil
}

func header(c Calendar) *ics.Calendar {
	file := new(ics.Calendar)
	file.SetVersion("2.0")
	file.SetProductId(productID)
	file.SetCalscale("GREGORIAN")
	file.SetMethod(ics.MethodPublish)
	file.SetName(oneLine(c.Name)) // also sets X-WR-CALNAME, for programs older than RFC 7986
	file.CalendarProperties = append(file.CalendarProperties, ics.CalendarProperty{
		BaseProperty: ics.BaseProperty{IANAToken: string(ics.PropertyUid), Value: c.uid()}, // RFC 7986, section 5.3
	})
	file.SetRefreshInterval(refresh) // the library adds VALUE=DURATION
	file.SetXPublishedTTL(refresh)
	return file
}

// byUID gives the events of c as components, sorted by UID: an order that
// survives every change of dates and titles.
func byUID(c Calendar) []*ics.VEvent {
	events := make([]*ics.VEvent, len(c.Events))
	for i, e := range c.Events {
		events[i] = component(e.uid(c.ID), e)
	}
	slices.SortFunc(events, func(a, b *ics.VEvent) int { return strings.Compare(a.Id(), b.Id()) })
	return events
}

func component(uid string, e Event) *ics.VEvent {
	v := ics.NewEvent(uid)
	v.SetDtStampTime(e.Changed.UTC())
	v.SetLastModifiedAt(e.Changed.UTC())
	v.SetSequence(e.Sequence)
	v.SetAllDayStartAt(e.Span.First.UTC())
	v.SetAllDayEndAt(e.Span.Last.Add(1).UTC()) // exclusive
	v.SetSummary(clean(e.Summary))
	if description := clean(e.Description); description != "" {
		v.SetDescription(description)
	}
	if category := categoryOf(e); category != "" {
		v.AddCategory(category)
	}
	v.SetStatus(statusOf(e))
	v.SetTimeTransparency(ics.TransparencyTransparent)
	if e.Alarm != nil {
		e.Alarm.addTo(v, e.Summary)
	}
	return v
}

func statusOf(e Event) ics.ObjectStatus {
	if e.Cancelled {
		return ics.ObjectStatusCancelled
	}
	return ics.ObjectStatusConfirmed
}

func categoryOf(e Event) string { return oneLine(strings.ReplaceAll(e.Category, ",", " ")) }
