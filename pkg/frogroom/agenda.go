package frogroom

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/almanac"
	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/internal/words"
	"github.com/spawnwright/spawnwright/pkg/rearing"
)

// Agenda is what is due in the frog room.
type Agenda struct {
	Days civil.Span `json:"days"`
	// Overdue is what was expected before today and has not been recorded, the
	// longest overdue first.
	Overdue []Overdue `json:"overdue"`
	// Tasks are what there is to do, by day.
	Tasks []Task `json:"tasks"`
	// Watch is what can be seen on these days, by stage and by its likely day.
	Watch []Watch `json:"watch"`
	// Away are the days on which nobody is in the room.
	Away []civil.Span `json:"away,omitempty"`
	// NoParcels are the public holidays among these days and the day after.
	NoParcels []Holiday `json:"no_parcels,omitempty"`
	// Parcels are the next three days on which one can be handed over.
	Parcels []civil.Date `json:"parcels"`
	// Conflicts are what is in the way of the season.
	Conflicts []Conflict `json:"conflicts"`
	// Warnings say what the agenda leaves out.
	Warnings []string `json:"warnings,omitempty"`
}

// Overdue is an entry of the diary that is missing: a stage of a clutch, or a
// phase of a pairing or its eggs.
type Overdue struct {
	Clutch  string     `json:"clutch,omitempty"`
	Pairing string     `json:"pairing,omitempty"`
	Place   string     `json:"place,omitempty"`   // of the clutch
	Stage   string     `json:"stage"`             // or the phase; "laid" for eggs
	Late    civil.Date `json:"late"`              // nine of ten clutches had reached it by then; of a phase its planned day
	SeenOn  civil.Date `json:"seen_on,omitempty"` // last look at the clutch
	Text    string     `json:"text"`
}

// Task is something to do on a day.
type Task struct {
	On   civil.Date `json:"on"`
	What string     `json:"what"`
	Note string     `json:"note,omitempty"`
}

// Watch is a stage that a clutch can reach on these days, or "laid" of a pairing
// that can lay.
type Watch struct {
	Clutch  string       `json:"clutch,omitempty"`
	Pairing string       `json:"pairing,omitempty"`
	Place   string       `json:"place,omitempty"` // of the clutch
	Stage   string       `json:"stage"`
	Window  civil.Window `json:"window"`
	Note    string       `json:"note,omitempty"`
}

// order is the place of the stage in the life of a clutch.
func (w Watch) order() development.Stage {
	s, _ := development.ParseStage(w.Stage)
	return s
}

// Holiday is a public holiday.
type Holiday struct {
	On   civil.Date `json:"on"`
	Name string     `json:"name"`
}

// Agenda gives what is due from a day on, for a number of days. It panics when
// that is below 1.
func (r *Room) Agenda(on civil.Date, days int) Agenda {
	mustKnow(on)
	if days < 1 {
		panic("frogroom: an agenda needs at least one day")
	}
	return r.agenda(r.plan(on, r.allPairings()), days)
}

// agenda gives what is due by a plan.
func (r *Room) agenda(p *plan, days int) Agenda {
	on := p.on
	a := Agenda{
		Days:    civil.Span{First: on, Last: on.Add(days - 1)},
		Overdue: []Overdue{}, Tasks: []Task{}, Watch: []Watch{},
		Parcels: append([]civil.Date{}, r.shipping().Next(on, 3)...),
	}
	clutches := p.clutches
	a.tasks(r.events(p))
	for _, k := range clutches {
		a.clutch(k.Clutch, r.silence(k.Clutch, on))
	}
	now := p.current()
	a.Conflicts = now.clashes()
	for _, one := range now.planned {
		a.eggs(r, one)
		a.pairing(one)
	}
	a.byNow(clutches, r.Collection.Away)
	slices.SortStableFunc(a.Tasks, func(x, y Task) int { return cmp.Compare(x.On, y.On) })
	slices.SortStableFunc(a.Watch, func(x, y Watch) int {
		return cmp.Or(cmp.Compare(x.order(), y.order()), cmp.Compare(x.Window.Likely, y.Window.Likely))
	})
	slices.SortStableFunc(a.Overdue, func(x, y Overdue) int { return cmp.Compare(x.Late, y.Late) })
	for _, s := range r.Collection.Away {
		if s.Overlaps(a.Days) {
			a.Away = append(a.Away, s)
		}
	}
	r.noParcels(&a)
	return a
}

// tasks adds the events that ask for hands.
func (a *Agenda) tasks(events []calendar.Event) {
	for _, e := range events {
		switch e.Category {
		case almanac.PrepareCategory, almanac.PairingCategory, almanac.TargetCategory, almanac.ParcelCategory:
			if !e.Cancelled && a.Days.Contains(e.Span.First) {
				a.Tasks = append(a.Tasks, Task{e.Span.First, e.Summary, e.Description})
			}
		}
	}
}

// silence says what has not been recorded since the last look at a clutch: a weight or
// a count since then is no look, but something.
func (r *Room) silence(k rearing.Clutch, on civil.Date) string {
	if slices.ContainsFunc(r.Collection.DiaryOf(k.ID), func(e *collection.Entry) bool { return e.On > k.SeenOn && e.On <= on }) {
		return "no stage"
	}
	return "nothing"
}

// clutch adds what there is to see of a clutch, and the first that is missing.
func (a *Agenda) clutch(k rearing.Clutch, silence string) {
	if k.Died() {
		return
	}
	overdue := false
	for _, s := range k.Stages {
		switch {
		case s.Overdue && !overdue:
			overdue = true
			a.Overdue = append(a.Overdue, Overdue{
				Clutch: k.ID, Place: k.Place, Stage: s.Stage, Late: s.Window.Late, SeenOn: k.SeenOn,
				Text: fmt.Sprintf("%s: %s expected by %s, %s recorded since %s (%s), %s",
					words.At(k.ID, k.Place), words.Stage(s.Stage), s.Window.Late, silence, k.SeenOn, words.Stage(k.Now), words.Days(a.Days.First.Sub(k.SeenOn))),
			})
		case s.Ahead() && a.Days.Overlaps(s.Window.Span()):
			a.Watch = append(a.Watch, Watch{Clutch: k.ID, Place: k.Place, Stage: s.Stage, Window: s.Window, Note: rearing.StageNote(s.Stage)})
		}
	}
}

// eggs adds those that a pairing can lay on these days, or should have laid. Of one
// that should not be made none are looked for, unless it is in the rain.
func (a *Agenda) eggs(r *Room, p planned) {
	laid := development.Laid.String()
	w, ok := r.eggs(p, a.Days.First)
	if ok && (p.verdict.Allowed() || p.raining()) && a.Days.Overlaps(w.Span()) {
		a.Watch = append(a.Watch, Watch{Pairing: p.ID, Stage: laid, Window: w})
	}
	if w, text := r.noEggs(p, a.Days.First); text != "" {
		a.Overdue = append(a.Overdue, Overdue{Pairing: p.ID, Stage: laid, Late: w.Late, Text: p.ID + ": " + text})
	}
}

// pairing adds the phase that a cycle should be in and that is not recorded. A
// cycle that is over by its plan is no longer waited for.
func (a *Agenda) pairing(p planned) {
	if p.cycle.Span().Last < a.Days.First {
		return
	}
	if !p.verdict.Allowed() {
		if p.cycle.Span().First <= a.Days.Last {
			a.Warnings = append(a.Warnings, fmt.Sprintf("%s should not be made, so its days are left out; `spawnwright season` says why", p.ID))
		}
		return
	}
	for _, ph := range slices.Backward(p.cycle.Phases) {
		if ph.Span.First < a.Days.First {
			if !ph.Recorded {
				a.Overdue = append(a.Overdue, Overdue{
					Pairing: p.ID, Stage: ph.Name, Late: ph.Span.First,
					Text: fmt.Sprintf("%s: %s was to begin on %s, nothing recorded of it", p.ID, words.Stage(ph.Name), ph.Span.First),
				})
			}
			return
		}
	}
}

// byNow reminds of what should have been done by now for a stage that is ahead,
// the clutches together.
func (a *Agenda) byNow(clutches []rearing.Tended, away []civil.Span) {
	who := make(map[development.Care][]string)
	for _, k := range clutches {
		for _, c := range k.Cares(away) {
			if c.LeadDays > 0 && !c.Over && c.On < a.Days.First {
				who[c.Care] = append(who[c.Care], words.At(k.ID, k.Place))
			}
		}
	}
	for _, c := range development.Cares() {
		if due := who[c]; len(due) > 0 {
			a.Tasks = append(a.Tasks, Task{
				On: a.Days.First, What: fmt.Sprintf("by now: %s: %s", rearing.Care{Care: c}.Title(), strings.Join(due, ", ")), Note: rearing.Care{Care: c}.Detail(),
			})
		}
	}
}

// noParcels adds the public holidays that stop parcels.
func (r *Room) noParcels(a *Agenda) {
	if r.holidays == nil {
		a.Warnings = append(a.Warnings, "public holidays are not known (holidays: is left out), so parcel days are checked for weekdays only")
		return
	}
	for i := range a.Days.Days() + 1 {
		d := a.Days.First.Add(i)
		if name, ok := r.holidays.On(d); ok && (i == 0 || d > a.Days.First.Add(i-1)) {
			a.NoParcels = append(a.NoParcels, Holiday{d, name})
		}
	}
}
