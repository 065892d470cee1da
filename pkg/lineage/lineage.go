// Package lineage draws who descends from whom, as a text in the DOT language
// that Graphviz turns into a picture.
//
// Generations stand in rows, founders on top. Each mating is a dot, or the id of
// its clutch on grey, with lines from its parents and arrows to its young; a
// parent that is only one of several possible ones has a dashed line. An animal is a rounded box that says
// in words what it is, legible without colour:
//
//	double border    founder: no parent is known
//	thick border     male
//	thin border      female
//	dotted border    sex not known
//	dashed border    young that a pair would have
//	grey             died or left; the border says no sex then
//	darker ground    more inbred; the coefficient stands in the box
//	three edges      a family: young of one clutch that have no young here
//
// The picture carries this key itself, as far as it is used. Every animal and
// every mating has an id of its own for SVG, "animal-" and the animal's id or
// "young-" and the id of the first young that is shown.
package lineage

import (
	"fmt"

	"github.com/emicklei/dot"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Draw draws the animals of p that the view shows; animals[i] belongs to animal i
// of p. It panics if the two do not have the same length. Cost: O(n) for
// Everything, and one pass for each animal of another view.
//
// From [Large] animals on families are drawn as one box even when the view does
// not ask for it, so that the graph can still be laid out.
func Draw(p *pedigree.Pedigree, animals []Animal, view View) *Drawing {
	if len(animals) != p.Len() {
		panic(fmt.Sprintf("lineage: %d animals for a pedigree of %d", len(animals), p.Len()))
	}
	d := &Drawing{pedigree: p, animals: animals, shown: view.shown(p, animals)}
	for _, shown := range d.shown {
		if shown {
			d.Animals++
		}
	}
	d.matings = d.findMatings()
	d.inFamily = make([]*family, p.Len())
	if view.families || d.Animals >= Large {
		d.collapse(view.of)
	}
	return d
}

// Large is the number of animals from which families are drawn as one box.
const Large = 1000

// slow is the number of boxes from which Graphviz is told to take it easy: with
// curved lines 3000 animals take it half a minute.
const slow = 300

// Drawing is a picture of a pedigree, to be written as DOT or for Mermaid.
type Drawing struct {
	Animals   int // in the picture
	Families  int // boxes that stand for several young
	Collapsed int // animals in these

	pedigree *pedigree.Pedigree
	animals  []Animal
	shown    []bool
	matings  []*mating
	inFamily []*family // by animal; nil for those that have a box of their own
}

// Boxes gives how many boxes the picture has.
func (d *Drawing) Boxes() int { return d.Animals - d.Collapsed + d.Families }

// DOT writes the picture for Graphviz. The same input gives the same bytes.
func (d *Drawing) DOT() string {
	w := &dotWriter{Drawing: d, graph: dot.NewGraph(dot.Directed), nodes: map[int]dot.Node{}}
	w.drawBoxes()
	w.drawMatings()
	w.setUp()
	return w.graph.String()
}

// dotWriter is a graph in the making.
type dotWriter struct {
	*Drawing
	graph *dot.Graph
	nodes map[int]dot.Node // by animal; young of a family share one
	used  key
}

// setUp sets what holds for the picture as a whole.
func (d *dotWriter) setUp() {
	g := d.graph
	g.Attr("rankdir", "TB")
	g.Attr("nodesep", "0.3")
	g.Attr("ranksep", "0.35")
	g.Attr("fontname", font)
	g.Attr("fontsize", "10")
	g.Attr("labelloc", "b")
	if lines := d.used.lines(); len(lines) > 0 {
		g.Attr("label", quoted(append([]string{""}, lines...)...)) // a blank line keeps it off the boxes
	}
	if d.Boxes() > slow {
		g.Attr("splines", "line")
		g.Attr("nslimit", "1")
		g.Attr("mclimit", "0.3")
	}
}

const font = "Helvetica,Arial,sans-serif"
