package frogroom

import (
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/internal/words"
	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/timetable"
)

// noPlan tells a keeper about pairings that cannot run together, with what would
// do.
func (r *Room) noPlan(c timetable.Conflict) *Conflict {
	message := r.why(c)
	var cures []string
	for _, cure := range c.Cures {
		if text := r.cure(cure); text != "" {
			cures = append(cures, text)
		}
	}
	if len(cures) > 0 {
		message += "; " + strings.Join(cures, ", or ") + " would do"
	}
	out := &Conflict{Kind: NoPlan, Pairings: c.Chains, Place: c.Resource, Animals: c.Animals, Message: message}
	if c.Resource != "" {
		out.Days = c.Days
	}
	return out
}

// why says what the pairings cannot share.
func (r *Room) why(c timetable.Conflict) string {
	if c.Unplaced {
		return fmt.Sprintf("the search ended without a place for %s beside all others as wished; a longer search may find one", words.And(c.Chains))
	}
	if !c.Proven {
		return "as far as was found, " + r.short(c)
	}
	return r.short(c)
}

func (r *Room) short(c timetable.Conflict) string {
	who, when := words.And(c.Chains), ""
	if c.Days.Days() > 0 {
		when = fmt.Sprintf(" between %s and %s", c.Days.First, c.Days.Last)
	}
	switch {
	case c.Resource == planner.Minutes:
		return fmt.Sprintf("%d minutes a day cannot do for the work of %s as wished%s", c.Count, who, when)
	case c.Resource != "":
		return fmt.Sprintf("%s cannot hold %s as wished%s", count(c.Count, c.Resource), who, when)
	case len(c.Animals) > 0:
		return fmt.Sprintf("%s cannot be in %s as wished", words.And(c.Animals), who)
	case len(c.Busy) > 0:
		return fmt.Sprintf("%s cannot be in %s as wished and in another pairing that cannot be moved", words.And(c.Busy), who)
	}
	return fmt.Sprintf("no plan is possible for %s as wished", who)
}

func (r *Room) cure(c planner.Cure) string {
	switch {
	case c.Chain != "":
		return fmt.Sprintf("%s %s later", c.Chain, words.Days(c.Days))
	case c.Away > 0:
		return fmt.Sprintf("somebody in the room on %s", r.Collection.Away[c.Away-1])
	}
	if word, ok := places[c.Resource]; ok {
		if c.More == 1 {
			return "one more " + word[0]
		}
		return fmt.Sprintf("%d more %s", c.More, word[1])
	}
	return "" // an animal
}

// places are the words for one and for several of what can run short.
var places = map[string][2]string{
	species.RainChamber:  {"rain chamber", "rain chambers"},
	species.CoolingPlace: {"cooling place", "cooling places"},
	timetable.Tub:        {"tadpole tub", "tadpole tubs"},
	timetable.Bin:        {"froglet bin", "froglet bins"},
	planner.Minutes:      {"minute a day", "minutes a day"},
}

func count(n int, place string) string {
	word, ok := places[place]
	if !ok {
		word = [2]string{place, place + "s"}
	}
	if n == 1 {
		return "1 " + word[0]
	}
	return fmt.Sprintf("%d %s", n, word[1])
}
