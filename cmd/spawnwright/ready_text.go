package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/departure"
	"github.com/spawnwright/spawnwright/pkg/parcel"
)

// readyText tells who may leave first, then whom only time holds, then who stays.
func readyText(d departure.Report) string {
	var may, later, stay leavers
	for _, y := range d.Young {
		switch {
		case y.Ready:
			may.add(y)
		case y.Travel != nil:
			later.add(y)
		default:
			stay.add(y)
		}
	}
	if may.text.Len() == 0 {
		may.text.WriteString("  none\n")
	}
	text := fmt.Sprintf("Young on %s\n\nMay leave\n%s%s", weekday(d.On), may.text.String(), strings.Join(may.permits, ""))
	if later.text.Len() > 0 {
		text += "\nNot yet, but time is all that it takes\n" + later.text.String() + strings.Join(later.permits, "")
	}
	if stay.text.Len() > 0 {
		text += "\nStay, whatever the date\n" + stay.text.String()
	}
	return text + weatherText(d) + groupText(d.Groups)
}

// weatherText says who gives the temperatures that decided about a day.
func weatherText(d departure.Report) string {
	if d.PackSource == "" {
		return ""
	}
	text := "\nWho says what the weather asks for\n  packs: " + d.PackSource + "\n"
	said := make(map[string]bool)
	for _, y := range d.Young {
		if y.Travel != nil && y.Limits != nil && !said[y.Species] {
			said[y.Species] = true
			text += fmt.Sprintf("  %s travels at %s: %s\n", y.Species, *y.Limits, y.LimitsSource)
		}
	}
	return text
}

// leavers are the young under one heading, with a reminder for each species.
type leavers struct {
	text    strings.Builder
	permits []string
}

func (l *leavers) add(y departure.Young) {
	youngText(&l.text, y)
	if line := fmt.Sprintf("  CITES, %s: %s\n", y.Species, y.Permit); !slices.Contains(l.permits, line) {
		l.permits = append(l.permits, line)
	}
}

func youngText(b *strings.Builder, y departure.Young) {
	fmt.Fprintf(b, "  %s\n", strings.Join(readyHead(y), ", "))
	for _, text := range y.Held {
		fmt.Fprintf(b, "    held: %s\n", text)
	}
	for _, text := range y.Ask {
		fmt.Fprintf(b, "    to record: %s\n", text)
	}
	travelText(b, y)
}

// readyHead names an animal or a clutch, with what is known in a word.
func readyHead(y departure.Young) []string {
	head := []string{strings.TrimSpace(y.ID + " " + y.Name), y.Species}
	switch {
	case y.Living != nil:
		head = append(head, fmt.Sprintf("%d living", *y.Living))
	case y.Clutch:
		head = append(head, "never counted")
	}
	for _, p := range y.Promised {
		head = append(head, promiseText(y, p))
	}
	return head
}

func promiseText(y departure.Young, p departure.Promise) string {
	if !y.Clutch {
		return "promised to " + p.To
	}
	return fmt.Sprintf("%d promised to %s", p.Count, p.To)
}

// travelText gives the days for a parcel.
func travelText(b *strings.Builder, y departure.Young) {
	if y.Travel == nil {
		return
	}
	if len(y.Travel.Days) == 0 {
		fmt.Fprintf(b, "    no day to travel within a year: %s\n", y.Travel.None)
		return
	}
	days := make([]string, len(y.Travel.Days))
	for i, d := range y.Travel.Days {
		days[i] = weekday(d.On) + packText(d)
	}
	word := "parcel"
	if !y.Ready {
		word = "parcel at the earliest"
	}
	fmt.Fprintf(b, "    %s: %s\n", word, days[0])
	if len(days) > 1 {
		fmt.Fprintf(b, "      then %s\n", strings.Join(days[1:], ", "))
	}
	for _, s := range y.Travel.Skipped {
		fmt.Fprintf(b, "      not %s: %s\n", weekday(s.On), s.Why)
	}
}

// packText says what goes into the parcel, where the weather is known.
func packText(d parcel.Day) string {
	switch {
	case d.Outside == nil:
		return ""
	case d.Depot:
		return fmt.Sprintf(" (%s: %s, only to a staffed depot)", d.Outside, d.Pack)
	case d.Pack == parcel.NoPack:
		return fmt.Sprintf(" (%s: no pack)", d.Outside)
	}
	return fmt.Sprintf(" (%s: %s)", d.Outside, d.Pack)
}

func groupText(groups []departure.Group) string {
	if groups == nil {
		return ""
	}
	var b strings.Builder
	b.WriteString("\nLeast related young that are ready and promised to nobody\n")
	if len(groups) == 0 {
		b.WriteString("  none is ready\n")
	}
	for _, g := range groups {
		names := make([]string, len(g.Members))
		for i, m := range g.Members {
			names[i] = strings.TrimSpace(m.ID + " " + m.Name)
			if m.Count > 1 {
				names[i] += fmt.Sprintf(" (%d of it)", m.Count)
			}
		}
		fmt.Fprintf(&b, "  %s: %s\n", g.Species, strings.Join(names, ", "))
		proof := "no group is less related"
		if !g.Proven {
			proof = "the best that was found"
		}
		closest := ""
		if len(g.Members) > 1 || g.Members[0].Count > 1 {
			closest = ", closest two " + coefficient(g.Closest, g.Expected)
		}
		fmt.Fprintf(&b, "    mean kinship %s%s; %s\n", coefficient(g.MeanKinship, g.Expected), closest, proof)
		if g.Short > 0 {
			fmt.Fprintf(&b, "    %d fewer than wanted: no more are ready\n", g.Short)
		}
	}
	return b.String()
}

// readyRow is a line of the CSV table.
func readyRow(y departure.Young) []string {
	living, earliest, pack, then, none := "", "", "", []string{}, ""
	if y.Living != nil {
		living = fmt.Sprint(*y.Living)
	}
	if y.Travel != nil {
		none = y.Travel.None
		for i, d := range y.Travel.Days {
			if i == 0 {
				earliest, pack = d.On.String(), string(d.Pack)
				continue
			}
			then = append(then, d.On.String())
		}
	}
	promised := make([]string, len(y.Promised))
	for i, p := range y.Promised {
		promised[i] = promiseText(y, p)
	}
	return []string{
		y.ID, y.Name, y.Species, living, yesNo(y.Ready), earliest, pack, strings.Join(then, "; "), none,
		strings.Join(y.Held, "; "), strings.Join(y.Ask, "; "), strings.Join(promised, "; "), y.Permit,
	}
}

func yesNo(yes bool) string {
	if yes {
		return "yes"
	}
	return "no"
}
