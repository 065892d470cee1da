package picture

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/svg"
)

// scale puts days at places: each has the width of a day, from its left edge.
type scale struct {
	days  civil.Span // whole months
	width float64    // of the picture
	day   float64
}

// mostDays is how far a chart goes; what is later is cut off.
const mostDays = 2200

// newScale takes in all days of a season, from two weeks ago on, on a width or more.
func newScale(s frogroom.Sheet, width float64) scale {
	first, last := s.On.Add(-14), s.On.Add(60)
	year, month, _ := first.YMD()
	first = civil.Of(year, month, 1)
	for _, p := range s.Pairings {
		last = max(last, p.ReadyBy)
		for _, ph := range p.Phases {
			last = max(last, besides(first, ph.Span.Last))
		}
		for _, st := range p.Stages {
			last = max(last, besides(first, st.Window.Late))
		}
	}
	for _, k := range s.Clutches {
		for _, st := range k.Stages {
			last = max(last, besides(first, st.Window.Late))
		}
	}
	for _, t := range s.Targets {
		last = max(last, t.On)
	}
	last = nextMonth(min(last, first.Add(mostDays))).Add(-1)
	days := float64(last.Sub(first) + 1)
	plot := max(width, days*leastDay)
	return scale{days: civil.Span{First: first, Last: last}, width: plot + 2*seasonMargin, day: plot / days}
}

// besides gives the day to which the picture has to go so that a date can be
// written beside the end of a bar.
func besides(first, end civil.Date) civil.Date {
	const room = 0.17 // of the width
	return end.Add(max(int(room*float64(end.Sub(first))), 0))
}

// nextMonth gives the first day of the month after that of d.
func nextMonth(d civil.Date) civil.Date {
	year, month, _ := d.YMD()
	if month == 12 {
		return civil.Of(year+1, 1, 1)
	}
	return civil.Of(year, month+1, 1)
}

// at gives the left edge of a day, kept within the picture.
func (s scale) at(d civil.Date) float64 {
	d = min(max(d, s.days.First), s.days.Last.Add(1))
	return seasonMargin + float64(d.Sub(s.days.First))*s.day
}

// mid gives the middle of a day.
func (s scale) mid(d civil.Date) float64 { return s.at(d) + s.day/2 }

func (s scale) right() float64 { return s.width - seasonMargin }

// shown reports whether a day is in the picture.
func (s scale) shown(d civil.Date) bool { return s.days.Contains(d) }

// shortDate writes "2 Sep".
func shortDate(d civil.Date) string {
	_, month, day := d.YMD()
	return fmt.Sprintf("%d %s", day, month.String()[:3])
}

// months writes the months with a tick for each Monday.
func (c *chart) months(y float64) {
	base := y + monthsHeight - 4
	for d := c.days.First; d <= c.days.Last; d++ {
		if d.Weekday() == 1 {
			c.Line(svg.Point{X: c.at(d), Y: base - 3}, svg.Point{X: c.at(d), Y: base}, svg.Style{Stroke: svg.Faint, Width: 0.7})
		}
	}
	for d := c.days.First; d <= c.days.Last; d = nextMonth(d) {
		x := c.at(d)
		year, month, _ := d.YMD()
		c.Line(svg.Point{X: x, Y: base - 14}, svg.Point{X: x, Y: base}, svg.Style{Stroke: svg.Faint})
		room := c.at(nextMonth(d)) - x - 4
		name := month.String()[:3]
		if svg.Width(name, 11) > room {
			name = name[:1]
		}
		c.Text(x+3, base-5, name, svg.Font{Size: 11})
		if month == 1 || d == c.days.First {
			c.Text(x+3, base-16, fmt.Sprint(year), svg.Font{Size: 10, Bold: true})
		}
	}
	c.Line(svg.Point{X: seasonMargin, Y: base}, svg.Point{X: c.right(), Y: base}, svg.Style{Stroke: svg.Faint})
}

// shades draws what lies behind the rows: months, days away, holidays.
func (c *chart) shades(top, bottom float64) {
	for d := c.days.First; d <= c.days.Last; d = nextMonth(d) {
		c.Line(svg.Point{X: c.at(d), Y: top}, svg.Point{X: c.at(d), Y: bottom}, svg.Style{Stroke: svg.Grid, Width: 0.7})
	}
	for _, h := range c.Holidays {
		if c.shown(h.On) {
			c.Group(h.On.String() + ": " + h.Name)
			c.Rect(c.at(h.On), top, max(c.day, 1.2), bottom-top, holidayShade)
			c.End()
		}
	}
	for _, away := range c.Away {
		if away.Overlaps(c.days) {
			c.Group("away " + away.String())
			c.Rect(c.at(away.First), top, c.at(away.Last.Add(1))-c.at(away.First), bottom-top, awayShade)
			c.End()
		}
	}
}

// Shades behind the rows.
var (
	awayShade    = svg.Style{Over: svg.Hatch(svg.Mix(svg.Paper, svg.Ink, 0.35), 3.5, 45)}
	holidayShade = svg.Style{Fill: svg.Mix(svg.Paper, svg.Ink, 0.18)}
)
