package calendar_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
)

// file puts lines into a calendar.
func file(lines ...string) []byte {
	all := append([]string{"BEGIN:VCALENDAR", "VERSION:2.0"}, lines...)
	return []byte(strings.Join(append(all, "END:VCALENDAR", ""), "\r\n"))
}

// event puts lines into an event that lacks nothing.
func event(uid string, lines ...string) []string {
	all := []string{"BEGIN:VEVENT", "UID:" + uid, "DTSTAMP:20270101T000000Z", "DTSTART;VALUE=DATE:20270301", "DTEND;VALUE=DATE:20270302", "SUMMARY:rain"}
	return append(append(all, lines...), "END:VEVENT")
}

// asPublished gives the events of c as a reader can know them.
func asPublished(c calendar.Calendar) []calendar.Event {
	var events []calendar.Event
	for _, e := range c.Events {
		e.UID, e.Key = calendar.UID(c.ID, e.Key), ""
		events = append(events, e)
	}
	return events
}

var byUID = cmpopts.SortSlices(func(a, b calendar.Event) bool { return a.UID < b.UID })

func TestReadICS(t *testing.T) {
	c := room()
	got, err := calendar.ReadICS(written(t, c))
	require.NoError(t, err)
	want := calendar.Published{
		UID: calendar.UID(c.ID, ""), Product: "-//spawnwright//frog room calendar//EN", Name: c.Name, Events: asPublished(c),
	}
	if diff := cmp.Diff(want, got, byUID); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
	assert.NoError(t, got.Of(c))
}

// TestReadICSAdditions reads what a phone's calendar program can make of a file:
// line feeds alone, other folds, alarms, time zones and properties of its own.
func TestReadICSAdditions(t *testing.T) {
	data, err := os.ReadFile(filepath.Join("testdata", "additions.ics"))
	require.NoError(t, err)
	got, err := calendar.ReadICS(data)
	require.NoError(t, err)
	want := calendar.Published{
		UID: "00@spawnwright", Product: "-//Some phone//EN", Name: "Kellerbach, back room",
		Events: []calendar.Event{
			{
				UID: "01@spawnwright", Span: span("2027-03-01..2027-03-04"), Summary: "Größe; Zähne, a \\ and\na second line 🐸", Description: "",
				Category: "prepare,family", Changed: date("2027-01-02"), Sequence: 4,
			},
			{UID: "02@spawnwright", Span: span("2027-12-31"), Summary: "plain", Changed: date("2027-01-01"), Cancelled: true},
		},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
}

func TestReadICSWithMark(t *testing.T) {
	_, err := calendar.ReadICS(append([]byte("\ufeff"), file()...))
	assert.NoError(t, err, "some programs begin every UTF-8 file with a byte order mark")
}

// anyCalendar draws a calendar with any text in it.
func anyCalendar(t *rapid.T) calendar.Calendar {
	text := rapid.OneOf(rapid.String(), rapid.StringMatching(`[ -~\n;,\\é🐸]{0,120}`))
	c := calendar.Calendar{ID: "r" + text.Draw(t, "id"), Name: "n" + text.Draw(t, "name")}
	for i := range rapid.IntRange(1, 6).Draw(t, "events") {
		first := date("2027-01-01").Add(rapid.IntRange(0, 60).Draw(t, "first"))
		c.Events = append(c.Events, calendar.Event{
			Key: string(rune('a' + i)), Span: civil.Span{First: first, Last: first.Add(rapid.IntRange(0, 9).Draw(t, "days"))},
			Summary: "s" + text.Draw(t, "summary"), Description: text.Draw(t, "description"), Category: text.Draw(t, "category"),
			Cancelled: rapid.Bool().Draw(t, "cancelled"), Sequence: rapid.IntRange(0, 9).Draw(t, "sequence"), Changed: date("2026-12-01"),
		})
	}
	return c
}

// TestReadICSTwin: what was written is read as it was meant, and written again
// byte for byte.
func TestReadICSTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyCalendar(t)
		var out bytes.Buffer
		require.NoError(t, calendar.WriteICS(&out, c))
		got, err := calendar.ReadICS(out.Bytes())
		require.NoError(t, err)
		require.NoError(t, got.Of(c))
		var again bytes.Buffer
		require.NoError(t, calendar.WriteICS(&again, calendar.Calendar{ID: c.ID, Name: got.Name, Events: got.Events}))
		require.Equal(t, out.String(), again.String())
		next, changes := c.Since(got, date("2026-12-24"))
		require.Equal(t, calendar.Changes{Same: len(c.Events)}, changes)
		require.Equal(t, c, next)
	})
}

func TestReadICSErrors(t *testing.T) {
	two := func(uid string) []string { return append(event("a"), event(uid)...) }
	for _, row := range []struct {
		name string
		data []byte
		want string
	}{
		{"empty", nil, "line 1: there is no calendar: the first line has to be BEGIN:VCALENDAR"},
		{"a keeper's file", []byte("keeper: Lindenhof\nanimals: []\n"), "line 1: there is no calendar: the first line has to be BEGIN:VCALENDAR"},
		{"an event alone", []byte("BEGIN:VEVENT\r\nEND:VEVENT\r\n"), "line 1: there is no calendar: the first line has to be BEGIN:VCALENDAR"},
		{"cut off", []byte("BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nUID:a"), "line 3: the file ends within VEVENT"},
		{"two calendars", append(file(), file()...), "line 4: something follows the end of the calendar"},
		{"calendar in a calendar", file("BEGIN:VCALENDAR"), "line 3: a calendar within a calendar"},
		{"other version", []byte("BEGIN:VCALENDAR\nVERSION:1.0\nEND:VCALENDAR\n"), `line 2: the version is "1.0" and not 2.0`},
		{"wrong end", file("BEGIN:VEVENT", "END:VALARM"), "line 4: END:VALARM without its BEGIN"},
		{"only an end", []byte("END:VCALENDAR\n"), "line 1: END:VCALENDAR without its BEGIN"},
		{"continued from nothing", []byte(" x\nBEGIN:VCALENDAR\n"), "line 1: a continued line with none before it"},
		{"no colon", file("NAME"), "line 3: there is no name of a property before a colon"},
		{"no name", file(":x"), "line 3: there is no name of a property before a colon"},
		{"blank in a name", file("X Y:x"), "line 3: there is no name of a property before a colon"},
		{"parameter without a value", file("NAME;LANGUAGE:x"), "line 3: a parameter of NAME cannot be read"},
		{"parameter without an end", file("NAME;LANGUAGE=de"), "line 3: a parameter of NAME cannot be read"},
		{"open quote", file(`NAME;LANGUAGE="de:x`), "line 3: a parameter of NAME cannot be read"},
		{"quote within", file(`NAME;LANGUAGE=d"e":x`), "line 3: a parameter of NAME cannot be read"},
		{"quote and more", file(`NAME;LANGUAGE="de"x:x`), "line 3: a parameter of NAME cannot be read"},
		{"parameter twice", file("NAME;A=1;a=2:x"), "line 3: the parameter A of NAME stands twice"},
		{"no UTF-8", file("NAME:\xff"), "line 3: it is not UTF-8"},
		{"no UID", file("BEGIN:VEVENT", "END:VEVENT"), "line 3: an event without UID"},
		{"UID over two lines", file(event(`a\nb`)...), "line 4: the UID is not a single line of text"},
		{"UID of another", file(two("a")...), `line 10: another event has the UID "a" too`},
		{"UID twice", file(event("a", "UID:b")...), "line 9: UID stands twice in an event"},
		{"blank title", file("BEGIN:VEVENT", "UID:a", "DTSTAMP:20270101T000000Z", "DTSTART:20270301", "DTEND:20270302", "SUMMARY: ", "END:VEVENT"), "line 3: an event without SUMMARY"},
		{"a time of day", file("BEGIN:VEVENT", "UID:a", "DTSTAMP:20270101T000000Z", "DTSTART:20270301T100000", "DTEND:20270302T100000", "SUMMARY:x", "END:VEVENT"), `line 6: DTSTART is "20270301T100000" and not a day such as 20270604`},
		{"said to be a time", file("BEGIN:VEVENT", "UID:a", "DTSTAMP:20270101T000000Z", "DTSTART;VALUE=DATE-TIME:20270301", "DTEND:20270302", "SUMMARY:x", "END:VEVENT"), `line 6: DTSTART is "20270301" and not a day such as 20270604`},
		{"no such day", file("BEGIN:VEVENT", "UID:a", "DTSTAMP:20270101T000000Z", "DTSTART:20270301", "DTEND:20270230", "SUMMARY:x", "END:VEVENT"), `line 7: DTEND is "20270230" and not a day such as 20270604`},
		{"ends at once", file("BEGIN:VEVENT", "UID:a", "DTSTAMP:20270101T000000Z", "DTSTART:20270301", "DTEND:20270301", "SUMMARY:x", "END:VEVENT"), "line 7: the event ends before it begins"},
		{"stamp without a zone", file("BEGIN:VEVENT", "UID:a", "DTSTAMP:20270101T000000", "DTSTART:20270301", "DTEND:20270302", "SUMMARY:x", "END:VEVENT"), `line 5: DTSTAMP is "20270101T000000" and not a time such as 20270604T000000Z`},
		{"negative sequence", file(event("a", "SEQUENCE:-1")...), `line 9: SEQUENCE is "-1" and not a whole number`},
		{"large sequence", file(event("a", "SEQUENCE:2147483648")...), `line 9: SEQUENCE is "2147483648" and not a whole number`},
		{"sequence of nothing", file(event("a", "SEQUENCE:")...), `line 9: SEQUENCE is "" and not a whole number`},
		{"other status", file(event("a", "STATUS:NEEDS-ACTION")...), `line 9: the status of an event is "NEEDS-ACTION"`},
	} {
		t.Run(row.name, func(t *testing.T) {
			_, err := calendar.ReadICS(row.data)
			var wrong *calendar.ICSError
			require.ErrorAs(t, err, &wrong)
			assert.EqualError(t, err, row.want)
		})
	}
	_, err := calendar.ReadICS(file(two("b")...))
	require.NoError(t, err, "the file that the rows spoil")
}
