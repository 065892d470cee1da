package frogroom

import (
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// Events gives the season as dated events: the hands-on days of each planned
// pairing and the windows of its young, the windows of every clutch that is
// running, what has to be ready before them, and the targets with their last
// shipping days.
//
// An event is named by what it is, so that it keeps its UID when it moves. Its
// Sequence is the number of diary entries about its clutch or pairing, and
// Changed the day of the last of them; where there is none it is the newest
// entry of the diary, or the day that counts as today in a file without one.
// The errors are those of [Room.Season].
func (r *Room) Events(on civil.Date) (calendar.Calendar, error) {
	plan, err := r.Season(on)
	if err != nil {
		return calendar.Calendar{}, err
	}
	e := &events{room: r, on: on, unchanged: r.lastEntry(on)}
	for _, k := range r.Clutches(on) {
		e.clutch(k)
	}
	for _, p := range plan.Pairings {
		e.pairing(p)
	}
	for _, t := range r.Collection.Targets {
		e.target(t)
	}
	name := r.Collection.Keeper
	if name == "" {
		name = "frog room"
	}
	return calendar.Calendar{ID: name, Name: name, Events: e.list}, nil
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
	list      []calendar.Event
}

// add appends an event about a clutch, a pairing or a target.
func (e *events) add(subject string, event calendar.Event) {
	event.Changed = e.unchanged
	for _, entry := range e.room.Collection.DiaryOf(subject) {
		if entry.On <= e.on {
			event.Sequence++
			event.Changed = entry.On
		}
	}
	e.list = append(e.list, event)
}

func day(d civil.Date) civil.Span { return civil.Span{First: d, Last: d} }

func whole(w civil.Window) civil.Span { return civil.Span{First: w.Early, Last: w.Late} }

// Categories of events.
const (
	seenCategory    = "seen"
	clutchCategory  = "clutch"
	prepareCategory = "prepare"
	pairingCategory = "pairing"
	youngCategory   = "planned young"
	targetCategory  = "target"
	parcelCategory  = "shipping"
)

// at names a clutch with its place.
func at(id, place string) string {
	if place == "" {
		return id
	}
	return id + " (" + place + ")"
}

// clutch adds what was seen of a clutch and what is ahead of it.
func (e *events) clutch(k Clutch) {
	who := at(k.ID, k.Place)
	for _, s := range k.Stages {
		event := calendar.Event{Key: "clutch/" + k.ID + "/" + s.Stage, Span: whole(s.Window)}
		if s.Recorded {
			event.Category = seenCategory
			event.Summary = fmt.Sprintf("%s: %s, seen", who, stageWords(s.Stage))
		} else {
			event.Category = clutchCategory
			event.Summary = fmt.Sprintf("%s: %s expected, likely %s", who, stageWords(s.Stage), s.Window.Likely)
			event.Description = strings.TrimSpace(windowNote(s.Window) + "\n" + stageNote(s.Stage))
		}
		e.add(k.ID, event)
		if s.Stage == "front-legs" && !s.Recorded {
			e.add(k.ID, calendar.Event{
				Key: "clutch/" + k.ID + "/ramp", Span: day(s.Window.Early.Add(-rampLead)), Category: prepareCategory,
				Summary: who + ": ramp in, water low", Description: rampNote(s.Window),
			})
		}
	}
}

func rampNote(frontLegs civil.Window) string {
	return fmt.Sprintf("Front legs can come from %s.\n%s", frontLegs.Early, rampReason)
}

// rampReason goes with every reminder of a ramp.
const rampReason = "Froglets drown without a way out of the water once the front legs are out (Gosner 1960, stage 42; the lead of a few days is common practice, no source)."

// rampLead is how many days before the first front legs the way out of the
// water is put in (common practice, no source).
const rampLead = 3

// windowNote gives the 10th, 50th and 90th percentile.
func windowNote(w civil.Window) string {
	return fmt.Sprintf("Early %s, likely %s, late %s.", w.Early, w.Likely, w.Late)
}

// stageNote says in a sentence what a stage asks of the keeper.
func stageNote(stage string) string {
	switch stage {
	case "hatched":
		return "Do not feed before they feed: the yolk lasts until Gosner 25 (Gosner 1960)."
	case "feeding":
		return "First food now, little and often; remove what is left (common practice, no source)."
	case "front-legs":
		return "No food while the tail goes; a way out of the water at all times (common practice, no source)."
	case "out-of-water":
		return "Froglets dry out easily: damp hide, fresh air, a dish so small that none can drown (keeper article: Mailloux et al., Popular Tree Frogs)."
	case "sale-ready":
		return "The window says when most can be old enough. Only those leave that eat unaided and are large and round enough; very small ones die on the way (common practice, no source)."
	}
	return ""
}

// pairing adds the days on which there is work with a planned pairing, and the
// windows of its young. Once its clutch is laid the clutch speaks for itself.
func (e *events) pairing(p PlannedPairing) {
	profile := e.room.profile(p.Species)
	who := strings.Join(p.Dams, ", ") + " × " + strings.Join(p.Sires, ", ")
	for _, ph := range p.Phases {
		if ph.Span.Days() == 0 {
			continue
		}
		event := calendar.Event{
			Key: "pairing/" + p.ID + "/" + ph.Name, Span: day(ph.Span.First), Category: pairingCategory,
			Summary:     fmt.Sprintf("%s: %s begins (%s)", p.ID, stageWords(ph.Name), who),
			Description: fmt.Sprintf("Until %s.", ph.Span.Last) + phaseNote(profile, ph.Name),
		}
		if ph.Recorded {
			event.Summary = fmt.Sprintf("%s: %s began (%s)", p.ID, stageWords(ph.Name), who)
		}
		e.add(p.ID, event)
	}
	if n := len(p.Phases); n > 0 {
		e.add(p.ID, calendar.Event{
			Key: "pairing/" + p.ID + "/over", Span: day(p.Phases[n-1].Span.Last.Add(1)), Category: pairingCategory,
			Summary: fmt.Sprintf("%s: %s is over (%s)", p.ID, stageWords(p.Phases[n-1].Name), who),
		})
	}
	laid := e.room.hasClutch(p.ID, e.on)
	for _, s := range p.Stages {
		e.add(p.ID, calendar.Event{
			Key: "pairing/" + p.ID + "/young/" + s.Stage, Span: whole(s.Window), Category: youngCategory, Cancelled: laid,
			Summary:     fmt.Sprintf("%s: %s, if all goes to plan, likely %s", p.ID, plannedWords(s.Stage), s.Window.Likely),
			Description: windowNote(s.Window),
		})
	}
}

func plannedWords(stage string) string {
	if stage == "laid" {
		return "eggs"
	}
	return stageWords(stage)
}

// hasClutch reports whether a clutch of the pairing was laid by a day.
func (r *Room) hasClutch(pairing string, on civil.Date) bool {
	for i := range r.Collection.Clutches {
		if c := &r.Collection.Clutches[i]; c.Pairing == pairing && c.Laid <= on {
			return true
		}
	}
	return false
}

// rainCaution goes with every rain chamber.
const rainCaution = "Water and electricity: pump, heater and lamps on a residual-current device, mains off before hands go in; follow local codes."

// phaseNote gives the conditions of a phase from the profile, those of one
// source together.
func phaseNote(p *species.Profile, name string) string {
	ph, ok := p.Phase(species.PhaseName(name))
	if !ok {
		return ""
	}
	var note sourced
	if r := ph.DayC; r.Known() {
		note.add("day "+degrees(r.Low, r.High), r.Source)
	}
	if r := ph.NightC; r.Known() {
		note.add("night "+degrees(r.Low, r.High), r.Source)
	}
	if r := ph.HumidityPct; r.Known() {
		note.add(fmt.Sprintf("humidity %.3g to %.3g %%", r.Low, r.High), r.Source)
	}
	if n := ph.LightH; n.Known() {
		note.add(fmt.Sprintf("light %.3g h a day", n.Value), n.Source)
	}
	if t := ph.Feeding; t.Known() {
		note.add("feeding: "+t.Value, t.Source)
	}
	text := note.String()
	if name == string(species.Rain) {
		text += "\n" + rainCaution
	}
	return text
}

// sourced is values in order, each with its source.
type sourced struct{ values, sources []string }

func (s *sourced) add(value, source string) {
	s.values = append(s.values, value)
	s.sources = append(s.sources, source)
}

// String gives each run of values with one source as a line: "day 24 to 28 °C,
// night 21 to 24 °C (from memory)". A line begins with a line break.
func (s *sourced) String() string {
	text := ""
	for i, value := range s.values {
		if i == 0 || s.sources[i] != s.sources[i-1] {
			text += "\n" + strings.ToUpper(value[:1]) + value[1:]
		} else {
			text += ", " + value
		}
		if i+1 == len(s.values) || s.sources[i+1] != s.sources[i] {
			text += " (" + s.sources[i] + ")."
		}
	}
	return text
}

// target adds the day of a target and the last day on which a parcel arrives
// before it.
func (e *events) target(t collection.Target) {
	e.add("", calendar.Event{
		Key: "target/" + t.Name, Span: day(t.On), Category: targetCategory,
		Summary: fmt.Sprintf("%s: %d froglets of %s wanted", t.Name, t.Froglets, t.Species),
	})
	ship := e.room.shipping()
	if last, ok := ship.LastBefore(t.On.Add(1 - max(ship.TransitDays, 1))); ok {
		e.add("", calendar.Event{
			Key: "target/" + t.Name + "/last parcel", Span: day(last), Category: parcelCategory,
			Summary:     fmt.Sprintf("last day to hand over a parcel for %s", t.Name),
			Description: shippingCaution,
		})
	}
}

// shippingCaution goes with every day on which a parcel could be sent.
const shippingCaution = "Weekday and holidays only: look at the forecast at both ends, the carrier's rules for live animals, and permits (CITES, local law) before sending."
