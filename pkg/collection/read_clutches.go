package collection

import "github.com/spawnwright/spawnwright/pkg/strictyaml"

func (r *reader) clutches(top *strictyaml.Mapping) {
	r.items.clutches = top.Items("clutches")
	r.c.Clutches = make([]Clutch, len(r.items.clutches))
	r.doc.EachMapping(r.items.clutches, "a clutch", func(i int, m *strictyaml.Mapping) { r.clutch(m, i) })
}

func (r *reader) clutch(m *strictyaml.Mapping, i int) {
	k := &r.c.Clutches[i]
	k.ID, k.At = r.claim(m, subject{clutchKind, i})
	k.Laid = r.date(m, "laid")
	k.Sires, k.Dams = r.refs(m, "sire"), r.refs(m, "dam")
	k.SireMix, k.DamMix = r.mix(m, "sire", k.Sires), r.mix(m, "dam", k.Dams)
	k.Species = r.speciesID(m)
	k.Pairing = r.phrase(m, "pairing")
	k.Eggs, _ = m.Int("eggs", 1, maxCount)
	k.Line = r.phrase(m, "line")
	k.Place = r.phrase(m, "place")
	k.Ended = r.date(m, "ended")
	k.Food = r.phrase(m, "food")
	k.Promised = r.promised(m)
	k.Note = m.Text("note")
	m.Done()
}

func (r *reader) promised(of *strictyaml.Mapping) []Promise {
	var promises []Promise
	for _, n := range of.List("promised") {
		m := r.doc.Mapping(n, "a promise")
		p := Promise{To: r.needed(m, "to"), At: strictyaml.PositionOf(n)}
		if v := r.required(m, "count"); v != nil {
			p.Count, _ = r.doc.Int(v, "count", 1, maxCount)
		}
		m.Done()
		promises = append(promises, p)
	}
	return promises
}

// mix takes how several possible parents share the young.
func (r *reader) mix(m *strictyaml.Mapping, of string, parents []string) Mix {
	key := of + "_mix"
	if len(parents) < 2 && m.Has(key) {
		r.doc.Errorf(strictyaml.Value(m.Node, key), "remove it, or list all that "+of+" may be", "%s is only for a list of several", key)
	}
	if text := m.Choice(key, string(One), string(Several)); text != "" {
		return Mix(text)
	}
	return One
}
