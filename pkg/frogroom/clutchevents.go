package frogroom

import (
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
)

// clutch adds what was seen of a clutch and what is ahead of it.
func (e *events) clutch(k Clutch) {
	e.about = e.changes(k.ID, k.Laid)
	who := at(k.ID, k.Place)
	for _, s := range k.Stages {
		event := calendar.Event{Key: key("clutch", k.ID, s.Stage), Span: whole(s.Window), Category: seenCategory}
		switch {
		case s.Recorded:
			event.Summary = fmt.Sprintf("%s: %s, seen", who, stageWords(s.Stage))
		case s.Passed:
			event.Summary = fmt.Sprintf("%s: %s, passed without being seen", who, stageWords(s.Stage))
			event.Description = windowNote(s.Window)
		default:
			event.Category = clutchCategory
			event.Cancelled = k.died()
			event.Summary = fmt.Sprintf("%s: %s expected, likely %s", who, stageWords(s.Stage), s.Window.Likely)
			event.Description = strings.TrimSpace(windowNote(s.Window) + "\n" + stageNote(s.Stage))
		}
		e.add(event)
		if s.Stage == "front-legs" {
			e.add(calendar.Event{
				Key: key("clutch", k.ID, "ramp"), Span: day(s.Window.Early.Add(-rampLead)), Category: prepareCategory,
				Cancelled: !s.ahead() || k.died(),
				Summary:   who + ": ramp in, water low", Description: rampNote(s.Window),
			})
		}
	}
}

// at names a clutch with its place.
func at(id, place string) string {
	if place == "" {
		return id
	}
	return id + " (" + place + ")"
}

func rampNote(frontLegs civil.Window) string {
	return fmt.Sprintf("Front legs can come from %s.\n%s", frontLegs.Early, rampReason)
}

// rampReason goes with every reminder of a ramp.
const rampReason = "Froglets drown without a way out of the water once the front legs are out (Gosner 1960, stage 42; the lead of a few days is common practice, no source)."

// rampLead is how many days before the first front legs the way out of the
// water is put in (common practice, no source).
const rampLead = 3

// windowNote gives the 10th, 50th and 90th percentile.
func windowNote(w civil.Window) string {
	return fmt.Sprintf("Early %s, likely %s, late %s.", w.Early, w.Likely, w.Late)
}

// stageNote says in a sentence what a stage asks of the keeper.
func stageNote(stage string) string {
	switch stage {
	case "hatched":
		return "No food yet: the yolk lasts until Gosner 25 (Gosner 1960)."
	case "feeding":
		return "First food now, little and often; remove what is left (common practice, no source)."
	case "front-legs":
		return "No food while the tail goes; a way out of the water at all times (common practice, no source)."
	case "out-of-water":
		return "Froglets dry out easily: damp hide, fresh air, a dish so small that none can drown (keeper article: Mailloux et al., Popular Tree Frogs)."
	case "sale-ready":
		return "The window says when most can be old enough. Only those leave that eat unaided and are large and round enough; very small ones die on the way (common practice, no source)."
	}
	return ""
}
