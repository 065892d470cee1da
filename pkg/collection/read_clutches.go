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
	k.Laid = r.neededDate(m, "laid")
	k.Sires, k.Dams = r.refs(m, "sire"), r.refs(m, "dam")
	k.SireMix, k.DamMix = mix(m, "sire_mix"), mix(m, "dam_mix")
	k.Species = r.speciesID(m)
	k.Pairing = r.phrase(m, "pairing")
	k.Eggs, _ = m.Int("eggs", 1, maxCount)
	k.Line = r.phrase(m, "line")
	k.Place = r.phrase(m, "place")
	k.Ended = r.date(m, "ended")
	k.Note = m.Text("note")
	m.Done()
}

func mix(m *strictyaml.Mapping, key string) Mix {
	if text := m.Choice(key, string(One), string(Several)); text != "" {
		return Mix(text)
	}
	return One
}
