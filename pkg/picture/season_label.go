package picture

import "github.com/spawnwright/spawnwright/pkg/svg"

// label is a text that is written above all lines, on a ground of its own.
type label struct {
	x, y   float64
	text   string
	font   svg.Font
	ground svg.Paint
}

// write notes a text for later, with paper under it.
func (c *chart) write(x, y float64, text string, f svg.Font) {
	c.labels = append(c.labels, label{x, y, text, f, svg.Paper})
}

// inside writes a text in the middle of a bar when there is room for it.
func (c *chart) inside(x, y, w, h float64, text string, b bar) {
	const size = 10
	if svg.Width(text, size)+4 > w {
		return
	}
	c.labels = append(c.labels, label{x + w/2, y + h/2 + 3.6, text, svg.Font{Size: size, Anchor: svg.Middle, Fill: b.text}, b.ground})
}

func (c *chart) drawLabels() {
	for _, l := range c.labels {
		w := textWidth(l.text, l.font)
		x := l.x
		switch l.font.Anchor {
		case svg.Middle:
			x -= w / 2
		case svg.End:
			x -= w
		}
		c.Rect(x-1, l.y-l.font.Size+1.7, w+2, l.font.Size+0.6, svg.Style{Fill: l.ground, Clear: 0.1, Round: 2})
		c.Text(l.x, l.y, l.text, l.font)
	}
	c.labels = nil
}

// textWidth guesses how wide a text is; bold is wider.
func textWidth(text string, f svg.Font) float64 {
	w := svg.Width(text, f.Size)
	if f.Bold {
		w *= 1.18
	}
	return w
}
