package main

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

// weeksText is the season by week.
func weeksText(b *bytes.Buffer, s frogroom.Season) {
	for i := 0; i < len(s.Weeks); i++ {
		w := s.Weeks[i]
		if len(w.Tasks) == 0 && len(w.Present) == 0 {
			continue
		}
		fmt.Fprintf(b, "\nWeek of %s", weekday(w.First))
		more := 0
		for i+1 < len(s.Weeks) && sameWeek(w, s.Weeks[i+1]) {
			i++
			more++
		}
		if more > 0 {
			fmt.Fprintf(b, ", and the same until %s", weekday(s.Weeks[i].First.Add(6)))
		}
		b.WriteString("\n")
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
		for _, f := range w.Food {
			fmt.Fprintf(b, "  food            %s: %s\n", f.Species, foodText(f))
		}
	}
}

// sameWeek reports whether there is nothing new to tell of the week after.
func sameWeek(w, next frogroom.Week) bool {
	return len(next.Tasks) == 0 && slices.EqualFunc(w.Present, next.Present, func(a, b frogroom.Presence) bool {
		return a.What == b.What && slices.Equal(a.Who, b.Who)
	}) && slices.EqualFunc(w.Loads, next.Loads, func(a, b frogroom.PlaceLoad) bool { return a.Most == b.Most })
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

// foodText tells what animals of an age eat in a week.
func foodText(f frogroom.WeekFood) string {
	who, eat := f.Age, "eat"
	if who == "grown" || who == "half-grown" {
		who += " animals"
	}
	if f.Animals == 1 {
		who, eat = strings.TrimSuffix(who, "s"), "eats"
	}
	text := fmt.Sprintf("%d %s", f.Animals, who)
	switch {
	case f.Feeders[1] > 0 && f.FeederMM[1] > 0:
		text += fmt.Sprintf(" %s %s to %s feeders of %g to %g mm", eat, roughly(f.Feeders[0]), roughly(f.Feeders[1]), f.FeederMM[0], f.FeederMM[1])
	case f.Feeders[1] > 0:
		text += fmt.Sprintf(" %s %s to %s feeders", eat, roughly(f.Feeders[0]), roughly(f.Feeders[1]))
	case f.DryG[1] > 0:
		text += fmt.Sprintf(" %s %s to %s g of dry food", eat, grams(f.DryG[0]), grams(f.DryG[1]))
	default:
		text += ", and how much is eaten is not known"
	}
	return text
}

// grams writes a weight with two digits, without powers of ten.
func grams(g float64) string {
	if g >= 10 {
		return roughly(int(g + 0.5))
	}
	return fmt.Sprintf("%.2g", g)
}

// roughly rounds a count to two digits, for more of them would be a promise.
func roughly(n int) string {
	step := 1
	for n/step >= 100 {
		step *= 10
	}
	return fmt.Sprint((n + step/2) / step * step)
}
