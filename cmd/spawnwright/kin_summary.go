package main

import (
	"strconv"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/diversity"
	"github.com/spawnwright/spawnwright/pkg/kin"
)

// figure is one number of a summary.
type figure struct {
	name   string // for people; in CSV the head of its column
	digits int    // after the point, for people
	of     func(diversity.Summary) (float64, bool)
}

func always(of func(diversity.Summary) float64) func(diversity.Summary) (float64, bool) {
	return func(s diversity.Summary) (float64, bool) { return of(s), true }
}

func sometimes(of func(diversity.Summary) *float64) func(diversity.Summary) (float64, bool) {
	return func(s diversity.Summary) (float64, bool) {
		if x := of(s); x != nil {
			return *x, true
		}
		return 0, false
	}
}

var figures = []figure{
	{"animals", 0, always(func(s diversity.Summary) float64 { return float64(s.Animals) })},
	{"founders", 0, always(func(s diversity.Summary) float64 { return float64(s.Founders) })},
	{"mean inbreeding", 4, always(func(s diversity.Summary) float64 { return s.MeanInbreeding })},
	{"max inbreeding", 4, always(func(s diversity.Summary) float64 { return s.MaxInbreeding })},
	{"mean kinship", 4, always(func(s diversity.Summary) float64 { return s.MeanKinship })},
	{"gene diversity", 4, always(func(s diversity.Summary) float64 { return s.GeneDiversity })},
	{"founder equivalents", 2, sometimes(func(s diversity.Summary) *float64 { return s.FounderEquivalents })},
	{"ancestor equivalents", 2, sometimes(func(s diversity.Summary) *float64 { return s.AncestorEquivalents })},
	{"founder genome equivalents", 2, sometimes(func(s diversity.Summary) *float64 { return s.FounderGenomeEquivalents })},
	{"founder genome equivalents retained", 2, sometimes(func(s diversity.Summary) *float64 { return s.FounderGenomeEquivalentsRetained })},
	{"complete generations", 2, always(func(s diversity.Summary) float64 { return s.CompleteGenerations })},
	{"unknown parents", 4, always(func(s diversity.Summary) float64 { return s.UnknownParents })},
	{"effective size", 1, sometimes(func(s diversity.Summary) *float64 { return s.EffectiveSize })},
	{"effective size se", 2, sometimes(func(s diversity.Summary) *float64 { return s.EffectiveSizeSE })},
}

// meanings say what the figures are whose names do not tell.
var meanings = map[string]string{
	"animals":                             "living ones, over which all is taken",
	"founders":                            "animals without known parents from which they descend",
	"mean kinship":                        "each with itself included",
	"gene diversity":                      "1 - mean kinship: share of what the founders had",
	"founder equivalents":                 "as many founders with equal shares would do",
	"ancestor equivalents":                "the same, and everything came through few animals at times",
	"founder genome equivalents":          "the same, and genes were lost by chance: from the kinships",
	"founder genome equivalents retained": "another estimate: from the founders' genes that are left",
	"complete generations":                "of known ancestors, mean",
	"unknown parents":                     "share of the genes that comes from unknown parents beside known ones",
	"effective size":                      "from the inbreeding of each animal; none when nobody is inbred",
	"effective size se":                   "its standard error",
}

func (a *app) showSummary(d kin.Diversity) error {
	a.warn(d.Warnings)
	if a.format == "csv" {
		return a.writeSummary(d)
	}
	var tables []*table.Table
	for _, g := range d.Groups {
		t := &table.Table{Title: g.Species, Columns: []table.Column{{Name: "figure"}, {Name: "value", Right: true}, {Name: "what it is"}}}
		for _, f := range figures {
			value := "-"
			if x, ok := f.of(g.Summary); ok {
				value = strconv.FormatFloat(x, 'f', f.digits, 64)
			}
			t.Add(f.name, value, meanings[f.name])
		}
		tables = append(tables, t)
	}
	if len(tables) == 0 {
		tables = append(tables, &table.Table{Empty: "No animal is here."})
	}
	return a.show("", d, tables...)
}

// writeSummary writes a row for each species.
func (a *app) writeSummary(d kin.Diversity) error {
	columns := []string{"species"}
	for _, f := range figures {
		columns = append(columns, f.name)
	}
	out := table.NewStream(0, columns...)
	for _, g := range d.Groups {
		out.Text(g.Species)
		for _, f := range figures {
			if x, ok := f.of(g.Summary); ok {
				out.Number(x)
			} else {
				out.Text("")
			}
		}
		out.End()
	}
	return a.write(out.Bytes())
}
