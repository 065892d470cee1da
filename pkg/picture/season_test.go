package picture_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/picture"
	"github.com/spawnwright/spawnwright/pkg/rearing"
	"github.com/spawnwright/spawnwright/pkg/svg"
)

var update = flag.Bool("update", false, "write the expected pictures anew")

var today = civil.Of(2027, 2, 1)

func window(early, likely, late int) civil.Window {
	return civil.Window{Early: today.Add(early), Likely: today.Add(likely), Late: today.Add(late)}
}

func days(first, last int) civil.Span {
	return civil.Span{First: today.Add(first), Last: today.Add(last)}
}

// smallSeason is a pairing that is for a show, one whose clutch is there, that
// clutch, and one of another year; the tubs run short for ten days.
func smallSeason() frogroom.Sheet {
	chance, living := 84, 31
	first := frogroom.PlannedPairing{
		ID: "P-1", Species: "hyla-cinerea", Dams: []string{"H2"}, Sires: []string{"H1", "H3"}, Target: "show", ReadyBy: today.Add(200),
		Phases: []frogroom.PlannedPhase{
			{Name: "conditioning", Span: days(-5, 22), Recorded: true},
			{Name: "cooling", Place: "cooling place", Span: days(23, 64)},
			{Name: "warm-up", Span: days(65, 78)},
			{Name: "rain", Place: "rain chamber", Span: days(79, 84)},
			{Name: "rest", Span: days(85, 140)},
		},
		Stages: []frogroom.PlannedStage{
			{Stage: "laid", Window: window(80, 81, 84)},
			{Stage: "hatched", Window: window(85, 87, 91)},
			{Stage: "feeding", Window: window(86, 88, 92)},
			{Stage: "front-legs", Window: window(130, 140, 160)},
			{Stage: "out-of-water", Window: window(135, 145, 165)},
			{Stage: "sale-ready", Window: window(160, 180, 210)},
		},
		Findings: []string{"H2 was never weighed"}, Warnings: []string{"eggs can come while nobody is in the room"},
	}
	second := frogroom.PlannedPairing{
		ID: "P-2", Species: "hyla-cinerea", Dams: []string{"H4"}, Sires: []string{"H1"}, Refused: true, Findings: []string{"H1 and H4 are siblings"},
		Young:  kin.Young{Inbreeding: 0.25, Known: true},
		Phases: []frogroom.PlannedPhase{{Name: "rain", Place: "rain chamber", Span: days(-9, 5)}},
		Stages: []frogroom.PlannedStage{{Stage: "laid", Window: window(-8, -7, -6)}},
	}
	own := frogroom.SheetClutch{Pairing: "P-2", Clutch: rearing.Clutch{
		ID: "C-1", Species: "hyla-cinerea", Laid: today.Add(-7), Place: "tub 3", Living: &living,
		Stages: []rearing.Stage{{Stage: "hatched", Window: window(-2, -2, -2), Recorded: true}, {Stage: "out-of-water", Window: window(40, 50, 65)}},
	}}
	old := frogroom.SheetClutch{Clutch: rearing.Clutch{
		ID: "C-0", Species: "hyla-cinerea", Laid: today.Add(-200), Warnings: []string{"clutch C-0: nobody looked"},
		Stages: []rearing.Stage{{Stage: "sale-ready", Window: window(-12, -10, -5)}},
	}}
	tubs := frogroom.PlaceDays{What: "tadpole tub", Of: 4, Short: []civil.Span{days(90, 99)}}
	rain := frogroom.PlaceDays{What: "rain chamber", Of: 2}
	for d := range 150 {
		n := 1 + d/50
		tubs.Low, tubs.Likely, tubs.High, tubs.Kept = append(tubs.Low, n-1), append(tubs.Likely, n), append(tubs.High, n+2), append(tubs.Kept, n+1)
		rain.Kept = append(rain.Kept, n/2)
	}
	return frogroom.Sheet{
		Keeper: "Lindenhof frog room",
		Season: frogroom.Season{
			On: today, Pairings: []frogroom.PlannedPairing{first, second},
			Targets:   []frogroom.TargetOutlook{{Name: "show", On: today.Add(200), Species: "hyla-cinerea", Wanted: 20, ChancePct: &chance, CertaintyPct: 80}},
			Conflicts: []frogroom.Conflict{{Pairings: []string{"P-2"}, Message: "P-2 should not be made"}},
			Peaks:     []frogroom.PlaceLoad{{What: "tadpole tub", Most: 4, Of: 4, On: today.Add(100)}, {What: "rain chamber", Most: 1, Of: 2, On: today.Add(50)}},
			Risks:     []frogroom.Risk{{What: "tadpole tub", Of: 4, Text: "in about 1 season in 7 the tadpole tubs run out"}},
			Unchecked: []string{"cleaning"},
		},
		Names:    map[string]string{"H1": "Hugo", "H2": "Hilde"},
		Reasons:  map[string][]string{"P-1": {"H2 with H1: no known ancestor in common"}},
		Clutches: []frogroom.SheetClutch{old, own},
		Loads:    []frogroom.PlaceDays{rain, tubs},
		Away:     []civil.Span{days(30, 38)},
		Holidays: []frogroom.Holiday{{On: today.Add(54), Name: "Karfreitag"}},
		Agenda: frogroom.Agenda{
			Days:      days(0, 55),
			Overdue:   []frogroom.Overdue{{Clutch: "C-0", Text: "C-0: looked for, nothing recorded"}},
			Tasks:     []frogroom.Task{{On: today.Add(23), What: "P-1: cooling begins", Note: "Until 2027-04-06.\nBy day 15 °C."}},
			Watch:     []frogroom.Watch{{Clutch: "C-1", Place: "tub 3", Stage: "out-of-water", Window: window(40, 50, 65)}, {Clutch: "C-0", Stage: "sale-ready", Window: window(-12, -10, -5)}},
			Away:      []civil.Span{days(30, 38)},
			NoParcels: []frogroom.Holiday{{On: today.Add(54), Name: "Karfreitag"}},
			Parcels:   []civil.Date{today.Add(1)},
			Warnings:  []string{"public holidays are those of Bavaria"},
		},
	}
}

// golden compares with a file in testdata.
func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		require.NoError(t, os.WriteFile(path, got, 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("%s is not what is drawn; look at it, and run the test with -update (-file +drawn):\n%s", path, diff)
	}
}

func TestSeasonGolden(t *testing.T) {
	drawn := picture.Season(smallSeason())
	wellFormed(t, string(drawn))
	golden(t, "season.svg", drawn)
	assert.Equal(t, string(drawn), string(picture.Season(smallSeason())), "the same bytes")
}

func TestSeasonShows(t *testing.T) {
	text := string(picture.Season(smallSeason()))
	for what, want := range map[string]string{
		"title":                           "<title id=\"",
		"a name instead of an id":         ">Hilde × Hugo + H3, hyla-cinerea, for show<",
		"the rain in words":               ">rain 21 Apr to 26 Apr<",
		"the likely day in words":         ">sale-ready 31 Jul<",
		"the target with its chance":      ">show, 20 Aug: 20 wanted, chance 84 %<",
		"today":                           ">today, 1 Feb<",
		"what is in the way":              ">In the way: P-2 should not be made<",
		"a pairing against the rules":     ">should not be made<",
		"the days at risk":                "<title>may run short, 2027-05-02..2027-05-11</title>",
		"the risk":                        ">in about 1 season in 7 the tadpole tubs run out<",
		"days away":                       "<title>away 2027-03-03..2027-03-11</title>",
		"a holiday":                       "<title>2027-03-27: Karfreitag</title>",
		"a clutch":                        ">tub 3, hyla-cinerea, 31 living<",
		"what is there for the rest":      ">Clutches of earlier pairings<",
		"a description of the windows":    "sale-ready from 2027-07-31 (early 2027-07-11, late 2027-08-30)",
		"a description of the places":     "tadpole tubs: 4 there, at most 4 kept or in use, at risk 2027-05-02..2027-05-11",
		"a description of the phases":     "P-1, Hilde × Hugo + H3, hyla-cinerea, for show; conditioning 2027-01-27 to 2027-02-23",
		"sale-ready young are still here": "sale-ready from 2027-01-22 (early 2027-01-20, late 2027-01-27)",
	} {
		assert.Contains(t, text, want, what)
	}
	assert.Equal(t, 1, strings.Count(text, ">sale-ready 31 Jul<"))
	assert.NotContains(t, text, "eggs from 2027-01-25 (early", "a pairing whose clutch is there has no young of its own")
}

func TestSeasonWithNothing(t *testing.T) {
	text := string(picture.Season(frogroom.Sheet{Season: frogroom.Season{On: today}}))
	wellFormed(t, text)
	assert.Contains(t, text, "No pairing is planned and no clutch runs.")
	wellFormed(t, string(picture.Season(frogroom.Sheet{Season: frogroom.Season{On: today}, Loads: []frogroom.PlaceDays{{What: "tadpole tub"}}})))
}

// Three reasons stand on a chart, and how many more there are; a fourth instead of
// "one more".
func TestSeasonWithMuchInTheWay(t *testing.T) {
	for n, more := range map[int]int{3: 0, 4: 0, 5: 2, 60: 57} {
		s := smallSeason()
		s.Conflicts = nil
		for i := range n {
			s.Conflicts = append(s.Conflicts, frogroom.Conflict{Message: fmt.Sprintf("reason %d", i)})
		}
		text := string(picture.Season(s))
		if more == 0 {
			assert.Contains(t, text, fmt.Sprintf(">In the way: reason %d<", n-1))
			assert.NotContains(t, text, " more, which")
			continue
		}
		assert.Contains(t, text, fmt.Sprintf(">In the way: %d more, which the table of the season tells<", more))
		assert.NotContains(t, text, "reason 3")
	}
}

// hostile wants to break out of the page, to turn it, or to run over its edge.
var hostile = []string{
	`<script>alert("1")</script>`, `"&'<b>`, "שלום דוב", "علي\u202e<i>", "😀🐸", strings.Repeat("langer Name ", 17), "]]>\x00--><!--",
}

// named puts a text wherever a keeper can write one.
func named(text string) frogroom.Sheet {
	s := smallSeason()
	s.Keeper = text
	s.Names = map[string]string{"H1": text, "H2": text, "H3": text}
	s.Pairings[0].ID, s.Pairings[0].Target, s.Pairings[0].Species, s.Targets[0].Name = text, text, text, text
	s.Pairings[0].Phases[0].Name = text
	s.Pairings[0].Findings, s.Pairings[0].Warnings = []string{text}, []string{text}
	s.Reasons = map[string][]string{text: {text}}
	s.Clutches[0].Place, s.Clutches[1].ID, s.Clutches[1].Warnings = text, text, []string{text}
	s.Conflicts[0].Message, s.Risks[0].Text, s.Loads[0].What, s.Unchecked[0] = text, text, text, text
	s.Agenda.Tasks[0].What, s.Agenda.Tasks[0].Note, s.Agenda.Watch[0].Place, s.Agenda.Overdue[0].Text = text, text, text, text
	s.Holidays[0].Name, s.Agenda.NoParcels[0].Name, s.Agenda.Warnings[0] = text, text, text
	s.Over, s.LeftOut, s.WhyLeftOut = []string{text}, []string{text}, []string{text}
	return s
}

func TestSeasonWithHostileNames(t *testing.T) {
	for _, text := range hostile {
		drawn := string(picture.Season(named(text)))
		wellFormed(t, drawn)
		assert.NotContains(t, drawn, "<script")
		assert.NotContains(t, drawn, "<b>")
		assert.NotContains(t, drawn, "<i>")
		said := ""
		for _, line := range texts(t, drawn) {
			said += line.text + "\n"
		}
		begin := svg.Fit(strings.ReplaceAll(text, "\x00", "\ufffd"), 11, 60)
		assert.Contains(t, strings.ReplaceAll(said, "\u202e", ""), strings.TrimRight(strings.ReplaceAll(begin, "\u202e", ""), "… "), "as text")
	}
}

// line is a text of a picture.
type line struct {
	x      float64
	anchor string
	size   float64
	text   string
}

func texts(t *testing.T, picture string) []line {
	t.Helper()
	var list []line
	r := xml.NewDecoder(strings.NewReader(picture))
	inside := false
	for {
		token, err := r.Token()
		if errors.Is(err, io.EOF) {
			return list
		}
		require.NoError(t, err)
		switch x := token.(type) {
		case xml.StartElement:
			if inside = x.Name.Local == "text"; inside {
				l := line{}
				for _, a := range x.Attr {
					switch a.Name.Local {
					case "x":
						l.x, _ = strconv.ParseFloat(a.Value, 64)
					case "font-size":
						l.size, _ = strconv.ParseFloat(a.Value, 64)
					case "text-anchor":
						l.anchor = a.Value
					}
				}
				list = append(list, l)
			}
		case xml.EndElement:
			inside = false
		case xml.CharData:
			if inside {
				list[len(list)-1].text += string(x)
			}
		}
	}
}

// manyPairings is a season of n pairings with long names, in every month.
func manyPairings(n int) frogroom.Sheet {
	s := smallSeason()
	one, clutch := s.Pairings[0], s.Clutches[1]
	s.Pairings, s.Clutches = nil, nil
	s.Names = map[string]string{"H1": strings.Repeat("Hugo ", 40), "H2": "Hilde die Zweite von der Lindenhofer Linie"}
	for i := range n {
		p := one
		p.ID, p.ReadyBy = fmt.Sprintf("P-%03d", i), one.ReadyBy.Add(i*5)
		p.Phases, p.Stages = nil, nil
		for _, ph := range one.Phases {
			ph.Span.First, ph.Span.Last = ph.Span.First.Add(i*5), ph.Span.Last.Add(i*5)
			p.Phases = append(p.Phases, ph)
		}
		for _, st := range one.Stages {
			st.Window = st.Window.Add(i * 5)
			p.Stages = append(p.Stages, st)
		}
		s.Pairings = append(s.Pairings, p)
		k := clutch
		k.ID, k.Pairing = fmt.Sprintf("C-%03d", i), ""
		s.Clutches = append(s.Clutches, k)
	}
	for i := range s.Loads {
		l := &s.Loads[i]
		for len(l.Kept) < 600 {
			l.Kept = append(l.Kept, l.Kept[len(l.Kept)-50])
			if l.Low != nil {
				l.Low, l.Likely, l.High = append(l.Low, 1), append(l.Likely, 2), append(l.High, 3)
			}
		}
	}
	return s
}

// Nothing that is written runs over the edges of the picture.
func TestSeasonOfSixtyPairings(t *testing.T) {
	drawn := string(picture.Season(manyPairings(60)))
	var size struct {
		Width  float64 `xml:"width,attr"`
		Height float64 `xml:"height,attr"`
	}
	require.NoError(t, xml.Unmarshal([]byte(drawn), &size))
	all := texts(t, drawn)
	for i := range 60 {
		id := fmt.Sprintf("P-%03d", i)
		assert.Contains(t, drawn, ">"+id+"<")
	}
	for _, l := range all {
		w := svg.Width(l.text, l.size)
		from := l.x
		switch l.anchor {
		case "middle":
			from -= w / 2
		case "end":
			from -= w
		}
		assert.True(t, from > -1 && from+w < size.Width+1, "%q is from %v to %v of %v", l.text, from, from+w, size.Width)
	}
	assert.Greater(t, size.Height, 4000.0)
}

func BenchmarkSeason60(b *testing.B) {
	s := manyPairings(60)
	for b.Loop() {
		picture.Season(s)
	}
}

func BenchmarkSheet60(b *testing.B) {
	s := manyPairings(60)
	for b.Loop() {
		if !bytes.Contains(picture.Sheet(s), []byte("P-059")) {
			b.Fatal("a pairing is missing")
		}
	}
}
