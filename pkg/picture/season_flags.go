package picture

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/svg"
)

// flag is a day that all rows go by: today, or that of a target.
type flag struct {
	on    civil.Date
	text  string
	today bool
	row   int // above the months, 0 next to them
}

const flagHeight = 17.0

// allFlags gives today and the targets, in rows in which no text meets another.
func (c *chart) allFlags() []flag {
	flags := []flag{{on: c.On, text: "today, " + shortDate(c.On), today: true}}
	for _, t := range c.Targets {
		text := fmt.Sprintf("%s, %s: %d wanted", svg.Apart(svg.Fit(t.Name, 11, 2*mostName)), shortDate(t.On), t.Wanted)
		if t.ChancePct != nil {
			text += fmt.Sprintf(", chance %d %%", *t.ChancePct)
		}
		flags = append(flags, flag{on: t.On, text: text})
	}
	for i := range flags {
		x := c.mid(flags[i].on)
		flags[i].text = svg.Fit(flags[i].text, 11, 0.9*(max(x, c.width-x)-17)) // fonts differ
		for c.meets(flags[:i], flags[i]) {
			flags[i].row++
		}
	}
	return flags
}

// meets reports whether the text of a flag would lie on another one, or across
// the staff of one that is higher up.
func (c *chart) meets(others []flag, f flag) bool {
	from, to := c.flagSpan(f)
	for _, o := range others {
		low, high := c.flagSpan(o)
		staff := c.mid(o.on)
		if o.row == f.row && from < high+6 && low-6 < to || o.row > f.row && from < staff+3 && staff-3 < to {
			return true
		}
	}
	return false
}

// flagSpan gives where a flag lies: to the right of its day, or to the left where
// there is no room.
func (c *chart) flagSpan(f flag) (from, to float64) {
	x, w := c.mid(f.on), svg.Width(f.text, 11)+13
	if x+w > c.width-4 {
		return max(x-w, 4), x
	}
	return x, x + w
}

func flagRows(flags []flag) int {
	rows := 0
	for _, f := range flags {
		rows = max(rows, f.row+1)
	}
	return rows
}

// drawFlags draws the flags above the months, and their staffs through all rows.
func (c *chart) drawFlags(top, bottom float64) {
	for _, f := range c.flags {
		x, y := c.mid(f.on), top-float64(f.row)*flagHeight
		staff := svg.Style{Stroke: svg.Ink, Width: 1.1, Dash: []float64{5, 3}}
		if f.today {
			staff = svg.Style{Stroke: svg.Ink, Width: 1.8}
		}
		c.Group(f.text)
		c.Line(svg.Point{X: x, Y: y - 13}, svg.Point{X: x, Y: bottom}, staff)
		from, _ := c.flagSpan(f)
		way, anchor := 1.0, svg.Start
		if from < x {
			way, anchor = -1, svg.End
		}
		if f.today {
			c.Path([]svg.Point{{X: x, Y: y - 13}, {X: x + way*9, Y: y - 13}, {X: x + way*9, Y: y - 5}, {X: x, Y: y - 5}}, true, svg.Style{Fill: svg.Ink})
		} else {
			c.Path(pennant(x, y-13, way), true, svg.Style{Fill: svg.Ink})
		}
		c.write(x+way*12, y-5, f.text, svg.Font{Size: 11, Anchor: anchor, Bold: f.today}) // staffs of later flags may cross it
		c.End()
	}
}

// pennant is the cloth of a flag with the upper end of its staff at a place.
func pennant(x, y, way float64) []svg.Point {
	return []svg.Point{{X: x, Y: y}, {X: x + way*9, Y: y + 4}, {X: x, Y: y + 8}}
}
