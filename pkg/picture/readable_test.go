package picture_test

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/internal/eyes"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/picture"
)

// All text of all pictures has the contrast of text that can be read, in light and in
// dark, on what was drawn under it.
func TestTextCanBeRead(t *testing.T) {
	square := kin.Square{Species: "hyla-cinerea", Warn: 0.0625, Refuse: 0.125}
	const shades = 40
	for i := range shades {
		square.Animals = append(square.Animals, kin.SquareAnimal{ID: fmt.Sprint("H-", i), Sex: []collection.Sex{collection.Male, collection.Female}[i%2]})
		var row []float64
		for j := range shades {
			row = append(row, float64((i+j)%shades)/shades)
		}
		square.Kinship = append(square.Kinship, row)
	}
	lost := smallSeason()
	for range 5 {
		lost.Conflicts = append(lost.Conflicts, frogroom.Conflict{Message: "P-2 should not be made"})
	}
	for name, drawn := range map[string][]byte{
		"season":  picture.Season(smallSeason()),
		"crowded": picture.Season(manyPairings(20)),
		"lost":    picture.Season(lost),
		"kinship": picture.Kinship([]kin.Square{square}),
		"horizon": picture.Horizon("Lindenhof", ahead("plan", "equal families", "random")),
	} {
		texts := textsOn(t, drawn)
		assert.Greater(t, len(texts), 10, name)
		said := make(map[string]bool)
		for _, x := range texts {
			for _, scheme := range [2]string{"light", "dark"} {
				c := eyes.Contrast(x.paint[scheme], x.ground[scheme])
				key := fmt.Sprint(scheme, x.paint, x.ground)
				if c < 4.5 && !said[key] {
					said[key] = true
					t.Errorf("%s, %s: %q in %s on %s has a contrast of %.2f", name, scheme, x.text, x.paint[scheme], x.ground[scheme], c)
				}
			}
		}
	}
}

// The page for the wall likewise.
func TestPageCanBeRead(t *testing.T) {
	page := string(picture.Sheet(smallSeason()))
	roots := regexp.MustCompile(`:root \{ [^}]*--ink[^}]*\}`).FindAllString(page, -1)
	require.Len(t, roots, 2, "light and dark")
	for _, root := range roots {
		colour := func(name string) string {
			return regexp.MustCompile(`--` + name + `: (#[0-9a-f]{6})`).FindStringSubmatch(root)[1]
		}
		for _, name := range []string{"ink", "faint", "alarm"} {
			assert.GreaterOrEqual(t, eyes.Contrast(colour(name), colour("paper")), 4.5, "%s in %s", name, root)
		}
	}
}

// onGround is a text with its colour and that under it, by scheme.
type onGround struct {
	text          string
	paint, ground map[string]string
}

// area is what was filled, rectangle or polygon.
type area struct {
	points [][2]float64
	paint  map[string]string
	part   float64 // that it covers
}

// textsOn reads a picture: what stands where, on which colour. Gradients and patterns
// count as full.
func textsOn(t *testing.T, drawn []byte) (out []onGround) {
	t.Helper()
	var areas []area
	covers := make(map[string]map[string]string) // by id of a gradient or a pattern
	def := ""
	r := xml.NewDecoder(strings.NewReader(string(drawn)))
	for {
		token, err := r.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		require.NoError(t, err)
		start, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		attr := make(map[string]string)
		for _, a := range start.Attr {
			attr[a.Name.Local] = a.Value
		}
		num := func(name string) float64 { x, _ := strconv.ParseFloat(attr[name], 64); return x }
		part := 1.0
		if attr["opacity"] != "" {
			part = num("opacity")
		}
		fill := paintOf(attr["class"], "f")
		if id, is := strings.CutPrefix(attr["fill"], "url(#"); is {
			fill = covers[strings.TrimSuffix(id, ")")]
		}
		switch start.Name.Local {
		case "pattern", "linearGradient":
			def = attr["id"]
		case "stop":
			covers[def] = paintOf(attr["class"], "c")
		case "line":
			if def != "" && covers[def] == nil {
				covers[def] = paintOf(attr["class"], "s")
			}
		case "g":
			def = ""
		case "rect":
			if fill != nil {
				x, y, w, h := num("x"), num("y"), num("width"), num("height")
				areas = append(areas, area{[][2]float64{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}}, fill, part})
			}
		case "path":
			if fill != nil {
				areas = append(areas, area{pointsOf(attr["d"]), fill, part})
			}
		case "text":
			var said string
			require.NoError(t, r.DecodeElement(&said, &start))
			x, y, size := num("x"), num("y"), num("font-size")
			switch attr["text-anchor"] {
			case "end":
				x -= 2
			case "":
				x += 2
			}
			out = append(out, onGround{said, paintOf(attr["class"], "f"), groundAt(areas, x, y-0.35*size)})
		}
	}
}

// paintOf finds the colours in the class of a kind.
func paintOf(classes, kind string) map[string]string {
	for _, class := range strings.Fields(classes) {
		if light, dark, ok := strings.Cut(strings.TrimPrefix(class, kind), "-"); ok && strings.HasPrefix(class, kind) {
			return map[string]string{"light": "#" + light, "dark": "#" + dark}
		}
	}
	return nil
}

func pointsOf(way string) (points [][2]float64) {
	for _, m := range regexp.MustCompile(`[ML]([-0-9.]+) ([-0-9.]+)`).FindAllStringSubmatch(way, -1) {
		x, _ := strconv.ParseFloat(m[1], 64)
		y, _ := strconv.ParseFloat(m[2], 64)
		points = append(points, [2]float64{x, y})
	}
	return points
}

// groundAt lays all areas over each other that hold a place.
func groundAt(areas []area, x, y float64) map[string]string {
	ground := map[string]string{"light": "#ffffff", "dark": "#000000"}
	for _, a := range areas {
		if a.holds(x, y) {
			for scheme := range ground {
				ground[scheme] = over(ground[scheme], a.paint[scheme], a.part)
			}
		}
	}
	return ground
}

// holds counts the edges to the right of a place.
func (a area) holds(x, y float64) (in bool) {
	for i, p := range a.points {
		q := a.points[(i+1)%len(a.points)]
		if (p[1] > y) != (q[1] > y) && x < p[0]+(y-p[1])/(q[1]-p[1])*(q[0]-p[0]) {
			in = !in
		}
	}
	return in
}

func over(ground, paint string, part float64) string {
	a, _ := strconv.ParseUint(ground[1:], 16, 32)
	b, _ := strconv.ParseUint(paint[1:], 16, 32)
	mixed := uint64(0)
	for shift := 0; shift < 24; shift += 8 {
		from, to := float64(a>>shift&255), float64(b>>shift&255)
		mixed |= uint64(math.Round(from+part*(to-from))) << shift
	}
	return fmt.Sprintf("#%06x", mixed)
}
