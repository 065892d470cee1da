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
//	grey             died or left; the border says no sex then
//	darker ground    more inbred; the coefficient stands in the box
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

// large is the number of animals from which Graphviz is told to take it easy:
// with curved lines 3000 animals take it half a minute.
const large = 300

// DOT draws the animals of p that the view shows; animals[i] belongs to animal i
// of p. The same input gives the same bytes. It panics if the two do not have
// the same length. Cost: O(n) for Everything, and one pass for each animal of
// another view.
func DOT(p *pedigree.Pedigree, animals []Animal, view View) string {
	if len(animals) != p.Len() {
		panic(fmt.Sprintf("lineage: %d animals for a pedigree of %d", len(animals), p.Len()))
	}
	d := &drawing{
		pedigree: p,
		animals:  animals,
		shown:    view.shown(p),
		graph:    dot.NewGraph(dot.Directed),
		nodes:    map[int]dot.Node{},
	}
	d.drawAnimals()
	d.drawMatings()
	d.setUp()
	return d.graph.String()
}

// drawing is a picture in the making.
type drawing struct {
	pedigree *pedigree.Pedigree
	animals  []Animal
	shown    []bool
	graph    *dot.Graph
	nodes    map[int]dot.Node
	used     key
}

// setUp sets what holds for the picture as a whole.
func (d *drawing) setUp() {
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
	if len(d.nodes) > large {
		g.Attr("splines", "line")
		g.Attr("nslimit", "1")
		g.Attr("mclimit", "0.3")
	}
}

const font = "Helvetica,Arial,sans-serif"
