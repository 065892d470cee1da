package frogroom

import (
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/calendar"
)

// pairing adds the days on which there is work with a planned pairing, and the
// windows of its young. Once its clutch is laid the clutch speaks for itself.
func (e *events) pairing(p PlannedPairing) {
	clutches, _ := upTo(e.on, e.room.laid[p.ID])
	e.about = e.moves()
	e.phases(p)
	for _, s := range p.Stages {
		e.add(calendar.Event{
			Key: key("pairing", p.ID, "young", s.Stage), Span: whole(s.Window), Category: youngCategory, Cancelled: clutches > 0,
			Summary:     fmt.Sprintf("%s: %s, if all goes to plan, likely %s", p.ID, plannedWords(s.Stage), s.Window.Likely),
			Description: windowNote(s.Window),
		})
	}
}

func (e *events) phases(p PlannedPairing) {
	profile := e.room.of(p.Species).Profile
	who := strings.Join(p.Dams, ", ") + " × " + strings.Join(p.Sires, ", ")
	for _, ph := range p.Phases {
		if ph.Span.Days() == 0 {
			continue
		}
		event := calendar.Event{
			Key: key("pairing", p.ID, ph.Name), Span: day(ph.Span.First), Category: pairingCategory,
			Summary:     fmt.Sprintf("%s: %s begins (%s)", p.ID, stageWords(ph.Name), who),
			Description: fmt.Sprintf("Until %s.%s%s", ph.Span.Last, against(p), phaseNote(profile, ph.Name)),
		}
		switch {
		case ph.Recorded:
			event.Category = seenCategory
			event.Summary = fmt.Sprintf("%s: %s began (%s)", p.ID, stageWords(ph.Name), who)
		case p.Refused:
			event.Category = refusedCategory
		}
		e.add(event)
	}
	last := p.Phases[len(p.Phases)-1]
	category := pairingCategory
	if p.Refused {
		category = refusedCategory
	}
	e.add(calendar.Event{
		Key: key("pairing", p.ID, "over"), Span: day(last.Span.Last.Add(1)), Category: category,
		Summary: fmt.Sprintf("%s: %s is over (%s)", p.ID, stageWords(last.Name), who),
	})
}

// against says why a pairing should not be made, in a line of its own.
func against(p PlannedPairing) string {
	if !p.Refused {
		return ""
	}
	return "\nShould not be made: " + strings.Join(p.Findings, "; ") + "."
}

func plannedWords(stage string) string {
	if stage == "laid" {
		return "eggs"
	}
	return stageWords(stage)
}
