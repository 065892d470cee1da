package frogroom

import (
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/planner"
)

// noPlan tells a keeper about pairings that cannot run together, with what would
// do.
func (r *Room) noPlan(c planner.Conflict) *Conflict {
	message := "no plan was found for " + and(c.Chains)
	if c.Proven {
		message = "no plan is possible for " + and(c.Chains)
	}
	if len(c.Chains) > 1 {
		message += " together"
	}
	message += " as wished"
	var cures []string
	for _, cure := range c.Cures {
		if text := r.cure(cure); text != "" {
			cures = append(cures, text)
		}
	}
	if len(cures) > 0 {
		message += "; " + strings.Join(cures, ", or ") + " would do"
	}
	return &Conflict{Kind: NoPlan, Pairings: c.Chains, Message: message}
}

func (r *Room) cure(c planner.Cure) string {
	switch {
	case c.Chain != "":
		days := "days"
		if c.Days == 1 {
			days = "day"
		}
		return fmt.Sprintf("%s %d %s later", c.Chain, c.Days, days)
	case c.Away > 0:
		return fmt.Sprintf("somebody in the room on %s", r.Collection.Away[c.Away-1])
	case !strings.HasPrefix(c.Resource, animalResource):
		if c.More == 1 {
			return "one more " + c.Resource
		}
		return fmt.Sprintf("%d more %ss", c.More, c.Resource)
	}
	return ""
}

// and joins ids: "A, B and C".
func and(ids []string) string {
	if n := len(ids); n > 1 {
		return strings.Join(ids[:n-1], ", ") + " and " + ids[n-1]
	}
	return strings.Join(ids, "")
}
