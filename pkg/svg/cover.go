package svg

import "fmt"

// Cover paints over an area: fading from one side to the other, or with lines.
// Get one from [Fade] or [Hatch]; the zero value covers nothing.
type Cover struct {
	paint    Paint
	from, to float64 // of a fade, how much is there at the left and at the right
	gap      float64 // of a hatch, between two lines; 0 for a fade
	angle    float64 // of its lines, in degrees
}

// Fade paints with one colour that grows from a part at the left end of the
// shape to another at the right, each from 0 for nothing to 1.
func Fade(p Paint, from, to float64) Cover {
	return Cover{paint: p, from: min(max(from, 0), 1), to: min(max(to, 0), 1)}
}

// Hatch paints lines with a gap above 0 between them, at an angle in degrees
// from the upright. It panics on other gaps.
func Hatch(p Paint, gap, angle float64) Cover {
	if !(gap > 0) {
		panic(fmt.Sprintf("svg: lines with a gap of %v", gap))
	}
	return Cover{paint: p, gap: gap, angle: angle}
}

// cover gives the id of a cover.
func (d *Doc) cover(c Cover) string {
	class := d.class(c.paint)
	if c.gap > 0 {
		gap := number(c.gap)
		return d.def(`<pattern id="%s" width="` + gap + `" height="` + gap + `" patternUnits="userSpaceOnUse" patternTransform="rotate(` + number(c.angle) + `)">` +
			`<line x1="0" y1="0" x2="0" y2="` + gap + `" class="s` + class + `"/></pattern>`)
	}
	stop := func(at string, part float64) string {
		return `<stop offset="` + at + `" class="c` + class + `" stop-opacity="` + number(part) + `"/>`
	}
	return d.def(`<linearGradient id="%s">` + stop("0", c.from) + stop("1", c.to) + `</linearGradient>`)
}
