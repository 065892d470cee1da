// Package almanac says which days of a season go into a calendar: the hands-on days of
// each planned pairing and the windows of its young, the windows of every clutch that
// runs, what has to be ready before them, and the targets with their last shipping days.
//
//	events := almanac.Season{Collection: c, On: today, Clutches: tended}.Events()
//
// An event keeps its name when it moves, and counts what the diary has said that can
// have moved it. How a calendar is written is the business of calendar.
package almanac

import (
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/rearing"
)

// Season is what there is to tell of.
type Season struct {
	Collection *collection.Collection
	On         civil.Date // today: the diary counts up to it
	Clutches   []rearing.Tended
	Pairings   []Pairing               // those that are planned
	Laid       map[string][]civil.Date // the days of the clutches of each pairing, in order
	Shipping   calendar.Shipping
}

// Pairing is one that is planned.
type Pairing struct {
	ID, Species string
	Dams, Sires []string
	Phases      []Phase // at least one
	Stages      []Stage // of its young
	NoYoung     bool    // none are waited for: it rests, and no clutch was laid
	Refused     bool    // it should not be made, as the findings say
	Findings    []string
}

// Phase is when a phase of a pairing runs.
type Phase struct {
	Name     string
	Span     civil.Span
	Recorded bool // it has begun
}

// Stage is when young reach a stage.
type Stage struct {
	Stage  string
	Window civil.Window
}

// Events gives the events of the clutches, then of the pairings and the targets of the
// collection. Each has a [Key] of its own, one of the categories of this package, and in
// Sequence and Changed how often, and when last, something was recorded that can have
// moved it. It panics for a pairing without phases, or of a species that the collection
// does not have.
func (s Season) Events() []calendar.Event {
	e := &events{Season: s, unchanged: s.lastEntry(), taught: make(map[string]change)}
	for _, k := range s.Clutches {
		e.clutch(k)
	}
	for _, one := range s.Pairings {
		e.pairing(one)
	}
	for _, t := range s.Collection.Targets {
		e.target(t)
	}
	return e.list
}

// laid gives the days up to today on which clutches of a pairing were laid.
func (s Season) laid(pairing string) []civil.Date {
	n, _ := slices.BinarySearch(s.Laid[pairing], s.On+1)
	return s.Laid[pairing][:n]
}

// lastEntry gives the newest day of the diary up to the day that counts as today, and
// that day when there is none.
func (s Season) lastEntry() civil.Date {
	var last civil.Date
	for i := range s.Collection.Diary {
		if d := s.Collection.Diary[i].On; d <= s.On {
			last = max(last, d)
		}
	}
	if !last.Known() {
		return s.On
	}
	return last
}

// events collects the events of a calendar.
type events struct {
	Season
	unchanged civil.Date // Changed of what the diary says nothing about
	about     change     // of the events that come
	list      []calendar.Event
	taught    map[string]change // what has moved the clutches of a species
	plan      *change           // what has moved the pairings; nil until somebody asks
}

// change is how often something changed, and when last.
type change struct {
	times int
	last  civil.Date
}

// moves gives how often something can have moved the plan, in which all pairings
// stand together: what the diary says of a pairing, or what moves the clutches of a
// species that is planned with; and each clutch of a pairing that was laid.
func (e *events) moves() change {
	if e.plan != nil {
		return *e.plan
	}
	var c change
	planned := make(map[string]bool)
	for i := range e.Collection.Pairings {
		p := &e.Collection.Pairings[i]
		planned[p.Species] = true
		for _, day := range e.laid(p.ID) {
			c.times++
			c.last = max(c.last, day)
		}
	}
	for i := range e.Collection.Diary {
		entry := &e.Collection.Diary[i]
		if entry.On <= e.On && (entry.Pairing != "" || e.teaches(entry, func(species string) bool { return planned[species] })) {
			c.times++
			c.last = max(c.last, entry.On)
		}
	}
	if !c.last.Known() {
		c.last = e.unchanged
	}
	e.plan = &c
	return c
}

// teaches reports whether an entry is about a clutch of a species, or says how warm
// a place is.
func (e *events) teaches(entry *collection.Entry, of func(species string) bool) bool {
	k, ok := e.Collection.Clutch(entry.Clutch)
	return ok && of(k.Species) || entry.Place != "" && (entry.WaterC.Known || entry.AirC.Known)
}

// lessons gives how often the diary has said something that moves a clutch: about
// any clutch of its species, or how warm a place is.
func (e *events) lessons(k rearing.Tended) change {
	c, known := e.taught[k.Species]
	if !known {
		for i := range e.Collection.Diary {
			entry := &e.Collection.Diary[i]
			if entry.On <= e.On && e.teaches(entry, func(species string) bool { return species == k.Species }) {
				c.times++
				c.last = max(c.last, entry.On)
			}
		}
		e.taught[k.Species] = c
	}
	c.last = max(c.last, k.Since)
	return c
}

func (e *events) add(event calendar.Event) {
	event.Sequence, event.Changed = e.about.times, e.about.last
	e.list = append(e.list, event)
}

// Key names an event by what it is: the kind, "clutch", "pairing" or "target", the id of
// that, and what of it. Signs in an id that would let two events share a key are written
// otherwise.
func Key(kind, id string, what ...string) string {
	parts := append([]string{kind, escapes.Replace(id)}, what...)
	return strings.Join(parts, "/")
}

var escapes = strings.NewReplacer("%", "%25", "/", "%2F")

// Categories of events.
const (
	SeenCategory    = "seen"
	ClutchCategory  = "clutch"
	PrepareCategory = "prepare"
	PairingCategory = "pairing"
	RefusedCategory = "pairing that should not be made" // no work for anybody
	YoungCategory   = "planned young"
	TargetCategory  = "target"
	ParcelCategory  = "shipping"
)
