package development

import (
	"sort"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// A clock tells how far a step comes in the days of a clutch, in days at the
// temperature of the profile. Day 0 is that of laying, and the rate of a day
// holds from half a day before its middle to half a day after.
type clock struct {
	runs []run // by day; empty when nothing is known of the temperature: one a day
}

// run is days of one temperature.
type run struct {
	from    int     // its first day; the first run holds before it too
	rate    float64 // days at the temperature of the profile, in one day
	outside float64 // °C outside what is covered
	// by and out are the sums of rate and outside from the first day of the
	// first run until the begin of this one.
	by, out float64
}

func newClock(w warmth, t Temperatures, laid civil.Date) clock {
	var c clock
	if !w.known {
		return c
	}
	readings := t.byDay()
	for i, r := range readings {
		if i > 0 && r.C == readings[i-1].C {
			continue
		}
		next := run{from: r.From.Sub(laid), rate: w.rate(r.C), outside: w.outside(r.C)}
		if n := len(c.runs); n > 0 {
			last := c.runs[n-1]
			if last.rate == next.rate && last.outside == next.outside {
				continue
			}
			days := float64(next.from - last.from)
			next.by, next.out = last.by+days*last.rate, last.out+days*last.outside
		}
		c.runs = append(c.runs, next)
	}
	return c
}

// even reports whether all days have the same rate.
func (c clock) even() bool {
	for i := range c.runs {
		if c.runs[i].rate != c.runs[0].rate {
			return false
		}
	}
	return true
}

// of gives the run that day is in.
func (c clock) of(day int) run {
	i := sort.Search(len(c.runs), func(i int) bool { return c.runs[i].from > day })
	return c.runs[max(i-1, 0)]
}

// at gives what the clock shows in the middle of day.
func (c clock) at(day int) float64 {
	if len(c.runs) == 0 {
		return float64(day)
	}
	r := c.of(day)
	return r.by + (float64(day-r.from)+0.5)*r.rate
}

// end gives what the clock shows at the end of day.
func (c clock) end(day int) float64 {
	if len(c.runs) == 0 {
		return float64(day) + 0.5
	}
	r := c.of(day)
	return r.by + float64(day-r.from+1)*r.rate
}

// outside gives the mean of °C outside what is covered, from a day to another.
func (c clock) outside(from, to int) float64 {
	if len(c.runs) == 0 {
		return 0
	}
	sum := func(day int) float64 {
		r := c.of(day)
		return r.out + float64(day-r.from)*r.outside
	}
	return (sum(max(to, from)+1) - sum(from)) / float64(max(to, from)+1-from)
}

// reaches gives the first day at whose end so much has passed since the middle
// of from; it looks no farther than longest days ahead.
func (c clock) reaches(from int, days float64) int {
	since := c.at(from)
	return from + sort.Search(longest, func(n int) bool { return c.end(from+n)-since >= days })
}

// before gives the last day from whose middle so much passes until the end of to; it
// looks no farther than longest days back.
func (c clock) before(to int, days float64) int {
	until := c.end(to)
	return to - sort.Search(longest, func(n int) bool { return until-c.at(to-n) >= days })
}
