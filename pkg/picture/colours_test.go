package picture

import (
	"fmt"
	"maps"
	"slices"
	"testing"

	"github.com/spawnwright/spawnwright/pkg/internal/eyes"
	"github.com/spawnwright/spawnwright/pkg/svg"
)

// So far apart do areas without lines have to look, to be told apart, and lines from
// what is under them (see [eyes.Eye.Distance]).
const (
	apart  = 15.0
	onArea = 8.0
)

// schemes gives the colours of a paint in light and in dark surroundings.
func schemes(p svg.Paint) [2]string { return [2]string{p.Light, p.Dark} }

// nearest gives how near two paints look to the eye to which they look nearest.
func nearest(a, b svg.Paint) (distance float64, eye string) {
	distance = 1000
	for i, scheme := range []string{"light", "dark"} {
		for _, e := range eyes.Eyes {
			if d := e.Distance(schemes(a)[i], schemes(b)[i]); d < distance {
				distance, eye = d, e.Name+", "+scheme
			}
		}
	}
	return distance, eye
}

// Bars in one row are known by their lines, or else look apart to everybody, in light and
// in dark and in a print without colour.
func TestBarsCanBeToldApart(t *testing.T) {
	for _, bars := range []map[string]bar{phaseBars, youngBars} {
		names := slices.Sorted(maps.Keys(bars))
		for i, a := range names {
			for _, b := range names[:i] {
				if bars[a].gap != bars[b].gap || bars[a].angle != bars[b].angle {
					continue // other lines, or one has none
				}
				if d, eye := nearest(bars[a].ground, bars[b].ground); d < apart {
					t.Errorf("%s and %s are %.1f apart: %s", a, b, d, eye)
				}
			}
		}
	}
}

// TestLinesCanBeSeen: what is told by its lines has lines that can be seen.
func TestLinesCanBeSeen(t *testing.T) {
	on := map[string][2]svg.Paint{
		"away":         {svg.Paper, svg.Mix(svg.Paper, svg.Ink, 0.35)},
		"at risk":      {svg.Paper, svg.Red},
		"holiday":      {svg.Paper, holidayShade.Fill},
		"band":         {svg.Paper, bandPaint},
		"likely need":  {bandPaint, likelyStyle.Stroke},
		"planned use":  {svg.Paper, usedPaint},
		"kept free":    {bandPaint, keptStyle.Stroke},
		"edge of bars": {svg.Paper, svg.Faint},
		"cross":        {closest, svg.Ink},
		"close kin":    {svg.Paper, closest},
	}
	for _, bars := range []map[string]bar{phaseBars, youngBars} {
		for name, b := range bars {
			if b.gap > 0 {
				on[name] = [2]svg.Paint{b.ground, b.line}
			}
		}
	}
	for name, p := range on {
		if d, eye := nearest(p[0], p[1]); d < onArea {
			t.Errorf("%s: lines are %.1f from what is under them: %s", name, d, eye)
		}
	}
}

// TestCurvesCanBeToldApart: ways to choose young have dashes of their own, and stand out from the paper.
func TestCurvesCanBeToldApart(t *testing.T) {
	dashes := make(map[string]bool)
	for _, c := range curves {
		dashes[fmt.Sprint(c.dash)] = true
		if d, eye := nearest(c.paint, svg.Paper); d < 2*apart {
			t.Errorf("%v is %.1f from the paper: %s", c, d, eye)
		}
	}
	if len(dashes) != len(curves) {
		t.Errorf("%d curves have %d dashes", len(curves), len(dashes))
	}
}
