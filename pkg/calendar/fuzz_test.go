package calendar_test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
)

// FuzzWriteICS puts any text and any date into a calendar: either nothing is
// written, or a file that the independent reader takes, with one event for each.
func FuzzWriteICS(f *testing.F) {
	f.Add("room", "Lindenhof", "clutch/C-27-03", "hatches", "day 7\nto 9", "hatch", int32(740000), int32(2))
	f.Add("", "", "", "", "", "", int32(0), int32(0))
	f.Add("a\x00", "\r\n", ":\r\nEND:VCALENDAR", "\\", "\xff\u2028;,\"", ",,", int32(civil.Last), int32(-1))
	f.Add("r", "n", "k", "aé🐸", "\ufeff  \t", "ü", int32(civil.First), int32(40000))
	f.Fuzz(func(t *testing.T, id, name, key, summary, description, category string, first, days int32) {
		if days > 1<<20 || days < -1<<20 || first > 1<<30 || first < -1<<30 {
			return // sums of days stay within 32 bits
		}
		span := civil.Span{First: civil.Date(first), Last: civil.Date(first + days)}
		c := calendar.Calendar{ID: id, Name: name, Events: []calendar.Event{
			{Key: key, Span: span, Summary: summary, Description: description, Category: category, Changed: span.First},
			{Key: key + "2", Span: span, Summary: description + "x", Description: summary, Category: name, Changed: span.First},
		}}
		var out bytes.Buffer
		if err := calendar.WriteICS(&out, c); err != nil {
			require.Zero(t, out.Len())
			return
		}
		checkLines(t, out.Bytes())
		_, events := read(t, out.Bytes())
		require.Len(t, events, 2)
	})
}

// FuzzReadICS hands anything to the reader: an *ICSError, or events that can be
// written and read again as they are.
func FuzzReadICS(f *testing.F) {
	for _, name := range []string{"room.ics", "additions.ics"} {
		data, err := os.ReadFile(filepath.Join("testdata", name))
		require.NoError(f, err)
		f.Add(data)
	}
	f.Add([]byte("BEGIN:VCALENDAR\nEND:VCALENDAR"))
	f.Add(file(event("a;b\\,c", "SEQUENCE:1", "CATEGORIES:x,y", "DTSTAMP;A=\"b:c\":x")...))
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := calendar.ReadICS(data)
		if err != nil {
			var wrong *calendar.ICSError
			require.ErrorAs(t, err, &wrong)
			require.Positive(t, wrong.Line)
			return
		}
		if len(p.Events) == 0 {
			return
		}
		var out bytes.Buffer
		require.NoError(t, calendar.WriteICS(&out, calendar.Calendar{ID: "r", Name: "n", Events: p.Events}))
		again, err := calendar.ReadICS(out.Bytes())
		require.NoError(t, err)
		next, changes := calendar.Calendar{ID: "r", Name: "n", Events: again.Events}.Since(p, civil.First)
		require.Equal(t, calendar.Changes{Same: len(p.Events)}, changes)
		require.Len(t, next.Events, len(p.Events))
	})
}
