package main

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

// weeksText is the season by week.
func weeksText(b *bytes.Buffer, s frogroom.Season) {
	for _, w := range s.Weeks {
		fmt.Fprintf(b, "\nWeek of %s\n", weekday(w.First))
		for _, task := range w.Tasks {
			likely := ""
			if task.Likely {
				likely = ", likely"
			}
			fmt.Fprintf(b, "  %s  %s%s\n", weekday(task.On), task.What, likely)
		}
		for _, p := range w.Present {
			fmt.Fprintf(b, "  %-14s  %s\n", p.What, strings.Join(p.Who, ", "))
		}
		if text := loadsText(w.Loads, false); text != "" {
			fmt.Fprintf(b, "  in use          %s\n", text)
		}
	}
}

// loadsText tells how much is in use at most, with the day where that is asked for.
func loadsText(loads []frogroom.PlaceLoad, days bool) string {
	var out []string
	for _, l := range loads {
		name := l.What + "s"
		if l.What == "minutes" {
			name = "minutes a day"
		}
		text := fmt.Sprintf("%s %d of %d", name, l.Most, l.Of)
		if l.Most > l.Of {
			text += " (too few)"
		}
		if days && l.Most > 0 {
			text += " on " + l.On.String()
		}
		out = append(out, text)
	}
	return strings.Join(out, ", ")
}
