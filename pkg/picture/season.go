package picture

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/svg"
)

// Measures of the season chart.
const (
	seasonMargin = 24.0
	leastWidth   = 640.0 // of the days
	broadWidth   = 880.0 // likewise, where all is to stand on one page
	leastDay     = 1.0
	rowName      = 16.0 // the line of text above the bars of a row
	phaseHeight  = 17.0
	youngHeight  = 15.0
	rowGap       = 7.0
	monthsHeight = 30.0
	rowsToMonths = 14 // after so many rows the months are written again, if some more follow
)

// Season draws a season as one sheet: for each pairing and each clutch that runs a
// row with phases as bars and stages of the young as windows that fade in and out,
// and below them what is needed of each place by day. The sheet is as tall as it
// takes.
func Season(s frogroom.Sheet) []byte {
	c := newChart(s, leastWidth)
	return c.draw(seasonPart{c.title(), c.rows, true})
}

// seasonPart is what of a chart stands on one sheet.
type seasonPart struct {
	title  string
	rows   []seasonRow
	places bool
}

// seasonParts draws the same on sheets that fit on a page upright: on one broad
// sheet if that holds all of it, or else on as many as it takes. What is in the way is
// left to the page.
func seasonParts(s frogroom.Sheet) (out [][]byte, broad bool) {
	s.Conflicts = nil // which stand beside it
	c := newChart(s, leastWidth)
	parts := c.parts()
	if wide := newChart(s, broadWidth); len(parts) > 1 && len(wide.parts()) == 1 {
		c, parts, broad = wide, wide.parts(), true
	}
	for i, p := range parts {
		p.title = c.title()
		if len(parts) > 1 {
			p.title += fmt.Sprintf(", sheet %d of %d", i+1, len(parts))
		}
		out = append(out, c.draw(p))
	}
	return out, broad
}

// pageShape is how much taller than wide what is printed on a page can be: A4
// without its margins and the heading.
const pageShape = 1.4

// parts puts rows on each sheet that fit on a page upright, and the places on the
// last.
func (c *chart) parts() []seasonPart {
	most := c.width * pageShape
	var parts []seasonPart
	for rest := c.rows; len(rest) > 0; {
		n := 1
		for n < len(rest) && c.height(seasonPart{rows: rest[:n+1]}) <= most {
			n++
		}
		parts, rest = append(parts, seasonPart{rows: rest[:n]}), rest[n:]
	}
	if n := len(parts); n > 0 && c.height(seasonPart{rows: parts[n-1].rows, places: true}) <= most {
		parts[n-1].places = true
	} else {
		parts = append(parts, seasonPart{places: true})
	}
	return parts
}

// chart is a season chart in the making.
type chart struct {
	frogroom.Sheet
	scale
	rows   []seasonRow
	flags  []flag
	labels []label
	*svg.Doc
}

// seasonRow is a pairing, a clutch, or a heading above some.
type seasonRow struct {
	heading string
	pairing *frogroom.PlannedPairing
	clutch  *frogroom.SheetClutch
	young   []stay // empty where its clutches have rows of their own
}

// newChart puts the days on a width, or on more where there are many.
func newChart(s frogroom.Sheet, width float64) *chart {
	c := &chart{Sheet: s}
	c.scale = newScale(s, width)
	shown := make(map[string]bool)
	for i := range s.Pairings {
		p := &s.Pairings[i]
		row := seasonRow{pairing: p, young: c.pairingStays(p)}
		at := len(c.rows)
		c.rows = append(c.rows, row)
		for k := range s.Clutches {
			if s.Clutches[k].Pairing == p.ID {
				c.rows[at].young = nil
				c.clutchRow(&s.Clutches[k], shown)
			}
		}
	}
	first := len(c.rows)
	for k := range s.Clutches {
		if !shown[s.Clutches[k].ID] {
			c.clutchRow(&s.Clutches[k], shown)
		}
	}
	if first > 0 && len(c.rows) > first {
		c.rows = slices.Insert(c.rows, first, seasonRow{heading: "Clutches of earlier pairings"})
	}
	c.flags = c.allFlags()
	return c
}

func (c *chart) clutchRow(k *frogroom.SheetClutch, shown map[string]bool) {
	shown[k.ID] = true
	c.rows = append(c.rows, seasonRow{clutch: k, young: c.clutchStays(k)})
}

func (r seasonRow) height() float64 {
	switch {
	case r.heading != "":
		return 24
	case r.clutch != nil:
		return rowName + youngHeight + rowGap
	case len(r.young) == 0:
		return rowName + phaseHeight + rowGap
	}
	return rowName + phaseHeight + 3 + youngHeight + rowGap
}

func (c *chart) title() string { return heading("Season as planned on "+c.On.String(), c.Keeper) }

// height is that of a sheet.
func (c *chart) height(p seasonPart) float64 {
	h := c.head() + c.rowsHeight(p)
	if p.places {
		h += c.placesHeight()
	}
	return h + c.legendHeight(p) + footRoom
}

// footRoom is the room below the legend.
const footRoom = 10.0

// head is the room above the months: title, what is in the way, flags.
func (c *chart) head() float64 {
	return 34 + float64(len(c.trouble()))*15 + float64(flagRows(c.flags))*flagHeight
}

// rowsHeight is the room of the rows with the months above them; none on a sheet
// that goes on after them.
func (c *chart) rowsHeight(p seasonPart) float64 {
	if len(c.rows) == 0 {
		return monthsHeight + emptyHeight
	}
	h := 0.0
	for i, r := range p.rows {
		if monthsBefore(i, len(p.rows)) {
			h += monthsHeight
		}
		h += r.height()
	}
	return h
}

// emptyHeight is the room of the line that says that there are no rows.
const emptyHeight = 24.0

// monthsBefore reports whether the months are written before row i of n.
func monthsBefore(i, n int) bool { return i == 0 || i%rowsToMonths == 0 && n-i >= rowsToMonths/2 }

func (c *chart) draw(p seasonPart) []byte {
	height := c.height(p)
	c.Doc = svg.New(c.width, height, p.title, c.inWords(p))
	c.Rect(0, 0, c.width, height, svg.Style{Fill: svg.Paper})
	c.Text(seasonMargin, 24, svg.Fit(p.title, 16, c.width-2*seasonMargin), svg.Font{Size: 16, Bold: true})
	for i, text := range c.trouble() {
		c.Text(seasonMargin, 42+float64(i)*15, svg.Fit(text, 11, c.width-2*seasonMargin), svg.Font{Size: 11, Bold: true, Fill: alarm})
	}
	top := c.head()
	bottom := height - c.legendHeight(p) - footRoom
	c.shades(top+monthsHeight, bottom)
	c.drawRows(top, p)
	if p.places {
		c.places(top + c.rowsHeight(p))
	}
	c.drawFlags(top, bottom)
	c.drawLabels()
	c.legend(bottom+6, p)
	return c.Bytes()
}

func (c *chart) drawRows(y float64, p seasonPart) {
	if len(c.rows) == 0 {
		c.months(y)
		c.Text(seasonMargin, y+monthsHeight+16, "No pairing is planned and no clutch runs.", svg.Font{Size: 12})
	}
	for i, r := range p.rows {
		if monthsBefore(i, len(p.rows)) {
			c.months(y)
			y += monthsHeight
		}
		c.row(y, r)
		y += r.height()
	}
}

// trouble is what is in the way of the plan, shortened.
func (c *chart) trouble() []string {
	const most = 3
	var out []string
	for i, x := range c.Conflicts {
		if i == most && len(c.Conflicts) > most+1 {
			out = append(out, fmt.Sprintf("In the way: %d more, which the table of the season tells", len(c.Conflicts)-most))
			break
		}
		out = append(out, "In the way: "+x.Message)
	}
	return out
}
