package picture

import (
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/svg"
)

// Measures of the kinship picture.
const (
	cellWidth  = 36.0
	cellHeight = 20.0
	labelMost  = 150.0 // widest name beside a row
	margin     = 16.0
)

// closest is the darkest shade, on which numbers can still be read.
var closest = svg.Paint{Light: "#2f8fc9", Dark: "#2a6f9e"}

// Kinship draws squares of kinships, one below the other: darker is closer, with
// the number in it. Families stand together. A cross marks a male and a female
// whose young would be more inbred than the keeper allows, a dot those that are
// warned about.
func Kinship(squares []kin.Square) []byte {
	height, width := margin, 360.0
	for _, s := range squares {
		w, h := squareSize(s)
		width, height = max(width, w+2*margin), height+h+margin
	}
	if len(squares) == 0 {
		height += 3 * margin
	}
	d := svg.New(width, height, "Kinship of the living animals", kinshipInWords(squares))
	d.Rect(0, 0, width, height, svg.Style{Fill: svg.Paper})
	y := margin
	for _, s := range squares {
		drawSquare(d, y, s)
		_, h := squareSize(s)
		y += h + margin
	}
	if len(squares) == 0 {
		d.Text(margin, 2*margin, "No animal is in the room.", svg.Font{})
	}
	return d.Bytes()
}

// labelWidth is the room that the names of a square take.
func labelWidth(s kin.Square) float64 {
	widest := 0.0
	for _, a := range s.Animals {
		widest = max(widest, svg.Width(animalLabel(a), 0))
	}
	return min(widest, labelMost) + 8
}

// idHeight is the room that the ids above the columns take.
func idHeight(s kin.Square) float64 {
	widest := 0.0
	for _, a := range s.Animals {
		widest = max(widest, svg.Width(a.ID, 0))
	}
	return min(widest, labelMost) + 8
}

func squareSize(s kin.Square) (w, h float64) {
	n := float64(len(s.Animals))
	const title, legend = 24, 40
	w = labelWidth(s) + n*cellWidth
	for _, line := range squareLegend(s) {
		w = max(w, svg.Width(line, 0))
	}
	return w, title + idHeight(s) + n*cellHeight + legend
}

func animalLabel(a kin.SquareAnimal) string {
	sex := map[collection.Sex]string{collection.Male: "male", collection.Female: "female", collection.UnknownSex: "?"}[a.Sex]
	return strings.Join(strings.Fields(a.ID+" "+a.Name+" "+sex), " ")
}

func drawSquare(d *svg.Doc, top float64, s kin.Square) {
	d.Text(margin, top+14, speciesOr(s.Species, "Kinship"), svg.Font{Size: 14, Bold: true})
	left, y := margin+labelWidth(s), top+24+idHeight(s)
	for j, a := range s.Animals {
		d.Text(left+(float64(j)+0.5)*cellWidth+4, y-4, svg.Fit(a.ID, 0, labelMost), svg.Font{Turn: -90})
	}
	for i, a := range s.Animals {
		row := y + float64(i)*cellHeight
		d.Text(left-6, row+14, svg.Fit(animalLabel(a), 0, labelMost), svg.Font{Anchor: svg.End})
		for j := range s.Animals {
			drawCell(d, left+float64(j)*cellWidth, row, s, i, j)
		}
	}
	n := float64(len(s.Animals))
	d.Rect(left, y, n*cellWidth, n*cellHeight, svg.Style{Stroke: svg.Faint})
	for k, line := range squareLegend(s) {
		d.Text(margin, y+n*cellHeight+16+float64(k)*15, line, svg.Font{Fill: svg.Faint})
	}
}

// drawCell draws the kinship of two animals. That of an animal with itself has a
// frame and no shade, for it is no pair.
func drawCell(d *svg.Doc, x, y float64, s kin.Square, i, j int) {
	k := s.Kinship[i][j]
	const darkest = 0.5
	part := min(k/darkest, 1)
	style, font := svg.Style{Fill: svg.Mix(svg.Paper, closest, part)}, svg.Font{Size: 9.5, Anchor: svg.Middle}
	if i == j {
		style, font = svg.Style{Fill: svg.Paper, Stroke: svg.Faint}, svg.Font{Size: 9.5, Anchor: svg.Middle, Fill: svg.Faint}
	}
	d.Rect(x, y, cellWidth, cellHeight, style)
	if k > 0 {
		d.Text(x+cellWidth/2-1, y+15, fmt.Sprintf("%.3f", k), font)
	}
	corner := svg.Point{X: x + cellWidth - 4, Y: y + 4}
	switch {
	case s.Refused(i, j):
		line := svg.Style{Stroke: svg.Ink, Width: 1.6}
		d.Line(svg.Point{X: corner.X - 2.5, Y: corner.Y - 2.5}, svg.Point{X: corner.X + 2.5, Y: corner.Y + 2.5}, line)
		d.Line(svg.Point{X: corner.X - 2.5, Y: corner.Y + 2.5}, svg.Point{X: corner.X + 2.5, Y: corner.Y - 2.5}, line)
	case s.Warned(i, j):
		d.Circle(corner, 1.6, svg.Style{Fill: svg.Ink})
	}
}

func squareLegend(s kin.Square) []string {
	numbers := "Numbers are kinships: the inbreeding that young of the two would have; empty is 0."
	if s.Expected {
		numbers += " Some are means, for a parent is one of several."
	}
	if s.Refuse == 0 {
		return []string{numbers}
	}
	return []string{numbers, fmt.Sprintf("A cross: not to be paired, the young would be inbred to %.4g or more. A dot: warned about from %.4g. Two of one sex have no mark.", s.Refuse, s.Warn)}
}

// kinshipInWords is for those who do not see the squares.
func kinshipInWords(squares []kin.Square) string {
	texts := []string{"Squares of kinships, a row and a column for each living animal."}
	for _, s := range squares {
		closest, a, b, refused := -1.0, 0, 0, 0
		for i := range s.Animals {
			for j := range i {
				if s.Kinship[i][j] > closest {
					closest, a, b = s.Kinship[i][j], j, i
				}
				if s.Refused(i, j) {
					refused++
				}
			}
		}
		text := fmt.Sprintf("%s: %d animals", speciesOr(s.Species, "the table"), len(s.Animals))
		if closest >= 0 {
			text += fmt.Sprintf(", the closest are %s and %s with %.4f; pairs not to be made: %d", s.Animals[a].ID, s.Animals[b].ID, closest, refused)
		}
		texts = append(texts, text+".")
	}
	return strings.Join(texts, " ")
}

func speciesOr(species, other string) string {
	if species == "" {
		return other
	}
	return species
}
