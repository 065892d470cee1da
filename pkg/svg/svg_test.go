package svg_test

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/svg"
)

func ExampleDoc() {
	d := svg.New(100, 40, "A bar", "One bar of 80.")
	d.Rect(10, 10, 80, 20, svg.Style{Fill: svg.Blue, Round: 3})
	fmt.Println(string(d.Bytes()))
	// Output:
	// <svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="t31a1 d31a1" width="100" height="40" viewBox="0 0 100 40" font-family="sans-serif" direction="ltr">
	// <title id="t31a1">A bar</title>
	// <desc id="d31a1">One bar of 80.</desc>
	// <style>
	// .f0072b2-3f9bd6{fill:#0072b2}.s0072b2-3f9bd6{stroke:#0072b2}.c0072b2-3f9bd6{stop-color:#0072b2}
	// @media screen and (prefers-color-scheme:dark){
	// .f0072b2-3f9bd6{fill:#3f9bd6}.s0072b2-3f9bd6{stroke:#3f9bd6}.c0072b2-3f9bd6{stop-color:#3f9bd6}
	// }
	// </style>
	// <rect x="10" y="10" width="80" height="20" rx="3" class="f0072b2-3f9bd6"/>
	// </svg>
}

// every shape, every style, and text that wants to break out.
func everything(text string) *svg.Doc {
	d := svg.New(200, 100, text, text)
	d.Group(text)
	d.Rect(1, 2, 30, 4.005, svg.Style{Fill: svg.Blue, Stroke: svg.Ink, Width: 2, Dash: []float64{3, 1.5}, Clear: 0.25, Round: 9})
	d.Rect(1, 2, 30, 4, svg.Style{Over: svg.Fade(svg.Red, 0, 1)})
	d.Rect(1, 12, 30, 4, svg.Style{Over: svg.Fade(svg.Red, 0, 1)})
	d.Rect(1, 22, 30, 4, svg.Style{Over: svg.Hatch(svg.Grid, 4, 45), Stroke: svg.Grid})
	d.Rect(0, 0, -1, 5, svg.Style{Fill: svg.Red})
	d.Line(svg.Point{X: 1}, svg.Point{X: 2, Y: math.Inf(1)}, svg.Style{Stroke: svg.Faint})
	d.Circle(svg.Point{X: 5, Y: 5}, 2, svg.Style{Stroke: svg.Faint})
	d.Path([]svg.Point{{X: 1, Y: 1}, {X: 2, Y: 3}, {X: 4, Y: 1}}, true, svg.Style{Fill: svg.Green})
	d.Path([]svg.Point{{X: 1, Y: 1}}, true, svg.Style{Fill: svg.Sky})
	d.Text(3, 4, text, svg.Font{Anchor: svg.Middle, Bold: true, Turn: -90, Fill: svg.Faint, Size: 9})
	d.End()
	return d
}

func TestEverything(t *testing.T) {
	text := string(everything("a <b> & \"c\" 'd'\x00\n").Bytes())
	assert.Equal(t, 1, strings.Count(text, "<linearGradient"), "equal fades are one")
	assert.Equal(t, 1, strings.Count(text, "<pattern"))
	assert.Equal(t, 4, strings.Count(text, "<rect"), "a rectangle of negative width is none")
	assert.Equal(t, 1, strings.Count(text, "<path"), "a path of one point is none")
	assert.Contains(t, text, `height="4.01" rx="2"`, "rounded to a hundredth; corners no rounder than the bar")
	assert.Contains(t, text, `x2="2" y2="0"`, "what is no number is 0")
	assert.Contains(t, text, "<title>a &lt;b&gt; &amp; &quot;c&quot; &#39;d&#39;\ufffd </title>")
	assert.NotContains(t, text, svg.Sky.Light, "a paint that paints nothing is not there")
	assert.Contains(t, text, "prefers-color-scheme:dark")
}

// A picture that changes in one place stays as it is in all others, so that a
// keeper who compares two plans sees what has changed.
func TestChangesStayWhereTheyAre(t *testing.T) {
	draw := func(more bool) []string {
		d := svg.New(200, 100, "A season", map[bool]string{true: "With more.", false: "Without."}[more])
		if more {
			d.Rect(0, 0, 1, 1, svg.Style{Over: svg.Fade(svg.Sky, 0, 1), Stroke: svg.Yellow})
		}
		d.Rect(1, 2, 30, 4, svg.Style{Over: svg.Fade(svg.Red, 0, 1), Stroke: svg.Ink})
		d.Rect(1, 2, 30, 4, svg.Style{Over: svg.Hatch(svg.Red, 3, 0), Stroke: svg.Ink})
		d.Text(1, 2, "ready", svg.Font{})
		return strings.Split(string(d.Bytes()), "\n")
	}
	before, after := draw(false), draw(true)
	kept := 0
	for _, line := range before {
		if slices.Contains(after, line) {
			kept++
		}
	}
	assert.Equal(t, len(before)-1, kept, "all but the description")
	assert.Equal(t, len(before)+6, len(after), "two paints, each light and dark, a gradient and a shape")
}

// Lengths are to a hundredth, as short as they can be.
func TestLengths(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.OneOf(rapid.Float64Range(-5000, 5000), rapid.Float64Range(-0.02, 0.02), rapid.Float64Range(1e15, 1e18)).Draw(t, "x")
		d := svg.New(1, 1, "", "")
		d.Text(x, 0, "", svg.Font{})
		want := strconv.FormatFloat(math.Round(x*100)/100, 'f', -1, 64)
		if math.Round(x*100) == 0 {
			want = "0"
		}
		if found := fmt.Sprintf(`<text x="%s" y="0"`, want); !strings.Contains(string(d.Bytes()), found) {
			t.Fatalf("no %s in %s", found, d.Bytes())
		}
	})
}

// Whatever the text, the picture is well-formed XML that says the same text.
func TestHostileText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.StringOf(rapid.SampledFrom([]rune("<>&\"'\\]]>\x00\u202e\u05d0\ufffe😀"))), rapid.Just(string([]byte{0xff, '<', 0xc0}))).Draw(t, "text")
		var said []string
		for _, s := range texts(t, everything(text).Bytes()) {
			said = append(said, strings.Trim(s, "\u2068\u2069"))
		}
		want, titles := plain(text), 4
		if text == "" {
			titles-- // a group without a title has none
		}
		if len(said) != titles || said[0] != want || said[1] != want || said[2] != want {
			t.Fatalf("%q became %q", want, said)
		}
	})
}

// texts gives what stands in title, desc and text.
func texts(t require.TestingT, picture []byte) (out []string) {
	r := xml.NewDecoder(strings.NewReader(string(picture)))
	r.Strict = true
	at := ""
	for {
		token, err := r.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		require.NoError(t, err)
		switch x := token.(type) {
		case xml.StartElement:
			at = x.Name.Local
			if at == "title" || at == "desc" || at == "text" {
				out = append(out, "")
			}
		case xml.EndElement:
			at = ""
		case xml.CharData:
			if at == "title" || at == "desc" || at == "text" {
				out[len(out)-1] += string(x)
			}
		}
	}
}

// plain is the text as XML can hold it, by its own rule (XML 1.0, 2.2).
func plain(text string) string {
	var b strings.Builder
	for _, r := range text {
		switch {
		case r == '\t' || r == '\n' || r == '\r':
			b.WriteRune(' ')
		case r < 0x20 || r >= 0x7f && r <= 0x9f || r == 0xfffe || r == 0xffff || r >= 0xfdd0 && r <= 0xfdef || r > 0xffff && r&0xffff >= 0xfffe:
			b.WriteRune('\ufffd')
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

func TestDirection(t *testing.T) {
	d := svg.New(10, 10, "", "")
	d.Text(0, 0, "שלום\u202e<", svg.Font{})
	d.Text(0, 0, "abc", svg.Font{})
	d.Text(0, 0, svg.Apart("שלום\u2069\u202e")+" × "+svg.Apart("Kuno")+"\u2069, "+svg.Apart("דוב")[:7], svg.Font{})
	text := string(d.Bytes())
	assert.Contains(t, text, ">\u2068שלום&lt;\u2069</text>", "set apart, without marks of its own")
	assert.Contains(t, text, ">abc</text>")
	assert.Contains(t, text, ">\u2068\u2068שלום\u2069 × Kuno, \u2068דו\u2069\u2069</text>", "each name apart, also one that is cut off; nothing ends what it did not begin")
}

func TestFit(t *testing.T) {
	assert.Equal(t, "short", svg.Fit("short", 10, 100))
	assert.Equal(t, "…", svg.Fit("anything", 10, 1))
	rapid.Check(t, func(t *rapid.T) {
		text, width := rapid.String().Draw(t, "text"), rapid.Float64Range(12, 300).Draw(t, "width")
		got := svg.Fit(text, 10, width)
		if svg.Width(got, 10) > width+1e-9 {
			t.Fatalf("%q is %v wide", got, svg.Width(got, 10))
		}
		if got != text && !strings.HasPrefix(text, strings.TrimSuffix(got, "…")) {
			t.Fatalf("%q is not the beginning of %q", got, text)
		}
	})
}

func TestMix(t *testing.T) {
	half := svg.Mix(svg.Paint{Light: "#000000", Dark: "#ffffff"}, svg.Paint{Light: "#ffffff", Dark: "#000000"}, 0.5)
	assert.Equal(t, svg.Paint{Light: "#808080", Dark: "#7f7f7f"}, half)
	assert.Equal(t, svg.Red, svg.Mix(svg.Blue, svg.Red, 2))
	assert.Equal(t, svg.Blue, svg.Mix(svg.Blue, svg.Red, 0))
}

func TestBugsOfTheCaller(t *testing.T) {
	assert.Panics(t, func() { svg.New(0, 1, "", "") })
	assert.Panics(t, func() { svg.New(1, 1, "", "").End() })
	assert.Panics(t, func() { d := svg.New(1, 1, "", ""); d.Group(""); d.Bytes() })
	assert.Panics(t, func() { svg.Hatch(svg.Ink, 0, 0) })
	assert.Panics(t, func() { svg.Mix(svg.Paint{Light: "red", Dark: "red"}, svg.Ink, 0.5) })
	assert.Panics(t, func() {
		svg.New(1, 1, "", "").Rect(0, 0, 1, 1, svg.Style{Fill: svg.Paint{Light: "#000000", Dark: "red}*{fill:red"}})
	})
}
