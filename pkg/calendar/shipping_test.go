package calendar_test

import (
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
)

func TestShippingAllowed(t *testing.T) {
	bavaria := calendar.Shipping{Holidays: holidays(t, "de-by")}
	states := calendar.Shipping{Holidays: holidays(t, "us")}
	for _, test := range []struct {
		name string
		s    calendar.Shipping
		day  string
		why  string
	}{
		{"a Monday", bavaria, "2027-04-12", ""},
		{"a Thursday", bavaria, "2027-04-15", ""},
		{"a Friday", bavaria, "2027-04-16", "no parcel is handed over on a Friday"},
		{"a Sunday", bavaria, "2027-04-18", "no parcel is handed over on a Sunday"},
		{"before Good Friday", bavaria, "2027-03-25", "it would be on the way on a public holiday, Friday 2027-03-26: Karfreitag"},
		{"two days before Good Friday", bavaria, "2027-03-24", ""},
		{"Easter Monday", bavaria, "2027-03-29", "Monday 2027-03-29 is a public holiday: Ostermontag"},
		{"after Easter Monday", bavaria, "2027-03-30", ""},
		{"before a holiday of Bavaria", bavaria, "2027-05-26", "it would be on the way on a public holiday, Thursday 2027-05-27: Fronleichnam"},
		{"nobody there", calendar.Shipping{Away: []civil.Span{{First: civil.Of(2027, 4, 12), Last: civil.Of(2027, 4, 14)}}}, "2027-04-14", "nobody is there on Wednesday 2027-04-14"},
		{"the day after", calendar.Shipping{Away: []civil.Span{{First: civil.Of(2027, 4, 12), Last: civil.Of(2027, 4, 14)}}}, "2027-04-15", ""},
		{"the carrier is closed", calendar.Shipping{Closed: []civil.Span{{First: civil.Of(2027, 4, 12), Last: civil.Of(2027, 4, 14)}}}, "2027-04-14", "the carrier takes nothing on Wednesday 2027-04-14"},
		{"the same without holidays", calendar.Shipping{}, "2027-05-26", ""},
		{"before an observed day", states, "2026-07-02", "it would be on the way on a public holiday, Friday 2026-07-03: Independence Day (observed)"},
		{"an observed day", states, "2027-07-05", "Monday 2027-07-05 is a public holiday: Independence Day (observed)"},
		{"before the New Year observed in the old", states, "2027-12-30", "it would be on the way on a public holiday, Friday 2027-12-31: New Year's Day (observed)"},
		{"two days, over Sunday", calendar.Shipping{TransitDays: 3}, "2027-04-15", "it would be on the way on Sunday 2027-04-18"},
		{"two days, arriving on Saturday", calendar.Shipping{TransitDays: 2}, "2027-04-15", ""},
		{"Friday for Saturday, when the keeper lists it", calendar.Shipping{Weekdays: []time.Weekday{time.Friday}}, "2027-04-16", ""},
		{"Monday, when only Friday is listed", calendar.Shipping{Weekdays: []time.Weekday{time.Friday}}, "2027-04-12", "no parcel is handed over on a Monday"},
	} {
		t.Run(test.name, func(t *testing.T) {
			ok, why := test.s.Allowed(date(test.day))
			assert.Equal(t, test.why == "", ok)
			assert.Equal(t, test.why, why)
		})
	}
	ok, why := bavaria.Allowed(0)
	assert.False(t, ok)
	assert.Equal(t, "the date is unknown", why)
}

func TestShippingNextAndLast(t *testing.T) {
	s := calendar.Shipping{Holidays: holidays(t, "de-by")}
	var got []string
	for _, d := range s.Next(date("2027-03-24"), 5) {
		got = append(got, d.String())
	}
	assert.Equal(t, []string{"2027-03-24", "2027-03-30", "2027-03-31", "2027-04-01", "2027-04-05"}, got, "over Easter")

	for _, test := range []struct{ name, before, want string }{
		{"a week day", "2027-04-15", "2027-04-14"},
		{"a Monday", "2027-04-12", "2027-04-08"},
		{"over Easter", "2027-03-30", "2027-03-24"},
	} {
		d, ok := s.LastBefore(date(test.before))
		assert.True(t, ok)
		assert.Equal(t, test.want, d.String(), test.name)
	}

	assert.Empty(t, s.Next(date("2027-03-24"), 0))
	assert.Empty(t, s.Next(date("2027-03-24"), -1))
	assert.Empty(t, s.Next(0, 3))
	_, ok := s.LastBefore(0)
	assert.False(t, ok)
	_, ok = s.LastBefore(civil.First)
	assert.False(t, ok)
	assert.LessOrEqual(t, len(s.Next(civil.Last, 3)), 1, "the calendar ends")

	saturday := calendar.Shipping{Weekdays: []time.Weekday{time.Saturday}}
	assert.Empty(t, saturday.Next(date("2027-03-24"), 3), "every parcel would travel on Sunday")
	_, ok = saturday.LastBefore(date("2027-03-24"))
	assert.False(t, ok)
}

func TestNegativeTransitPanics(t *testing.T) {
	assert.PanicsWithValue(t, "calendar: Shipping.TransitDays is negative", func() {
		calendar.Shipping{TransitDays: -1}.Allowed(date("2027-03-24"))
	})
}

// TestShippingAgainstTheRules walks every day and applies the three rules one
// by one.
func TestShippingAgainstTheRules(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, err := calendar.HolidaysOf(rapid.SampledFrom([]string{"de-by", "us", "jp", "gb"}).Draw(t, "code"))
		require.NoError(t, err)
		s := calendar.Shipping{
			Weekdays:    rapid.SliceOfNDistinct(rapid.Map(rapid.IntRange(0, 6), func(i int) time.Weekday { return time.Weekday(i) }), 1, 7, rapid.ID).Draw(t, "weekdays"),
			TransitDays: rapid.IntRange(1, 5).Draw(t, "transit"),
			Holidays:    h,
		}
		allowed := func(d civil.Date) bool {
			way := []civil.Date{d}
			for i := range s.TransitDays {
				way = append(way, d+civil.Date(i)+1)
			}
			stopped := slices.ContainsFunc(way, func(d civil.Date) bool { _, is := h.On(d); return is })
			sunday := slices.ContainsFunc(way[1:], func(d civil.Date) bool { return d.Weekday() == time.Sunday })
			return slices.Contains(s.Weekdays, d.Weekday()) && !stopped && !sunday
		}
		from := date("2026-12-01").Add(rapid.IntRange(0, 500).Draw(t, "from"))
		var want []civil.Date
		for d := from; d < from+60; d++ {
			ok, why := s.Allowed(d)
			assert.Equal(t, allowed(d), ok, "%s: %s", d, why)
			assert.Equal(t, ok, why == "")
			if allowed(d) {
				want = append(want, d)
			}
		}
		if len(want) == 0 {
			assert.Empty(t, s.Next(from, 3))
			return
		}
		assert.Equal(t, want, s.Next(from, len(want)))
		last, ok := s.LastBefore(from + 60)
		assert.True(t, ok)
		assert.Equal(t, want[len(want)-1], last)
	})
}
