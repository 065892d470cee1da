package frogroom

import (
	"cmp"
	"context"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/rearing"
)

// Events gives the season as dated events: the hands-on days of each planned
// pairing and the windows of its young, the windows of every clutch that is
// running, what has to be ready before them, and the targets with their last
// shipping days.
//
// An event is named by what it is, so that it keeps its UID when it moves. Its
// Sequence is the number of diary entries that can have moved it, and Changed the
// day of the last of them. For a clutch these are the entries about clutches of
// its species, for each of them teaches, and temperatures of places. Pairings are
// planned together, so that for each of them these are the entries about any pairing,
// those that teach of a species that is planned, and the clutches of pairings. An
// event about a clutch has not changed before that was laid, or first seen; one about
// a pairing without an entry changed on the day of the newest entry of the diary, or
// the day that counts as today in a file without one. What will not be any more is cancelled. Where people already
// have a calendar, [calendar.Calendar.Since] goes on from that one instead.
//
// Pairings that are over are among them, those that cannot be planned are not;
// [Room.Season] names these.
func (r *Room) Events(on civil.Date) calendar.Calendar {
	c, _ := r.PlanEvents(context.Background(), on, Planning{})
	return c
}

// PlanEvents is [Room.Events] with more to say about the planning, and gives what is in
// the way of the season too. Its pairings are always all of the file.
func (r *Room) PlanEvents(ctx context.Context, on civil.Date, o Planning) (calendar.Calendar, []Conflict) {
	mustKnow(on)
	p, c := r.planWith(ctx, on, o, r.allPairings()), r.Calendar()
	c.Events = r.events(p)
	return c, p.current().clashes()
}

// Calendar gives the calendar of this room without its events: for these a season is
// planned, and [calendar.Published.Of] asks for none.
func (r *Room) Calendar() calendar.Calendar {
	name := cmp.Or(r.Collection.Keeper, "frog room")
	return calendar.Calendar{ID: name, Name: name}
}

// Extent gives the days from the first event of a calendar to the last.
func Extent(c calendar.Calendar) civil.Span {
	var s civil.Span
	for i, e := range c.Events {
		if i == 0 {
			s = e.Span
		}
		s.First, s.Last = min(s.First, e.Span.First), max(s.Last, e.Span.Last)
	}
	return s
}

func (r *Room) events(p *plan) []calendar.Event {
	e := &events{room: r, on: p.on, unchanged: r.lastEntry(p.on), taught: make(map[string]change)}
	for _, k := range p.clutches {
		e.clutch(k)
	}
	for _, one := range p.planned {
		e.pairing(r.tell(p.kin, one, p.on))
	}
	for _, t := range r.Collection.Targets {
		e.target(t)
	}
	return e.list
}

// lastEntry gives the newest day of the diary up to on, and on when there is none.
func (r *Room) lastEntry(on civil.Date) civil.Date {
	var last civil.Date
	for i := range r.Collection.Diary {
		if d := r.Collection.Diary[i].On; d <= on {
			last = max(last, d)
		}
	}
	if !last.Known() {
		return on
	}
	return last
}

// events collects the events of a calendar.
type events struct {
	room      *Room
	on        civil.Date
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
	for i := range e.room.Collection.Pairings {
		p := &e.room.Collection.Pairings[i]
		planned[p.Species] = true
		clutches, laid := upTo(e.on, e.room.laid[p.ID])
		c.times += clutches
		c.last = max(c.last, laid)
	}
	for i := range e.room.Collection.Diary {
		entry := &e.room.Collection.Diary[i]
		if entry.On <= e.on && (entry.Pairing != "" || e.teaches(entry, func(species string) bool { return planned[species] })) {
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
	k, ok := e.room.Collection.Clutch(entry.Clutch)
	return ok && of(k.Species) || entry.Place != "" && (entry.WaterC.Known || entry.AirC.Known)
}

// lessons gives how often the diary has said something that moves a clutch: about
// any clutch of its species, or how warm a place is.
func (e *events) lessons(k rearing.Tended) change {
	c, known := e.taught[k.Species]
	if !known {
		for i := range e.room.Collection.Diary {
			entry := &e.room.Collection.Diary[i]
			if entry.On <= e.on && e.teaches(entry, func(species string) bool { return species == k.Species }) {
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

// key names an event by what it is. Signs that would let two events share a key
// are written otherwise.
func key(kind, id string, what ...string) string {
	parts := append([]string{kind, escapes.Replace(id)}, what...)
	return strings.Join(parts, "/")
}

var escapes = strings.NewReplacer("%", "%25", "/", "%2F")

func day(d civil.Date) civil.Span { return civil.Span{First: d, Last: d} }

func whole(w civil.Window) civil.Span { return civil.Span{First: w.Early, Last: w.Late} }

// Categories of events.
const (
	seenCategory    = "seen"
	clutchCategory  = "clutch"
	prepareCategory = "prepare"
	pairingCategory = "pairing"
	refusedCategory = "pairing that should not be made" // no work for anybody
	youngCategory   = "planned young"
	targetCategory  = "target"
	parcelCategory  = "shipping"
)
