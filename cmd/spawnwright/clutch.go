package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

func clutchCommand(a *app) *cobra.Command {
	c := &cobra.Command{
		Use:   "clutch [CLUTCH…]",
		Short: "when the clutches hatch, get legs, leave the water, are sale-ready",
		Long: `clutch lists the clutches that are running, or those that are named: how far
they have come and the windows of what is ahead, as early / likely / late.`,
		Example:           "  spawnwright clutch C-26-07",
		ValidArgsFunction: a.completeClutches(0),
		RunE: func(_ *cobra.Command, args []string) error {
			on, err := a.on()
			if err != nil {
				return err
			}
			room, err := a.open()
			if err != nil {
				return err
			}
			clutches := room.Clutches(on)
			if len(args) > 0 {
				clutches = nil
				for _, id := range args {
					k, err := room.Clutch(id, on)
					if err != nil {
						return unknownID(err)
					}
					clutches = append(clutches, k)
				}
			}
			return a.showClutches(clutches)
		},
	}
	a.formatFlag(c, "table", "json", "csv")
	a.outFlag(c)
	return c
}

func (a *app) showClutches(clutches []frogroom.Clutch) error {
	t := &table.Table{Empty: "No clutch is running.", Columns: []table.Column{
		{Name: "clutch"}, {Name: "parents", Width: 34}, {Name: "where"}, {Name: "now"}, {Name: "living", Right: true}, {Name: "stage"}, {Name: "early"}, {Name: "likely"}, {Name: "late"}, {Name: "status"},
	}}
	for _, k := range clutches {
		living := ""
		if k.Living != nil {
			living = fmt.Sprint(*k.Living)
		}
		first := []string{k.ID, candidates(k.Dams) + " × " + candidates(k.Sires), k.Place, k.Now, living}
		for _, s := range k.Stages {
			mark := ""
			switch {
			case s.Recorded:
				mark = "seen"
			case s.Passed:
				mark = "passed"
			case s.Overdue:
				mark = "overdue"
			}
			t.Add(append(first[:5:5], s.Stage, s.Window.Early.String(), s.Window.Likely.String(), s.Window.Late.String(), mark)...)
			if a.format == "table" {
				first = []string{"", "", "", "", ""}
			}
		}
		if len(k.Stages) == 0 {
			t.Add(append(first, "", "", "", "", "nothing is known of "+k.Species)...)
		}
		a.warn(k.Warnings)
	}
	return a.show("clutches", clutches, t)
}

// candidates names the possible parents on one side.
func candidates(ids []string) string {
	if len(ids) == 0 {
		return "?"
	}
	return strings.Join(ids, " or ")
}
