package frogroom

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/occupancy"
)

// PlaceDays is how much of something is in use on each day, from the day of the
// season on.
type PlaceDays struct {
	What string // in the singular; "minutes" a day
	Of   int    // how much there is
	Kept []int  // what the plan holds, or keeps free
	// Low, Likely and High are the 10th, 50th and 90th percentile of what will be
	// needed when each clutch comes as large, as early and as late as it may, if
	// every pairing lays; nil where the plan decides and not biology.
	Low, Likely, High []int
	// Short are the days on which the plan holds more than there is, or on which
	// more is needed with a chance of 1 in 20 or more.
	Short []civil.Span
}

// placeDays gives the loads of the room by day.
func (p *plan) placeDays() []PlaceDays {
	g := newGamble(p)
	chances := make(map[string][]occupancy.Load)
	if len(g.season.Resources) > 0 {
		all, err := occupancy.Loads(g.season)
		if err != nil {
			panic("frogroom: " + err.Error()) // it was built from distributions
		}
		for i, loads := range all {
			chances[g.season.Resources[i].Name] = loads
		}
	}
	out := []PlaceDays{}
	for _, l := range p.fitted.Loads {
		d := PlaceDays{What: l.Resource, Of: l.Count, Kept: l.Used}
		loads := chances[l.Resource]
		for _, x := range loads {
			d.Low, d.Likely, d.High = append(d.Low, x.P10), append(d.Likely, x.P50), append(d.High, x.P90)
		}
		for i, used := range l.Used {
			if used > l.Count || i < len(loads) && loads[i].Over >= wishedRisk {
				d.short(p.on.Add(i))
			}
		}
		out = append(out, d)
	}
	return out
}

// short adds a day to those that are short.
func (d *PlaceDays) short(on civil.Date) {
	if n := len(d.Short); n > 0 && d.Short[n-1].Last.Add(1) == on {
		d.Short[n-1].Last = on
		return
	}
	d.Short = append(d.Short, civil.Day(on))
}
