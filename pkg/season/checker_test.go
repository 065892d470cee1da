package season_test

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/season"
)

// faults checks a plan day by day against what was asked, knowing nothing of how
// it was made, and says what is wrong with it.
func faults(room season.Room, pairings []season.Pairing, today civil.Date, s season.Season) []string {
	var found []string
	fault := func(format string, args ...any) { found = append(found, fmt.Sprintf(format, args...)) }
	if len(s.Cycles) != len(pairings) {
		return []string{"a cycle is missing"}
	}
	for i, p := range pairings {
		c := s.Cycles[i]
		if c.Pairing != p.ID || len(c.Phases) != len(p.Phases) {
			fault("%s: not its cycle", p.ID)
			continue
		}
		checkChain(p, c, fault)
		stuck := slices.ContainsFunc(s.Conflicts, func(x season.Conflict) bool {
			return x.Kind == season.Away && x.Pairings[0] == p.ID
		})
		late := slices.ContainsFunc(s.Conflicts, func(x season.Conflict) bool {
			return x.Kind == season.TooLate && x.Pairings[0] == p.ID
		})
		if broken := handsOnAway(room, p, c); stuck != (broken != "") {
			fault("%s: conflict over days away: %v, event on a day away: %q", p.ID, stuck, broken)
		}
		if p.ReadyBy.Known() && !late {
			checkInTime(p, c, today, fault)
		}
		for k, at := range p.Stages {
			want := civil.Window{Early: c.RainStart.Add(at.Early), Likely: c.RainStart.Add(at.Likely), Late: c.RainStart.Add(at.Late)}
			if c.Stages[k].Window != want || c.Stages[k].Stage != at.Stage {
				fault("%s: stage %s: %v", p.ID, at.Stage, c.Stages[k])
			}
		}
	}
	return found
}

type faultf func(format string, args ...any)

// checkChain: phases follow each other without a gap, begin where recorded, and
// have lengths within their limits unless records say otherwise.
func checkChain(p season.Pairing, c season.Cycle, fault faultf) {
	lastRecorded := -1
	for k, d := range c.Phases {
		if d.Recorded {
			lastRecorded = k
			if !slices.Contains(p.Began, season.Began{Phase: d.Name, On: d.Span.First}) {
				fault("%s: %s is not recorded on %s", p.ID, d.Name, d.Span.First)
			}
		}
	}
	if lastRecorded < 0 && p.Start.Known() && len(c.Phases) > 0 && c.Phases[0].Span.First != p.Start {
		fault("%s: starts on %s, not %s", p.ID, c.Phases[0].Span.First, p.Start)
	}
	for k, d := range c.Phases {
		length := d.Span.Last.Sub(d.Span.First) + 1
		if k > 0 && d.Span.First != c.Phases[k-1].Span.Last.Add(1) {
			fault("%s: a gap before %s", p.ID, d.Name)
		}
		q := p.Phases[k]
		if d.Name != q.Name || d.Place != q.Place || length < 0 {
			fault("%s: %s is not the phase that was asked for", p.ID, d.Name)
		}
		if k >= lastRecorded && (length < q.Min || length > q.Max) {
			fault("%s: %s lasts %d days, not %d to %d", p.ID, d.Name, length, q.Min, q.Max)
		}
	}
}

// handsOnAway names an event after the last record that falls on a day away.
func handsOnAway(room season.Room, p season.Pairing, c season.Cycle) string {
	onAway := func(d civil.Date) bool {
		return slices.ContainsFunc(room.Away, func(s civil.Span) bool { return s.Contains(d) })
	}
	bad := ""
	for k, d := range c.Phases {
		moved := d.Name == "rain" || d.Place != ""
		if d.Recorded {
			bad = ""
		} else if (k > 0 || moved) && onAway(d.Span.First) {
			bad += " start of " + d.Name
		}
		if k == len(c.Phases)-1 && moved && onAway(d.Span.Last.Add(1)) {
			bad += " end of " + d.Name
		}
	}
	return bad
}

func checkInTime(p season.Pairing, c season.Cycle, today civil.Date, fault faultf) {
	raining := slices.ContainsFunc(c.Phases, func(d season.Dated) bool { return d.Recorded && (d.Name == "rain" || d.Name == "rest") })
	if late := c.RainStart.Add(p.ReadyAfter) > p.ReadyBy; late && raining {
		if !slices.ContainsFunc(c.Warnings, func(w string) bool { return strings.Contains(w, "at the wished certainty young are ready") }) {
			fault("%s: rain on %s is late for %s, without a warning", p.ID, c.RainStart, p.ReadyBy)
		}
	} else if late {
		fault("%s: rain on %s is too late for %s", p.ID, c.RainStart, p.ReadyBy)
	}
	recorded := slices.ContainsFunc(c.Phases, func(d season.Dated) bool { return d.Recorded })
	if !recorded && len(c.Phases) > 0 && c.Phases[0].Span.First < today {
		fault("%s: begins on %s, before today", p.ID, c.Phases[0].Span.First)
	}
}
