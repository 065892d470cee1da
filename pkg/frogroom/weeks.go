package frogroom

import (
	"cmp"
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/internal/words"
	"github.com/spawnwright/spawnwright/pkg/rearing"
	"github.com/spawnwright/spawnwright/pkg/timetable"
)

// Week is what there is to do in a week, and what is in the room.
type Week struct {
	First   civil.Date  `json:"first"` // a Monday
	Tasks   []WeekTask  `json:"tasks"`
	Present []Presence  `json:"present"`
	Loads   []PlaceLoad `json:"loads"`
	Food    []WeekFood  `json:"food"`
}

// WeekTask is one thing to do, or the likely day of one.
type WeekTask struct {
	On     civil.Date `json:"on"`
	What   string     `json:"what"`
	Likely bool       `json:"likely"` // biology decides the day
}

// Presence is who is where in a week, or at which age: those in cooling, tadpoles.
type Presence struct {
	What string   `json:"what"`
	Who  []string `json:"who"`
}

// PlaceLoad is how much of something is in use at most, and how much there is.
type PlaceLoad struct {
	What string     `json:"what"` // in the singular; "minutes" a day
	Most int        `json:"most"`
	Of   int        `json:"of"`
	On   civil.Date `json:"on"` // the first day with so many
}

// mostSeasonWeeks is how far the weeks of a season go.
const mostSeasonWeeks = 104

// weeks gives the season by week, from today to the last on which something is to
// be done.
func (p *plan) weeks() []Week {
	w := &weekly{plan: p, first: p.on.Add(-(int(p.on.Weekday()) + 6) % 7), weeks: []Week{}}
	for _, one := range p.planned {
		w.pairing(one)
	}
	for _, k := range p.clutches {
		w.clutch(k)
	}
	for _, t := range p.room.Collection.Targets {
		w.task(t.On, t.Name, false)
	}
	eaters := p.eaters()
	for i := range w.weeks {
		week := &w.weeks[i]
		week.Food = p.food(eaters, week.First)
		week.Loads = peaks(p.fitted.Loads, p.on, civil.Span{First: max(week.First, p.on), Last: week.First.Add(6)})
		slices.SortStableFunc(week.Tasks, func(a, b WeekTask) int { return cmp.Compare(a.On, b.On) })
	}
	return w.weeks
}

// peaks gives the most of each kind that is in use on the days of a span.
func peaks(loads []timetable.Load, from civil.Date, days civil.Span) []PlaceLoad {
	out := []PlaceLoad{}
	for _, l := range loads {
		top := PlaceLoad{What: l.Resource, Of: l.Count, On: days.First}
		for d := days.First; d <= min(days.Last, from.Add(len(l.Used)-1)); d++ {
			if n := l.Used[d.Sub(from)]; n > top.Most {
				top.Most, top.On = n, d
			}
		}
		out = append(out, top)
	}
	return out
}

// weekly collects the weeks of a season.
type weekly struct {
	*plan
	first civil.Date
	weeks []Week
}

// at gives the week of a day; nil when it is over, or too far ahead.
func (w *weekly) at(on civil.Date) *Week {
	n := on.Sub(w.first) / 7
	if on < w.first || n >= mostSeasonWeeks {
		return nil
	}
	for len(w.weeks) <= n {
		w.weeks = append(w.weeks, Week{First: w.first.Add(7 * len(w.weeks)), Tasks: []WeekTask{}, Present: []Presence{}})
	}
	return &w.weeks[n]
}

func (w *weekly) task(on civil.Date, what string, likely bool) {
	if on < w.on {
		return
	}
	if week := w.at(on); week != nil {
		week.Tasks = append(week.Tasks, WeekTask{on, what, likely})
	}
}

// present notes somebody in the weeks that a run of days touches. Who goes on to
// something else within a week is in that week where it begins it.
func (w *weekly) present(who, what string, days civil.Span) {
	for i := range w.weeks {
		week := &w.weeks[i]
		if !days.Contains(week.First) && (days.First < week.First || days.First > week.First.Add(6)) {
			continue
		}
		k := slices.IndexFunc(week.Present, func(x Presence) bool { return x.What == what })
		if k < 0 {
			week.Present = append(week.Present, Presence{What: what})
			k = len(week.Present) - 1
		}
		week.Present[k].Who = append(week.Present[k].Who, who)
	}
}

func (w *weekly) pairing(one planned) {
	w.at(one.cycle.Span().Last.Add(1))
	for _, ph := range one.cycle.Phases {
		if ph.Span.Days() == 0 {
			continue
		}
		if !ph.Recorded {
			w.task(ph.Span.First, fmt.Sprintf("%s: %s begins", one.ID, words.Stage(ph.Name)), false)
		}
	}
	w.task(one.cycle.Span().Last.Add(1), one.ID+": the cycle is over", false)
	var ages []age
	if w.room.awaits(one.Pairing, w.on) {
		for _, s := range one.cycle.Stages {
			ages = append(ages, age{s.Stage, s.Window.Likely, true})
		}
	}
	w.young("young of "+one.ID, ages)
	for _, ph := range one.cycle.Phases {
		if ph.Span.Days() > 0 {
			w.present(one.ID, words.Stage(ph.Name), ph.Span)
		}
	}
}

func (w *weekly) clutch(k rearing.Tended) {
	if k.Died() {
		return
	}
	ages := []age{{"laid", k.Outlook.Laid.Likely, false}}
	for _, s := range k.Stages {
		ages = append(ages, age{s.Stage, s.Window.Likely, s.Ahead()})
	}
	w.young(k.ID, ages)
}

// age is a stage with its likely day; ahead when it is not reached yet.
type age struct {
	stage string
	on    civil.Date
	ahead bool
}

// grownWords are what young are called from a stage on.
var grownWords = map[string]string{
	"laid": "eggs", "hatched": "tadpoles", "front-legs": "front legs out", "out-of-water": "froglets", "sale-ready": "sale-ready",
}

// young notes the stages of young, and the days on which they are likely to need
// hands.
func (w *weekly) young(who string, ages []age) {
	for i, a := range ages {
		word := grownWords[a.stage]
		if word == "" || !a.on.Known() {
			continue
		}
		if a.ahead {
			w.task(a.on, fmt.Sprintf("%s: %s", who, words.Planned(a.stage)), true)
		}
		until := a.on.Add(6)
		for _, next := range ages[i+1:] {
			if grownWords[next.stage] != "" {
				until = next.on.Add(-1)
				break
			}
		}
		if i == len(ages)-1 && !a.ahead {
			until = max(until, w.on.Add(6)) // nobody has said that they left
		}
		w.present(who, word, civil.Span{First: a.on, Last: max(until, a.on)})
	}
}
