package almanac

import (
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/internal/words"
)

// pairing adds the days on which there is work with a planned pairing, and the
// windows of its young. Once its clutch is laid the clutch speaks for itself.
func (e *events) pairing(p Pairing) {
	none := p.NoYoung || len(e.laid(p.ID)) > 0
	e.about = e.moves()
	e.phases(p)
	for _, s := range p.Stages {
		e.add(calendar.Event{
			Key: Key("pairing", p.ID, "young", s.Stage), Span: s.Window.Span(), Category: YoungCategory, Cancelled: none,
			Summary:     fmt.Sprintf("%s: %s, if all goes to plan, likely %s", p.ID, words.Planned(s.Stage), s.Window.Likely),
			Description: windowNote(s.Window),
		})
	}
}

func (e *events) phases(p Pairing) {
	profile := e.Collection.MustProfile(p.Species)
	who := strings.Join(p.Dams, ", ") + " × " + strings.Join(p.Sires, ", ")
	for _, ph := range p.Phases {
		if ph.Span.Days() == 0 {
			continue
		}
		event := calendar.Event{
			Key: Key("pairing", p.ID, ph.Name), Span: civil.Day(ph.Span.First), Category: PairingCategory,
			Summary:     fmt.Sprintf("%s: %s begins (%s)", p.ID, words.Stage(ph.Name), who),
			Description: fmt.Sprintf("Until %s.%s%s", ph.Span.Last, against(p), phaseNote(profile, ph.Name)),
		}
		switch {
		case ph.Recorded:
			event.Category = SeenCategory
			event.Summary = fmt.Sprintf("%s: %s began (%s)", p.ID, words.Stage(ph.Name), who)
		case p.Refused:
			event.Category = RefusedCategory
		}
		e.add(event)
	}
	last := p.Phases[len(p.Phases)-1]
	category := PairingCategory
	if p.Refused {
		category = RefusedCategory
	}
	e.add(calendar.Event{
		Key: Key("pairing", p.ID, "over"), Span: civil.Day(last.Span.Last.Add(1)), Category: category,
		Summary: fmt.Sprintf("%s: %s is over (%s)", p.ID, words.Stage(last.Name), who),
	})
}

// against says why a pairing should not be made, in a line of its own.
func against(p Pairing) string {
	if !p.Refused {
		return ""
	}
	return "\nShould not be made: " + strings.Join(p.Findings, "; ") + "."
}
