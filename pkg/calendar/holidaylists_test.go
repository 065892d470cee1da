package calendar

import (
	"testing"
	"time"
	_ "time/tzdata" // the zones are needed wherever the test runs

	"github.com/rickar/cal/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// TestOnAgainstTheLibrary compares every day of eight years with the
// library's own question, which reckons observed days in another way.
func TestOnAgainstTheLibrary(t *testing.T) {
	putMachineInto(t, time.UTC)
	for code, list := range lists {
		h, err := HolidaysOf(code)
		require.NoError(t, err)
		library := cal.Calendar{Holidays: list}
		for d := civil.Of(2024, time.January, 1); d <= civil.Of(2031, time.December, 31); d++ {
			actual, observed, _ := library.IsHoliday(d.UTC())
			_, ok := h.On(d)
			require.Equal(t, actual || observed, ok, "%s on %s", code, d)
		}
	}
}

// putMachineInto moves the library to a time zone for one test.
func putMachineInto(t *testing.T, zone *time.Location) {
	before := cal.DefaultLoc
	t.Cleanup(func() { cal.DefaultLoc = before })
	cal.DefaultLoc = zone
}

// TestHolidaysWhereMidnightIsMissing asks for holidays in places where the
// clocks went forward at midnight of that day.
func TestHolidaysWhereMidnightIsMissing(t *testing.T) {
	for _, test := range []struct {
		zone, code string
		day        civil.Date
	}{
		{"America/Santiago", "es", civil.Of(2008, time.October, 12)},
		{"America/Havana", "de-be", civil.Of(2026, time.March, 8)},
	} {
		zone, err := time.LoadLocation(test.zone)
		require.NoError(t, err)
		putMachineInto(t, zone)
		h, err := HolidaysOf(test.code)
		require.NoError(t, err)
		_, ok := h.On(test.day)
		assert.True(t, ok, "%s in %s", test.day, test.zone)
		_, ok = h.On(test.day.Add(-1))
		assert.False(t, ok, "%s in %s", test.day.Add(-1), test.zone)
	}
}

func TestOneEdit(t *testing.T) {
	for _, test := range []struct {
		a, b string
		want bool
	}{
		{"de-by", "de-by", false},
		{"de-by", "de-bw", true},
		{"deby", "de-by", true},
		{"de-byy", "de-by", true},
		{"de-yb", "de-by", false},
		{"de-xx", "de-by", false},
		{"d", "de-", false},
		{"", "", false},
		{"", "a", true},
	} {
		assert.Equal(t, test.want, oneEdit(test.a, test.b), "%q %q", test.a, test.b)
		assert.Equal(t, test.want, oneEdit(test.b, test.a), "%q %q", test.b, test.a)
	}
}
