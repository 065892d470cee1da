package calendar

import (
	"fmt"
	"strings"

	ics "github.com/arran4/golang-ical"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Alarm is when a calendar program is to remind of an event: a time of day, that
// many days before its first one.
type Alarm struct {
	DaysBefore int // 0 to 30
	Hour       int // 0 to 23
	Minute     int // 0 to 59
}

func (a Alarm) valid() bool {
	return a.DaysBefore >= 0 && a.DaysBefore <= 30 && a.Hour >= 0 && a.Hour <= 23 && a.Minute >= 0 && a.Minute <= 59
}

// Alarmed gives c with an alarm on each event that begins on or after a day and
// is not cancelled. It panics when the day is unknown or there is no such alarm.
//
// Programs may leave out the alarms of a calendar that is subscribed to.
func (c Calendar) Alarmed(a Alarm, from civil.Date) Calendar {
	if !from.Known() || !a.valid() {
		panic(fmt.Sprintf("calendar: alarms %+v from %s", a, from))
	}
	out := Calendar{ID: c.ID, Name: c.Name}
	for _, e := range c.Events {
		if e.Span.First >= from && !e.Cancelled {
			e.Alarm = &a
		}
		out.Events = append(out.Events, e)
	}
	return out
}

// trigger is the time from the start of the first day, which has no time zone: so
// it is the time of day where the phone is (RFC 5545, section 3.8.6.3).
func (a Alarm) trigger() string {
	minutes := a.Hour*60 + a.Minute - a.DaysBefore*24*60
	var b strings.Builder
	if minutes < 0 {
		b.WriteByte('-')
		minutes = -minutes
	}
	b.WriteString("PT")
	if minutes >= 60 {
		fmt.Fprintf(&b, "%dH", minutes/60)
	}
	if minutes%60 > 0 || minutes == 0 {
		fmt.Fprintf(&b, "%dM", minutes%60)
	}
	return b.String()
}

// addTo adds the alarm to an event with a title.
func (a Alarm) addTo(v *ics.VEvent, title string) {
	alarm := v.AddAlarm()
	alarm.SetAction(ics.ActionDisplay)
	alarm.SetTrigger(a.trigger())
	alarm.SetProperty(ics.ComponentPropertyDescription, clean(title))
}
