package calendar_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
)

func TestAlarms(t *testing.T) {
	today := civil.Of(2027, 3, 19)
	c := calendar.Calendar{ID: "room", Name: "Room", Events: []calendar.Event{
		{Key: "past", Span: civil.Span{First: today - 1, Last: today + 1}, Summary: "over; or begun", Changed: today},
		{Key: "today", Span: civil.Span{First: today, Last: today}, Summary: "look, and feed", Changed: today},
		{Key: "gone", Span: civil.Span{First: today + 1, Last: today + 1}, Summary: "called off", Changed: today, Cancelled: true},
	}}
	for _, row := range []struct {
		alarm calendar.Alarm
		want  string
	}{
		{calendar.Alarm{Hour: 7, Minute: 30}, "PT7H30M"},
		{calendar.Alarm{DaysBefore: 1, Hour: 18}, "-PT6H"},
		{calendar.Alarm{DaysBefore: 2, Hour: 23, Minute: 59}, "-PT24H1M"},
		{calendar.Alarm{}, "PT0M"},
		{calendar.Alarm{Minute: 5}, "PT5M"},
	} {
		var b bytes.Buffer
		require.NoError(t, calendar.WriteICS(&b, c.Alarmed(row.alarm, today)))
		text := b.String()
		assert.Contains(t, text, "BEGIN:VALARM\r\nACTION:DISPLAY\r\nTRIGGER:"+row.want+"\r\nDESCRIPTION:look\\, and feed\r\nEND:VALARM\r\n")
		assert.Equal(t, 1, strings.Count(text, "BEGIN:VALARM"), "not for what has begun, nor for what is called off")
		back, err := calendar.ReadICS(b.Bytes())
		require.NoError(t, err, "the memory of a calendar does not mind alarms")
		assert.Len(t, back.Events, 3)
	}
	assert.Nil(t, c.Events[1].Alarm, "the calendar itself is as it was")
	assert.Panics(t, func() { c.Alarmed(calendar.Alarm{Hour: 24}, today) })
	assert.Panics(t, func() { c.Alarmed(calendar.Alarm{}, 0) })
}
