package calendar_test

import (
	"bytes"
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
)

func TestWhatCannotBeWritten(t *testing.T) {
	event := func(change func(*calendar.Event)) func(*calendar.Calendar) {
		return func(c *calendar.Calendar) { change(&c.Events[1]) }
	}
	const key = "pairing/P-28-01/rain"
	for _, test := range []struct {
		name   string
		change func(*calendar.Calendar)
		want   error
		others bool // whether CSV and text cannot be written either
	}{
		{"no id", func(c *calendar.Calendar) { c.ID = "" }, &calendar.CalendarError{Field: "ID"}, true},
		{"a name of blanks", func(c *calendar.Calendar) { c.Name = " \x00" }, &calendar.CalendarError{Field: "Name"}, true},
		{"no events", func(c *calendar.Calendar) { c.Events = nil }, &calendar.CalendarError{Field: "Events"}, false},
		{"no key", event(func(e *calendar.Event) { e.Key = "" }), &calendar.EventError{Field: "Key"}, true},
		{"a title of control characters", event(func(e *calendar.Event) { e.Summary = "\x01\n" }), &calendar.EventError{Key: key, Field: "Summary"}, true},
		{"unknown first day", event(func(e *calendar.Event) { e.Span.First = 0 }), &calendar.EventError{Key: key, Field: "Span"}, true},
		{"unknown last day", event(func(e *calendar.Event) { e.Span.Last = 0 }), &calendar.EventError{Key: key, Field: "Span"}, true},
		{"ends before it begins", event(func(e *calendar.Event) { e.Span.Last = e.Span.First - 1 }), &calendar.EventError{Key: key, Field: "Span"}, true},
		{"before year 1", event(func(e *calendar.Event) { e.Span.First = -1 }), &calendar.EventError{Key: key, Field: "Span"}, true},
		{"after year 9999", event(func(e *calendar.Event) { e.Span.Last = civil.Last + 1 }), &calendar.EventError{Key: key, Field: "Span"}, true},
		{"no day after the last", event(func(e *calendar.Event) { e.Span.Last = civil.Last }), &calendar.EventError{Key: key, Field: "Span"}, false},
		{"negative sequence", event(func(e *calendar.Event) { e.Sequence = -1 }), &calendar.EventError{Key: key, Field: "Sequence"}, true},
		{"sequence beyond 32 bits", event(func(e *calendar.Event) { e.Sequence = math.MaxInt32; e.Sequence++ }), &calendar.EventError{Key: key, Field: "Sequence"}, true},
		{"day of change unknown", event(func(e *calendar.Event) { e.Changed = 0 }), &calendar.EventError{Key: key, Field: "Changed"}, false},
		{
			"one key twice", func(c *calendar.Calendar) { c.Events[3].Key = key },
			&calendar.DuplicateKeyError{Key: key, First: 1, Second: 3}, true,
		},
	} {
		t.Run(test.name, func(t *testing.T) {
			c := room()
			test.change(&c)
			var out bytes.Buffer
			same(t, test.want, calendar.WriteICS(&out, c))
			csvErr := calendar.WriteCSV(&out, c)
			textErr := calendar.WriteText(&out, c, span("2028-01-01..2028-12-31"))
			if test.others {
				same(t, test.want, csvErr)
				same(t, test.want, textErr)
				assert.Empty(t, out.String(), "nothing was written")
			} else {
				assert.NoError(t, csvErr)
				assert.NoError(t, textErr)
			}
		})
	}
}

// same compares what errors say besides their words.
func same(t *testing.T, want, got error) {
	t.Helper()
	require.Error(t, got)
	assert.NotContains(t, got.Error(), "\n")
	switch want := want.(type) {
	case *calendar.CalendarError:
		var e *calendar.CalendarError
		require.ErrorAs(t, got, &e)
		assert.Equal(t, want.Field, e.Field)
		assert.NotEmpty(t, e.Reason)
	case *calendar.EventError:
		var e *calendar.EventError
		require.ErrorAs(t, got, &e)
		assert.Equal(t, want.Key, e.Key)
		assert.Equal(t, want.Field, e.Field)
		assert.NotEmpty(t, e.Reason)
	case *calendar.DuplicateKeyError:
		var e *calendar.DuplicateKeyError
		require.ErrorAs(t, got, &e)
		assert.Equal(t, want, e)
	default:
		t.Fatalf("no such error: %T", want)
	}
}

// full is a disk without room after some bytes.
type full struct{ left int }

var errFull = errors.New("no space left")

func (f *full) Write(p []byte) (int, error) {
	if len(p) > f.left {
		n := f.left
		f.left = 0
		return n, errFull
	}
	f.left -= len(p)
	return len(p), nil
}

func TestFailingWriter(t *testing.T) {
	for left := range len(written(t, room())) {
		require.ErrorIs(t, calendar.WriteICS(&full{left}, room()), errFull)
	}
	assert.ErrorIs(t, calendar.WriteCSV(&full{10}, room()), errFull)
	assert.ErrorIs(t, calendar.WriteText(&full{10}, room(), span("2028-01-01..2028-12-31")), errFull)
}
