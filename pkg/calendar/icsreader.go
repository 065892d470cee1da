package calendar

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// ReadICS reads a calendar file that [WriteICS] wrote, also when another program
// has added to it since: alarms and other components, properties and parameters
// are passed over. What an event of ours consists of must be there and whole: one
// UID, which no other event has, one DTSTART and DTEND that are dates, DTSTAMP and
// SUMMARY. Anything else is an *[ICSError] with the line. Whether the file is the
// earlier version of a certain calendar is asked with [Published.Of].
//
// It takes O(n) for n bytes.
func ReadICS(data []byte) (Published, error) {
	lines, err := contentLines(data)
	if err != nil {
		return Published{}, err
	}
	r := icsReader{seen: make(map[string]bool)}
	for _, line := range lines {
		if err := r.take(line); err != nil {
			return Published{}, err
		}
	}
	last := 1
	if len(lines) > 0 {
		last = lines[len(lines)-1].number
	}
	switch {
	case len(r.open) > 0:
		return Published{}, &ICSError{last, "the file ends within " + r.open[len(r.open)-1]}
	case !r.done:
		return Published{}, &ICSError{last, "there is no calendar: the first line has to be BEGIN:VCALENDAR"}
	}
	return r.calendar, nil
}

// icsReader takes a file line by line.
type icsReader struct {
	calendar Published
	done     bool     // the calendar has ended
	open     []string // components that are open, the outermost first
	event    map[string]contentLine
	began    int             // line of the event that is open
	seen     map[string]bool // UIDs
}

func (r *icsReader) take(line contentLine) error {
	switch {
	case r.done:
		return &ICSError{line.number, "something follows the end of the calendar"}
	case line.name == "BEGIN":
		return r.begin(line)
	case line.name == "END":
		return r.end(line)
	case len(r.open) == 0:
		return &ICSError{line.number, "there is no calendar: the first line has to be BEGIN:VCALENDAR"}
	case len(r.open) == 1:
		return r.property(line)
	case len(r.open) == 2 && r.open[1] == "VEVENT":
		if _, twice := r.event[line.name]; twice && onlyOnce[line.name] {
			return &ICSError{line.number, line.name + " stands twice in an event"}
		}
		r.event[line.name] = line
	}
	return nil
}

// onlyOnce has the properties of an event that are read; of others there may be
// several.
var onlyOnce = map[string]bool{
	"UID": true, "DTSTAMP": true, "DTSTART": true, "DTEND": true, "SUMMARY": true,
	"DESCRIPTION": true, "STATUS": true, "SEQUENCE": true, "CATEGORIES": true,
}

func (r *icsReader) begin(line contentLine) error {
	name := strings.ToUpper(line.value)
	switch {
	case len(r.open) == 0 && name != "VCALENDAR":
		return &ICSError{line.number, "there is no calendar: the first line has to be BEGIN:VCALENDAR"}
	case len(r.open) > 0 && name == "VCALENDAR":
		return &ICSError{line.number, "a calendar within a calendar"}
	case len(r.open) == 1 && name == "VEVENT":
		r.event, r.began = make(map[string]contentLine), line.number
	}
	r.open = append(r.open, name)
	return nil
}

func (r *icsReader) end(line contentLine) error {
	name := strings.ToUpper(line.value)
	if len(r.open) == 0 || r.open[len(r.open)-1] != name {
		return &ICSError{line.number, fmt.Sprintf("END:%s without its BEGIN", name)}
	}
	r.open = r.open[:len(r.open)-1]
	switch {
	case len(r.open) == 0:
		r.done = true
	case len(r.open) == 1 && name == "VEVENT":
		return r.finish()
	}
	return nil
}

// property takes a property of the calendar itself.
func (r *icsReader) property(line contentLine) error {
	switch line.name {
	case "VERSION":
		if line.value != "2.0" {
			return &ICSError{line.number, fmt.Sprintf("the version is %q and not 2.0", line.value)}
		}
	case "UID":
		r.calendar.UID = line.text()
	case "PRODID":
		r.calendar.Product = line.text()
	case "NAME", "X-WR-CALNAME":
		r.calendar.Name = line.text()
	}
	return nil
}

// finish makes an event of its properties.
func (r *icsReader) finish() error {
	e, err := readEvent(r.event, r.began)
	if err != nil {
		return err
	}
	if r.seen[e.UID] {
		return &ICSError{r.began, fmt.Sprintf("another event has the UID %q too", e.UID)}
	}
	r.seen[e.UID] = true
	r.calendar.Events = append(r.calendar.Events, e)
	return nil
}

func readEvent(props map[string]contentLine, began int) (Event, error) {
	for _, name := range []string{"UID", "DTSTAMP", "DTSTART", "DTEND", "SUMMARY"} {
		if oneLine(props[name].text()) == "" {
			return Event{}, &ICSError{began, "an event without " + name}
		}
	}
	if uid := props["UID"]; oneLine(uid.text()) != uid.text() {
		return Event{}, &ICSError{uid.number, "the UID is not a single line of text"}
	}
	e := Event{
		UID: props["UID"].text(), Summary: props["SUMMARY"].text(),
		Description: props["DESCRIPTION"].text(), Category: props["CATEGORIES"].text(),
	}
	var err error
	if e.Span.First, err = props["DTSTART"].date(); err != nil {
		return Event{}, err
	}
	after, err := props["DTEND"].date()
	if err != nil {
		return Event{}, err
	}
	if after <= e.Span.First {
		return Event{}, &ICSError{props["DTEND"].number, "the event ends before it begins"}
	}
	e.Span.Last = after.Add(-1)
	if e.Changed, err = props["DTSTAMP"].dayOfStamp(); err != nil {
		return Event{}, err
	}
	if e.Sequence, err = props["SEQUENCE"].sequence(); err != nil {
		return Event{}, err
	}
	e.Cancelled, err = props["STATUS"].cancelled()
	return e, err
}

// date reads a DATE.
func (l contentLine) date() (civil.Date, error) {
	d, ok := compactDate(l.value)
	if kind := l.params["VALUE"]; !ok || kind != "" && !strings.EqualFold(kind, "DATE") {
		return 0, &ICSError{l.number, fmt.Sprintf("%s is %q and not a day such as 20270604", l.name, l.value)}
	}
	return d, nil
}

// dayOfStamp reads the day of a DATE-TIME in UTC.
func (l contentLine) dayOfStamp() (civil.Date, error) {
	day, clock, ok := strings.Cut(l.value, "T")
	d, known := compactDate(day)
	digits, utc := strings.CutSuffix(clock, "Z")
	if !ok || !known || !utc || len(digits) != 6 || !allDigits(digits) {
		return 0, &ICSError{l.number, fmt.Sprintf("%s is %q and not a time such as 20270604T000000Z", l.name, l.value)}
	}
	return d, nil
}

func compactDate(text string) (civil.Date, bool) {
	if len(text) != 8 || !allDigits(text) {
		return 0, false
	}
	d, err := civil.Parse(text[:4] + "-" + text[4:6] + "-" + text[6:])
	return d, err == nil
}

func allDigits(text string) bool { return strings.Trim(text, "0123456789") == "" }

// sequence reads SEQUENCE, which is 0 where there is none.
func (l contentLine) sequence() (int, error) {
	if l.name == "" {
		return 0, nil
	}
	n, err := strconv.ParseUint(l.value, 10, 31)
	if err != nil || n > math.MaxInt32 {
		return 0, &ICSError{l.number, fmt.Sprintf("SEQUENCE is %q and not a whole number", l.value)}
	}
	return int(n), nil
}

// cancelled reads STATUS, which means that an event will be where there is none.
func (l contentLine) cancelled() (bool, error) {
	switch strings.ToUpper(l.value) {
	case "CANCELLED":
		return true, nil
	case "", "CONFIRMED", "TENTATIVE":
		return false, nil
	}
	return false, &ICSError{l.number, fmt.Sprintf("the status of an event is %q", l.value)}
}
