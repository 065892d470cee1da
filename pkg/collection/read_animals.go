package collection

import (
	"go.yaml.in/yaml/v3"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// The limits within which a size is taken for meant. The largest living frog,
// the goliath frog, is below 4 kg and 400 mm (from memory).
const (
	leastG, mostG   = 0.001, 5_000.0
	leastMM, mostMM = 0.5, 500.0
)

func (r *reader) animals(top *strictyaml.Mapping) {
	r.items.animals = top.Items("animals")
	r.c.Animals = make([]Animal, len(r.items.animals))
	r.doc.EachMapping(r.items.animals, "an animal", func(i int, m *strictyaml.Mapping) { r.animal(m, i) })
}

func (r *reader) animal(m *strictyaml.Mapping, i int) {
	a := &r.c.Animals[i]
	a.ID, a.At = r.claim(m, subject{animalKind, i})
	a.Name = r.phrase(m, "name")
	a.Species = r.speciesID(m)
	a.Sex = UnknownSex
	if sex := m.Choice("sex", string(Male), string(Female), string(UnknownSex)); sex != "" {
		a.Sex = Sex(sex)
	}
	if a.SexSign = r.phrase(m, "sex_sign"); a.SexSign != "" && a.Sex == UnknownSex {
		r.doc.Errorf(m.Key("sex_sign"), "add sex: male or female, or remove it", "sex_sign stands without the sex")
	}
	a.Line, a.Locality = r.phrase(m, "line"), r.phrase(m, "locality")
	a.Hatched, a.OutOfWater = r.date(m, "hatched"), r.date(m, "out_of_water")
	a.Acquired = r.date(m, "acquired")
	a.Sires, a.Dams = r.refs(m, "sire"), r.refs(m, "dam")
	a.Clutch = r.phrase(m, "clutch")
	a.WeightG, _ = m.Quantity("weight", strictyaml.Grams(), leastG, mostG)
	a.LengthMM, _ = m.Quantity("length", strictyaml.Millimetres(), leastMM, mostMM)
	a.Place = r.phrase(m, "place")
	a.Died, a.Left = r.date(m, "died"), r.date(m, "left")
	a.Promised = r.phrase(m, "promised")
	a.Holds = r.holds(m)
	a.Food = r.phrase(m, "food")
	a.Note = m.Text("note")
	m.Done()
	if m.Node.Kind == yaml.MappingNode && !m.Has("species") && !m.Has("clutch") {
		r.errorAt(a.At, r.called(subject{animalKind, i})+" needs a species", "add species:, or the clutch it came from")
	}
}

func (r *reader) holds(of *strictyaml.Mapping) []Hold {
	var holds []Hold
	for _, n := range of.List("holds") {
		m := r.doc.Mapping(n, "a hold")
		h := Hold{At: strictyaml.PositionOf(n)}
		if kind := r.required(m, "kind"); kind != nil {
			h.Kind = HoldKind(r.doc.Choice(kind, "kind", string(Quarantine), string(Health)))
		}
		h.From, h.Until = r.date(m, "from"), r.date(m, "until")
		if before(h.Until, h.From) {
			r.doc.Errorf(strictyaml.Value(n, "until"), "check both dates", "a hold ends on %s, before it begins on %s", h.Until, h.From)
		}
		h.Note = m.Text("note")
		m.Done()
		holds = append(holds, h)
	}
	return holds
}
