package picture

import "github.com/spawnwright/spawnwright/pkg/svg"

const legendLine = 18.0

// entry is one sign of the legend, drawn in a box of 22 by 12.
type entry struct {
	text string
	draw func(c *chart, x, y float64)
}

func swatch(b bar) func(*chart, float64, float64) {
	return func(c *chart, x, y float64) { c.block(x, y, 22, 12, b) }
}

// entries are the signs that a sheet can have.
func entries(p seasonPart) []entry {
	var list []entry
	if len(p.rows) > 0 {
		for _, name := range []string{"conditioning", "cooling", "warm-up", "rain", "rest"} {
			list = append(list, entry{name, swatch(phaseBars[name])})
		}
		for _, name := range []string{"eggs", "tadpoles", "froglets", "sale-ready"} {
			list = append(list, entry{name, swatch(youngBars[name])})
		}
		list = append(list,
			entry{"fades in and out: from the early to the late day", fadeSign},
			entry{"likely day", func(c *chart, x, y float64) {
				c.Line(svg.Point{X: x + 11, Y: y - 1}, svg.Point{X: x + 11, Y: y + 13}, svg.Style{Stroke: svg.Ink, Width: 1.5})
			}},
			entry{"seen, in the diary", func(c *chart, x, y float64) { c.seen(x+11, y+6) }},
			entry{"to be ready by", func(c *chart, x, y float64) {
				c.Line(svg.Point{X: x + 8, Y: y - 1}, svg.Point{X: x + 8, Y: y + 13}, svg.Style{Stroke: svg.Ink, Width: 1.2})
				c.Path(pennant(x+8, y-1, 1), true, svg.Style{Fill: svg.Ink})
			}},
		)
	}
	if p.places {
		list = append(list,
			entry{"there are so many", lineSign(thereStyle)},
			entry{"planned use", func(c *chart, x, y float64) {
				c.Rect(x, y, 22, 12, svg.Style{Fill: usedPaint})
				c.Line(svg.Point{X: x, Y: y}, svg.Point{X: x + 22, Y: y}, usedStyle)
			}},
			entry{"likely need", lineSign(likelyStyle)},
			entry{"80 of 100 seasons lie in this band", func(c *chart, x, y float64) { c.Rect(x, y, 22, 12, svg.Style{Fill: bandPaint}) }},
			entry{"kept free by the plan", lineSign(keptStyle)},
			entry{"days at risk, 1 in 20 or more", func(c *chart, x, y float64) {
				c.Rect(x, y+4, 22, 7, svg.Style{Over: shortLines, Stroke: svg.Red})
			}},
		)
	}
	return append(list,
		entry{"nobody in the room", func(c *chart, x, y float64) { c.Rect(x, y, 22, 12, awayShade) }},
		entry{"public holiday", func(c *chart, x, y float64) { c.Rect(x+9, y, 4, 12, holidayShade) }},
	)
}

func lineSign(s svg.Style) func(*chart, float64, float64) {
	return func(c *chart, x, y float64) { c.Line(svg.Point{X: x, Y: y + 6}, svg.Point{X: x + 22, Y: y + 6}, s) }
}

func fadeSign(c *chart, x, y float64) {
	ground := youngBars["froglets"].ground
	c.Rect(x, y, 8, 12, svg.Style{Over: svg.Fade(ground, 0, 1)})
	c.Rect(x+8, y, 6, 12, svg.Style{Fill: ground})
	c.Rect(x+14, y, 8, 12, svg.Style{Over: svg.Fade(ground, 1, 0)})
}

// arranged gives the place of each sign, in lines that are filled from the left.
func (c *chart) arranged(list []entry) []svg.Point {
	at := make([]svg.Point, len(list))
	x, y := seasonMargin, 0.0
	for i, e := range list {
		w := 22 + 5 + svg.Width(e.text, 10) + 14
		if x > seasonMargin && x+w > c.width-seasonMargin+10 {
			x, y = seasonMargin, y+legendLine
		}
		at[i] = svg.Point{X: x, Y: y}
		x += w
	}
	return at
}

func (c *chart) legendHeight(p seasonPart) float64 {
	at := c.arranged(entries(p))
	return 10 + at[len(at)-1].Y + legendLine
}

func (c *chart) legend(y float64, p seasonPart) {
	list := entries(p)
	for i, at := range c.arranged(list) {
		list[i].draw(c, at.X, y+at.Y+2)
		c.Text(at.X+27, y+at.Y+12, list[i].text, svg.Font{Size: 10})
	}
}
