package collection

import "github.com/spawnwright/spawnwright/pkg/strictyaml"

func (r *reader) clutches(top *strictyaml.Mapping) {
	r.nodes.clutches = top.List("clutches")
	r.c.Clutches = make([]Clutch, len(r.nodes.clutches))
	for i, n := range r.nodes.clutches {
		r.clutch(r.doc.Mapping(n, "a clutch"), i)
	}
}

func (r *reader) clutch(m *strictyaml.Mapping, i int) {
	k := &r.c.Clutches[i]
	k.ID, k.At = r.claim(m, subject{clutchKind, i})
	k.Laid = r.date(m, "laid")
	k.Sires, k.Dams = r.refs(m, "sire"), r.refs(m, "dam")
	k.SireMix, k.DamMix = mix(m, "sire_mix"), mix(m, "dam_mix")
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

func mix(m *strictyaml.Mapping, key string) Mix {
	if text := m.Choice(key, string(One), string(Several)); text != "" {
		return Mix(text)
	}
	return One
}
