package lineage

import (
	"fmt"
	"slices"
	"strings"

	"github.com/emicklei/dot"
)

// family is young of one mating that stand in one box.
type family struct {
	young []int // in the order of the pedigree
}

// collapse makes families of the young that have no young in the view. Those in
// keep stay on their own.
func (d *Drawing) collapse(keep []int) {
	parent := make([]bool, d.pedigree.Len())
	for _, m := range d.matings {
		for _, l := range d.lines(m) {
			parent[l.Animal] = true
		}
	}
	mark(parent, keep)
	for _, m := range d.matings {
		var young []int
		for _, y := range m.young {
			if !parent[y] && !d.animals[y].Expected {
				young = append(young, y)
			}
		}
		if len(young) < 2 {
			continue
		}
		f := &family{young}
		for _, y := range young {
			d.inFamily[y] = f
		}
		d.Families++
		d.Collapsed += len(young)
	}
}

// kept counts those of a family that neither died nor left.
func (d *Drawing) kept(f *family) (n int) {
	for _, y := range f.young {
		if !d.animals[y].Gone {
			n++
		}
	}
	return n
}

// familyWords gives the lines in the box of a family. Its young have one
// inbreeding coefficient, for they come from the same parents.
func (d *Drawing) familyWords(f *family) []string {
	text := fmt.Sprintf("%d young", len(f.young))
	switch kept := d.kept(f); kept {
	case len(f.young):
	case 0:
		text += ", none here"
	default:
		text += fmt.Sprintf(", %d kept", kept)
	}
	return []string{text, d.inbreeding(f.young[0])}
}

func (d *dotWriter) drawFamily(row *dot.Graph, f *family) {
	first := f.young[0]
	n := row.Node(fmt.Sprintf("animal-%07d", first))
	n.Attr("id", quoted("family-"+d.pedigree.ID(first)))
	n.Attr("label", quoted(d.familyWords(f)...))
	n.Attr("tooltip", hover(d.familyIDs(f)))
	n.Attr("shape", "box")
	n.Attr("peripheries", "3")
	n.Attr("fontname", font)
	n.Attr("fontsize", "11")
	n.Attr("margin", "0.12,0.06")
	n.Attr("style", "filled")
	n.Attr("fillcolor", d.ground(first))
	if d.kept(f) == 0 {
		n.Attr("color", goneEdge)
		n.Attr("fontcolor", goneText)
		d.used.gone = true
	}
	d.used.family = true
	d.inbred(first)
	for _, y := range f.young {
		d.nodes[y] = n
	}
}

// mostNamed is how many young of a family are named in its tooltip.
const mostNamed = 40

func (d *Drawing) familyIDs(f *family) string {
	var ids []string
	for _, y := range f.young[:min(len(f.young), mostNamed)] {
		ids = append(ids, d.pedigree.ID(y))
	}
	if more := len(f.young) - len(ids); more > 0 {
		ids = append(ids, fmt.Sprintf("and %d more", more))
	}
	return strings.Join(slices.Clip(ids), ", ")
}
