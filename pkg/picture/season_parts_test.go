package picture

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/rearing"
	"github.com/spawnwright/spawnwright/pkg/svg"
)

// Where a stage can be over before it must have begun, it fades in as far as it
// fades out from there.
func TestCrossing(t *testing.T) {
	x, part := crossing(span{0, 10}, span{5, 15})
	assert.InDelta(t, 7.5, x, 1e-9)
	assert.InDelta(t, 0.75, part, 1e-9)
	rapid.Check(t, func(t *rapid.T) {
		days := rapid.IntRange(0, 300)
		in := span{float64(days.Draw(t, "from")), 0}
		in.to = in.from + float64(days.Draw(t, "fade in"))
		out := span{in.from + math.Floor(rapid.Float64Range(0, 1).Draw(t, "over")*(in.to-in.from)), 0}
		out.to = max(out.from+float64(days.Draw(t, "fade out")), in.to)
		x, part := crossing(in, out)
		if x < in.from-1e-9 || x > out.to+1e-9 || part < 0 || part > 1 {
			t.Fatalf("%v and %v cross at %v with %v", in, out, x, part)
		}
		if in.from < out.from && in.to < out.to && math.Abs(in.part(x)+out.part(x)-1) > 1e-6 {
			t.Fatalf("%v and %v: at %v %v has come and %v gone", in, out, x, in.part(x), out.part(x))
		}
	})
}

// No text of a flag lies on another, nor across a staff, wherever the days are.
func TestFlagsApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		on := civil.Of(2027, 2, 1)
		s := frogroom.Sheet{Season: frogroom.Season{On: on}}
		for i := range rapid.IntRange(0, 8).Draw(t, "targets") {
			s.Targets = append(s.Targets, frogroom.TargetOutlook{
				Name: rapid.SampledFrom([]string{"show", "the great autumn show of the club in the town hall", "x"}).Draw(t, "name"),
				On:   on.Add(rapid.IntRange(0, 500).Draw(t, "day")), Wanted: i,
			})
		}
		c := newChart(s, leastWidth)
		for i, f := range c.flags {
			from, to := c.flagSpan(f)
			if from < 0 || to > c.width {
				t.Fatalf("%q is from %v to %v", f.text, from, to)
			}
			for _, g := range c.flags[:i] {
				low, high := c.flagSpan(g)
				if f.row == g.row && from < high && low < to {
					t.Fatalf("%q lies on %q", f.text, g.text)
				}
				staff := c.mid(g.on)
				if g.row > f.row && from < staff && staff < to {
					t.Fatalf("the staff of %q goes through %q", g.text, f.text)
				}
			}
		}
	})
}

// Where the staff of a flag has to go through the text of an earlier one, the text is
// written over it, on paper of its own.
func TestFlagTextIsOverStaffs(t *testing.T) {
	on := civil.Of(2027, 2, 1)
	s := frogroom.Sheet{Season: frogroom.Season{On: on, Targets: []frogroom.TargetOutlook{
		{Name: "autumn show in the town hall", On: on.Add(100), Wanted: 30}, {Name: "orders of the winter", On: on.Add(120), Wanted: 40},
	}}}
	drawn := string(Season(s))
	last := strings.LastIndex(drawn, `stroke-dasharray="5 3"`)
	for _, name := range []string{"autumn show in", "orders of"} {
		assert.Greater(t, strings.LastIndex(drawn, ">"+name), last, "after all staffs")
	}
}

// Parts of a chart hold all rows once, in order, and all but one that is very
// tall fit on a page.
func TestPartsHoldAllRows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := frogroom.Sheet{Season: frogroom.Season{On: civil.Of(2027, 2, 1)}}
		n := rapid.IntRange(0, 70).Draw(t, "clutches")
		for i := range n {
			s.Clutches = append(s.Clutches, frogroom.SheetClutch{Clutch: rearing.Clutch{ID: fmt.Sprint("C-", i), Laid: s.On.Add(-30)}})
		}
		for range rapid.IntRange(0, 5).Draw(t, "places") {
			s.Loads = append(s.Loads, frogroom.PlaceDays{What: "tub"})
		}
		c := newChart(s, leastWidth)
		rows, places := 0, 0
		for i, p := range c.parts() {
			rows += len(p.rows)
			if p.places {
				places++
			}
			if h := c.height(p); h > c.width*pageShape {
				t.Fatalf("part %d is %v tall", i, h)
			}
		}
		if rows != n || places != 1 {
			t.Fatalf("%d of %d rows, places %d times", rows, n, places)
		}
	})
}

// TestFitClauses: half a number would say something else.
func TestFitClauses(t *testing.T) {
	const text = "tubs run out; 6 more make it 1 in 20; P a day later makes it 1 in 7"
	for _, row := range []struct {
		name, room, want string
	}{
		{"all of it", text, text},
		{"but for the last", text[:len(text)-1], "tubs run out; 6 more make it 1 in 20; …"},
		{"not even two", "tubs run out; 6 more make it 1 in 20", "tubs run out; …"},
		{"not one", "tubs run", svg.Fit(text, 11, svg.Width("tubs run", 11))},
	} {
		assert.Equal(t, row.want, fitClauses(text, 11, svg.Width(row.room, 11)), row.name)
	}
}
