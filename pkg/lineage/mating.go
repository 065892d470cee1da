package lineage

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/emicklei/dot"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// mating is the young of one clutch, or of the same parents if no clutch is
// known.
type mating struct {
	clutch    string
	sire, dam pedigree.Parent
	young     []int // in the order of the pedigree, all in the view
}

// findMatings gathers those that the view shows, in the order of their first young.
func (d *Drawing) findMatings() []*mating {
	type origin struct{ clutch, sire, dam string }
	found := map[origin]*mating{}
	var order []*mating
	for i, shown := range d.shown {
		if !shown {
			continue
		}
		sire, dam := d.pedigree.Parents(i)
		o := origin{d.animals[i].Clutch, name(sire), name(dam)}
		if o == (origin{}) {
			continue
		}
		m := found[o]
		if m == nil {
			m = &mating{clutch: o.clutch, sire: sire, dam: dam}
			found[o] = m
			order = append(order, m)
		}
		m.young = append(m.young, i)
	}
	return order
}

// name tells parents apart: by the animal, or by the group.
func name(p pedigree.Parent) string {
	switch {
	case !p.Known:
		return ""
	case p.Group != "":
		return "group " + p.Group
	}
	return strconv.Itoa(p.Candidates[0].Animal)
}

// bare reports whether a mating has neither parents nor several boxes to join: a
// point with one line says nothing.
func (d *Drawing) bare(m *mating) bool { return len(d.lines(m)) == 0 && len(d.boxes(m)) < 2 }

// boxes gives the first young of each box below a mating.
func (d *Drawing) boxes(m *mating) []int {
	var first []int
	for _, y := range m.young {
		if f := d.inFamily[y]; f == nil || f.young[0] == y {
			first = append(first, y)
		}
	}
	return first
}

// drawMatings draws the points and all lines.
func (d *dotWriter) drawMatings() {
	for _, m := range d.matings {
		if d.bare(m) {
			continue
		}
		lines := d.lines(m)
		point := d.drawPoint(m)
		for _, l := range lines {
			d.drawLine(l, point)
		}
		for _, y := range d.boxes(m) {
			d.graph.Edge(point, d.nodes[y]).Attr("arrowsize", "0.6")
		}
	}
}

// line is one from a parent in the view to the point of a mating.
type line struct {
	pedigree.Share
	even bool // all candidates have the same probability
}

func (d *Drawing) lines(m *mating) []line {
	var lines []line
	for _, parent := range []pedigree.Parent{m.sire, m.dam} {
		even := true
		for _, c := range parent.Candidates {
			even = even && c.Probability == parent.Candidates[0].Probability
		}
		for _, c := range parent.Candidates {
			if d.shown[c.Animal] {
				lines = append(lines, line{c, even})
			}
		}
	}
	return lines
}

func (d *dotWriter) drawLine(l line, to dot.Node) {
	e := d.graph.Edge(d.nodes[l.Animal], to)
	e.Attr("dir", "none")
	if l.Probability >= 1 {
		return
	}
	e.Attr("style", "dashed")
	d.used.possible = true
	percent := fmt.Sprintf("%.0f %%", 100*l.Probability)
	e.Attr("tooltip", hover("possible parent, "+percent))
	if !l.even {
		e.Attr("label", quoted(percent))
		e.Attr("fontname", font)
		e.Attr("fontsize", "9")
	}
}

// clutchGround is what the id of a clutch stands on.
const clutchGround = "#e5e5e5"

// drawPoint draws the place where the lines of a mating meet: the id of its
// clutch on grey, or a dot. An id beside a dot would be crossed by the lines.
func (d *dotWriter) drawPoint(m *mating) dot.Node {
	n := d.graph.Node(fmt.Sprintf("mating-%07d", m.young[0]))
	n.Attr("id", quoted("young-"+d.pedigree.ID(m.young[0])))
	n.Attr("tooltip", hover(d.describe(m)))
	if m.clutch == "" {
		n.Delete("label")
		n.Attr("shape", "point")
		n.Attr("width", "0.08")
		return n
	}
	n.Attr("label", quoted(m.clutch))
	n.Attr("shape", "box")
	n.Attr("style", "rounded,filled")
	n.Attr("fillcolor", clutchGround)
	n.Attr("penwidth", "0")
	n.Attr("height", "0.18")
	n.Attr("width", "0.2")
	n.Attr("margin", "0.05,0.02")
	n.Attr("fontname", font)
	n.Attr("fontsize", "9")
	return n
}

// describe tells a mating in words.
func (d *Drawing) describe(m *mating) string {
	var parts []string
	if m.clutch != "" {
		parts = append(parts, "clutch "+m.clutch)
	}
	for _, side := range []struct {
		word   string
		parent pedigree.Parent
	}{{"sire", m.sire}, {"dam", m.dam}} {
		parts = append(parts, side.word+" "+d.describeParent(side.parent))
	}
	return strings.Join(parts, "; ")
}

func (d *Drawing) describeParent(p pedigree.Parent) string {
	if !p.Known {
		return "not known"
	}
	var ids []string
	for _, c := range p.Candidates {
		ids = append(ids, d.pedigree.ID(c.Animal))
	}
	text := strings.Join(ids, " or ")
	switch {
	case len(ids) == 1:
		return text
	case p.Kind == pedigree.Several:
		return text + ", not the same for each young"
	}
	return text + ", the same for all young"
}
