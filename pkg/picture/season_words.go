package picture

import (
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

// inWords is for those who do not see the chart.
func (c *chart) inWords(p seasonPart) string {
	texts := []string{fmt.Sprintf("A chart of the days from %s to %s; today is %s.", c.days.First, c.days.Last, c.On)}
	for _, text := range c.trouble() {
		texts = append(texts, text+".")
	}
	for _, t := range c.Targets {
		text := fmt.Sprintf("%s on %s: %d wanted", t.Name, t.On, t.Wanted)
		if t.ChancePct != nil {
			text += fmt.Sprintf(", with a chance of %d %%", *t.ChancePct)
		}
		texts = append(texts, text+".")
	}
	for _, r := range p.rows {
		switch {
		case r.pairing != nil:
			texts = append(texts, c.pairingInWords(r.pairing)+staysInWords(r.young)+".")
		case r.clutch != nil:
			texts = append(texts, "Clutch "+r.clutch.ID+", "+clutchText(r.clutch)+staysInWords(r.young)+".")
		}
	}
	if p.places {
		for _, l := range c.Loads {
			texts = append(texts, c.placeInWords(l))
		}
	}
	return strings.Join(texts, " ")
}

func (c *chart) pairingInWords(p *frogroom.PlannedPairing) string {
	text := "Pairing " + p.ID + ", " + c.pairingText(p)
	if p.Refused {
		text += ", which should not be made"
	}
	for _, ph := range p.Phases {
		if ph.Span.Days() > 0 {
			text += fmt.Sprintf("; %s %s to %s", ph.Name, ph.Span.First, ph.Span.Last)
		}
	}
	return text
}

func staysInWords(list []stay) string {
	text := ""
	for _, s := range list {
		text += fmt.Sprintf("; %s from %s", s.word, windowWords(s.from))
	}
	return text
}

func (c *chart) placeInWords(l frogroom.PlaceDays) string {
	most := 0
	for _, n := range l.Kept {
		most = max(most, n)
	}
	text := fmt.Sprintf("%s: %d there, at most %d kept or in use", placeWords(l.What), l.Of, most)
	for _, days := range l.Short {
		text += ", at risk " + days.String()
	}
	for _, r := range c.Risks {
		if r.What == l.What {
			text += "; " + r.Text
		}
	}
	return text + "."
}
