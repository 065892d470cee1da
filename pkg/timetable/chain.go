package timetable

import (
	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/season"
)

// mostStretch is the most days by which a phase is made longer than usual.
const mostStretch = 366

// chain gives a pairing in the terms of the planner. The days with hands on the
// animals are those of [season.Plan].
func (f *fitting) chain(i int, r rules) planner.Chain {
	p := f.inputs[i]
	c := planner.Chain{ID: p.ID, Animals: p.Animals, LeaveOut: dayWeight * p.LeaveOut}
	from := f.skipped(i)
	for k := from; k < len(p.Phases); k++ {
		ph := p.Phases[k]
		q := planner.Phase{
			Name: ph.Name, Min: ph.Min, Usual: ph.Usual, Max: min(ph.Max, ph.Usual+mostStretch), Stretch: stretchWeight,
			Attended: r <= adultsAll && ph.Name == season.Rain, Minutes: p.Work[ph.Name],
		}
		switch begun := f.begun(i); {
		case k == begun:
			f.goOn(i, k, &q)
		case k == 0 && p.Start.Known():
			q.Earliest, q.Latest = p.Start, p.Start
		case k == 0 && p.NotBefore > f.on:
			q.Earliest = p.NotBefore
		}
		if ph.Place != "" {
			q.Uses = append(q.Uses, planner.Use{Resource: ph.Place, Amount: 1})
		}
		for _, id := range p.Animals {
			if name, known := f.held[id]; known {
				q.Uses = append(q.Uses, planner.Use{Resource: name, Amount: 1})
			}
		}
		if k > from || k > f.begun(i) && moved(ph) {
			c.Visits = append(c.Visits, planner.Visit{Phase: ph.Name})
		}
		c.Phases = append(c.Phases, q)
	}
	if moved(p.Phases[len(p.Phases)-1]) {
		c.Visits = append(c.Visits, planner.Visit{Phase: planner.End})
	}
	f.wish(i, &c)
	f.young(p, &c, r)
	return c
}

// goOn makes a phase that has begun one that begins today and lasts for the rest
// of its days.
func (f *fitting) goOn(i, k int, q *planner.Phase) {
	gone := f.on.Sub(f.alone.Cycles[i].Phases[k].Span.First)
	q.Minutes = 0 // they are taken, for they cannot be put off
	q.Earliest, q.Latest = f.on, f.on
	q.Min, q.Usual, q.Max = max(q.Min-gone, 0), max(q.Usual-gone, 0), max(q.Max-gone, 0)
	// What is recorded can have made it longer than its limits.
	planned := f.alone.Cycles[i].Phases[k].Span.Last.Add(1).Sub(f.on)
	q.Max, q.Min = max(q.Max, planned), min(q.Min, planned)
}

// wish adds the day on which the rain is wished for, and what was announced.
func (f *fitting) wish(i int, c *planner.Chain) {
	p, begun := f.inputs[i], f.begun(i)
	from := anchor(p.Pairing)
	for k := range c.Phases {
		q := &c.Phases[k]
		if q.Name != from || !p.ReadyBy.Known() {
			continue
		}
		w := planner.Wish{Phase: q.Name, On: p.ReadyBy.Add(-p.ReadyAfter)}
		if begun < 0 {
			w.Early = max(dayWeight*p.Early, tieWeight)
		}
		if p.MayBeLate {
			w.Late = max(dayWeight*p.Late, tieWeight)
		} else {
			q.Latest = w.On
		}
		c.Wishes = append(c.Wishes, w)
	}
	for k := begun + 1; k <= len(p.Phases); k++ {
		name := f.boundary(i, k)
		if day, told := p.Announced[name]; told {
			c.Wishes = append(c.Wishes, planner.Wish{Phase: name, On: day, Early: announcedWeight, Late: announcedWeight})
		}
	}
}

// young adds what the young hold and the days on which they need hands, and the
// place for a second attempt.
func (f *fitting) young(p Pairing, c *planner.Chain, r rules) {
	from := anchor(p.Pairing)
	for _, h := range p.Young {
		h.Phase = from
		c.Holds = append(c.Holds, h)
	}
	for _, v := range p.Hands {
		if v.Phase = from; r == allHands {
			c.Visits = append(c.Visits, v)
		}
	}
	for k, ph := range p.Phases {
		if !f.Retry || p.Laid || ph.Name != season.Rain || ph.Place == "" {
			continue
		}
		after := planner.End
		if k+1 < len(p.Phases) {
			after = p.Phases[k+1].Name
		}
		c.Holds = append(c.Holds, planner.Hold{Phase: after, From: f.RetryAfter, To: f.RetryAfter + ph.Max, Resource: ph.Place, Amount: 1})
	}
}

// moved reports whether animals are moved into and out of a phase.
func moved(ph season.Phase) bool { return ph.Name == season.Rain || ph.Place != "" }
