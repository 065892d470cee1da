package calendar_test

import (
	"bytes"
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
