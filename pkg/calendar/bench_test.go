package calendar_test

import (
	"fmt"
	"io"
	"testing"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
)

// large is a calendar of 2,000 events over three years.
func large() calendar.Calendar {
	c := calendar.Calendar{ID: "lindenhof", Name: "Lindenhof frog room"}
	for i := range 2000 {
		first := date("2027-01-01").Add(i * 577 % 1095)
		c.Events = append(c.Events, calendar.Event{
			Key:         fmt.Sprintf("clutch/C-27-%04d/hatched", i),
			Span:        civil.Span{First: first, Last: first.Add(i % 9)},
			Summary:     fmt.Sprintf("C-27-%04d: hatches", i),
			Description: "Early, likely and late; 10, 50 and 90 of 100 such clutches have hatched by then. Look once a day and write down the day.",
			Category:    "hatch",
			Changed:     date("2026-12-01"),
		})
	}
	return c
}

func BenchmarkWriteICS(b *testing.B) {
	c := large()
	for b.Loop() {
		if err := calendar.WriteICS(io.Discard, c); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWriteText(b *testing.B) {
	c := large()
	for b.Loop() {
		if err := calendar.WriteText(io.Discard, c, span("2027-01-01..2029-12-31")); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkShippingNext(b *testing.B) {
	s := calendar.Shipping{Holidays: holidays(b, "de-by")}
	for b.Loop() {
		s.Next(date("2027-01-01"), 180) // a year
	}
}

// BenchmarkGoOn reads an earlier calendar and goes on from it.
func BenchmarkGoOn(b *testing.B) {
	c := large()
	file := written(b, c)
	for b.Loop() {
		earlier, err := calendar.ReadICS(file)
		if err != nil {
			b.Fatal(err)
		}
		c.Since(earlier, date("2027-01-01"))
	}
}
