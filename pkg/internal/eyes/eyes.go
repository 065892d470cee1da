// Package eyes tells the tests of pictures how colours look to those who see them
// otherwise, and whether text can be read.
package eyes

import (
	"fmt"
	"math"
	"strconv"
)

// Eye is how somebody sees, as what becomes of red, green and blue light.
type Eye struct {
	Name string
	sees [3][3]float64
}

// Eyes are the usual ones, those that lack one of the three kinds of cones, and a
// print without colour. The matrices are for a severity of 1 (Machado, Oliveira and
// Fernandes 2009, IEEE Transactions on Visualization and Computer Graphics 15:1291,
// as told from memory); the print goes by luminance (Rec. 709).
var Eyes = []Eye{
	{"usual", [3][3]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}},
	{"protanopia", [3][3]float64{{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}},
	{"deuteranopia", [3][3]float64{{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}},
	{"tritanopia", [3][3]float64{{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}},
	{"grey", [3][3]float64{luminance, luminance, luminance}},
}

var luminance = [3]float64{0.2126, 0.7152, 0.0722}

// Distance is how far two colours, as #rrggbb, look apart: 2 can just be seen side by
// side, 100 is black and white (CIE 1976, L*a*b* under D65).
func (e Eye) Distance(a, b string) float64 {
	x, y := lab(e.look(linear(a))), lab(e.look(linear(b)))
	return math.Hypot(math.Hypot(x[0]-y[0], x[1]-y[1]), x[2]-y[2])
}

func (e Eye) look(c [3]float64) (seen [3]float64) {
	for i, row := range e.sees {
		for k, x := range row {
			seen[i] += x * c[k]
		}
		seen[i] = min(max(seen[i], 0), 1)
	}
	return seen
}

// Contrast is that of text and ground, as #rrggbb, from 1 to 21; text can be read from
// 4.5 on (WCAG 2.2, 1.4.3 and the definition of relative luminance).
func Contrast(a, b string) float64 {
	x, y := brightness(a), brightness(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

func brightness(colour string) float64 {
	sum := 0.0
	for i, x := range linear(colour) {
		sum += luminance[i] * x
	}
	return sum
}

// linear gives the light of a colour (IEC 61966-2-1). It panics on one that is none.
func linear(colour string) (light [3]float64) {
	n, err := strconv.ParseUint(colour[1:], 16, 24)
	if err != nil || len(colour) != 7 {
		panic(fmt.Sprintf("eyes: %q is not a colour such as #0072b2", colour))
	}
	for i := range light {
		x := float64(n>>(16-8*i)&255) / 255
		if light[i] = x / 12.92; x > 0.04045 {
			light[i] = math.Pow((x+0.055)/1.055, 2.4)
		}
	}
	return light
}

// lab gives lightness and the two axes of colour (CIE 15, sRGB with D65).
func lab(c [3]float64) [3]float64 {
	f := func(x, y, z, white float64) float64 {
		t := (x*c[0] + y*c[1] + z*c[2]) / white
		if t > 216.0/24389 {
			return math.Cbrt(t)
		}
		return (24389.0/27*t + 16) / 116
	}
	x := f(0.4124564, 0.3575761, 0.1804375, 0.95047)
	y := f(0.2126729, 0.7151522, 0.0721750, 1)
	z := f(0.0193339, 0.1191920, 0.9503041, 1.08883)
	return [3]float64{116*y - 16, 500 * (x - y), 200 * (y - z)}
}
