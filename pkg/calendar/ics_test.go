package calendar_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	ical "github.com/emersion/go-ical"
	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
)

var update = flag.Bool("update", false, "rewrite the golden files")

func date(text string) civil.Date {
	d, err := civil.Parse(text)
	if err != nil {
		panic(err)
	}
	return d
}

func span(text string) civil.Span {
	s, err := civil.ParseSpan(text)
	if err != nil {
		panic(err)
	}
	return s
}

// room is the small calendar of the golden files: a span over a month's end, a
// leap day, a turn of the year, and an event that was called off.
func room() calendar.Calendar {
	return calendar.Calendar{
		ID:   "lindenhof",
		Name: "Lindenhof frog room",
		Events: []calendar.Event{
			{
				Key: "pairing/P-28-01/cooling", Span: span("2028-01-24..2028-03-05"), Category: "cooling",
				Summary: "P-28-01: cooling", Description: "Bram × Brama, cooling place 2.\nDay 20 °C, night 16 °C; mist once a day.",
				Changed: date("2027-11-02"),
			},
			{
				Key: "pairing/P-28-01/rain", Span: span("2028-02-29"), Category: "rain chamber",
				Summary: "Make rain chamber 1 ready, for P-28-01", Changed: date("2027-11-02"), Sequence: 3,
			},
			{
				Key: "clutch/C-27-09/sale-ready", Span: span("2027-12-30..2028-01-02"), Category: "sale-ready",
				Summary: "C-27-09: sale-ready", Description: "Early, likely and late: 2027-12-30, 2027-12-31, 2028-01-02.",
				Changed: date("2027-12-01"), Sequence: 1,
			},
			{
				Key: "clutch/C-27-08/hatched", Span: span("2028-01-02"), Category: "hatch",
				Summary: "C-27-08: hatches", Changed: date("2027-12-15"), Sequence: 2, Cancelled: true,
			},
		},
	}
}

func written(t testing.TB, c calendar.Calendar) []byte {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, calendar.WriteICS(&out, c))
	return out.Bytes()
}

func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		require.NoError(t, os.WriteFile(path, got, 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("%s (-want +got):\n%s", path, diff)
	}
}

func TestWriteICSGolden(t *testing.T) {
	golden(t, "room.ics", written(t, room()))
}

// reading is an event as the independent reader finds it.
type reading struct {
	UID, Start, End, Stamp, Modified, Summary, Description, Category, Status, Transparency string
	Sequence                                                                               int
}

// read gives the calendar's properties that matter and its events, through a
// reader that shares no code with the writer.
func read(t testing.TB, file []byte) (*ical.Calendar, []reading) {
	t.Helper()
	c, err := ical.NewDecoder(bytes.NewReader(file)).Decode()
	require.NoError(t, err, "%q", file)
	var events []reading
	for _, e := range c.Events() {
		text := func(name string) string {
			s, err := e.Props.Text(name)
			require.NoError(t, err, name)
			return s
		}
		value := func(name, params string) string {
			p := e.Props.Get(name)
			require.NotNil(t, p, name)
			assert.Equal(t, params, p.Params.Get(ical.ParamValue), name)
			return p.Value
		}
		sequence, err := e.Props.Get(ical.PropSequence).Int()
		require.NoError(t, err)
		events = append(events, reading{
			UID: text(ical.PropUID), Sequence: sequence,
			Start: value(ical.PropDateTimeStart, "DATE"), End: value(ical.PropDateTimeEnd, "DATE"),
			Stamp: value(ical.PropDateTimeStamp, ""), Modified: value(ical.PropLastModified, ""),
			Summary: text(ical.PropSummary), Description: text(ical.PropDescription), Category: text(ical.PropCategories),
			Status: text(ical.PropStatus), Transparency: text(ical.PropTransparency),
		})
	}
	return c, events
}

func TestReadBack(t *testing.T) {
	c, events := read(t, written(t, room()))
	for name, want := range map[string]string{
		ical.PropVersion: "2.0", ical.PropCalendarScale: "GREGORIAN", ical.PropMethod: "PUBLISH",
		ical.PropName: "Lindenhof frog room", "X-WR-CALNAME": "Lindenhof frog room", "X-PUBLISHED-TTL": "PT12H",
	} {
		got, err := c.Props.Text(name)
		require.NoError(t, err)
		assert.Equal(t, want, got, name)
	}
	assert.Contains(t, c.Props.Get(ical.PropProductID).Value, "spawnwright")
	refresh, err := c.Props.Get(ical.PropRefreshInterval).Duration()
	require.NoError(t, err)
	assert.Equal(t, 12*time.Hour, refresh)
	assert.Equal(t, ical.Params{"VALUE": {"DURATION"}}, c.Props.Get(ical.PropRefreshInterval).Params)

	want := []reading{
		{
			UID: calendar.UID("lindenhof", "clutch/C-27-08/hatched"), Start: "20280102", End: "20280103",
			Stamp: "20271215T000000Z", Modified: "20271215T000000Z", Summary: "C-27-08: hatches", Category: "hatch",
			Status: "CANCELLED", Transparency: "TRANSPARENT", Sequence: 2,
		},
		{
			UID: calendar.UID("lindenhof", "clutch/C-27-09/sale-ready"), Start: "20271230", End: "20280103",
			Stamp: "20271201T000000Z", Modified: "20271201T000000Z", Summary: "C-27-09: sale-ready", Category: "sale-ready",
			Description: "Early, likely and late: 2027-12-30, 2027-12-31, 2028-01-02.",
			Status:      "CONFIRMED", Transparency: "TRANSPARENT", Sequence: 1,
		},
		{
			UID: calendar.UID("lindenhof", "pairing/P-28-01/cooling"), Start: "20280124", End: "20280306",
			Stamp: "20271102T000000Z", Modified: "20271102T000000Z", Summary: "P-28-01: cooling", Category: "cooling",
			Description: "Bram × Brama, cooling place 2.\nDay 20 °C, night 16 °C; mist once a day.",
			Status:      "CONFIRMED", Transparency: "TRANSPARENT",
		},
		{
			UID: calendar.UID("lindenhof", "pairing/P-28-01/rain"), Start: "20280229", End: "20280301",
			Stamp: "20271102T000000Z", Modified: "20271102T000000Z", Summary: "Make rain chamber 1 ready, for P-28-01",
			Category: "rain chamber", Status: "CONFIRMED", Transparency: "TRANSPARENT", Sequence: 3,
		},
	}
	byUID := cmp.Transformer("byUID", func(list []reading) map[string]reading {
		m := make(map[string]reading)
		for _, r := range list {
			m[r.UID] = r
		}
		return m
	})
	if diff := cmp.Diff(want, events, byUID); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	for i := 1; i < len(events); i++ {
		assert.Less(t, events[i-1].UID, events[i].UID, "sorted by UID")
	}
}

func TestHostileTexts(t *testing.T) {
	for _, test := range []struct{ name, text, want string }{
		{"quotes", `say "tadpole" or 'froglet'`, ""},
		{"list marks", `a,b;c:d,,;;`, ""},
		{"backslashes", `C:\frogs\new\, \\n \N`, ""},
		{"backslash at the end", `ends \`, ""},
		{"line ends", "one\ntwo\n\nfour", ""},
		{"line ends of other systems", "one\r\ntwo\rthree\n\rfive", "one\ntwo\nthree\n\nfive"},
		{"line ends of Unicode", "one\u2028two\u2029three\u0085four", "one\ntwo\nthree\nfour"},
		{"control characters", "a\x00b\x07c\x1bd\x7fe\u009bf\vg\fh", "abcdefgh"},
		{"tab", "a\tb", ""},
		{"not UTF-8", "a\xffb\xc3", "a\uFFFDb\uFFFD"},
		{"Chinese, Japanese, Korean", "蝌蚪变成青蛙。おたまじゃくし、올챙이", ""},
		{"emoji with joiners", "🐸👩‍🔬🏳️‍🌈", ""},
		{"right to left", "ضفدع صغير 12", ""},
		{"a property of its own", "x\r\nEND:VEVENT\r\nATTENDEE:mailto:a@b.example", "x\nEND:VEVENT\nATTENDEE:mailto:a@b.example"},
		{"500 letters without a blank", strings.Repeat("Laubfrosch", 50), ""},
		{"500 letters of three octets", strings.Repeat("蛙", 500), ""},
		{"500 words", strings.Repeat("é wort ", 500), ""},
		{"many blanks", "a" + strings.Repeat(" ", 400) + "b", ""},
		{"angle brackets, where the folding breaks too", strings.Repeat("<b>x</b>", 60), ""},
	} {
		t.Run(test.name, func(t *testing.T) {
			want := test.want
			if want == "" {
				want = test.text
			}
			c := room()
			c.Events = c.Events[:1]
			c.Events[0].Summary = test.text
			c.Events[0].Description = test.text
			file := written(t, c)
			checkLines(t, file)
			_, events := read(t, file)
			require.Len(t, events, 1)
			assert.Equal(t, want, events[0].Summary)
			assert.Equal(t, want, events[0].Description)
		})
	}
}

func TestCategoryHasNoComma(t *testing.T) {
	c := room()
	c.Events = c.Events[:1]
	c.Events[0].Category = "rain, chamber,\nready\t"
	file := written(t, c)
	assert.Contains(t, string(file), "\r\nCATEGORIES:rain chamber ready\r\n")
}

func TestTextsThatMayBeMissing(t *testing.T) {
	c := room()
	c.Events = c.Events[:1]
	c.Events[0].Category, c.Events[0].Description = " , ", "\x00"
	file := string(written(t, c))
	assert.NotContains(t, file, "CATEGORIES")
	assert.NotContains(t, file, "DESCRIPTION")
}

// checkLines looks at the bytes: CRLF alone, at most 75 octets a line, and no
// character cut in two (RFC 5545, section 3.1).
func checkLines(t testing.TB, file []byte) {
	t.Helper()
	require.True(t, bytes.HasSuffix(file, []byte("\r\n")), "the last line is ended")
	for _, line := range strings.Split(strings.TrimSuffix(string(file), "\r\n"), "\r\n") {
		require.LessOrEqual(t, len(line), 75, "%q", line)
		require.NotEmpty(t, line)
		require.True(t, utf8.ValidString(line), "%q", line)
		require.NotContains(t, line, "\n")
		require.NotContains(t, line, "\r")
	}
}

// TestFoldAtEveryPlace moves a character of each length over the 75th octet.
func TestFoldAtEveryPlace(t *testing.T) {
	for _, char := range []string{"x", "é", "蛙", "🐸", "\\", ",", "\n", " "} {
		for before := range 160 {
			text := strings.Repeat("a", before) + char + strings.Repeat("b", 80)
			c := room()
			c.Events = c.Events[:1]
			c.Events[0].Summary = text
			file := written(t, c)
			checkLines(t, file)
			_, events := read(t, file)
			require.Equal(t, text, events[0].Summary)
		}
	}
}

// cleanSlowly is the obvious twin of the cleaning of texts.
func cleanSlowly(text string) string {
	text = string([]rune(text)) // each octet that is no UTF-8 becomes U+FFFD
	for _, end := range []string{"\r\n", "\r", "\u0085", "\u2028", "\u2029"} {
		text = strings.ReplaceAll(text, end, "\n")
	}
	for r := rune(0); r < 0xA0; r++ {
		if (r < 0x20 || r >= 0x7F) && r != '\n' && r != '\t' {
			text = strings.ReplaceAll(text, string(r), "")
		}
	}
	return text
}

func TestAnyTextSurvives(t *testing.T) {
	hostile := rapid.StringOf(rapid.OneOf(
		rapid.Rune(),
		rapid.RuneFrom([]rune("\\\\,;:\"'\n\r\t <>=éß蛙🐸\u2028\u0085\x00\x1b\ufeff")),
	))
	rapid.Check(t, func(rt *rapid.T) {
		c := calendar.Calendar{ID: "room", Name: "." + hostile.Draw(rt, "name")}
		for i := range rapid.IntRange(1, 5).Draw(rt, "events") {
			first := date("2027-01-01").Add(rapid.IntRange(0, 800).Draw(rt, "first"))
			c.Events = append(c.Events, calendar.Event{
				Key:         string(rune('a'+i)) + hostile.Draw(rt, "key"),
				Span:        civil.Span{First: first, Last: first.Add(rapid.IntRange(0, 90).Draw(rt, "days"))},
				Summary:     hostile.Draw(rt, "summary") + ".",
				Description: hostile.Draw(rt, "description"),
				Category:    hostile.Draw(rt, "category"),
				Cancelled:   rapid.Bool().Draw(rt, "cancelled"),
				Sequence:    rapid.IntRange(0, 9).Draw(rt, "sequence"),
				Changed:     first.Add(-30),
			})
		}
		file := written(t, c)
		checkLines(t, file)
		require.Equal(t, file, written(t, c), "two writes give equal bytes")
		_, events := read(t, file)
		require.Len(t, events, len(c.Events))
		byUID := make(map[string]reading)
		for _, e := range events {
			byUID[e.UID] = e
		}
		for _, e := range c.Events {
			got := byUID[calendar.UID(c.ID, e.Key)]
			want := reading{
				UID: calendar.UID(c.ID, e.Key), Sequence: e.Sequence, Status: "CONFIRMED", Transparency: "TRANSPARENT",
				Start: e.Span.First.UTC().Format("20060102"), End: e.Span.Last.Add(1).UTC().Format("20060102"),
				Stamp: e.Changed.UTC().Format("20060102T150405Z"), Modified: e.Changed.UTC().Format("20060102T150405Z"),
				Summary: cleanSlowly(e.Summary), Description: cleanSlowly(e.Description),
				Category: strings.Join(strings.Fields(strings.ReplaceAll(cleanSlowly(e.Category), ",", " ")), " "),
			}
			if e.Cancelled {
				want.Status = "CANCELLED"
			}
			if diff := cmp.Diff(want, got); diff != "" {
				rt.Fatalf("(-want +got):\n%s", diff)
			}
		}
	})
}

func TestOrderOfEventsDoesNotMatter(t *testing.T) {
	c := room()
	want := written(t, c)
	c.Events[0], c.Events[3] = c.Events[3], c.Events[0]
	assert.Equal(t, string(want), string(written(t, c)))
}

func TestMovedAndRenamedEventKeepsItsUID(t *testing.T) {
	c := room()
	before := written(t, c)
	c.Name = "Frog room of the Lindenhof"
	c.Events[0].Span = span("2028-02-01..2028-03-20")
	c.Events[0].Summary = "Cooling of the first pair"
	c.Events[0].Sequence++
	_, old := read(t, before)
	_, now := read(t, written(t, c))
	for i := range old {
		assert.Equal(t, old[i].UID, now[i].UID)
	}
}

func TestUID(t *testing.T) {
	// From: printf '9:lindenhof:clutch/C-27-08/hatched' | sha256sum | cut -c 1-32
	assert.Equal(t, "d739d8a7725533f23251ba6b703c266a@spawnwright", calendar.UID("lindenhof", "clutch/C-27-08/hatched"))
	assert.NotEqual(t, calendar.UID("a", "bc"), calendar.UID("ab", "c"))
	assert.NotEqual(t, calendar.UID("1:a", "b"), calendar.UID("1", "a:b"))
}
