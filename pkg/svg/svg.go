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
	name          string // in ids, so that pictures do not mix on one page
	body          bytes.Buffer
	paints        []Paint // those in use
	classes       map[Paint]string
	defs          []def // gradients and patterns in use
	depth         int   // groups that are open
}

// def is a gradient or a pattern, with %s in place of its id.
type def struct{ id, text string }

// New begins a picture of a width and a height, both above 0, with a title and a
// description for those who do not see it. Pictures on one page have different
// titles. It panics on other sizes.
func New(width, height float64, title, desc string) *Doc {
	if !(width > 0) || !(height > 0) || math.IsInf(width, 0) || math.IsInf(height, 0) {
		panic(fmt.Sprintf("svg: a picture of %v by %v", width, height))
	}
	return &Doc{width: width, height: height, title: title, desc: desc, name: short(title), classes: make(map[Paint]string)}
}

// Bytes gives the picture. It panics when a group is still open.
func (d *Doc) Bytes() []byte {
	if d.depth != 0 {
		panic("svg: a group is not ended")
	}
	var b bytes.Buffer
	w, h := number(d.width), number(d.height)
	b.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="t` + d.name + ` d` + d.name + `" width="` + w + `" height="` + h + `" viewBox="0 0 ` + w + ` ` + h + `" font-family="sans-serif" direction="ltr">` + "\n")
	b.WriteString(`<title id="t` + d.name + `">` + Escape(d.title) + "</title>\n")
	b.WriteString(`<desc id="d` + d.name + `">` + Escape(d.desc) + "</desc>\n")
	b.WriteString("<style>\n" + d.rules() + "</style>\n")
	if len(d.defs) > 0 {
		b.WriteString("<defs>\n")
		for _, def := range d.defs {
			fmt.Fprintf(&b, def.text+"\n", def.id)
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

// class gives the ending of the classes of a paint: its colours, so that a change
// elsewhere leaves it as it is. It panics on one that is no colour.
func (d *Doc) class(p Paint) string {
	class, known := d.classes[p]
	if !known {
		_, _ = rgb(p.Light), rgb(p.Dark) // which go into the style as they are
		class = p.Light[1:] + "-" + p.Dark[1:]
		d.classes[p] = class
		d.paints = append(d.paints, p)
	}
	return class
}

// def gives the id of a gradient or pattern, of which each is kept once. The text
// has %s in place of the id, which goes by it.
func (d *Doc) def(text string) string {
	i := slices.IndexFunc(d.defs, func(o def) bool { return o.text == text })
	if i < 0 {
		i = len(d.defs)
		id := "d" + d.name + "-" + short(text)
		for d.taken(id) {
			id += "x"
		}
		d.defs = append(d.defs, def{id, text})
	}
	return d.defs[i].id
}

func (d *Doc) taken(id string) bool {
	return slices.ContainsFunc(d.defs, func(o def) bool { return o.id == id })
}

// short gives a short name that goes by a text.
func short(text string) string {
	sum := fnv.New32a()
	sum.Write([]byte(text))
	return strconv.FormatUint(uint64(sum.Sum32()&0xffff), 16)
}

// number writes a length to a hundredth. What is not a number is 0.
func number(x float64) string { return string(appendNumber(nil, x)) }

func appendNumber(b []byte, x float64) []byte {
	x = math.Round(x * 100)
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0) || x == 0:
		return append(b, '0')
	case math.Abs(x) > 1<<52:
		return strconv.AppendFloat(b, x/100, 'f', -1, 64)
	}
	n := int64(x)
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	b = strconv.AppendInt(b, n/100, 10)
	if tenths, hundredths := byte(n/10%10), byte(n%10); hundredths > 0 {
		b = append(b, '.', '0'+tenths, '0'+hundredths)
	} else if tenths > 0 {
		b = append(b, '.', '0'+tenths)
	}
	return b
}
