package calendar

import (
	"fmt"
	"slices"
	"time"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Shipping says on which days a parcel with live animals may be handed over.
// The zero value is the usual habit: next-day service on Monday to Thursday,
// never on Friday, so that a parcel arrives on Tuesday to Friday (shipping
// standards of the carrier shipyourreptiles.com). That nothing goes the day
// before a holiday is from memory.
//
// It judges days alone. The weather at both ends, the carrier's own rules and
// the law come on top, and a delay is always possible.
type Shipping struct {
	// Weekdays are the days on which parcels are handed over; none means Monday
	// to Thursday.
	Weekdays []time.Weekday
	// TransitDays are the days on the way, counted in the calendar; 0 means 1. A
	// negative number is a bug of the caller, and the methods panic.
	TransitDays int
	// Away are days on which nobody is there to hand a parcel over.
	Away []civil.Span
	// Closed are days on which the carrier takes nothing.
	Closed []civil.Span
	// Holidays stop parcels. With nil no holiday is looked at, and whoever shows
	// the days should say so.
	Holidays *Holidays
}

// Allowed reports whether a parcel may be handed over on d, and otherwise why
// not, as part of a sentence. It may when
//   - d is one of the weekdays and none of the days away or closed,
//   - d is no public holiday, and
//   - none of the transit days after d, on the last of which the parcel arrives,
//     is a public holiday or a Sunday.
//
// A holiday counts on its own day and on the day when it is observed.
func (s Shipping) Allowed(d civil.Date) (ok bool, why string) {
	transit := s.transitDays()
	if !d.Known() {
		return false, "the date is unknown"
	}
	if !s.HandedOver(d) {
		return false, fmt.Sprintf("no parcel is handed over on a %s", d.Weekday())
	}
	for _, away := range s.Away {
		if away.Contains(d) {
			return false, fmt.Sprintf("nobody is there on %s", withWeekday(d))
		}
	}
	for _, closed := range s.Closed {
		if closed.Contains(d) {
			return false, fmt.Sprintf("the carrier takes nothing on %s", withWeekday(d))
		}
	}
	if name, ok := s.holiday(d); ok {
		return false, fmt.Sprintf("%s is a public holiday: %s", withWeekday(d), name)
	}
	for i := 1; i <= transit; i++ {
		day := d.Add(i)
		if day.Weekday() == time.Sunday {
			return false, fmt.Sprintf("it would be on the way on %s", withWeekday(day))
		}
		if name, ok := s.holiday(day); ok {
			return false, fmt.Sprintf("it would be on the way on a public holiday, %s: %s", withWeekday(day), name)
		}
	}
	return true, ""
}

// HandedOver reports whether d is one of the weekdays on which parcels are handed
// over, whatever else stops them.
func (s Shipping) HandedOver(d civil.Date) bool { return slices.Contains(s.weekdays(), d.Weekday()) }

// longestWait is how many days in a row are tried for one that is allowed. If a
// whole year has none, the weekdays and the days on the way never fit.
const longestWait = 366

// Next gives the first n allowed days from from on, that day included, in order.
// They are fewer when there are no more: no day is allowed if the only weekday
// is Saturday, whose parcels travel on Sunday.
func (s Shipping) Next(from civil.Date, n int) []civil.Date {
	var days []civil.Date
	for len(days) < n {
		d, ok := s.search(from, 1)
		if !ok {
			break
		}
		days = append(days, d)
		if d == civil.Last {
			break
		}
		from = d.Add(1)
	}
	return days
}

// LastToArrive gives the last day on which a parcel can be handed over to arrive by a
// day, and false when there is none.
func (s Shipping) LastToArrive(by civil.Date) (civil.Date, bool) {
	return s.LastBefore(by.Add(1 - max(s.TransitDays, 1)))
}

// LastBefore gives the last allowed day before d, and false when there is none.
// It is the day of handing over: for arrival by a day a, ask for
// LastBefore(a.Add(1-TransitDays)).
func (s Shipping) LastBefore(d civil.Date) (civil.Date, bool) {
	if !d.Known() || d == civil.First {
		return 0, false
	}
	return s.search(d.Add(-1), -1)
}

// search gives the allowed day nearest to d, going by step.
func (s Shipping) search(d civil.Date, step int) (civil.Date, bool) {
	for range longestWait {
		if ok, _ := s.Allowed(d); ok {
			return d, true
		}
		d = d.Add(step)
	}
	return 0, false
}

func (s Shipping) weekdays() []time.Weekday {
	if len(s.Weekdays) == 0 {
		return []time.Weekday{time.Monday, time.Tuesday, time.Wednesday, time.Thursday}
	}
	return s.Weekdays
}

func (s Shipping) transitDays() int {
	if s.TransitDays < 0 {
		panic("calendar: Shipping.TransitDays is negative")
	}
	return max(s.TransitDays, 1)
}

func (s Shipping) holiday(d civil.Date) (name string, ok bool) {
	if s.Holidays == nil {
		return "", false
	}
	return s.Holidays.On(d)
}

// withWeekday writes a date as "Friday 2027-03-19".
func withWeekday(d civil.Date) string { return d.Weekday().String() + " " + d.String() }
