package calendar_test

import (
	"bytes"
	"fmt"
	"os"
	"strings"
	"time"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
)

func ExampleWriteICS() {
	c := calendar.Calendar{
		ID:   "lindenhof",
		Name: "Lindenhof frog room",
		Events: []calendar.Event{{
			Key:      "clutch/C-27-03/hatched",
			Span:     civil.Span{First: civil.Of(2027, time.March, 19), Last: civil.Of(2027, time.March, 21)},
			Summary:  "C-27-03 hatches",
			Category: "hatch",
			Changed:  civil.Of(2027, time.March, 13),
		}},
	}
	var file strings.Builder
	if err := calendar.WriteICS(&file, c); err != nil {
		fmt.Println(err)
	}
	fmt.Print(strings.ReplaceAll(file.String(), "\r\n", "\n"))
	// Output:
	// BEGIN:VCALENDAR
	// VERSION:2.0
	// PRODID:-//spawnwright//frog room calendar//EN
	// CALSCALE:GREGORIAN
	// METHOD:PUBLISH
	// NAME:Lindenhof frog room
	// X-WR-CALNAME:Lindenhof frog room
	// UID:963113829c20fd4601eb4873d5b5f6f0@spawnwright
	// REFRESH-INTERVAL;VALUE=DURATION:PT12H
	// X-PUBLISHED-TTL:PT12H
	// BEGIN:VEVENT
	// UID:299874b0e931a674bc6dbd89794a92c7@spawnwright
	// DTSTAMP:20270313T000000Z
	// LAST-MODIFIED:20270313T000000Z
	// SEQUENCE:0
	// DTSTART;VALUE=DATE:20270319
	// DTEND;VALUE=DATE:20270322
	// SUMMARY:C-27-03 hatches
	// CATEGORIES:hatch
	// STATUS:CONFIRMED
	// TRANSP:TRANSPARENT
	// END:VEVENT
	// END:VCALENDAR
}

func ExampleWriteText() {
	c := calendar.Calendar{
		ID:   "lindenhof",
		Name: "Lindenhof frog room",
		Events: []calendar.Event{
			{
				Key:     "pairing/P-27-02/cooling",
				Span:    civil.Span{First: civil.Of(2027, time.January, 25), Last: civil.Of(2027, time.March, 7)},
				Summary: "P-27-02: cooling", Description: "Cooling place 2.",
			},
			{
				Key:     "clutch/C-27-01/count",
				Span:    civil.Span{First: civil.Of(2027, time.March, 3), Last: civil.Of(2027, time.March, 3)},
				Summary: "C-27-01: count the tadpoles",
			},
		},
	}
	week := civil.Span{First: civil.Of(2027, time.March, 1), Last: civil.Of(2027, time.March, 7)}
	if err := calendar.WriteText(os.Stdout, c, week); err != nil {
		fmt.Println(err)
	}
	// Output:
	// Lindenhof frog room
	// Monday 2027-03-01 to Sunday 2027-03-07
	//
	// Monday 2027-03-01
	//   P-27-02: cooling, since Monday 2027-01-25, until Sunday 2027-03-07
	//       Cooling place 2.
	//
	// Wednesday 2027-03-03
	//   C-27-01: count the tadpoles
}

func ExampleWriteCSV() {
	c := calendar.Calendar{ID: "lindenhof", Name: "Lindenhof frog room", Events: []calendar.Event{{
		Key:  "clutch/C-27-03/hatched",
		Span: civil.Span{First: civil.Of(2027, time.March, 19), Last: civil.Of(2027, time.March, 21)}, Summary: "C-27-03 hatches",
	}}}
	var table strings.Builder
	if err := calendar.WriteCSV(&table, c); err != nil {
		fmt.Println(err)
	}
	fmt.Print(strings.ReplaceAll(table.String(), "\r\n", "\n"))
	// Output:
	// date_first,date_last,what,category,details,status,uid
	// 2027-03-19,2027-03-21,C-27-03 hatches,,,confirmed,299874b0e931a674bc6dbd89794a92c7@spawnwright
}

func ExampleHolidaysOf() {
	bavaria, err := calendar.HolidaysOf("de-by")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(bavaria.On(civil.Of(2027, time.March, 29)))
	fmt.Println(bavaria.On(civil.Of(2027, time.March, 30)))

	_, err = calendar.HolidaysOf("us-ca")
	fmt.Println(err)
	// Output:
	// Ostermontag true
	//  false
	// no public holidays are known for "us-ca"; did you mean "us"?
}

func ExampleShipping() {
	bavaria, err := calendar.HolidaysOf("de-by")
	if err != nil {
		fmt.Println(err)
		return
	}
	s := calendar.Shipping{Holidays: bavaria} // Monday to Thursday, one day on the way
	fmt.Println(s.Allowed(civil.Of(2027, time.March, 25)))
	fmt.Println(s.Next(civil.Of(2027, time.March, 24), 3))
	fmt.Println(s.LastBefore(civil.Of(2027, time.March, 30)))
	// Output:
	// false it would be on the way on a public holiday, Friday 2027-03-26: Karfreitag
	// [2027-03-24 2027-03-30 2027-03-31]
	// 2027-03-24 true
}

// A calendar that people have goes on: the rain is four days later than they were
// told, and the cooling fell away.
func ExampleCalendar_Since() {
	event := func(key, days, summary string) calendar.Event {
		return calendar.Event{Key: key, Span: span(days), Summary: summary, Changed: date("2027-01-05")}
	}
	c := calendar.Calendar{ID: "lindenhof", Name: "Lindenhof frog room", Events: []calendar.Event{
		event("pairing/P-27-01/cooling", "2027-02-01..2027-03-09", "P-27-01: cooling"),
		event("pairing/P-27-01/rain", "2027-03-10..2027-03-12", "P-27-01: rain"),
	}}
	var file bytes.Buffer
	if err := calendar.WriteICS(&file, c); err != nil {
		fmt.Println(err)
		return
	}

	earlier, err := calendar.ReadICS(file.Bytes())
	if err != nil {
		fmt.Println(err)
		return
	}
	announced, _ := earlier.Announced().Day(calendar.UID("lindenhof", "pairing/P-27-01/rain"))
	fmt.Println("announced:", announced)
	c.Events = []calendar.Event{event("pairing/P-27-01/rain", "2027-03-14..2027-03-16", "P-27-01: rain")}
	next, _ := c.Since(earlier, date("2027-01-20"))
	for _, e := range next.Events {
		fmt.Println(e.Span.First, e.Summary, "sequence", e.Sequence, "cancelled", e.Cancelled)
	}
	// Output:
	// announced: 2027-03-10
	// 2027-03-14 P-27-01: rain sequence 1 cancelled false
	// 2027-02-01 P-27-01: cooling sequence 1 cancelled true
}
