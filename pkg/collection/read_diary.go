package collection

import (
	"slices"

	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// The limits within which a temperature is taken for meant.
const leastC, mostC = -10.0, 60.0

// stages are the words for what is seen of a clutch, in order.
var stages = []string{"hatched", "feeding", "hind-legs", "toes", "front-legs", "out-of-water", "eating", "sale-ready"}

var phases = []string{
	string(species.Conditioning), string(species.Cooling), string(species.WarmUp), string(species.Rain), string(species.Rest),
}

// Stages gives the words for what is seen of a clutch, in order.
func Stages() []string { return slices.Clone(stages) }

// Phases gives the words for the phases of a pairing, in order.
func Phases() []string { return slices.Clone(phases) }

var subjectKeys = []string{"clutch", "animal", "pairing", "place"}

// facts are the keys of an entry with the subjects that they fit.
var facts = []struct {
	key  string
	fits []string
}{
	{"saw", []string{"clutch"}},
	{"gosner", []string{"clutch"}},
	{"some", []string{"clutch"}},
	{"count", []string{"clutch"}},
	{"losses", []string{"clutch"}},
	{"sold", []string{"clutch"}},
	{"held_back", []string{"clutch"}},
	{"began", []string{"pairing"}},
	{"weight_g", []string{"animal", "clutch"}},
	{"weight", []string{"animal", "clutch"}},
	{"length_mm", []string{"animal", "clutch"}},
	{"length", []string{"animal", "clutch"}},
	{"ate", []string{"animal"}},
	{"hold", []string{"animal"}},
	{"until", []string{"animal"}},
	{"status", []string{"animal"}},
	{"to", []string{"animal", "clutch"}},
	{"moved_to", []string{"animal", "clutch"}},
	{"water_c", []string{"place", "clutch", "animal"}},
	{"water", []string{"place", "clutch", "animal"}},
	{"air_c", []string{"place", "clutch", "animal"}},
	{"air", []string{"place", "clutch", "animal"}},
	{"note", subjectKeys},
}

func (r *reader) entries(top *strictyaml.Mapping) {
	r.items.diary = top.Items("diary")
	r.c.Diary = make([]Entry, len(r.items.diary))
	r.doc.EachMapping(r.items.diary, "a diary entry", func(i int, m *strictyaml.Mapping) { r.entry(m, &r.c.Diary[i]) })
}

// entry reads one entry. A temperature that cannot be meant is left out with a
// warning, for what else the diary says can be used without it.
func (r *reader) entry(m *strictyaml.Mapping, e *Entry) {
	e.At = strictyaml.PositionOf(m.Node)
	e.On = r.neededDate(m, "on")
	there := r.exactlyOne(m, subjectKeys...)
	if len(there) == 1 {
		r.fit(m, there[0])
	}
	e.Clutch, e.Animal = r.phrase(m, "clutch"), r.phrase(m, "animal")
	e.Pairing, e.Place = r.phrase(m, "pairing"), r.phrase(m, "place")
	r.seen(m, e)
	e.Count = count(m, "count", 0)
	e.Losses, _ = m.Int("losses", 1, maxCount)
	e.Sold, _ = m.Int("sold", 1, maxCount)
	e.HeldBack, _ = m.Int("held_back", 1, maxCount)
	e.Began = species.PhaseName(m.Choice("began", phases...))
	e.WeightG, _ = m.Quantity("weight", strictyaml.Grams(), leastG, mostG)
	e.LengthMM, _ = m.Quantity("length", strictyaml.Millimetres(), leastMM, mostMM)
	e.Ate = m.Choice("ate", "true") == "true"
	r.held(m, e)
	e.Status = Status(m.Choice("status", string(Died), string(Left)))
	e.To = r.phrase(m, "to")
	if e.To != "" && e.Clutch+e.Animal != "" && !m.Has("sold") && e.Status != Left {
		r.doc.Errorf(m.Key("to"), "add status: left or sold:, or remove it", "to stands without what left")
	}
	e.MovedTo = r.phrase(m, "moved_to")
	r.doc.Soften(": the temperature is left out", func() { e.WaterC, e.AirC = temperature(m, "water"), temperature(m, "air") })
	e.Note = m.Text("note")
	m.Done()
}

// fit reports facts that do not fit the subject, and an entry without any.
func (r *reader) fit(m *strictyaml.Mapping, subject string) {
	said := false
	for _, f := range facts {
		if !m.Has(f.key) {
			continue
		}
		said = true
		if !slices.Contains(f.fits, subject) {
			r.doc.Errorf(m.Key(f.key), "write it in an entry about "+either(f.fits), "%s does not fit an entry about %s", f.key, subject)
		}
	}
	if !said {
		r.doc.Errorf(m.Node, "add what was seen or done, or a note:", "the entry says nothing about the %s", subject)
	}
}

// seen takes what was seen of a clutch.
func (r *reader) seen(m *strictyaml.Mapping, e *Entry) {
	e.Saw = m.Choice("saw", stages...)
	e.Gosner, _ = m.Int("gosner", 1, 46)
	if m.Has("saw") && m.Has("gosner") {
		r.doc.Errorf(m.Key("gosner"), "keep one of them", "saw and gosner say the same thing")
	}
	e.Some = m.Choice("some", "true", "false") == "true"
	if m.Has("some") && !m.Has("saw") && !m.Has("gosner") {
		r.doc.Errorf(m.Key("some"), "add saw:, or remove it", "some stands without the stage that was seen")
	}
}

// held takes a hold that began, or was lifted.
func (r *reader) held(m *strictyaml.Mapping, e *Entry) {
	e.Hold = HoldKind(m.Choice("hold", string(Quarantine), string(Health), string(Lifted)))
	e.Until = r.date(m, "until")
	switch {
	case !m.Has("until"):
	case !m.Has("hold"):
		r.doc.Errorf(m.Key("until"), "add hold:, or remove it", "until stands without hold")
	case e.Hold == Lifted:
		r.doc.Errorf(m.Key("until"), "remove it", "a hold that is lifted has no until")
	case before(e.Until, e.On):
		r.doc.Errorf(strictyaml.Value(m.Node, "until"), "check both dates", "a hold ends on %s, before it begins on %s", e.Until, e.On)
	}
}

func temperature(m *strictyaml.Mapping, key string) Given[float64] {
	return given(m.Quantity(key, strictyaml.Celsius(), leastC, mostC))
}
