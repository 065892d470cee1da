package almanac

import (
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/internal/words"
	"github.com/spawnwright/spawnwright/pkg/rearing"
)

// clutch adds what was seen of a clutch, what is ahead of it, and what there is
// to do before and after.
func (e *events) clutch(k rearing.Tended) {
	e.about = e.lessons(k)
	who := words.At(k.ID, k.Place)
	windows := make(map[string]civil.Window)
	for _, s := range k.Stages {
		windows[s.Stage] = s.Window
		event := calendar.Event{Key: Key("clutch", k.ID, s.Stage), Span: s.Window.Span(), Category: SeenCategory}
		switch {
		case s.Recorded:
			event.Summary = fmt.Sprintf("%s: %s, seen", who, words.Stage(s.Stage))
		case s.Passed:
			event.Summary = fmt.Sprintf("%s: %s, passed without being seen", who, words.Stage(s.Stage))
			event.Description = windowNote(s.Window)
		default:
			event.Category = ClutchCategory
			event.Cancelled = k.Died()
			event.Summary = fmt.Sprintf("%s: %s expected, likely %s", who, words.Stage(s.Stage), s.Window.Likely)
			event.Description = strings.TrimSpace(fmt.Sprintf("%s\nThis rests on %s.\n%s", windowNote(s.Window), s.RestsOn.Words, rearing.StageNote(s.Stage)))
		}
		e.add(event)
	}
	for _, c := range k.Cares(e.Collection.Away) {
		e.add(calendar.Event{
			Key: Key("clutch", k.ID, c.Key()), Span: civil.Day(c.On), Category: PrepareCategory, Cancelled: c.Over,
			Summary: who + ": " + c.Title(), Description: careNote(c, windows[c.Stage.String()]),
		})
	}
}

// careNote gives the rest of a care, and what its day goes by.
func careNote(c rearing.Care, w civil.Window) string {
	end, on := "early", w.Early
	if c.LeadDays < 0 {
		end, on = "likely", w.Likely
	}
	return fmt.Sprintf("%s\nGoes by the %s date of %s, %s.", c.Detail(), end, words.Stage(c.Stage.String()), on)
}

// windowNote gives the 10th, 50th and 90th percentile.
func windowNote(w civil.Window) string {
	return fmt.Sprintf("Early %s, likely %s, late %s.", w.Early, w.Likely, w.Late)
}
