package season

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// forward plans from the day on which the first phase begins, or from what is
// recorded.
func (j *job) forward() {
	c := j.rec.fix(j.question())
	start := single(j.Start)
	// A start that the records do not bear out was a wish; the phases before
	// the first record then have their usual length.
	if started := c.with(0, start); j.rec.last < 0 || started.ignoring(c.away).feasible() {
		c = started
	}
	if p, ok := c.solve(); ok {
		j.plan = p
		return
	}
	cure := ""
	if j.rec.last < 0 {
		later := j.question().with(0, from(j.Start)).usable()[0].first()
		if later <= int(civil.Last) {
			cure = fmt.Sprintf("; starting %s later, on %s, avoids it", count(later-int(j.Start), "day"), date(later))
		}
	}
	j.isAway(c, cure)
}

// isAway takes the plan that ignores the days away that are in the way.
func (j *job) isAway(c chain, cure string) {
	p, event, in := c.blocked()
	j.plan = p
	phase, what := "", ""
	if event < len(j.Phases) {
		phase, what = j.Phases[event].Name, "start"
	} else {
		phase, what = j.Phases[event-1].Name, "end"
	}
	j.conflicts = append(j.conflicts, Conflict{
		Kind: Away, Pairings: []string{j.ID}, Phase: phase, Days: in.span(),
		Message: fmt.Sprintf("%s: the %s of %s falls on %s, in the days away %s, and no lengths of the phases within their limits keep hands-on work off these%s",
			j.ID, what, phase, date(p[event]), in.span(), cure),
	})
}
