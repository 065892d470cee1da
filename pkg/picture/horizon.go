package picture

import (
	"fmt"
	"math"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/horizon"
	"github.com/spawnwright/spawnwright/pkg/svg"
)

// Measures of the horizon picture.
const (
	panelWidth  = 330.0
	panelHeight = 190.0
	axisWidth   = 46.0
	wayWidth    = 92.0 // names of the ways beside the ends of their lines
	panelGap    = 18.0
	rowHeight   = panelHeight + 100
)

// A curve is how a way to choose young is drawn.
type curve struct {
	paint svg.Paint
	dash  []float64
}

// curves are told apart by their dashes as well as by colour.
var curves = []curve{{svg.Blue, nil}, {svg.Red, []float64{7, 4}}, {svg.Green, []float64{2, 3}}, {svg.Purple, []float64{9, 3, 2, 3}}}

// Horizon draws gene diversity and mean inbreeding over the years, for each
// species one beside the other: the mean of each way as a line, its 80 % band as
// an area, and the goal.
func Horizon(keeper string, h frogroom.Horizon) []byte {
	var drawn []horizon.Prospect
	for _, s := range h.Species {
		if len(s.Ways) > 0 {
			drawn = append(drawn, s)
		}
	}
	width := 2*margin + 2*(axisWidth+panelWidth+wayWidth) + panelGap
	height := 2*margin + max(float64(len(drawn)), 0.3)*rowHeight
	d := svg.New(width, height, heading("The lines in the years ahead", keeper), horizonInWords(h))
	d.Rect(0, 0, width, height, svg.Style{Fill: svg.Paper})
	for i, s := range drawn {
		y := margin + float64(i)*rowHeight
		d.Text(margin, y+14, s.Species, svg.Font{Size: 14, Bold: true})
		diversity := panel{x: margin + axisWidth, y: y + 44, ways: s.Ways, goal: h.Goal, title: "gene diversity", of: func(n horizon.Year) horizon.Band { return n.GeneDiversity }}
		inbreeding := panel{x: margin + 2*axisWidth + panelWidth + wayWidth + panelGap, y: y + 44, ways: s.Ways, title: "mean inbreeding of the living", of: func(n horizon.Year) horizon.Band { return n.Inbreeding }}
		diversity.draw(d)
		inbreeding.draw(d)
		d.Text(margin, y+44+panelHeight+34, fmt.Sprintf("%d runs; lines are means, areas hold 80 of 100 runs.", s.Runs), svg.Font{Fill: svg.Faint})
	}
	if len(drawn) == 0 {
		d.Text(margin, 2*margin, "There is no line whose years ahead could be played.", svg.Font{})
	}
	return d.Bytes()
}

// panel is one diagram over the years.
type panel struct {
	x, y  float64 // upper left corner of the area
	ways  []horizon.Way
	goal  float64 // 0 for none
	title string
	of    func(horizon.Year) horizon.Band

	low, high, step float64 // of the axis
	years           int
}

func (p *panel) draw(d *svg.Doc) {
	p.scale()
	d.Group(p.title)
	d.Text(p.x, p.y-8, p.title, svg.Font{})
	for v := p.low; v <= p.high+p.step/1000; v += p.step {
		y := p.at(0, v).Y
		d.Line(svg.Point{X: p.x, Y: y}, svg.Point{X: p.x + panelWidth, Y: y}, svg.Style{Stroke: svg.Grid})
		d.Text(p.x-6, y+4, fmt.Sprintf("%.2f", v), svg.Font{Anchor: svg.End, Size: 10})
	}
	every := max(1, int(math.Ceil(float64(p.years)/10)))
	for year := 0; year <= p.years; year += every {
		d.Text(p.at(year, 0).X, p.y+panelHeight+15, fmt.Sprint(year), svg.Font{Anchor: svg.Middle, Size: 10})
	}
	d.Text(p.x+panelWidth+12, p.y+panelHeight+15, "years", svg.Font{Size: 10, Fill: svg.Faint})
	for i := range p.ways {
		p.band(d, i)
	}
	if p.goal > 0 {
		y := p.at(0, p.goal).Y
		d.Line(svg.Point{X: p.x, Y: y}, svg.Point{X: p.x + panelWidth, Y: y}, svg.Style{Stroke: svg.Ink, Width: 1.5, Dash: []float64{1, 2}})
		d.Text(p.x+panelWidth-4, y+12, fmt.Sprintf("goal %.4g", p.goal), svg.Font{Size: 10, Anchor: svg.End})
	}
	for i := range p.ways {
		p.line(d, i)
	}
	p.names(d)
	d.End()
}

// scale finds the least axis in round steps that holds all bands.
func (p *panel) scale() {
	low, high := math.Inf(1), math.Inf(-1)
	for _, w := range p.ways {
		for _, n := range w.Years {
			b := p.of(n)
			low, high = min(low, b.Low, b.Mean), max(high, b.High, b.Mean)
			p.years = max(p.years, n.Year)
		}
	}
	if p.goal > 0 {
		low, high = min(low, p.goal), max(high, p.goal)
	}
	p.step = roundStep(max(high-low, 0.01) / 5)
	p.low = math.Floor(low/p.step+1e-9) * p.step
	p.high = max(math.Ceil(high/p.step-1e-9)*p.step, p.low+p.step)
}

// roundStep gives the least of 1, 2 and 5 times a power of ten, from 0.01 on,
// that is not below x.
func roundStep(x float64) float64 {
	for power := 0.01; ; power *= 10 {
		for _, n := range []float64{1, 2, 5} {
			if n*power >= x {
				return n * power
			}
		}
	}
}

// at gives the place of a value in a year.
func (p *panel) at(year int, value float64) svg.Point {
	return svg.Point{
		X: p.x + panelWidth*float64(year)/float64(max(p.years, 1)),
		Y: p.y + panelHeight*(p.high-value)/(p.high-p.low),
	}
}

func (p *panel) band(d *svg.Doc, i int) {
	var edge []svg.Point
	years := p.ways[i].Years
	for _, n := range years {
		edge = append(edge, p.at(n.Year, p.of(n).High))
	}
	for k := len(years) - 1; k >= 0; k-- {
		edge = append(edge, p.at(years[k].Year, p.of(years[k]).Low))
	}
	c := curves[i%len(curves)]
	d.Path(edge, true, svg.Style{Fill: c.paint, Clear: 0.82})
}

func (p *panel) line(d *svg.Doc, i int) {
	var way []svg.Point
	for _, n := range p.ways[i].Years {
		way = append(way, p.at(n.Year, p.of(n).Mean))
	}
	c := curves[i%len(curves)]
	d.Path(way, false, svg.Style{Stroke: c.paint, Width: 2, Dash: c.dash})
}

// names writes the name of each way beside the end of its line, one below the
// other where they would touch, with a piece of the line.
func (p *panel) names(d *svg.Doc) {
	taken := math.Inf(-1)
	for _, i := range p.byHeight() {
		years := p.ways[i].Years
		if len(years) == 0 {
			continue
		}
		last := years[len(years)-1]
		y := max(p.at(last.Year, p.of(last).Mean).Y+4, taken+13)
		taken = y
		c := curves[i%len(curves)]
		x := p.x + panelWidth
		d.Line(svg.Point{X: x + 4, Y: y - 4}, svg.Point{X: x + 22, Y: y - 4}, svg.Style{Stroke: c.paint, Width: 2, Dash: c.dash})
		d.Text(x+25, y, p.ways[i].Way, svg.Font{Size: 10})
	}
}

// byHeight gives the ways from the highest end to the lowest.
func (p *panel) byHeight() []int {
	order := make([]int, len(p.ways))
	end := func(i int) float64 {
		if years := p.ways[i].Years; len(years) > 0 {
			return p.of(years[len(years)-1]).Mean
		}
		return 0
	}
	for i := range order {
		order[i] = i
		for k := i; k > 0 && end(order[k]) > end(order[k-1]); k-- {
			order[k], order[k-1] = order[k-1], order[k]
		}
	}
	return order
}

// horizonInWords is for those who do not see the lines.
func horizonInWords(h frogroom.Horizon) string {
	texts := []string{fmt.Sprintf("Gene diversity and mean inbreeding over the years, against a goal of %.4g.", h.Goal)}
	for _, s := range h.Species {
		if s.NoFuture != "" {
			texts = append(texts, s.Species+": "+s.NoFuture+".")
		}
		for _, w := range s.Ways {
			if len(w.Years) == 0 {
				continue
			}
			last := w.Years[len(w.Years)-1]
			texts = append(texts, fmt.Sprintf("%s, %s: in year %d gene diversity %.4f (80 %% from %.4f to %.4f), inbreeding %.4f.",
				s.Species, w.Way, last.Year, last.GeneDiversity.Mean, last.GeneDiversity.Low, last.GeneDiversity.High, last.Inbreeding.Mean))
		}
	}
	return strings.Join(texts, " ")
}
