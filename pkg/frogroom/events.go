package frogroom

import (
	"cmp"
	"context"

	"github.com/spawnwright/spawnwright/pkg/almanac"
	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
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
// the day that counts as today in a file without one. What will not be any more is
// cancelled. Where people already have a calendar, [calendar.Calendar.Since] goes on from
// that one instead.
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

// events gives those of a plan.
func (r *Room) events(p *plan) []calendar.Event {
	season := almanac.Season{
		Collection: r.Collection, On: p.on, Clutches: p.clutches, Laid: r.laid, Shipping: r.shipping(),
	}
	for _, one := range p.planned {
		season.Pairings = append(season.Pairings, r.forAlmanac(p, one))
	}
	return season.Events()
}

func (r *Room) forAlmanac(in *plan, one planned) almanac.Pairing {
	p := r.tell(in.kin, one, in.on)
	out := almanac.Pairing{ID: p.ID, Species: p.Species, Dams: p.Dams, Sires: p.Sires, Refused: p.Refused, Findings: p.Findings}
	_, out.NoYoung = r.rested(one.Pairing, in.on)
	for _, ph := range p.Phases {
		out.Phases = append(out.Phases, almanac.Phase{Name: ph.Name, Span: ph.Span, Recorded: ph.Recorded})
	}
	for _, s := range one.cycle.Stages {
		out.Stages = append(out.Stages, almanac.Stage{Stage: s.Stage, Window: s.Window})
	}
	return out
}
