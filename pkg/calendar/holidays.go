package calendar

import (
	"cmp"
	"slices"
	"time"

	"github.com/rickar/cal/v2"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Holidays are the public holidays of one country or region: the lists of
// github.com/rickar/cal v2.1.13, mended where the source says so. They follow
// the law as it stands and know no later change, and no holiday of a single
// town. Get them from [HolidaysOf]; they are safe for concurrent use.
type Holidays struct {
	code string
	days []cal.Holiday
}

// HolidaysOf gives the public holidays for an ISO 3166 code in small letters: a
// country ("de", "us": federal holidays) or a region ("de-by", "ch-zh",
// "au-nsw"). "gb", "gb-eng" and "gb-wls" are England and Wales. [Codes] lists
// all. The error is an *[UnknownCodeError].
func HolidaysOf(code string) (*Holidays, error) {
	list, ok := lists[code]
	if !ok {
		return nil, unknownCode(code)
	}
	h := &Holidays{code: code}
	for _, shared := range list {
		day := *shared // anybody may change the library's
		day.Name = cmp.Or(renamed[day.Name], day.Name)
		h.days = append(h.days, day)
	}
	return h, nil
}

// Codes gives all codes that [HolidaysOf] knows, sorted.
func Codes() []string {
	codes := make([]string, 0, len(lists))
	for code := range lists {
		codes = append(codes, code)
	}
	slices.Sort(codes)
	return codes
}

// Code gives the code that h was asked for by.
func (h *Holidays) Code() string { return h.code }

// On reports whether d is a public holiday or the working day on which one that
// falls on a weekend is observed, and the name in the country's own language;
// the name of a day that is only observed ends in " (observed)". Of two
// holidays on one day it names one. An unknown date is none. It costs a few
// microseconds.
func (h *Holidays) On(d civil.Date) (name string, ok bool) {
	if !d.Known() {
		return "", false
	}
	year, month, _ := d.YMD()
	last := year
	if month == time.December {
		last++ // the next New Year may be observed in this one
	}
	for y := year; y <= last; y++ {
		for _, holiday := range h.days {
			actual, observed := datesIn(holiday, y)
			if actual == d {
				return holiday.Name, true
			}
			if observed == d {
				name = holiday.Name + " (observed)"
			}
		}
	}
	return name, name != ""
}

// datesIn gives the day of a holiday in a year and the day on which it is
// observed, or zeros. The holiday comes by value, because rules of the library
// may write to it.
func datesIn(holiday cal.Holiday, year int) (actual, observed civil.Date) {
	at, _ := holiday.Calc(year)
	if at.IsZero() {
		return 0, 0
	}
	// The library reckons in the machine's time zone. Where the clocks change at
	// midnight, its midnight may be 23:00 of the day before; noon never is.
	y, m, day := at.Add(12 * time.Hour).Date()
	if y < 1 || y > 9999 {
		return 0, 0
	}
	actual = civil.Of(y, m, day)
	for _, rule := range holiday.Observed {
		if rule.Day == actual.Weekday() {
			return actual, actual.Add(rule.Offset)
		}
	}
	return actual, actual
}
