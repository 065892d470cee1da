package svg

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Paint is a colour in light and in dark surroundings, both as #rrggbb. The zero
// value paints nothing; with any other text the methods of [Doc] and [Mix] panic.
type Paint struct{ Light, Dark string }

// The paints of a picture without colour: what is written, what is less
// important, lines behind it, and the ground.
var (
	Ink   = Paint{"#1a1a1a", "#ececec"}
	Faint = Paint{"#5c5c5c", "#a8a8a8"}
	Grid  = Paint{"#d4d4d4", "#4a4a4a"}
	Paper = Paint{"#ffffff", "#161616"}
)

// The colours can be told apart by people who are colour-blind (Okabe and Ito
// 2008, Color Universal Design, figure 16), in the dark a little lighter. They
// differ in lightness too, and no picture rests on them alone.
var (
	Orange = Paint{"#e69f00", "#f0b030"}
	Sky    = Paint{"#56b4e9", "#6cc0ee"}
	Green  = Paint{"#009e73", "#20b88c"}
	Yellow = Paint{"#f0e442", "#e6da4a"}
	Blue   = Paint{"#0072b2", "#3f9bd6"}
	Red    = Paint{"#d55e00", "#ee7a26"}
	Purple = Paint{"#cc79a7", "#da92ba"}
)

// Mix gives a paint between two, with a part of the second from 0 to 1. Neither may
// be the zero value.
func Mix(a, b Paint, part float64) Paint {
	return Paint{mix(a.Light, b.Light, part), mix(a.Dark, b.Dark, part)}
}

func mix(a, b string, part float64) string {
	part = min(max(part, 0), 1)
	from, to := rgb(a), rgb(b)
	mixed := []byte("#000000")
	for i := range from {
		from[i] += math.Round(part * (to[i] - from[i]))
		const digits = "0123456789abcdef"
		mixed[2*i+1], mixed[2*i+2] = digits[int(from[i])>>4], digits[int(from[i])&15]
	}
	return string(mixed)
}

// rgb reads a colour.
func rgb(colour string) (parts [3]float64) {
	n, err := strconv.ParseUint(strings.TrimPrefix(colour, "#"), 16, 24)
	if err != nil || len(colour) != 7 {
		panic(fmt.Sprintf("svg: %q is not a colour such as #0072b2", colour))
	}
	return [3]float64{float64(n >> 16), float64(n >> 8 & 255), float64(n & 255)}
}

// rules are the classes of the paints, for light and for dark. On paper it is
// always light.
func (d *Doc) rules() string {
	var light, dark strings.Builder
	for _, p := range d.paints {
		class := d.class(p)
		rule := func(b *strings.Builder, colour string) {
			fmt.Fprintf(b, ".f%s{fill:%s}.s%[1]s{stroke:%[2]s}.c%[1]s{stop-color:%[2]s}\n", class, colour)
		}
		rule(&light, p.Light)
		rule(&dark, p.Dark)
	}
	if dark.Len() > 0 {
		light.WriteString("@media screen and (prefers-color-scheme:dark){\n" + dark.String() + "}\n")
	}
	return light.String()
}
