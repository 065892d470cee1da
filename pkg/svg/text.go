package svg

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Anchor says which part of a text stands at its place.
type Anchor string

// The anchors: its beginning, its middle or its end. Text runs from left to right.
const (
	Start  Anchor = ""
	Middle Anchor = "middle"
	End    Anchor = "end"
)

// Font is how a text is written.
type Font struct {
	Size   float64 // 0 stands for 11
	Fill   Paint   // none stands for Ink
	Anchor Anchor
	Bold   bool
	Turn   float64 // degrees clockwise about its place
}

// defaultSize is that of a text for which none is given.
const defaultSize = 11

// Text writes a line of text with its base line at a height. The text stands
// apart from what is around it, so that right-to-left text does not move
// anything else.
func (d *Doc) Text(x, y float64, text string, f Font) {
	if f.Size == 0 {
		f.Size = defaultSize
	}
	if (f.Fill == Paint{}) {
		f.Fill = Ink
	}
	d.begin("text")
	d.lengths("x", x, "y", y)
	d.length("font-size", f.Size)
	d.attribute("class", "f"+d.class(f.Fill))
	if turns(text) {
		d.attribute("unicode-bidi", "embed")
	}
	if f.Anchor != Start {
		d.attribute("text-anchor", string(f.Anchor))
	}
	if f.Bold {
		d.attribute("font-weight", "bold")
	}
	if f.Turn != 0 {
		d.attribute("transform", "rotate("+numbers([]float64{f.Turn, x, y})+")")
	}
	d.body.WriteByte('>')
	d.body.WriteString(Escape(isolated(text)))
	d.body.WriteString("</text>\n")
}

// The marks of Unicode that set a stretch of text apart (Unicode Standard Annex
// 9, section 2.4).
const (
	isolate    = "\u2068"
	isolateEnd = "\u2069"
)

// Apart sets a name apart that will stand within a text, so that right-to-left
// letters in it do not turn what is around it.
func Apart(name string) string {
	if turns(name) {
		return isolate + unmarked(name) + isolateEnd
	}
	return name
}

// isolated sets a whole text apart.
func isolated(text string) string {
	if turns(text) {
		return isolate + balanced(text) + isolateEnd
	}
	return text
}

// turns reports whether text has right-to-left letters or marks of direction.
func turns(text string) bool {
	const first = 0x590 // of the right-to-left letters and of the marks
	return strings.ContainsFunc(text, func(r rune) bool {
		return r >= first && (unicode.In(r, unicode.Hebrew, unicode.Arabic, unicode.Syriac, unicode.Thaana, unicode.Nko) || unicode.Is(unicode.Bidi_Control, r))
	})
}

// balanced keeps, of the marks of direction, what [Apart] has put there, and ends
// what is not ended.
func balanced(text string) string {
	var b strings.Builder
	open := 0
	for _, r := range text {
		switch {
		case string(r) == isolate:
			open++
		case string(r) == isolateEnd && open > 0:
			open--
		case unicode.Is(unicode.Bidi_Control, r):
			continue
		}
		b.WriteRune(r)
	}
	return b.String() + strings.Repeat(isolateEnd, open)
}

// unmarked takes out the marks that could end the isolation or turn what follows.
func unmarked(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Bidi_Control, r) {
			return -1
		}
		return r
	}, text)
}

// Width guesses how wide a text is at a size, 0 for the usual one of [Font], with
// a little to spare: fonts differ, and which one will be there is not known.
func Width(text string, size float64) float64 {
	if size == 0 {
		size = defaultSize
	}
	sum := 0.0
	for _, r := range text {
		sum += advance(r)
	}
	return sum * size
}

// advance is the width of a letter in parts of the size, as in a usual sans-serif.
func advance(r rune) float64 {
	switch {
	case unicode.Is(unicode.Mn, r) || unicode.Is(unicode.Bidi_Control, r):
		return 0
	case strings.ContainsRune(" .,:;'|!ijlIft()[]/", r):
		return 0.34
	case strings.ContainsRune("mwMW@%", r):
		return 0.92
	case unicode.IsUpper(r):
		return 0.7
	case r < 0x2000:
		return 0.58
	case r < 0x2e80:
		return 0.7
	}
	return 1.05 // ideographs and pictures take a whole square
}

// Fit shortens a text at a size to a width as [Width] has it, with an ellipsis in
// place of what is left out.
func Fit(text string, size, width float64) string {
	if Width(text, size) <= width {
		return text
	}
	const dots = "…"
	room := width - Width(dots, size)
	end := 0
	for i, r := range text {
		if room -= Width(string(r), size); room < 0 {
			break
		}
		end = i + utf8.RuneLen(r)
	}
	return strings.TrimRight(text[:end], " ") + dots
}
