package svg

import (
	"fmt"
	"strings"
)

// Style is how a shape is painted. Without a fill it is hollow, without a stroke
// it has no outline.
type Style struct {
	Fill   Paint
	Over   Cover // a gradient or a pattern instead of the fill
	Stroke Paint
	Width  float64   // of the stroke; 0 stands for 1
	Dash   []float64 // lengths of dashes and gaps
	Round  float64   // radius of the corners of a rectangle
	Clear  float64   // how much shines through, from 0 to 1
}

// Point is a place in the picture.
type Point struct{ X, Y float64 }

// Rect draws a rectangle from its upper left corner. A negative width or height
// draws nothing.
func (d *Doc) Rect(x, y, w, h float64, s Style) {
	if !(w >= 0) || !(h >= 0) {
		return
	}
	round := ""
	if s.Round > 0 {
		round = ` rx="` + number(min(s.Round, w/2, h/2)) + `"`
	}
	fmt.Fprintf(&d.body, "<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\"%s%s/>\n", number(x), number(y), number(w), number(h), round, d.look(s))
}

// Line draws a straight line.
func (d *Doc) Line(from, to Point, s Style) {
	fmt.Fprintf(&d.body, "<line x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\"%s/>\n", number(from.X), number(from.Y), number(to.X), number(to.Y), d.look(s))
}

// Circle draws a circle about a point. A negative radius draws nothing.
func (d *Doc) Circle(at Point, radius float64, s Style) {
	if !(radius >= 0) {
		return
	}
	fmt.Fprintf(&d.body, "<circle cx=\"%s\" cy=\"%s\" r=\"%s\"%s/>\n", number(at.X), number(at.Y), number(radius), d.look(s))
}

// Path draws straight lines from point to point, and back to the first when it
// is closed. Fewer than two points draw nothing.
func (d *Doc) Path(points []Point, closed bool, s Style) {
	if len(points) < 2 {
		return
	}
	var way strings.Builder
	for i, p := range points {
		way.WriteString(map[bool]string{true: "M", false: "L"}[i == 0] + number(p.X) + " " + number(p.Y))
	}
	if closed {
		way.WriteString("Z")
	}
	fmt.Fprintf(&d.body, "<path d=\"%s\"%s/>\n", way.String(), d.look(s))
}

// look gives the attributes of a style.
func (d *Doc) look(s Style) string {
	var classes []string
	rest := ""
	switch {
	case s.Over != Cover{}:
		rest += ` fill="url(#` + d.cover(s.Over) + `)"`
	case s.Fill != Paint{}:
		classes = append(classes, "f"+d.class(s.Fill))
	default:
		rest += ` fill="none"`
	}
	if (s.Stroke != Paint{}) {
		classes = append(classes, "s"+d.class(s.Stroke))
		if s.Width > 0 && s.Width != 1 {
			rest += ` stroke-width="` + number(s.Width) + `"`
		}
		if len(s.Dash) > 0 {
			rest += ` stroke-dasharray="` + numbers(s.Dash) + `"`
		}
	}
	if s.Clear > 0 {
		rest += ` opacity="` + number(1-min(s.Clear, 1)) + `"`
	}
	if len(classes) > 0 {
		rest = ` class="` + strings.Join(classes, " ") + `"` + rest
	}
	return rest
}

func numbers(list []float64) string {
	texts := make([]string, len(list))
	for i, x := range list {
		texts[i] = number(x)
	}
	return strings.Join(texts, " ")
}
