// Package civil has dates without clocks: a calendar date as a count of days,
// a span of dates, and the early, likely and late dates of something that
// biology decides.
//
// Nothing here knows a time zone or reads a clock. Dates are in the proleptic
// Gregorian calendar, from 0001-01-01 to 9999-12-31.
package civil

import (
	"fmt"
	"time"
)

// Date is a day, counted so that 1 is 0001-01-01 (Rata Die: Reingold and
// Dershowitz 2018, Calendrical Calculations, section 1.2). The zero value means
// that no date is known. Two dates compare with < and ==, and their difference
// in days is plain subtraction.
type Date int32

// First and Last are the ends of the range that a Date can hold.
const (
	First Date = 1       // 0001-01-01
	Last  Date = 3652059 // 9999-12-31
)

// unixEpoch is 1970-01-01 as a Date.
const unixEpoch Date = 719163

// Of gives the date of a year, month and day.
// It panics if there is no such day; use [Parse] for text from outside.
func Of(year int, month time.Month, day int) Date {
	d, ok := of(year, int(month), day)
	if !ok {
		panic(fmt.Sprintf("civil: no such date: %04d-%02d-%02d", year, month, day))
	}
	return d
}

func of(year, month, day int) (Date, bool) {
	if year < 1 || year > 9999 || month < 1 || month > 12 || day < 1 || day > daysIn(year, month) {
		return 0, false
	}
	midnight := time.Date(year, time.Month(month), day, 0, 0, 0, 0, time.UTC)
	return Date(midnight.Unix()/86400) + unixEpoch, true // midnights divide without a rest
}

func daysIn(year, month int) int {
	switch month {
	case 4, 6, 9, 11:
		return 30
	case 2:
		if year%4 == 0 && (year%100 != 0 || year%400 == 0) {
			return 29
		}
		return 28
	}
	return 31
}

// Known reports whether d holds a date.
func (d Date) Known() bool { return d != 0 }

// UTC gives midnight UTC at the start of d, for libraries that want a
// [time.Time]. It is the zero time for an unknown date.
func (d Date) UTC() time.Time {
	if d == 0 {
		return time.Time{}
	}
	return time.Unix(int64(d-unixEpoch)*86400, 0).UTC()
}

// YMD gives year, month and day; all zero for an unknown date.
func (d Date) YMD() (year int, month time.Month, day int) {
	if d == 0 {
		return 0, 0, 0
	}
	return d.UTC().Date()
}

// Weekday gives the day of the week of a known date.
func (d Date) Weekday() time.Weekday { return time.Weekday(int(d) % 7) }

// Add gives the date n days later, or earlier for a negative n. The result is
// held to the range of a Date; an unknown date stays unknown.
func (d Date) Add(n int) Date {
	if d == 0 {
		return 0
	}
	span := int(Last - First) // more would leave the range from any date, and could overflow
	n = min(max(n, -span), span)
	return min(max(d+Date(n), First), Last)
}

// Sub gives the days from e to d.
func (d Date) Sub(e Date) int { return int(d) - int(e) }

// String gives d as YYYY-MM-DD, and "unknown" for the zero value.
func (d Date) String() string {
	if d == 0 {
		return "unknown"
	}
	y, m, day := d.YMD()
	return fmt.Sprintf("%04d-%02d-%02d", y, m, day)
}

// MarshalText writes a known date as YYYY-MM-DD and an unknown one as nothing.
func (d Date) MarshalText() ([]byte, error) {
	if d == 0 {
		return nil, nil
	}
	return []byte(d.String()), nil
}

// UnmarshalText reads what MarshalText writes.
func (d *Date) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*d = 0
		return nil
	}
	e, err := Parse(string(text))
	if err != nil {
		return err
	}
	*d = e
	return nil
}
