package collection

import (
	"go.yaml.in/yaml/v3"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

func (r *reader) pairings(top *strictyaml.Mapping) {
	r.items.pairings = top.Items("pairings")
	r.c.Pairings = make([]Pairing, len(r.items.pairings))
	r.doc.EachMapping(r.items.pairings, "a pairing", func(i int, m *strictyaml.Mapping) { r.pairing(m, i) })
}

func (r *reader) pairing(m *strictyaml.Mapping, i int) {
	p := &r.c.Pairings[i]
	p.ID, p.At = r.claim(m, subject{pairingKind, i})
	r.required(m, "sire")
	r.required(m, "dam")
	p.Sires, p.Dams = r.refs(m, "sire"), r.refs(m, "dam")
	r.exactlyOne(m, "start", "target", "ready_by")
	p.Start = r.date(m, "start")
	p.Target = r.phrase(m, "target")
	p.ReadyBy = r.date(m, "ready_by")
	if p.ReadyBy.Known() {
		p.CertaintyPct = defaultCertaintyPct
	}
	if pct, ok := m.Int("certainty_pct", 50, 95); ok {
		p.CertaintyPct = pct
	}
	if m.Has("certainty_pct") && !m.Has("ready_by") {
		r.doc.Errorf(strictyaml.Value(m.Node, "certainty_pct"), "remove it; a target has its own",
			"certainty_pct is only for ready_by")
	}
	p.NotBefore = r.date(m, "not_before")
	p.LeaveOutCost = given(m.Int("leave_out_cost", 1, maxLeaveCost))
	p.Raise = given(m.Int("raise", 1, maxCount))
	p.Note = m.Text("note")
	m.Done()
}

// exactlyOne reports when not exactly one of the keys has a value. It gives
// the keys that have one.
func (r *reader) exactlyOne(m *strictyaml.Mapping, keys ...string) []string {
	m.OneOf(keys...)
	var there []string
	for _, key := range keys {
		if m.Has(key) {
			there = append(there, key)
		}
	}
	switch {
	case m.Node.Kind != yaml.MappingNode: // reported
	case len(there) == 0:
		r.doc.Errorf(m.Node, "add one of them", "%s needs %s", m.What(), either(keys))
	case len(there) > 1:
		r.doc.Errorf(strictyaml.Value(m.Node, there[1]), "keep one of them", "%s has %s and %s", m.What(), there[0], there[1])
	}
	return there
}
