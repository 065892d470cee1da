package lineage

import (
	"fmt"
	"strings"
	"unicode"

	"github.com/emicklei/dot"
)

// Mermaid writes the picture as a flowchart for Mermaid, for places that draw
// that. Rows are as Mermaid finds them, a possible parent has its chance beside the
// line, and borders are not told apart but by what stands in the box. The same input gives
// the same bytes.
//
// Mermaid reads some signs in a text as marks, even inside quotation marks. These
// are written as others that look alike.
func (d *Drawing) Mermaid() string {
	g := dot.NewGraph(dot.Directed)
	nodes := map[int]dot.Node{}
	for i, shown := range d.shown {
		f := d.inFamily[i]
		if !shown || f != nil && f.young[0] != i {
			continue
		}
		words, shape := d.words(i), dot.MermaidShapeRound
		if f != nil {
			words, shape = d.familyWords(f), dot.MermaidShapeSubroutine
		}
		n := g.Node(fmt.Sprintf("animal-%07d", i))
		n.Attr("label", alike(strings.Join(words, ", ")))
		n.Attr("shape", shape)
		n.Attr("style", d.mermaidStyle(i))
		nodes[i] = n
	}
	for _, m := range d.matings {
		if d.bare(m) {
			continue
		}
		point := g.Node(fmt.Sprintf("mating-%07d", m.young[0]))
		point.Attr("shape", dot.MermaidShapeCircle)
		point.Attr("label", " ")
		if m.clutch != "" {
			point.Attr("label", alike(m.clutch))
		}
		for _, l := range d.lines(m) {
			e := g.Edge(nodes[l.Animal], point)
			if l.Probability < 1 {
				e.Attr("label", fmt.Sprintf("maybe, %.0f %%", 100*l.Probability))
			}
		}
		for _, y := range d.boxes(m) {
			g.Edge(point, nodes[y])
		}
	}
	return dot.MermaidFlowchart(g, dot.MermaidTopToBottom)
}

// mermaidStyle gives the ground of a box, a thick border for founders and a
// dashed one for young that a pair would have.
func (d *Drawing) mermaidStyle(i int) string {
	style := "fill:" + d.ground(i) + ",color:#1a1a1a,stroke:#5c5c5c"
	switch {
	case d.animals[i].Expected:
		style += ",stroke-dasharray:4 3"
	case d.founder(i):
		style += ",stroke-width:3px"
	}
	return style
}

// alike gives text without what Mermaid would read as a mark: quotation marks,
// backticks, number signs, angle brackets, ampersands, and line ends.
var mermaidAlike = strings.NewReplacer(
	`"`, "\u201d", `'`, "\u2019", "`", "\u02cb", "#", "\uff03", "<", "\u2039", ">", "\u203a",
	"&", "\uff06", "\\", "\uff3c", ";", "\uff1b", "\r\n", " ", "\n", " ", "\r", " ", "\t", " ",
)

func alike(text string) string {
	text = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r == '\u2028' || r == '\u2029' {
			return ' '
		}
		return r
	}, mermaidAlike.Replace(text))
	if strings.TrimSpace(text) == "" {
		return "-"
	}
	return text
}
