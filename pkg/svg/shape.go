package svg

import "strings"

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
	d.begin("rect")
	d.lengths("x", x, "y", y)
	d.lengths("width", w, "height", h)
	if s.Round > 0 {
		d.length("rx", min(s.Round, w/2, h/2))
	}
	d.end(s)
}

// Line draws a straight line.
func (d *Doc) Line(from, to Point, s Style) {
	d.begin("line")
	d.lengths("x1", from.X, "y1", from.Y)
	d.lengths("x2", to.X, "y2", to.Y)
	d.end(s)
}

// Circle draws a circle about a point. A negative radius draws nothing.
func (d *Doc) Circle(at Point, radius float64, s Style) {
	if !(radius >= 0) {
		return
	}
	d.begin("circle")
	d.lengths("cx", at.X, "cy", at.Y)
	d.length("r", radius)
	d.end(s)
}

// Path draws straight lines from point to point, and back to the first when it
// is closed. Fewer than two points draw nothing.
func (d *Doc) Path(points []Point, closed bool, s Style) {
	if len(points) < 2 {
		return
	}
	d.begin("path")
	d.body.WriteString(` d="`)
	for i, p := range points {
		d.body.WriteByte("ML"[min(i, 1)])
		d.number(p.X)
		d.body.WriteByte(' ')
		d.number(p.Y)
	}
	if closed {
		d.body.WriteByte('Z')
	}
	d.body.WriteByte('"')
	d.end(s)
}

func (d *Doc) begin(shape string) {
	d.body.WriteByte('<')
	d.body.WriteString(shape)
}

func (d *Doc) end(s Style) {
	d.look(s)
	d.body.WriteString("/>\n")
}

func (d *Doc) attribute(name, value string) {
	d.body.WriteByte(' ')
	d.body.WriteString(name)
	d.body.WriteString(`="`)
	d.body.WriteString(value)
	d.body.WriteByte('"')
}

func (d *Doc) length(name string, x float64) {
	d.body.WriteByte(' ')
	d.body.WriteString(name)
	d.body.WriteString(`="`)
	d.number(x)
	d.body.WriteByte('"')
}

func (d *Doc) lengths(name string, x float64, other string, y float64) {
	d.length(name, x)
	d.length(other, y)
}

func (d *Doc) number(x float64) {
	d.body.Write(appendNumber(d.body.AvailableBuffer(), x))
}

// look writes the attributes of a style.
func (d *Doc) look(s Style) {
	filled, stroked := s.Fill != Paint{} && s.Over == Cover{}, s.Stroke != Paint{}
	switch {
	case filled && stroked:
		d.attribute("class", "f"+d.class(s.Fill)+" s"+d.class(s.Stroke))
	case filled:
		d.attribute("class", "f"+d.class(s.Fill))
	case stroked:
		d.attribute("class", "s"+d.class(s.Stroke))
	}
	switch {
	case s.Over != Cover{}:
		d.attribute("fill", "url(#"+d.cover(s.Over)+")")
	case !filled:
		d.attribute("fill", "none")
	}
	if stroked && s.Width > 0 && s.Width != 1 {
		d.length("stroke-width", s.Width)
	}
	if stroked && len(s.Dash) > 0 {
		d.attribute("stroke-dasharray", numbers(s.Dash))
	}
	if s.Clear > 0 {
		d.length("opacity", 1-min(s.Clear, 1))
	}
}

func numbers(list []float64) string {
	texts := make([]string, len(list))
	for i, x := range list {
		texts[i] = number(x)
	}
	return strings.Join(texts, " ")
}
