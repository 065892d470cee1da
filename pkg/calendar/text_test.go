package calendar_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
)

func agenda(t *testing.T, c calendar.Calendar, days string) string {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, calendar.WriteText(&out, c, span(days)))
	return out.String()
}

func TestWriteTextGolden(t *testing.T) {
	c := room()
	c.Events[1].Description = "Fill it with rain water or water from reverse osmosis, warm it to room temperature, and run pump and spray bar for one night.\n\nSwitch off at the plug before hands go in."
	golden(t, "room.txt", []byte(agenda(t, c, "2028-01-01..2028-03-31")))
}

func TestAgendaOfADayWithoutEvents(t *testing.T) {
	assert.Equal(t, "Lindenhof frog room\nThursday 2027-04-01\n\nNothing on these days.\n", agenda(t, room(), "2027-04-01"))
}

func TestEmptyDays(t *testing.T) {
	for name, days := range map[string]civil.Span{
		"none":      {},
		"backwards": {First: date("2027-04-02"), Last: date("2027-04-01")},
	} {
		t.Run(name, func(t *testing.T) {
			same(t, &calendar.CalendarError{Field: "days"}, calendar.WriteText(new(bytes.Buffer), room(), days))
		})
	}
}

func TestTextHasNoControlCharacters(t *testing.T) {
	c := room()
	c.Name += "\x1b[31m"
	c.Events[0].Summary = "red\x1b[31m\n\ttitle"
	c.Events[0].Description = "one\r\n\r\n\ttwo \x07"
	text := agenda(t, c, "2028-01-24")
	assert.Equal(t, `Lindenhof frog room[31m
Monday 2028-01-24

Monday 2028-01-24
  red[31m title, until Sunday 2028-03-05
      one

      two
`, text)
}

func TestDays(t *testing.T) {
	c := calendar.Calendar{ID: "a", Name: "A"}
	for _, days := range []string{
		"2027-03-01..2027-03-31", "2027-03-09", "2027-03-10", "2027-03-05..2027-03-10", "2027-03-20", "2027-03-20..2027-04-20",
		"2027-03-21", "2027-03-10..2027-03-11",
	} {
		c.Events = append(c.Events, calendar.Event{Key: days, Span: span(days), Summary: days})
	}
	got, err := c.Days(span("2027-03-10..2027-03-20"))
	require.NoError(t, err)
	keys := make(map[string][]string)
	for _, day := range got {
		for _, e := range day.Events {
			keys[day.Date.String()] = append(keys[day.Date.String()], e.Key)
		}
	}
	want := map[string][]string{
		"2027-03-10": {"2027-03-01..2027-03-31", "2027-03-05..2027-03-10", "2027-03-10", "2027-03-10..2027-03-11"},
		"2027-03-20": {"2027-03-20", "2027-03-20..2027-04-20"},
	}
	if diff := cmp.Diff(want, keys); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	assert.True(t, got[0].Date < got[1].Date)
}

// TestDaysAgainstEveryDay compares the agenda with a walk over every day.
func TestDaysAgainstEveryDay(t *testing.T) {
	day := rapid.Custom(func(t *rapid.T) civil.Date { return date("2027-12-20").Add(rapid.IntRange(0, 30).Draw(t, "day")) })
	spans := rapid.Custom(func(t *rapid.T) civil.Span {
		first := day.Draw(t, "first")
		return civil.Span{First: first, Last: first.Add(rapid.IntRange(0, 12).Draw(t, "length"))}
	})
	rapid.Check(t, func(t *rapid.T) {
		c := calendar.Calendar{ID: "a", Name: "A"}
		for i, s := range rapid.SliceOfN(spans, 0, 8).Draw(t, "events") {
			c.Events = append(c.Events, calendar.Event{Key: string(rune('a' + i)), Span: s, Summary: "x"})
		}
		days := spans.Draw(t, "days")
		got, err := c.Days(days)
		require.NoError(t, err)
		var seen, want []string
		for _, day := range got {
			require.NotEmpty(t, day.Events)
			for _, e := range day.Events {
				seen = append(seen, day.Date.String()+" "+e.Key)
			}
		}
		listed := make(map[string]bool)
		for d := days.First; d <= days.Last; d++ {
			var today []string
			for _, e := range c.Events {
				if e.Span.Contains(d) && !listed[e.Key] {
					listed[e.Key] = true
					today = append(today, d.String()+" "+e.Key)
				}
			}
			want = append(want, today...)
		}
		assert.ElementsMatch(t, want, seen)
	})
}

func TestLinesAreNotTooLong(t *testing.T) {
	c := room()
	c.Events[0].Summary = strings.Repeat("蛙é ", 200)
	c.Events[0].Description = strings.Repeat("word ", 200) + strings.Repeat("x", 100)
	long := 0
	for line := range strings.Lines(agenda(t, c, "2028-01-01..2028-12-31")) {
		line = strings.TrimSuffix(line, "\n")
		assert.Equal(t, strings.TrimRight(line, " "), line, "no blank at the end")
		if n := len([]rune(line)); n > 76 {
			assert.Equal(t, strings.Repeat("x", 100), strings.TrimSpace(line), "only a word is longer")
			long++
		} else if n > 70 {
			long++
		}
	}
	assert.Greater(t, long, 5, "lines are filled")
}
