package picture_test

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/picture"
)

func TestSheetGolden(t *testing.T) {
	page := picture.Sheet(smallSeason())
	golden(t, "sheet.html", page)
	assert.Equal(t, string(page), string(picture.Sheet(smallSeason())), "the same bytes")
}

func TestSheetShows(t *testing.T) {
	text := string(picture.Sheet(smallSeason()))
	for what, want := range map[string]string{
		"the chart":           "<svg xmlns",
		"a task with a box":   `<input type="checkbox"><b>Wed 2027-02-24</b> P-1: cooling begins</label>`,
		"its note by line":    `<span class="note">By day 15 °C.</span>`,
		"what to look for":    `<input type="checkbox"><b>likely Tue 2027-03-23</b> C-1 (tub 3): out of water</label>`,
		"what is overdue":     "C-0: looked for, nothing recorded",
		"days away":           "Nobody in the room: 2027-03-03..2027-03-11",
		"holidays":            "Sat 2027-03-27: Karfreitag, no parcels",
		"the parents":         "<h3>P-1: H2 Hilde × H1 Hugo &#43; H3</h3>",
		"what they are for":   "hyla-cinerea, for show, Fri 2027-08-20.",
		"a reason":            "<li>H2 with H1: no known ancestor in common</li>",
		"a finding":           "<li><b>Careful:</b> H2 was never weighed</li>",
		"a refusal":           "<b>Should not be made.</b>",
		"the young":           "Inbreeding of the young 0.2500.",
		"what is in the way":  "<li>P-2 should not be made</li>",
		"a capacity":          "<td>tadpole tubs</td><td>4 of 4</td><td>Wed 2027-05-12</td>",
		"a risk":              "<li>in about 1 season in 7 the tadpole tubs run out</li>",
		"a target":            "<b>show</b>, Fri 2027-08-20: 20 froglets of hyla-cinerea wanted, ready by then with a chance of 84 %, if every pairing lays; wished 80 %.",
		"a doubt of a clutch": "<li>clutch C-0: nobody looked</li>",
		"what is not checked": "<li>Not checked: cleaning.</li>",
		"the paper":           "@page { size: A4",
	} {
		assert.Contains(t, text, want, what)
	}
	assert.Less(t, strings.Index(text, "C-0: sale-ready"), strings.Index(text, "From Mon 2027-02-08"), "what is late is looked for now")
	assert.Regexp(t, `(?s)From Mon 2027-02-08</h3>\n<p>Nothing is due.</p>`, text)
}

func TestSheetSaysHowGood(t *testing.T) {
	for _, row := range []struct {
		proof *frogroom.Proof
		want  string
	}{
		{&frogroom.Proof{Best: true}, "<p>Proven best: no other days in this room come nearer to the wishes.</p>"},
		{&frogroom.Proof{Cost: 1000, Bound: 989}, "<p>Not proven best: it is within 1.2 % of the best possible.</p>"},
		{&frogroom.Proof{Cost: 3000, Bound: 2999}, "within 0.1 % of"}, // never 0
	} {
		s := smallSeason()
		s.Proof = row.proof
		assert.Contains(t, string(picture.Sheet(s)), row.want)
	}
	assert.NotContains(t, string(picture.Sheet(smallSeason())), "roven best", "nothing was to be chosen")
}

// outside matches what could fetch or run something.
var outside = regexp.MustCompile(`(?i)<(script|link|img|iframe|object|embed|form|base)[\s>]|\s(src|href|on[a-z]+|action|style)=|url\([^#]|@import|javascript:`)

func TestSheetFetchesNothing(t *testing.T) {
	for _, text := range append(hostile, "Anna") {
		page := string(picture.Sheet(named(text)))
		assert.NotRegexp(t, outside, page)
		assert.NotContains(t, page, "<b>\"", "a name is no tag")
		assert.NotContains(t, page, "alert(\"")
	}
}

func TestSheetWithNothing(t *testing.T) {
	text := string(picture.Sheet(frogroom.Sheet{Season: frogroom.Season{On: today}, Agenda: frogroom.Agenda{Days: civil.Span{First: today, Last: today.Add(55)}}}))
	assert.Contains(t, text, "No pairing is planned.")
	assert.Contains(t, text, "<h1>Season</h1>")
	assert.Equal(t, 8, strings.Count(text, "Nothing is due."))
}

// Sixty pairings are drawn on pages that fit on paper.
func TestSheetOfSixtyPairings(t *testing.T) {
	text := string(picture.Sheet(manyPairings(60)))
	assert.Greater(t, strings.Count(text, "<svg xmlns"), 3)
	assert.Equal(t, strings.Count(text, "<svg xmlns"), strings.Count(text, "</figure>"))
	ids := make(map[string]bool)
	for _, found := range regexp.MustCompile(`\sid="([^"]*)"`).FindAllStringSubmatch(text, -1) {
		assert.False(t, ids[found[1]], "two things have the id %s", found[1])
		ids[found[1]] = true
	}
}

// A season of a usual room is one chart, broad enough for its rows to stand on one
// page, and a small one is no broader than it need be.
func TestSheetChartOnOnePage(t *testing.T) {
	text := string(picture.Sheet(manyPairings(9)))
	const broad = `<figure class="broad">`
	assert.Equal(t, 1, strings.Count(text, "<svg xmlns"))
	assert.Equal(t, 1, strings.Count(text, broad))
	size := regexp.MustCompile(`viewBox="0 0 (\d+) (\d+)`).FindStringSubmatch(text)
	width, _ := strconv.Atoi(size[1])
	height, _ := strconv.Atoi(size[2])
	assert.LessOrEqual(t, float64(height)/float64(width), 1.4, "as tall as a page without its margins")
	for _, n := range []int{1, 60} {
		assert.Zero(t, strings.Count(string(picture.Sheet(manyPairings(n))), broad))
	}
}

// What is said of several tasks is said once, below them; what is short, or said
// of one, beside it.
func TestSheetSaysNotesOnce(t *testing.T) {
	long := func(word string) string { return strings.Repeat(word+" ", 20) + "<" }
	s := smallSeason()
	s.Agenda.Tasks = nil
	for i, note := range []string{long("often") + "\nUntil 2027-03-01.", long("once"), long("later") + "\nUntil 2027-03-01.", long("often"), long("often") + "\n" + long("later")} {
		s.Agenda.Tasks = append(s.Agenda.Tasks, frogroom.Task{On: today.Add(i * 9), What: "look", Note: note})
	}
	text := string(picture.Sheet(s))
	escaped := func(word string) string { return strings.TrimSuffix(long(word), "<") + "&lt;" }
	assert.Contains(t, text, "<ol>\n<li>"+escaped("often")+"</li>\n<li>"+escaped("later")+"</li>\n</ol>")
	assert.Equal(t, 1, strings.Count(text, escaped("often")))
	assert.Equal(t, 1, strings.Count(text, escaped("later")))
	assert.Equal(t, 3, strings.Count(text, "See note 1."))
	assert.Equal(t, 2, strings.Count(text, "See note 2."))
	assert.Contains(t, text, `<span class="note">`+escaped("once")+`</span>`)
	assert.Equal(t, 2, strings.Count(text, `<span class="note">Until 2027-03-01.</span>`))
	assert.NotContains(t, string(picture.Sheet(smallSeason())), "<ol>")
}

// What is in the way stands first on a screen. On paper it would take the page of the
// chart, and so comes after it, with a word above; the chart does not repeat it.
func TestSheetOfConflictsKeepsItsChart(t *testing.T) {
	s := manyPairings(9)
	before := string(picture.Sheet(s))
	for range 8 {
		s.Conflicts = append(s.Conflicts, frogroom.Conflict{Message: strings.Repeat("too few chambers ", 20)})
	}
	text := string(picture.Sheet(s))
	viewBox := regexp.MustCompile(`viewBox="[^"]*"`)
	assert.Equal(t, viewBox.FindAllString(before, -1), viewBox.FindAllString(text, -1), "one chart, no taller")
	chart := strings.Index(text, "<svg xmlns")
	assert.Less(t, strings.Index(text, `<section class="alarm screen">`), chart)
	assert.Greater(t, strings.Index(text, `<section class="alarm paper">`), chart)
	assert.Equal(t, 1, strings.Count(text, "In the way: 9; read on after the chart."))
	assert.Equal(t, 16, strings.Count(text, "<li>too few chambers too few"))
}
