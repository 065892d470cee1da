package main

import (
	"os"
	"regexp"
	"strconv"
	"strings"

	"github.com/rogpeppe/go-internal/testscript"
)

// addToDiary copies a file whose diary comes last and adds entries to it:
// diary FILE COPY ENTRY….
func addToDiary(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 3 {
		ts.Fatalf("usage: diary FILE COPY ENTRY…")
	}
	text := ts.ReadFile(args[0])
	for _, entry := range args[2:] {
		text += "  - {" + entry + "}\n"
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(text), 0o600))
}

// sameEvents holds that a calendar has the events of an earlier one and no
// others, by their UIDs, that the sequence of those whose title begins with a
// text has risen by one, that none has fallen, and that some events have moved, each
// with a higher sequence: moved BEFORE AFTER TITLE.
func sameEvents(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: moved BEFORE AFTER TITLE")
	}
	before, after := icsEvents(ts, args[0]), icsEvents(ts, args[1])
	if len(before) != len(after) {
		ts.Fatalf("%d events became %d", len(before), len(after))
	}
	titled, moved := 0, 0
	for uid, was := range before {
		is, ok := after[uid]
		if !ok {
			ts.Fatalf("%q has lost its UID", was.title)
		}
		if is.sequence < was.sequence {
			ts.Fatalf("%q went from sequence %d to %d", is.title, was.sequence, is.sequence)
		}
		if strings.HasPrefix(is.title, args[2]) {
			titled++
			if is.sequence != was.sequence+1 {
				ts.Fatalf("%q went from sequence %d to %d", is.title, was.sequence, is.sequence)
			}
		}
		if is.days != was.days {
			moved++
			if is.sequence == was.sequence {
				ts.Fatalf("%q moved from %s to %s and kept its sequence", is.title, was.days, is.days)
			}
		}
	}
	if titled == 0 || moved == 0 {
		ts.Fatalf("%d events of %s, and %d events have moved", titled, args[2], moved)
	}
}

// sameUIDs holds that two calendars have the same events, wherever these are:
// sameuids BEFORE AFTER.
func sameUIDs(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: sameuids BEFORE AFTER")
	}
	before, after := icsEvents(ts, args[0]), icsEvents(ts, args[1])
	if len(before) != len(after) || len(before) == 0 {
		ts.Fatalf("%d events became %d", len(before), len(after))
	}
	for uid, was := range before {
		if _, ok := after[uid]; !ok {
			ts.Fatalf("%q has lost its UID", was.title)
		}
	}
}

type icsEvent struct {
	title, days string
	sequence    int
}

var icsLine = regexp.MustCompile(`^(UID|SEQUENCE|SUMMARY|DTSTART;VALUE=DATE|DTEND;VALUE=DATE):(.*)$`)

// icsEvents gives the events of a calendar by their UIDs.
func icsEvents(ts *testscript.TestScript, file string) map[string]icsEvent {
	events := make(map[string]icsEvent)
	for _, block := range strings.Split(ts.ReadFile(file), "BEGIN:VEVENT")[1:] {
		var e icsEvent
		uid := ""
		for line := range strings.Lines(block) {
			m := icsLine.FindStringSubmatch(strings.TrimSpace(line))
			if m == nil {
				continue
			}
			switch m[1] {
			case "UID":
				uid = m[2]
			case "SEQUENCE":
				n, err := strconv.Atoi(m[2])
				ts.Check(err)
				e.sequence = n
			case "SUMMARY":
				e.title = m[2]
			default:
				e.days += m[2] + " "
			}
		}
		events[uid] = e
	}
	return events
}
