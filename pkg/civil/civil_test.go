package civil_test

import (
	"encoding/json"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// TestEveryDay walks all dates beside the standard library's calendar.
func TestEveryDay(t *testing.T) {
	day := time.Date(1, 1, 1, 0, 0, 0, 0, time.UTC)
	for d := civil.First; d <= civil.Last; d++ {
		y, m, dd := day.Date()
		gotY, gotM, gotD := d.YMD()
		switch {
		case gotY != y || gotM != m || gotD != dd:
			t.Fatalf("day %d: YMD is %d-%d-%d, want %d-%d-%d", d, gotY, gotM, gotD, y, m, dd)
		case civil.Of(y, m, dd) != d:
			t.Fatalf("day %d: Of(%d, %d, %d) is %d", d, y, m, dd, civil.Of(y, m, dd))
		case d.Weekday() != day.Weekday():
			t.Fatalf("%s is a %s, want %s", d, d.Weekday(), day.Weekday())
		case !d.UTC().Equal(day):
			t.Fatalf("%s: UTC gives %s", d, d.UTC())
		}
		day = day.AddDate(0, 0, 1)
	}
	require.Equal(t, 10000, day.Year(), "the last date is the end of year 9999")
}

// TestTextOfEveryDay reads back what String writes; a day a week keeps it short.
func TestTextOfEveryDay(t *testing.T) {
	for d := civil.First; d <= civil.Last; d += 7 {
		s := d.String()
		if want := d.UTC().Format(time.DateOnly); s != want {
			t.Fatalf("day %d is %q, want %q", d, s, want)
		}
		if back, err := civil.Parse(s); err != nil || back != d {
			t.Fatalf("Parse(%q) gives %d, %v, want %d", s, back, err, d)
		}
	}
}

// TestDayCounts has sample dates of Reingold and Dershowitz 2018, Calendrical
// Calculations, appendix C, columns R.D., weekday and Gregorian; from memory.
func TestDayCounts(t *testing.T) {
	for _, row := range []struct {
		day     civil.Date
		text    string
		weekday time.Weekday
	}{
		{25469, "0070-09-24", time.Wednesday},
		{253427, "0694-11-10", time.Saturday},
		{434355, "1190-03-23", time.Friday},
		{601716, "1648-06-10", time.Wednesday},
		{728714, "1996-02-25", time.Sunday},
		{764652, "2094-07-18", time.Sunday},
	} {
		assert.Equal(t, row.text, row.day.String())
		assert.Equal(t, row.weekday, row.day.Weekday(), row.text)
	}
	assert.Equal(t, civil.Date(719163), civil.Of(1970, time.January, 1), "the first day of Unix time is R.D. 719163")
}

func TestLeapYears(t *testing.T) {
	for _, row := range []struct {
		year   int
		leap   bool
		reason string
	}{
		{2027, false, "not divisible by 4"},
		{2028, true, "divisible by 4"},
		{1900, false, "a full century"},
		{2100, false, "a full century"},
		{2000, true, "divisible by 400"},
		{4, true, "far back, the rule is the same"},
		{9996, true, "the last one"},
	} {
		days := civil.Of(row.year, time.December, 31).Sub(civil.Of(row.year, time.January, 1)) + 1
		assert.Equal(t, row.leap, days == 366, "%d: %s", row.year, row.reason)
		next := civil.Of(row.year, time.February, 28).Add(1)
		_, month, _ := next.YMD()
		assert.Equal(t, row.leap, month == time.February, "%d: the day after 28 February is %s", row.year, next)
	}
}

func TestOfPanics(t *testing.T) {
	for _, row := range []struct {
		name, text string
		y, d       int
		m          time.Month
	}{
		{"no 29 February", "civil: no such date: 2027-02-29", 2027, 29, 2},
		{"month 13", "civil: no such date: 2027-13-01", 2027, 1, 13},
		{"month 0", "civil: no such date: 2027-00-01", 2027, 1, 0},
		{"day 0", "civil: no such date: 2027-01-00", 2027, 0, 1},
		{"day 31 of April", "civil: no such date: 2027-04-31", 2027, 31, 4},
		{"year 0", "civil: no such date: 0000-01-01", 0, 1, 1},
		{"year 10000", "civil: no such date: 10000-01-01", 10000, 1, 1},
	} {
		t.Run(row.name, func(t *testing.T) {
			assert.PanicsWithValue(t, row.text, func() { civil.Of(row.y, row.m, row.d) })
		})
	}
}

func TestAdd(t *testing.T) {
	day := civil.Of(2027, time.March, 1)
	for _, row := range []struct {
		name string
		from civil.Date
		n    int
		want civil.Date
	}{
		{"forward", day, 31, civil.Of(2027, time.April, 1)},
		{"back over the end of February", day, -1, civil.Of(2027, time.February, 28)},
		{"nothing", day, 0, day},
		{"to the last day", civil.Last.Add(-1), 1, civil.Last},
		{"beyond the last day", civil.Last, 1, civil.Last},
		{"before the first day", civil.First, -1, civil.First},
		{"from end to end", civil.First, int(civil.Last - civil.First), civil.Last},
		{"far ahead", day, math.MaxInt32, civil.Last},
		{"far back", day, math.MinInt32, civil.First},
		{"largest number, whose sum overflows", day, math.MaxInt, civil.Last},
		{"smallest number", day, math.MinInt, civil.First},
		{"unknown", 0, 10, 0},
		{"unknown, back", 0, -10, 0},
	} {
		t.Run(row.name, func(t *testing.T) {
			assert.Equal(t, row.want, row.from.Add(row.n))
		})
	}
}

func TestUnknownDate(t *testing.T) {
	var d civil.Date
	assert.False(t, d.Known())
	assert.True(t, civil.First.Known())
	assert.Equal(t, "unknown", d.String())
	assert.True(t, d.UTC().IsZero())
	y, m, day := d.YMD()
	assert.Zero(t, y)
	assert.Zero(t, m)
	assert.Zero(t, day)
}

func TestJSON(t *testing.T) {
	type record struct {
		On, Unknown civil.Date
		Span        civil.Span
		Window      civil.Window
	}
	on := civil.Of(2027, time.March, 19)
	written := record{
		On:     on,
		Span:   civil.Span{First: on, Last: on.Add(3)},
		Window: civil.Window{Early: on, Likely: on.Add(1), Late: on.Add(4)},
	}
	text, err := json.Marshal(written)
	require.NoError(t, err)
	assert.JSONEq(t, `{"On": "2027-03-19", "Unknown": "",
		"Span": {"first": "2027-03-19", "last": "2027-03-22"},
		"Window": {"early": "2027-03-19", "likely": "2027-03-20", "late": "2027-03-23"}}`, string(text))
	read := record{Unknown: on}
	require.NoError(t, json.Unmarshal(text, &read))
	assert.Equal(t, written, read, "a date that was there before is gone as well")

	var bad civil.Date
	var problem *civil.ParseError
	require.ErrorAs(t, json.Unmarshal([]byte(`"2027-02-29"`), &bad), &problem)
	assert.Zero(t, bad)
}

func TestAddAndSubAreInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyDate().Draw(t, "a"), anyDate().Draw(t, "b")
		if got := a.Add(b.Sub(a)); got != b {
			t.Fatalf("%s and %d days is %s, want %s", a, b.Sub(a), got, b)
		}
		if (a < b) != a.UTC().Before(b.UTC()) {
			t.Fatalf("%s and %s are in another order than their times", a, b)
		}
	})
}

func anyDate() *rapid.Generator[civil.Date] {
	return rapid.Custom(func(t *rapid.T) civil.Date {
		return civil.Date(rapid.Int32Range(int32(civil.First), int32(civil.Last)).Draw(t, "day"))
	})
}
