package frogroom

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/internal/words"
	"github.com/spawnwright/spawnwright/pkg/timetable"
)

// whyLeftOut says for each pairing that is left out why.
func (p *plan) whyLeftOut() []string {
	var out []string
	for _, l := range p.fitted.WhyOut {
		out = append(out, leftOutWords(l))
	}
	return out
}

func leftOutWords(l timetable.LeftOut) string {
	when := fmt.Sprintf("from %s to %s", l.Days.First, l.Days.Last)
	switch {
	case l.Conflict != nil:
		return l.Conflict.Message
	case l.Unfit:
		return l.Pairing + ": the room has no place for it as wished, even without the others"
	case l.Dear:
		return l.Pairing + ": even without the others, days in this room would cost as much as leaving it out"
	case len(l.Busy) > 0:
		return fmt.Sprintf("%s: alone it would have %s %s, who %s in another pairing then; no other days were found that cost less than leaving it out", l.Pairing, words.And(l.Busy), when, isOrAre(l.Busy))
	case l.Short != "":
		return fmt.Sprintf("%s: with the days that it would have alone there are too few %s beside the others %s; no other days were found that cost less than leaving it out", l.Pairing, places[l.Short][1], when)
	}
	return l.Pairing + ": beside the others no days were found that cost less than leaving it out"
}

func isOrAre(names []string) string {
	if len(names) == 1 {
		return "is"
	}
	return "are"
}
