package calendar_test

import (
	"slices"
	"sync"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
)

func holidays(t testing.TB, code string) *calendar.Holidays {
	t.Helper()
	h, err := calendar.HolidaysOf(code)
	require.NoError(t, err)
	return h
}

// gauss gives Easter Sunday after Gauss 1800 with his correction of 1816, from
// the calendar of the moon in the years 1900 to 2099 (M = 24, N = 5).
func gauss(year int) civil.Date {
	a, b, c := year%19, year%4, year%7
	d := (19*a + 24) % 30
	e := (2*b + 4*c + 6*d + 5) % 7
	switch {
	case d == 29 && e == 6:
		return civil.Of(year, time.April, 19)
	case d == 28 && e == 6 && a > 10:
		return civil.Of(year, time.April, 18)
	}
	return civil.Of(year, time.March, 22).Add(d + e)
}

// german lists the holidays of all of Germany: 3 October by the treaty of
// unification of 1990 (Art. 2), the others alike in the laws of all states.
func german(year int) map[civil.Date]string {
	easter := gauss(year)
	return map[civil.Date]string{
		civil.Of(year, time.January, 1):   "Neujahrstag",
		easter.Add(-2):                    "Karfreitag",
		easter.Add(1):                     "Ostermontag",
		civil.Of(year, time.May, 1):       "Tag der Arbeit",
		easter.Add(39):                    "Christi Himmelfahrt",
		easter.Add(50):                    "Pfingstmontag",
		civil.Of(year, time.October, 3):   "Tag der Deutschen Einheit",
		civil.Of(year, time.December, 25): "Weihnachtstag",
		civil.Of(year, time.December, 26): "Zweiter Weihnachtsfeiertag",
	}
}

// bavarian adds what Art. 1 of the Bavarian law on Sundays and holidays (FTG)
// has besides; 15 August is a holiday in its communes that are mainly Catholic.
func bavarian(year int) map[civil.Date]string {
	days := german(year)
	days[civil.Of(year, time.January, 6)] = "Heilige Drei Könige"
	days[gauss(year).Add(60)] = "Fronleichnam"
	days[civil.Of(year, time.August, 15)] = "Mariä Himmelfahrt"
	days[civil.Of(year, time.November, 1)] = "Allerheiligen"
	return days
}

// austrian is the list of § 7 (2) of the Austrian law on rest from work (ARG).
func austrian(year int) map[civil.Date]string {
	easter := gauss(year)
	return map[civil.Date]string{
		civil.Of(year, time.January, 1):   "Neujahrstag",
		civil.Of(year, time.January, 6):   "Heilige Drei Könige",
		easter.Add(1):                     "Ostermontag",
		civil.Of(year, time.May, 1):       "Tag der Arbeit",
		easter.Add(39):                    "Christi Himmelfahrt",
		easter.Add(50):                    "Pfingstmontag",
		easter.Add(60):                    "Fronleichnam",
		civil.Of(year, time.August, 15):   "Mariä Himmelfahrt",
		civil.Of(year, time.October, 26):  "Nationalfeiertag",
		civil.Of(year, time.November, 1):  "Allerheiligen",
		civil.Of(year, time.December, 8):  "Mariä Empfängnis",
		civil.Of(year, time.December, 25): "Christtag",
		civil.Of(year, time.December, 26): "Stefanitag",
	}
}

// federal is the list of federal holidays of the United States Office of
// Personnel Management for 2024 to 2028 and, as 31 December 2027, the first of
// 2028: the days on which they are observed, and those on which they fall.
func federal(year int) map[civil.Date]string {
	lists := map[int][][2]string{
		2024: {
			{"2024-01-01", "New Year's Day"},
			{"2024-01-15", "Martin Luther King Jr. Day"},
			{"2024-02-19", "Presidents' Day"},
			{"2024-05-27", "Memorial Day"},
			{"2024-06-19", "Juneteenth"},
			{"2024-07-04", "Independence Day"},
			{"2024-09-02", "Labor Day"},
			{"2024-10-14", "Columbus Day"},
			{"2024-11-11", "Veterans Day"},
			{"2024-11-28", "Thanksgiving Day"},
			{"2024-12-25", "Christmas Day"},
		},
		2025: {
			{"2025-01-01", "New Year's Day"},
			{"2025-01-20", "Martin Luther King Jr. Day"},
			{"2025-02-17", "Presidents' Day"},
			{"2025-05-26", "Memorial Day"},
			{"2025-06-19", "Juneteenth"},
			{"2025-07-04", "Independence Day"},
			{"2025-09-01", "Labor Day"},
			{"2025-10-13", "Columbus Day"},
			{"2025-11-11", "Veterans Day"},
			{"2025-11-27", "Thanksgiving Day"},
			{"2025-12-25", "Christmas Day"},
		},
		2026: {
			{"2026-01-01", "New Year's Day"},
			{"2026-01-19", "Martin Luther King Jr. Day"},
			{"2026-02-16", "Presidents' Day"},
			{"2026-05-25", "Memorial Day"},
			{"2026-06-19", "Juneteenth"},
			{"2026-07-03", "Independence Day (observed)"},
			{"2026-07-04", "Independence Day"}, // a Saturday
			{"2026-09-07", "Labor Day"},
			{"2026-10-12", "Columbus Day"},
			{"2026-11-11", "Veterans Day"},
			{"2026-11-26", "Thanksgiving Day"},
			{"2026-12-25", "Christmas Day"},
		},
		2027: {
			{"2027-01-01", "New Year's Day"},
			{"2027-01-18", "Martin Luther King Jr. Day"},
			{"2027-02-15", "Presidents' Day"},
			{"2027-05-31", "Memorial Day"},
			{"2027-06-18", "Juneteenth (observed)"},
			{"2027-06-19", "Juneteenth"},       // a Saturday
			{"2027-07-04", "Independence Day"}, // a Sunday
			{"2027-07-05", "Independence Day (observed)"},
			{"2027-09-06", "Labor Day"},
			{"2027-10-11", "Columbus Day"},
			{"2027-11-11", "Veterans Day"},
			{"2027-11-25", "Thanksgiving Day"},
			{"2027-12-24", "Christmas Day (observed)"},
			{"2027-12-25", "Christmas Day"}, // a Saturday
			{"2027-12-31", "New Year's Day (observed)"},
		},
		2028: {
			{"2028-01-01", "New Year's Day"}, // a Saturday
			{"2028-01-17", "Martin Luther King Jr. Day"},
			{"2028-02-21", "Presidents' Day"},
			{"2028-05-29", "Memorial Day"},
			{"2028-06-19", "Juneteenth"},
			{"2028-07-04", "Independence Day"},
			{"2028-09-04", "Labor Day"},
			{"2028-10-09", "Columbus Day"},
			{"2028-11-10", "Veterans Day (observed)"},
			{"2028-11-11", "Veterans Day"}, // a Saturday
			{"2028-11-23", "Thanksgiving Day"},
			{"2028-12-25", "Christmas Day"},
		},
	}
	days := make(map[civil.Date]string)
	for _, day := range lists[year] {
		days[date(day[0])] = day[1]
	}
	return days
}

func TestPublishedHolidays(t *testing.T) {
	for code, list := range map[string]func(int) map[civil.Date]string{"at": austrian, "de": german, "de-by": bavarian, "us": federal} {
		t.Run(code, func(t *testing.T) {
			h := holidays(t, code)
			assert.Equal(t, code, h.Code())
			for year := 2024; year <= 2028; year++ {
				got := make(map[civil.Date]string)
				for d := civil.Of(year, time.January, 1); d <= civil.Of(year, time.December, 31); d++ {
					if name, ok := h.On(d); ok {
						got[d] = name
					}
				}
				if diff := cmp.Diff(list(year), got); diff != "" {
					t.Errorf("%s %d (-published +got):\n%s", code, year, diff)
				}
			}
		})
	}
}

// TestEaster checks the reckoning of this test itself: dates as printed in the
// Book of Common Prayer and in any almanac.
func TestEaster(t *testing.T) {
	for _, want := range []string{"1981-04-19", "2000-04-23", "2008-03-23", "2025-04-20", "2026-04-05", "2027-03-28", "2038-04-25", "2049-04-18"} {
		d := date(want)
		year, _, _ := d.YMD()
		assert.Equal(t, want, gauss(year).String())
	}
}

func TestHolidaysThatTheListsLack(t *testing.T) {
	for _, test := range []struct{ code, day, name string }{
		{"de-mv", "2027-03-08", "Frauentag"},
		{"de-be", "2025-05-08", "Tag der Befreiung"},
		{"de-be", "2028-06-17", "Jahrestag des Volksaufstandes in der DDR"},
		{"it", "2027-10-04", "San Francesco d'Assisi"},
		{"pl", "2027-12-24", "Wigilia Bożego Narodzenia"},
		{"ro", "2027-01-06", "Botezul Domnului"},
		{"ro", "2027-01-07", "Soborul Sfântului Ioan Botezătorul"},
		{"br", "2027-11-20", "Dia Nacional de Zumbi e da Consciência Negra"},
		{"au-nsw", "2027-04-26", "Additional day for ANZAC Day"},
		{"au-nsw", "2027-06-14", "King's Birthday"},
		{"gr", "2027-01-01", "Πρωτοχρονιά"},
		{"de-mv", "2022-03-08", ""},
		{"de-be", "2026-05-08", ""},
		{"de-be", "2024-05-08", ""},
		{"it", "2025-10-04", ""},
		{"de", "2027-08-15", ""},
		{"au-nsw", "2028-04-26", ""},
	} {
		name, ok := holidays(t, test.code).On(date(test.day))
		assert.Equal(t, test.name, name, "%s on %s", test.code, test.day)
		assert.Equal(t, test.name != "", ok)
	}
}

func TestCodes(t *testing.T) {
	codes := calendar.Codes()
	assert.True(t, slices.IsSorted(codes))
	assert.Subset(t, codes, []string{"at", "au-nsw", "ch-zh", "de", "de-by", "fr", "gb", "gb-eng", "nl", "us"})
	for _, code := range codes {
		h := holidays(t, code)
		working := 0
		for d := date("2027-01-01"); d <= date("2027-12-31"); d++ {
			name, ok := h.On(d)
			assert.Equal(t, ok, name != "")
			if ok && d.Weekday() != time.Saturday && d.Weekday() != time.Sunday {
				working++
			}
		}
		assert.True(t, 5 <= working && working <= 17, "%s has %d holidays on working days", code, working)
	}
	codes[0] = "changed"
	assert.NotEqual(t, codes[0], calendar.Codes()[0], "the slice is the caller's")
}

func TestUnknownCode(t *testing.T) {
	for _, test := range []struct{ code, nearest, text string }{
		{"DE-BY", "de-by", ""},
		{"de_by", "de-by", ""},
		{" us ", "us", ""},
		{"deby", "de-by", ""},
		{"de-bz", "de-bb", ""},
		{"dee", "de", ""},
		{"de-xx", "de", ""},
		{"usa", "us", ""},
		{"uk", "gb", ""},
		{"us-ca", "us", `no public holidays are known for "us-ca"; did you mean "us"?`},
		{"gb-sct", "gb", `no public holidays are known for "gb-sct"; did you mean "gb"?; known there: gb, gb-eng, gb-wls`},
		{"ch", "", `no public holidays are known for "ch"; known there: ch-ag, ch-ar, ch-be, ch-bl, ch-bs, ch-gr, ch-sg, ch-sh, ch-sz, ch-tg, ch-ur, ch-zh`},
		{"xx", "", `no public holidays are known for "xx"; write an ISO 3166 code in small letters, such as de, de-by or us`},
		{"", "", ""},
		{"-", "", ""},
		{"Bavaria", "", ""},
	} {
		t.Run(test.code, func(t *testing.T) {
			h, err := calendar.HolidaysOf(test.code)
			assert.Nil(t, h)
			var unknown *calendar.UnknownCodeError
			require.ErrorAs(t, err, &unknown)
			assert.Equal(t, test.code, unknown.Code)
			assert.Equal(t, test.nearest, unknown.Nearest)
			if test.text != "" {
				assert.Equal(t, test.text, err.Error())
			}
		})
	}
}

func TestNoHolidayOutsideTheCalendar(t *testing.T) {
	for _, code := range calendar.Codes() {
		_, ok := holidays(t, code).On(0)
		assert.False(t, ok)
		for _, d := range []civil.Date{civil.First, civil.First + 6, civil.Last - 6, civil.Last} {
			holidays(t, code).On(d) // does not panic
		}
	}
}

// TestHolidaysFromManySides runs under the race detector: the rules of some
// countries write to the holiday that they reckon.
func TestHolidaysFromManySides(t *testing.T) {
	h := holidays(t, "jp")
	var wait sync.WaitGroup
	for range 4 {
		wait.Go(func() {
			for year := 2020; year < 2040; year++ {
				h.On(civil.Of(year, time.March, 20))
			}
		})
	}
	wait.Wait()
}
