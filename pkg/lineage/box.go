package lineage

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/emicklei/dot"
)

// drawBoxes draws the boxes, a row for each generation.
func (d *dotWriter) drawBoxes() {
	rows := map[int][]int{}
	for i, shown := range d.shown {
		if shown {
			g := d.pedigree.Generation(i)
			rows[g] = append(rows[g], i)
		}
	}
	generations := make([]int, 0, len(rows))
	for g := range rows {
		generations = append(generations, g)
	}
	slices.Sort(generations)
	for _, g := range generations {
		// A subgraph for each row: the library's own way to name a row
		// writes the rows in random order.
		row := d.graph.Subgraph(fmt.Sprintf("generation-%07d", g))
		row.Attr("rank", "same")
		row.Delete("label")
		for _, i := range rows[g] {
			switch f := d.inFamily[i]; {
			case f == nil:
				d.drawAnimal(row, i)
			case f.young[0] == i:
				d.drawFamily(row, f)
			}
		}
	}
}

func (d *dotWriter) drawAnimal(row *dot.Graph, i int) {
	a := d.animals[i]
	id := d.pedigree.ID(i)
	n := row.Node(fmt.Sprintf("animal-%07d", i))
	n.Attr("id", quoted("animal-"+id))
	n.Attr("label", quoted(d.words(i)...))
	n.Attr("tooltip", hover(d.tooltip(i)))
	n.Attr("shape", "box")
	n.Attr("fontname", font)
	n.Attr("fontsize", "11")
	n.Attr("margin", "0.12,0.06")
	n.Attr("fillcolor", d.ground(i))
	d.inbred(i)
	style, width := "rounded,filled", "1"
	switch {
	case a.Expected:
		style += ",dashed"
		d.used.young = true
	case a.Gone:
		n.Attr("color", goneEdge)
		n.Attr("fontcolor", goneText)
		d.used.gone = true
	case a.Sex == Male:
		width = "2.4"
		d.used.male = true
	case a.Sex == Female:
		d.used.female = true
	default:
		style += ",dotted"
		d.used.unsexed = true
	}
	if d.founder(i) {
		n.Attr("peripheries", "2")
		d.used.founder = true
	}
	n.Attr("style", style)
	n.Attr("penwidth", width)
	d.nodes[i] = n
}

// Those that died or left are drawn in grey, with text that can still be read on the
// darkest ground.
const (
	goneEdge = "#8c8c8c"
	goneText = "#3d3d3d"
)

// words gives the lines in the box of animal i.
func (d *Drawing) words(i int) []string {
	a := d.animals[i]
	id := d.pedigree.ID(i)
	lines := []string{id, a.Sex.String()}
	if a.Expected {
		lines = lines[:1]
	}
	if a.Name != "" {
		lines = []string{a.Name, id + ", " + a.Sex.String()}
	}
	if a.Line != "" {
		lines = append(lines, a.Line)
	}
	if !d.founder(i) {
		lines = append(lines, d.inbreeding(i))
	}
	for _, parent := range parents(d.pedigree, i) {
		if !d.shown[parent] {
			return append(lines, "(not all parents shown)")
		}
	}
	return lines
}

// tooltip gives all that is known of animal i in one line.
func (d *Drawing) tooltip(i int) string {
	a := d.animals[i]
	parts := []string{d.pedigree.ID(i)}
	for _, part := range []struct{ before, text string }{
		{"", a.Name}, {"", a.sexOrNone()}, {"line ", a.Line}, {"clutch ", a.Clutch},
	} {
		if part.text != "" {
			parts = append(parts, part.before+part.text)
		}
	}
	parts = append(parts, d.inbreeding(i))
	if a.Gone {
		parts = append(parts, "died or left")
	}
	return strings.Join(parts, ", ")
}

func (d *Drawing) founder(i int) bool {
	sire, dam := d.pedigree.Parents(i)
	return !sire.Known && !dam.Known
}

// inbreeding writes the coefficient with up to four places, and says if it is a
// mean over possible parents. A mean of 0 is 0 whoever they are.
func (d *Drawing) inbreeding(i int) string {
	f := d.coefficient(i)
	s := strconv.FormatFloat(f, 'f', 4, 64)
	s = "F " + strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
	if d.expected(i) {
		s += " expected"
	}
	return s
}

// coefficient is rounded, for sums of kinships may be off by less.
func (d *Drawing) coefficient(i int) float64 {
	return math.Round(d.pedigree.Inbreeding(i)*1e9) / 1e9
}

func (d *Drawing) expected(i int) bool { return d.coefficient(i) > 0 && d.pedigree.Uncertain(i) }

// inbred notes that the picture tells an inbreeding coefficient.
func (d *dotWriter) inbred(i int) {
	d.used.expected = d.used.expected || d.expected(i)
	d.used.inbred = d.used.inbred || !d.founder(i)
}

// grounds are the fills of the boxes, from the inbreeding coefficient at which
// each begins: the young of second cousins, first cousins, half sibs, full sibs.
// They get darker evenly, so that a print without colour shows them too.
var grounds = []struct {
	from   float64
	colour string
}{
	{0, "#ffffff"},
	{1.0 / 64, "#f7f1df"},
	{1.0 / 16, "#efe0b6"},
	{1.0 / 8, "#e2c586"},
	{1.0 / 4, "#cfa45a"},
}

func (d *Drawing) ground(i int) string {
	const rounding = 1e-9 // what sums of kinships may be off by
	colour := grounds[0].colour
	for _, g := range grounds {
		if d.pedigree.Inbreeding(i) >= g.from-rounding {
			colour = g.colour
		}
	}
	return colour
}
