// Package svg writes plain pictures as SVG 1.1: bars, lines, areas and text, in
// paints that have a value for light and one for dark surroundings.
//
//	d := svg.New(400, 120, "Title", "What can be seen, for those who cannot.")
//	d.Rect(10, 10, 200, 20, svg.Style{Fill: svg.Blue})
//	d.Text(10, 60, "Grüße <3", svg.Font{Size: 12})
//	os.Stdout.Write(d.Bytes())
//
// A picture has no script, fetches nothing, keeps text as text, and is the same
// bytes for the same calls. Text from outside can hold anything: what XML does
// not allow is replaced, and right-to-left text keeps to its place.
package svg

import (
	"bytes"
	"fmt"
	"hash/fnv"
	"math"
	"slices"
	"strconv"
)

// Doc is a picture in the making. Lengths are in units of the picture, of which
// a phone shows about three to a millimetre; y grows downward.
type Doc struct {
	width, height float64
	title, desc   string
	name          string // in ids and classes, so that pictures do not mix on one page
	body          bytes.Buffer
	paints        []Paint  // those in use; the number is the class
	defs          []string // gradients and patterns in use
	depth         int      // groups that are open
}

// New begins a picture of a width and a height, both above 0, with a title and a
// description for those who do not see it. It panics on other sizes.
func New(width, height float64, title, desc string) *Doc {
	if !(width > 0) || !(height > 0) || math.IsInf(width, 0) || math.IsInf(height, 0) {
		panic(fmt.Sprintf("svg: a picture of %v by %v", width, height))
	}
	name := fnv.New32a()
	fmt.Fprintf(name, "%q %q", title, desc)
	return &Doc{width: width, height: height, title: title, desc: desc, name: fmt.Sprintf("%x-", name.Sum32()&0xffff)}
}

// Bytes gives the picture. It panics when a group is still open.
func (d *Doc) Bytes() []byte {
	if d.depth != 0 {
		panic("svg: a group is not ended")
	}
	var b bytes.Buffer
	w, h := number(d.width), number(d.height)
	b.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="t` + d.name + ` d` + d.name + `" width="` + w + `" height="` + h + `" viewBox="0 0 ` + w + ` ` + h + `" font-family="sans-serif">` + "\n")
	b.WriteString(`<title id="t` + d.name + `">` + Escape(d.title) + "</title>\n")
	b.WriteString(`<desc id="d` + d.name + `">` + Escape(d.desc) + "</desc>\n")
	b.WriteString("<style>\n" + d.rules() + "</style>\n")
	if len(d.defs) > 0 {
		b.WriteString("<defs>\n")
		for i, def := range d.defs {
			fmt.Fprintf(&b, def+"\n", d.defID(i))
		}
		b.WriteString("</defs>\n")
	}
	b.Write(d.body.Bytes())
	b.WriteString("</svg>\n")
	return b.Bytes()
}

// Group begins a group of shapes that belong together, with a title that a
// reader shows when one points at it; an empty one is none. End ends it.
func (d *Doc) Group(title string) {
	d.depth++
	d.body.WriteString("<g>\n")
	if title != "" {
		d.body.WriteString("<title>" + Escape(title) + "</title>\n")
	}
}

// End ends the group that was begun last. It panics when there is none.
func (d *Doc) End() {
	if d.depth == 0 {
		panic("svg: no group to end")
	}
	d.depth--
	d.body.WriteString("</g>\n")
}

// class gives the ending of the classes of a paint. It panics on one that is no colour.
func (d *Doc) class(p Paint) string {
	i := slices.Index(d.paints, p)
	if i < 0 {
		_, _ = rgb(p.Light), rgb(p.Dark) // which go into the style as they are
		i = len(d.paints)
		d.paints = append(d.paints, p)
	}
	return d.name + strconv.Itoa(i)
}

// def gives the id of a gradient or pattern, of which each is kept once. The text
// has %s in place of the id.
func (d *Doc) def(text string) string {
	i := slices.Index(d.defs, text)
	if i < 0 {
		i = len(d.defs)
		d.defs = append(d.defs, text)
	}
	return d.defID(i)
}

func (d *Doc) defID(i int) string { return "d" + d.name + strconv.Itoa(i) }

// number writes a length to a hundredth. What is not a number is 0.
func number(x float64) string {
	x = math.Round(x*100) / 100
	if math.IsNaN(x) || math.IsInf(x, 0) || x == 0 {
		return "0"
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}
