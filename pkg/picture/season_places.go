package picture

import (
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/svg"
)

// Measures of the places below the rows.
const (
	placeName   = 20.0
	placeHeight = 46.0
	placeGap    = 10.0
)

// How loads are painted.
var (
	bandPaint   = svg.Mix(svg.Paper, svg.Sky, 0.55)
	likelyStyle = svg.Style{Stroke: svg.Blue, Width: 2}
	usedPaint   = svg.Mix(svg.Paper, svg.Ink, 0.2)
	usedStyle   = svg.Style{Stroke: svg.Ink, Width: 1}
	keptStyle   = svg.Style{Stroke: svg.Ink, Width: 1, Dash: []float64{2, 2}}
	thereStyle  = svg.Style{Stroke: svg.Ink, Width: 1.6}
	shortLines  = svg.Hatch(svg.Red, 4, 45)
)

// placesHeight is the room that all places take, with months above them.
func (c *chart) placesHeight() float64 {
	if len(c.Loads) == 0 {
		return 0
	}
	return monthsHeight + float64(len(c.Loads))*(placeName+placeHeight+placeGap)
}

// places draws what is needed of each place by day.
func (c *chart) places(y float64) {
	if len(c.Loads) == 0 {
		return
	}
	c.months(y)
	y += monthsHeight
	for i := range c.Loads {
		p := place{chart: c, PlaceDays: &c.Loads[i], y: y + placeName}
		p.draw()
		y += placeName + placeHeight + placeGap
	}
}

// place is the diagram of one place.
type place struct {
	*chart
	*frogroom.PlaceDays
	y   float64 // of its upper edge
	top int     // the number at the upper edge
}

func (p *place) draw() {
	p.top = p.Of
	for _, list := range [][]int{p.Kept, p.High} {
		for _, n := range list {
			p.top = max(p.top, n)
		}
	}
	p.top = max(p.top+(p.top+7)/8, 1)
	p.Group(placeWords(p.What))
	defer p.End()
	p.name()
	base := p.height(0)
	if p.Likely != nil {
		p.Path(append(p.steps(p.High), backward(p.steps(p.Low))...), true, svg.Style{Fill: bandPaint})
		p.Path(p.steps(p.Likely), false, likelyStyle)
		p.Path(p.steps(p.Kept), false, keptStyle)
	} else if way := p.steps(p.Kept); len(way) > 0 {
		area := append(append([]svg.Point{{X: way[0].X, Y: base}}, way...), svg.Point{X: way[len(way)-1].X, Y: base})
		p.Path(area, true, svg.Style{Fill: usedPaint})
		p.Path(way, false, usedStyle)
	}
	p.Line(svg.Point{X: seasonMargin, Y: base}, svg.Point{X: p.right(), Y: base}, svg.Style{Stroke: svg.Faint, Width: 0.8})
	there := p.height(p.Of)
	p.Line(svg.Point{X: seasonMargin, Y: there}, svg.Point{X: p.right(), Y: there}, thereStyle)
	p.Text(seasonMargin-3, there+3.5, fmt.Sprint(p.Of), svg.Font{Size: 10, Anchor: svg.End})
	p.Text(seasonMargin-3, base+3.5, "0", svg.Font{Size: 10, Anchor: svg.End, Fill: svg.Faint})
	for _, days := range p.Short {
		p.short(days)
	}
}

// name writes what it is, and how likely it runs out.
func (p *place) name() {
	name := placeWords(p.What)
	bold := svg.Font{Size: 12, Bold: true}
	p.write(seasonMargin, p.y-7, name, bold)
	for _, r := range p.Risks {
		if r.What == p.What {
			x := seasonMargin + textWidth(name, bold) + 7
			p.write(x, p.y-7, fitClauses(r.Text, 11, p.right()-x), svg.Font{Size: 11, Fill: svg.Faint})
		}
	}
}

// fitClauses leaves out as many of the last clauses of a text as have to go, so that
// no number is cut in two.
func fitClauses(text string, size, width float64) string {
	const end = "; …"
	whole := text
	for svg.Width(text, size) > width {
		i := strings.LastIndex(strings.TrimSuffix(text, end), "; ")
		if i < 0 {
			return svg.Fit(whole, size, width)
		}
		text = whole[:i] + end
	}
	return text
}

// short marks days at risk by a hatched strip above the line of what there is,
// and a wedge that points at them.
func (p *place) short(days civil.Span) {
	x := p.at(days.First)
	w := max(p.at(days.Last.Add(1))-x, 1.5)
	p.Group("may run short, " + days.String())
	p.Rect(x, p.y-3, w, 7, svg.Style{Over: shortLines, Stroke: svg.Red})
	mid, tip := x+w/2, p.height(p.Of)
	p.Path([]svg.Point{{X: mid - 5, Y: p.y + 4}, {X: mid + 5, Y: p.y + 4}, {X: mid, Y: max(tip, p.y+11)}}, true, svg.Style{Fill: svg.Red, Stroke: svg.Paper, Width: 0.6})
	p.End()
}

// height gives the place of a number.
func (p *place) height(n int) float64 {
	return p.y + placeHeight*(1-float64(n)/float64(p.top))
}

// steps gives the line of numbers that hold for a day each, with a point only
// where they change.
func (p *place) steps(list []int) []svg.Point {
	var way []svg.Point
	for i, n := range list {
		if i > 0 && list[i-1] == n {
			continue
		}
		x := p.at(p.On.Add(i))
		if i > 0 {
			way = append(way, svg.Point{X: x, Y: p.height(list[i-1])})
		}
		way = append(way, svg.Point{X: x, Y: p.height(n)})
	}
	if n := len(list); n > 0 {
		way = append(way, svg.Point{X: p.at(p.On.Add(n)), Y: p.height(list[n-1])})
	}
	return way
}

func backward(way []svg.Point) []svg.Point {
	out := make([]svg.Point, len(way))
	for i, p := range way {
		out[len(way)-1-i] = p
	}
	return out
}

// placeWords names a place in the plural.
func placeWords(what string) string {
	if what == "minutes" {
		return "minutes of work a day"
	}
	return what + "s"
}
