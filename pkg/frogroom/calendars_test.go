package frogroom_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

// randomSeason draws a collection, and the calendar that is published of it: one
// that is new, or one that goes on from what was told some weeks before, in other
// words and with a few more events.
func randomSeason(t *rapid.T) calendar.Calendar {
	f := randomFile(t)
	room, problems := frogroom.Read("room.yaml", []byte(f.text(f.diary)))
	if room == nil {
		t.Fatalf("%v", problems)
	}
	on := day("2026-06-01").Add(rapid.IntRange(0, 600).Draw(t, "on"))
	c := worded(t, room.Events(on))
	if len(c.Events) == 0 || rapid.Bool().Draw(t, "new") {
		return c
	}
	before := worded(t, room.Events(on.Add(-rapid.IntRange(0, 60).Draw(t, "days before"))))
	if len(before.Events) == 0 {
		return c
	}
	var file bytes.Buffer
	if err := calendar.WriteICS(&file, before); err != nil {
		t.Fatalf("%v", err)
	}
	earlier, err := calendar.ReadICS(file.Bytes())
	if err != nil {
		t.Fatalf("%v", err)
	}
	c.Events = c.Events[rapid.IntRange(0, len(c.Events)/2).Draw(t, "fell away"):]
	next, _ := c.Since(earlier, on)
	return next
}

// worded gives c with some texts that a keeper could have written, of any signs but
// the backslash: Debian's python3-icalendar 4.0.3 loses one before a comma.
func worded(t *rapid.T, c calendar.Calendar) calendar.Calendar {
	text := func(what string, least, most int) string {
		return strings.ReplaceAll(rapid.StringN(least, most, -1).Draw(t, what), `\`, "/")
	}
	c.Name = "Room " + text("name", 0, 60)
	for i := range c.Events {
		switch rapid.IntRange(0, 5).Draw(t, "worded") {
		case 0:
			c.Events[i].Summary += " " + text("summary", 1, 80)
		case 1:
			c.Events[i].Description += "\n" + text("description", 1, 200)
		}
	}
	return c
}

// TestCalendarFiles writes the calendars of random seasons. With
// SPAWNWRIGHT_CALENDARS set to a folder it writes two hundred of them there, for
// programs of others to read; make readers does that.
func TestCalendarFiles(t *testing.T) {
	folder, count := os.Getenv("SPAWNWRIGHT_CALENDARS"), 200
	if folder == "" {
		folder, count = t.TempDir(), 10
	}
	seasons := rapid.Custom(randomSeason)
	for seed := 0; count > 0; seed++ {
		c := seasons.Example(seed)
		if len(c.Events) == 0 {
			continue
		}
		count--
		var out bytes.Buffer
		require.NoError(t, calendar.WriteICS(&out, c), "seed %d", seed)
		for line := range bytes.Lines(out.Bytes()) {
			text, found := bytes.CutSuffix(line, []byte("\r\n"))
			require.True(t, found && !bytes.ContainsAny(text, "\r\n") && len(text) <= 75 && utf8.Valid(text), "seed %d: %q", seed, line)
		}
		again, err := calendar.ReadICS(out.Bytes())
		require.NoError(t, err, "seed %d", seed)
		_, changes := c.Since(again, civil.First)
		require.Equal(t, calendar.Changes{Same: len(c.Events)}, changes, "seed %d", seed)
		require.NoError(t, os.WriteFile(filepath.Join(folder, fmt.Sprintf("season-%03d.ics", seed)), out.Bytes(), 0o600))
	}
}
