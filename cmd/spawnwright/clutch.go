package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/rearing"
)

func clutchCommand(a *app) *cobra.Command {
	distribution := false
	c := &cobra.Command{
		Use:   "clutch [CLUTCH…]",
		Short: "when the clutches hatch, get legs, leave the water, are sale-ready",
		Long: `clutch lists the clutches that are running: how far they have come, the windows
of what is ahead, as early / likely / late, and what these rest on.

Of a clutch that is named it tells more: when the first, the half and the last
are there, how many there will be each week and the tubs and bins they need, what
to do in the next 14 days, and why the young may not leave yet.`,
		Example:           "  spawnwright clutch C-26-07",
		ValidArgsFunction: a.completeClutches(0),
		RunE: func(_ *cobra.Command, args []string) error {
			if distribution && (len(args) == 0 || a.format != "json") {
				return usagef("--distribution goes with the id of a clutch and --format json")
			}
			room, on, err := a.today()
			if err != nil {
				return err
			}
			if len(args) == 0 {
				clutches := room.Clutches(on)
				a.warnOfClutches(clutches)
				return a.show("clutches", clutches, a.clutchTable(clutches))
			}
			return a.reportClutches(room, on, args, distribution)
		},
	}
	c.Flags().BoolVar(&distribution, "distribution", false, "with json: the chance of each day, stage by stage")
	a.formatFlag(c, "table", "json", "csv")
	a.outFlag(c)
	return c
}

// reportClutches tells all of the clutches that are named.
func (a *app) reportClutches(room *frogroom.Room, on civil.Date, ids []string, distribution bool) error {
	var reports []rearing.Report
	var clutches []rearing.Clutch
	for _, id := range ids {
		report, err := room.ClutchReport(id, on)
		if err != nil {
			return unknownID(err)
		}
		if !distribution {
			report.Distribution = nil
		}
		reports = append(reports, report)
		clutches = append(clutches, report.Clutch)
	}
	a.warnOfClutches(clutches)
	if a.format != "table" {
		return a.show("clutches", reports, a.clutchTable(clutches))
	}
	pages := make([]string, len(reports))
	for i, report := range reports {
		page, err := clutchPage(report)
		if err != nil {
			return err
		}
		pages[i] = page
	}
	return a.write([]byte(strings.Join(pages, "\n")))
}

func (a *app) warnOfClutches(clutches []rearing.Clutch) {
	for _, k := range clutches {
		a.warn(k.Warnings)
	}
}

func (a *app) clutchTable(clutches []rearing.Clutch) *table.Table {
	t := &table.Table{Empty: "No clutch is running.", Columns: []table.Column{
		{Name: "clutch"}, {Name: "parents", Width: 34}, {Name: "where"}, {Name: "now"}, {Name: "living", Right: true}, {Name: "stage"}, {Name: "early"}, {Name: "likely"}, {Name: "late"}, {Name: "status"}, {Name: "rests on"},
	}}
	for _, k := range clutches {
		first := []string{k.ID, parentsOf(k), k.Place, k.Now, living(k)}
		for _, s := range k.Stages {
			rests := s.RestsOn.Words
			if a.format == "table" {
				rests = briefly(s.RestsOn)
			}
			t.Add(append(first[:5:5], s.Stage, s.Window.Early.String(), s.Window.Likely.String(), s.Window.Late.String(), status(s), rests)...)
			if a.format == "table" {
				first = []string{"", "", "", "", ""}
			}
		}
		if len(k.Stages) == 0 {
			t.Add(append(first, "", "", "", "", "nothing is known of "+k.Species, "")...)
		}
	}
	return t
}

func living(k rearing.Clutch) string {
	if k.Living == nil {
		return ""
	}
	return fmt.Sprint(*k.Living)
}

func status(s rearing.Stage) string {
	switch {
	case s.Recorded:
		return "seen"
	case s.Passed:
		return "passed"
	case s.Some:
		return "some"
	case s.Overdue:
		return "overdue"
	}
	return ""
}

// briefly says what a date rests on in few words, and nothing of one that was
// seen, for its status says so.
func briefly(r rearing.RestsOn) string {
	var words []string
	if r.Finished > 0 {
		words = append(words, fmt.Sprintf("%d own", r.Finished))
	}
	if r.Running > 0 {
		words = append(words, fmt.Sprintf("%d running", r.Running))
	}
	if r.Book > 0 {
		words = append(words, "book")
	}
	if r.Looks > 0 {
		words = append(words, plural(r.Looks, "look"))
	}
	return strings.Join(words, ", ")
}

// parentsOf names the possible parents on both sides.
func parentsOf(k rearing.Clutch) string { return candidates(k.Dams) + " × " + candidates(k.Sires) }

// candidates names the possible parents on one side.
func candidates(ids []string) string {
	if len(ids) == 0 {
		return "?"
	}
	return strings.Join(ids, " or ")
}
