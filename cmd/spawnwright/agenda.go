package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

func agendaCommand(a *app) *cobra.Command {
	var days int
	c := &cobra.Command{
		Use:     "agenda",
		Short:   "what is due today and in the next days",
		Example: "  spawnwright agenda --days 7",
		Args:    noArguments,
		RunE: func(*cobra.Command, []string) error {
			if days < 1 || days > 366 {
				return usagef("--days %d is not from 1 to 366", days)
			}
			room, on, err := a.today()
			if err != nil {
				return err
			}
			return a.showAgenda(room.Agenda(on, days))
		},
	}
	c.Flags().IntVar(&days, "days", 14, "how many `DAYS` to show, 1 to 366")
	a.formatFlag(c, "text", "json", "csv")
	a.outFlag(c)
	return c
}

func (a *app) showAgenda(agenda frogroom.Agenda) error {
	a.warn(conflictTexts(agenda.Conflicts))
	a.warn(agenda.Warnings)
	if a.format == "text" {
		return a.write([]byte(agendaText(agenda)))
	}
	t := &table.Table{Columns: []table.Column{{Name: "what"}, {Name: "day"}, {Name: "early"}, {Name: "late"}, {Name: "text"}, {Name: "note"}}}
	for _, o := range agenda.Overdue {
		t.Add("overdue", o.Late.String(), "", "", o.Text, "")
	}
	for _, d := range agenda.Tasks {
		t.Add("task", d.On.String(), "", "", d.What, d.Note)
	}
	for _, w := range agenda.Watch {
		t.Add("watch", w.Window.Likely.String(), w.Window.Early.String(), w.Window.Late.String(), w.Clutch+w.Pairing+": "+w.Stage, w.Note)
	}
	return a.show("agenda", agenda, t)
}

// agendaText is the agenda for a helper in the frog room: what is missing
// first, then what there is to do, what to look for, and the parcels.
func agendaText(agenda frogroom.Agenda) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s to %s\n", weekday(agenda.Days.First), weekday(agenda.Days.Last))
	if len(agenda.Overdue) > 0 {
		b.WriteString("\nOverdue: look, and record what you see\n")
		for _, o := range agenda.Overdue {
			fmt.Fprintf(&b, "  %s\n", o.Text)
		}
	}
	b.WriteString("\nTo do\n")
	if len(agenda.Tasks) == 0 {
		b.WriteString("  nothing by hand\n")
	}
	for _, t := range agenda.Tasks {
		fmt.Fprintf(&b, "  %s  %s\n", weekday(t.On), t.What)
		for line := range strings.Lines(t.Note) {
			fmt.Fprintf(&b, "%s%s\n", strings.Repeat(" ", 18), strings.TrimSpace(line))
		}
	}
	watchText(&b, agenda.Watch)
	b.WriteString("\nParcels\n")
	next := make([]string, len(agenda.Parcels))
	for i, d := range agenda.Parcels {
		next[i] = weekday(d)
	}
	if len(next) == 0 {
		next = []string{"none in the next year"}
	}
	fmt.Fprintf(&b, "  next days to hand one over: %s\n", strings.Join(next, ", "))
	for _, h := range agenda.NoParcels {
		fmt.Fprintf(&b, "  public holiday: %s, %s\n", weekday(h.On), h.Name)
	}
	if len(agenda.Away) > 0 {
		away := make([]string, len(agenda.Away))
		for i, s := range agenda.Away {
			away[i] = s.String()
		}
		fmt.Fprintf(&b, "\nNobody in the room: %s\n", strings.Join(away, ", "))
	}
	return b.String()
}

// watchText lists what to look for, stage by stage, so that what to do at a
// stage is said once.
func watchText(b *strings.Builder, watch []frogroom.Watch) {
	if len(watch) == 0 {
		return
	}
	b.WriteString("\nTo look for: early / likely / late\n")
	said := make(map[string]bool)
	for _, first := range watch {
		if said[first.Stage] {
			continue
		}
		said[first.Stage] = true
		heading := first.Stage
		if first.Pairing != "" {
			heading = "eggs"
		}
		fmt.Fprintf(b, "  %s\n", heading)
		for _, w := range watch {
			if w.Stage != first.Stage {
				continue
			}
			where := w.Clutch + w.Pairing // one of them
			if w.Place != "" {
				where += " (" + w.Place + ")"
			}
			fmt.Fprintf(b, "    %-26s  %s\n", where, windowText(w.Window))
		}
		if first.Note != "" {
			fmt.Fprintf(b, "    %s\n", first.Note)
		}
	}
}
