package main

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/breedingplan"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

func (a *app) showGroups(room *frogroom.Room, g breedingplan.Groups) error {
	a.warn(g.Warnings)
	rows := &table.Table{Columns: []table.Column{
		{Name: "males"},
		{Name: "females"},
		{Name: "hold back", Right: true},
		{Name: "inbreeding", Right: true},
		{Name: "closest couple", Right: true},
		{Name: "will not be known", Width: 60},
	}}
	for _, one := range g.Groups {
		rows.Add(named(room, one.Males), named(room, one.Females), fmt.Sprint(one.Young),
			fmt.Sprintf("%.4f", one.Inbreeding), fmt.Sprintf("%.4f", one.Highest), one.Unknown)
	}
	if a.format != "table" {
		return a.show("groups", g, rows)
	}
	var b bytes.Buffer
	fmt.Fprintf(&b, "Groups for the rain chambers as judged on %s\n\n%s: %s of %d possible\n\n", g.On, g.Species, counted(len(g.Groups), "group"), g.Possible)
	rows.Indent = "  "
	if err := rows.Text(&b); err != nil {
		return err
	}
	b.WriteString("\n")
	for _, one := range g.Groups {
		for _, f := range one.Findings {
			fmt.Fprintf(&b, "  ! %s × %s: %s\n", strings.Join(one.Males, " + "), strings.Join(one.Females, " + "), f)
		}
		if one.Settle != "" {
			fmt.Fprintf(&b, "  %s × %s: parentage is settled by %s.\n", strings.Join(one.Males, " + "), strings.Join(one.Females, " + "), one.Settle)
		}
	}
	b.WriteString(promisedText(g.Living, g.Promised))
	fmt.Fprintf(&b, "  Gene diversity of the line: %.4f now, %.4f with the young; their mean inbreeding %.4f.\n", g.GeneDiversity, g.WithYoung, g.YoungInbreeding)
	if g.Proven {
		fmt.Fprintf(&b, "  Proven: nothing better can be done with groups of this size.\n")
	} else {
		fmt.Fprintf(&b, "  Not proven: the best found so far, at most %.2f %% from the best with %s.\n", 100*g.Gap, counted(len(g.Groups), "group"))
	}
	if err := leftOutText(&b, room, g.Species, g.LeftOut); err != nil {
		return err
	}
	fmt.Fprintf(&b, "\nLimits: %s.\n", strings.Join(g.Limits, "; "))
	relaxedText(&b, g.Relaxed)
	return a.write(b.Bytes())
}
