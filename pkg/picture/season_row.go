package picture

import (
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/svg"
)

// bar is how a phase or a stage is painted: a ground, and lines on it, by which it
// is known without colour.
type bar struct {
	ground     svg.Paint
	line       svg.Paint // of the lines
	gap, angle float64   // likewise; without a gap there are none
	text       svg.Paint // on the ground
}

// lines covers a bar with its lines.
func (b bar) lines() svg.Cover {
	if b.gap == 0 {
		return svg.Cover{}
	}
	return svg.Hatch(b.line, b.gap, b.angle)
}

func hatched(p svg.Paint, part, gap, angle float64) bar {
	return bar{ground: svg.Mix(svg.Paper, p, part), line: svg.Mix(svg.Paper, p, min(part+0.4, 1)), gap: gap, angle: angle}
}

// Phases of the cycle, by their names.
var phaseBars = map[string]bar{
	"conditioning": {ground: svg.Mix(svg.Paper, svg.Yellow, 0.45)},
	"cooling":      hatched(svg.Sky, 0.35, 4, 0),
	"warm-up":      hatched(svg.Orange, 0.35, 5, 45),
	"rain":         {ground: svg.Blue, text: svg.Paper},
	"rest":         hatched(svg.Ink, 0.04, 9, -45),
}

// otherBar is for a phase that has no look of its own.
var otherBar = bar{ground: svg.Grid}

func (c *chart) row(y float64, r seasonRow) {
	switch {
	case r.heading != "":
		c.write(seasonMargin, y+16, r.heading, svg.Font{Size: 12, Bold: true})
		return
	case r.pairing != nil:
		c.Group(r.pairing.ID)
		c.rowName(y, r.pairing.ID, c.pairingText(r.pairing), r.pairing.Refused)
		c.phases(y+rowName, r.pairing)
		c.young(y+rowName+phaseHeight+3, r.young)
		c.readyBy(y+rowName+phaseHeight+3, r)
	default:
		c.Group(r.clutch.ID)
		c.rowName(y, r.clutch.ID, clutchText(r.clutch), false)
		c.young(y+rowName, r.young)
	}
	c.End()
	end := y + r.height() - 2.5
	c.Line(svg.Point{X: seasonMargin, Y: end}, svg.Point{X: c.right(), Y: end}, svg.Style{Stroke: svg.Grid, Width: 0.6})
}

// rowName writes the line above the bars of a row, the id first.
func (c *chart) rowName(y float64, id, text string, refused bool) {
	room := c.width - 2*seasonMargin
	id = svg.Fit(id, 12, room/2)
	bold := svg.Font{Size: 12, Bold: true}
	c.write(seasonMargin, y+12, id, bold)
	x := seasonMargin + textWidth(id, bold) + 7
	if refused {
		const against = "should not be made"
		red := svg.Font{Size: 11, Bold: true, Fill: alarm}
		c.write(x, y+12, against, red)
		x += textWidth(against, red) + 7
	}
	c.write(x, y+12, svg.Fit(text, 11, room+seasonMargin-x), svg.Font{Size: 11, Fill: svg.Faint})
}

// mostName is the room for one name among others.
const mostName = 130

func (c *chart) called(ids []string) string {
	names := make([]string, len(ids))
	for i, id := range ids {
		names[i] = id
		if name := c.Names[id]; name != "" {
			names[i] = name
		}
		names[i] = svg.Apart(svg.Fit(names[i], 11, mostName))
	}
	return strings.Join(names, " + ")
}

func (c *chart) pairingText(p *frogroom.PlannedPairing) string {
	text := c.called(p.Dams) + " × " + c.called(p.Sires) + ", " + p.Species
	switch {
	case p.Target != "":
		text += ", for " + svg.Apart(p.Target)
	case p.ReadyBy.Known():
		text += ", ready by " + shortDate(p.ReadyBy)
	}
	return text
}

func clutchText(k *frogroom.SheetClutch) string {
	text := k.Species
	if k.Place != "" {
		text = svg.Apart(k.Place) + ", " + text
	}
	if k.Living != nil {
		text += fmt.Sprintf(", %d living", *k.Living)
	}
	return text
}

func (c *chart) phases(y float64, p *frogroom.PlannedPairing) {
	for _, ph := range p.Phases {
		if ph.Span.Days() == 0 || !ph.Span.Overlaps(c.days) {
			continue
		}
		x := c.at(ph.Span.First)
		w := c.at(ph.Span.Last.Add(1)) - x
		b, known := phaseBars[ph.Name]
		if !known {
			b = otherBar
		}
		title := fmt.Sprintf("%s: %s, %s to %s", p.ID, ph.Name, ph.Span.First, ph.Span.Last)
		if ph.Place != "" {
			title += ", " + ph.Place
		}
		if ph.Recorded {
			title += ", began"
		}
		c.Group(title)
		c.block(x, y, w, phaseHeight, b)
		c.inside(x, y, w, phaseHeight, ph.Name, b)
		if ph.Recorded {
			c.seen(x, y+phaseHeight/2)
		}
		c.End()
	}
	c.rainText(y, p)
}

// rainText writes the days of the rain beside the last phase, where there is room.
func (c *chart) rainText(y float64, p *frogroom.PlannedPairing) {
	end := p.Phases[len(p.Phases)-1].Span.Last.Add(1)
	for _, ph := range p.Phases {
		if ph.Name != "rain" || ph.Span.Days() == 0 || !c.shown(ph.Span.First) {
			continue
		}
		text := "rain " + shortDate(ph.Span.First) + " to " + shortDate(ph.Span.Last)
		if x := c.at(end) + 5; x+svg.Width(text, 10) <= c.width-4 {
			c.write(x, y+phaseHeight/2+3.6, text, svg.Font{Size: 10})
		}
	}
}

// block draws a bar with an outline.
func (c *chart) block(x, y, w, h float64, b bar) {
	c.Rect(x, y, w, h, svg.Style{Fill: b.ground})
	outline := svg.Style{Stroke: svg.Faint, Width: 0.8}
	outline.Over = b.lines()
	c.Rect(x, y, w, h, outline)
}

// seen marks what the diary has.
func (c *chart) seen(x, y float64) {
	c.Circle(svg.Point{X: x, Y: y}, 3, svg.Style{Fill: svg.Ink, Stroke: svg.Paper})
}

// readyBy plants a flag on the day by which the young of a pairing are to be ready.
func (c *chart) readyBy(y float64, r seasonRow) {
	p := r.pairing
	if !p.ReadyBy.Known() || !c.shown(p.ReadyBy) || len(r.young) == 0 {
		return
	}
	x := c.mid(p.ReadyBy)
	c.Group(p.ID + ": to be ready by " + p.ReadyBy.String())
	c.Line(svg.Point{X: x, Y: y - 3}, svg.Point{X: x, Y: y + youngHeight + 1}, svg.Style{Stroke: svg.Ink, Width: 1.2})
	c.Path(pennant(x, y-3, 1), true, svg.Style{Fill: svg.Ink})
	c.End()
}
