package picture

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/svg"
)

// stay is for how long young are at one age: from the window of one stage to that
// of the next.
type stay struct {
	word     string
	from, to civil.Window
	seen     bool // its beginning is in the diary
	last     bool // nothing is drawn after it
}

// What young are called from a stage on, and how they are drawn. The stages
// between belong to the one before.
var youngWords = map[string]string{"laid": "eggs", "hatched": "tadpoles", "out-of-water": "froglets", "sale-ready": "sale-ready"}

var youngBars = map[string]bar{
	"eggs":       {ground: svg.Mix(svg.Paper, svg.Ink, 0.6), text: svg.Paper},
	"tadpoles":   hatched(svg.Green, 0.5, 3.5, 90),
	"froglets":   {ground: svg.Mix(svg.Paper, svg.Purple, 0.5)},
	"sale-ready": hatched(svg.Purple, 0.12, 6, 45),
}

// In the water they are drawn higher up than out of it, so that the one is told
// from the other where both fade.
const (
	stayHeight = 11.0
	landStep   = youngHeight - stayHeight
)

func onLand(word string) bool { return word == "froglets" || word == "sale-ready" }

// reached is a stage with its window.
type reached struct {
	word   string
	window civil.Window
	seen   bool
}

// stays joins the stages that are drawn.
func stays(list []reached) []stay {
	var out []stay
	for i, r := range list {
		s := stay{word: r.word, from: r.window, seen: r.seen, last: i == len(list)-1}
		if !s.last {
			s.to = list[i+1].window
		}
		out = append(out, s)
	}
	return out
}

func (c *chart) pairingStays(p *frogroom.PlannedPairing) []stay {
	var list []reached
	for _, s := range p.Stages {
		if word := youngWords[s.Stage]; word != "" {
			list = append(list, reached{word, s.Window, false})
		}
	}
	return stays(list)
}

// clutchStays has young that are sale-ready until today, for nobody knows how
// long they stay.
func (c *chart) clutchStays(k *frogroom.SheetClutch) []stay {
	list := []reached{{"eggs", civil.Exactly(k.Laid), true}}
	if !k.Laid.Known() {
		list = nil
	}
	for _, s := range k.Stages {
		switch word := youngWords[s.Stage]; {
		case word == "" || !s.Window.Known():
		case s.Stage == "laid":
			list = []reached{{word, s.Window, s.Recorded || k.Laid.Known()}}
		default:
			list = append(list, reached{word, s.Window, s.Recorded})
		}
	}
	out := stays(list)
	if n := len(out); n > 0 && out[n-1].word == "sale-ready" && out[n-1].from.Late < c.On {
		out[n-1].to = civil.Exactly(c.On.Add(1))
	}
	return out
}

func (c *chart) young(y float64, list []stay) {
	for _, s := range list {
		if s.to.Known() {
			c.stay(y, s)
		}
	}
	for _, s := range list { // above all bars
		if !c.shown(s.from.Likely) {
			continue
		}
		x := c.mid(s.from.Likely)
		if s.seen {
			c.seen(x, y+youngHeight/2)
			continue
		}
		c.Line(svg.Point{X: x, Y: y - 1}, svg.Point{X: x, Y: y + youngHeight + 1}, svg.Style{Stroke: svg.Ink, Width: 1.5})
	}
	c.readyText(y, list)
}

// readyText writes the likely day of the last stage beside its window, where there
// is room.
func (c *chart) readyText(y float64, list []stay) {
	if len(list) == 0 {
		return
	}
	s := list[len(list)-1]
	if s.to.Known() || !c.shown(s.from.Likely) {
		return
	}
	text := s.word + " " + shortDate(s.from.Likely)
	if x := c.at(s.from.Late.Add(1)) + 5; x+svg.Width(text, 10) <= c.width-4 {
		c.write(x, y+youngHeight/2+3.6, text, svg.Font{Size: 10})
	}
}

// stay draws an age: it fades in from the early day to the late one of its
// beginning, and fades out from the early to the late day of its end. Lines are
// only on the days between, on which all must be at it.
func (c *chart) stay(y float64, s stay) {
	b := youngBars[s.word]
	in := span{c.mid(s.from.Early), c.mid(s.from.Late)}
	out := span{c.mid(s.to.Early), c.mid(s.to.Late)}
	c.Group(fmt.Sprintf("%s: from %s to %s", s.word, windowWords(s.from), windowWords(s.to)))
	defer c.End()
	const h = stayHeight
	if onLand(s.word) {
		y += landStep
	}
	peak := 1.0
	if in.to > out.from { // it can be over before it must have begun
		in.to, peak = crossing(in, out)
		out.from = in.to
	}
	whole := min(in.part(in.to), peak)
	c.fade(in.from, in.to, y, b, 0, whole)
	if out.from > in.to {
		c.Rect(in.to, y, out.from-in.to, h, svg.Style{Fill: b.ground})
		if b.gap > 0 {
			c.Rect(in.to, y, out.from-in.to, h, svg.Style{Over: b.lines()})
		}
		edge := svg.Style{Stroke: svg.Faint, Width: 0.8}
		c.Line(svg.Point{X: in.to, Y: y}, svg.Point{X: out.from, Y: y}, edge)
		c.Line(svg.Point{X: in.to, Y: y + h}, svg.Point{X: out.from, Y: y + h}, edge)
	}
	c.fade(out.from, out.to, y, b, peak, 0)
	from, to := c.mid(s.from.Likely)+2, c.mid(s.to.Likely)-2
	c.inside(from, y, to-from, h, s.word, b)
}

func (c *chart) fade(x, to, y float64, b bar, from, until float64) {
	if to-x > 0.01 {
		c.Rect(x, y, to-x, stayHeight, svg.Style{Over: svg.Fade(b.ground, from, until)})
	}
}

// span is from one place to another.
type span struct{ from, to float64 }

// part is how far along a span a place lies, 1 for one of no length.
func (s span) part(x float64) float64 {
	if s.to <= s.from {
		return 1
	}
	return min(max((x-s.from)/(s.to-s.from), 0), 1)
}

// crossing gives where a fade in meets a fade out, and how much there is.
func crossing(in, out span) (x, part float64) {
	// part along in: (x-in.from)/a; left of out: (out.to-x)/b.
	a, b := max(in.to-in.from, 1e-9), max(out.to-out.from, 1e-9)
	x = (out.to*a + in.from*b) / (a + b)
	x = min(max(x, in.from), out.to)
	return x, min(in.part(x), 1)
}

func windowWords(w civil.Window) string {
	if w.Certain() {
		return w.Likely.String()
	}
	return fmt.Sprintf("%s (early %s, late %s)", w.Likely, w.Early, w.Late)
}
