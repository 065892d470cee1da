package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/rearing"
)

// clutchPage is a page about one clutch, in sections.
func clutchPage(k rearing.Report) (string, error) {
	var b strings.Builder
	where := ""
	if k.Place != "" {
		where = ", " + k.Place
	}
	fmt.Fprintf(&b, "%s  %s, %s%s\n", k.ID, parentsOf(k.Clutch), k.Species, where)
	fmt.Fprintf(&b, "%s, last look %s: %s", laidText(k.Clutch), weekday(k.SeenOn), k.Now)
	if n := living(k.Clutch); n != "" {
		fmt.Fprintf(&b, ", %s living", n)
	}
	b.WriteString("\n" + warmthText("water", k.Water) + warmthText("air", k.Air))
	if k.Stall >= notableStall {
		fmt.Fprintf(&b, "with a chance of %.0f %% it has stalled, or will; the windows are those of a clutch that goes on\n", min(k.Stall*100, 99))
	}
	b.WriteString("\n")
	for i, t := range []*table.Table{windowTable(k), siblingTable(k), headsTable(k)} {
		if err := t.Text(&b); err != nil {
			return "", err
		}
		if i == 0 && k.Lacks != "" {
			fmt.Fprintf(&b, "  no dates from the end of %s on: the profile of %s has no days for it; add them under species, development\n", k.Lacks, k.Species)
		}
		b.WriteString("\n")
	}
	dueText(&b, k)
	leaveText(&b, k.Sale)
	return b.String(), nil
}

// laidText says when a clutch was laid, or may have been.
func laidText(k rearing.Clutch) string {
	switch w := k.LaidBetween; {
	case k.Laid.Known():
		return "laid " + weekday(k.Laid)
	case w.Known():
		return fmt.Sprintf("not seen being laid, likely %s (%s to %s)", w.Likely, w.Early, w.Late)
	}
	return "not seen being laid"
}

// notableStall is the chance from which a page speaks of a clutch that has
// stopped growing; a few in a hundred is what any has.
const notableStall = 0.1

// warmthText gives the temperatures that the windows go by, the last few of them.
func warmthText(what string, all []rearing.Warmth) string {
	const most = 4
	if len(all) == 0 {
		return what + ": not known, taken to be as in the profile\n"
	}
	text := what + ": "
	if len(all) > most {
		text += "… "
	}
	for i, w := range all[max(len(all)-most, 0):] {
		if i > 0 {
			text += ", "
		}
		text += fmt.Sprintf("%g °C from %s", w.C, w.From)
	}
	return text + "\n"
}

func windowTable(k rearing.Report) *table.Table {
	t := &table.Table{
		Title: "When half of them are there: 10, 50 and 90 of 100 such clutches are by these days", Indent: "  ",
		Empty:   "nothing is known of " + k.Species,
		Columns: []table.Column{{Name: "stage"}, {Name: "early"}, {Name: "likely"}, {Name: "late"}, {Name: "status"}, {Name: "rests on", Width: 70}},
	}
	for _, s := range k.Stages {
		rests := s.RestsOn.Words
		if s.Recorded {
			rests = ""
		}
		t.Add(s.Stage, s.Window.Early.String(), s.Window.Likely.String(), s.Window.Late.String(), status(s), rests)
	}
	return t
}

func siblingTable(k rearing.Report) *table.Table {
	t := &table.Table{
		Title: fmt.Sprintf("The first, the half and the last of %d", k.SiblingsOf), Indent: "  ",
		Empty:   "none are still to come",
		Columns: []table.Column{{Name: "stage"}, {Name: "who"}, {Name: "early"}, {Name: "likely"}, {Name: "late"}},
	}
	for _, s := range k.Siblings {
		stage := s.Stage
		for _, who := range []struct {
			name   string
			window civil.Window
		}{{"first", s.First}, {"half", s.Half}, {"last", s.Last}} {
			t.Add(stage, who.name, who.window.Early.String(), who.window.Likely.String(), who.window.Late.String())
			stage = ""
		}
	}
	if k.Lacks != "" {
		t.Empty = "no later stage has a date"
	}
	if k.SiblingsOf == 0 {
		t.Title, t.Empty = "The first and the last", "not told: nobody knows how many there are"
		if k.Living != nil {
			t.Empty = "none is alive by the last count"
		}
	}
	return t
}

func headsTable(k rearing.Report) *table.Table {
	t := &table.Table{
		Title: "How many there will be (10th to 90th percentile); litres, tubs and bins are for the 90th", Indent: "  ",
		Empty: k.Uncounted,
		Columns: []table.Column{
			{Name: "on"},
			{Name: "eggs", Right: true},
			{Name: "in water", Right: true},
			{Name: "on land", Right: true},
			{Name: "living", Right: true},
			{Name: "litres", Right: true},
			{Name: "tubs", Right: true},
			{Name: "bins", Right: true},
		},
	}
	for _, w := range k.Heads {
		t.Add(w.On.String(), headsText(w.Eggs), headsText(w.InWater), headsText(w.OnLand), headsText(w.Living),
			numberText(w.Litres), numberText(float64(w.Tubs)), numberText(float64(w.Bins)))
	}
	dropEmpty(t)
	return t
}

// dropEmpty takes away the columns with nothing in them.
func dropEmpty(t *table.Table) {
	var empty []string
	for i, c := range t.Columns {
		if !slices.ContainsFunc(t.Rows, func(row []string) bool { return row[i] != "" }) {
			empty = append(empty, c.Name)
		}
	}
	if len(t.Rows) > 0 {
		t.Drop(empty...)
	}
}

// headsText is nothing where there is none.
func headsText(h rearing.Heads) string {
	switch {
	case h.High == 0:
		return ""
	case h.Low == h.High:
		return fmt.Sprint(h.High)
	}
	return fmt.Sprintf("%.0f (%d to %d)", h.Expected, h.Low, h.High)
}

func numberText(x float64) string {
	if x == 0 {
		return ""
	}
	return fmt.Sprintf("%g", x)
}

// dueText lists what to do, each with its source.
func dueText(b *strings.Builder, k rearing.Report) {
	b.WriteString("To do in the next 14 days\n\n")
	if len(k.Due) == 0 {
		b.WriteString("  nothing by hand\n")
	}
	for _, d := range k.Due {
		when := weekday(d.On)
		if d.ByNow {
			when = "by now"
		}
		at := fmt.Sprintf("%d days before %s", d.Lead, d.Stage)
		switch {
		case d.Now:
			when, at = "now", "since "+d.Stage
		case d.Lead == 0:
			at = "at the stage " + d.Stage
		case d.Lead < 0:
			at = fmt.Sprintf("%d days after %s", -d.Lead, d.Stage)
		}
		fmt.Fprintf(b, "  %-14s  %s\n%18s%s; %s\n", when, d.What, "", at, d.Source)
	}
}

// leaveText says whether the young may leave, and what is in the way.
func leaveText(b *strings.Builder, s rearing.Leaves) {
	if s.Ready {
		b.WriteString("\nThe young may leave: they are old and large enough and were seen eating. Whoever looks ill stays.\n")
		return
	}
	b.WriteString("\nThe young stay, whatever the date\n\n")
	for _, text := range s.Held {
		fmt.Fprintf(b, "  held: %s\n", text)
	}
	for _, text := range s.Ask {
		fmt.Fprintf(b, "  to record: %s\n", text)
	}
}
