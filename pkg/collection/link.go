package collection

import "fmt"

// link leads from a clutch, a pairing, or an animal that names its own
// parents, to a possible parent.
type link struct {
	role  string // "dam" or "sire", which is also the key
	index int    // of the animal
	own   bool   // named by the record itself, and not by the pairing of a clutch
}

// links are the references between records, found once.
type links struct {
	parents  [][]link // of each animal, clutch and pairing, by [Collection.number]
	clutchOf []int    // of each animal, -1 for none
}

// link finds what every reference leads to and reports those that lead nowhere.
func (r *reader) link() {
	r.links = links{
		parents:  make([][]link, len(r.c.Animals)+len(r.c.Clutches)+len(r.c.Pairings)),
		clutchOf: make([]int, len(r.c.Animals)),
	}
	for i := range r.c.Pairings {
		r.linkPairing(i)
	}
	for i := range r.c.Clutches {
		r.linkClutch(i)
	}
	for i := range r.c.Animals {
		r.linkAnimal(i)
	}
	for i := range r.c.Diary {
		r.linkEntry(i)
	}
}

func (r *reader) linkPairing(i int) {
	p, s := &r.c.Pairings[i], subject{pairingKind, i}
	r.linkParents(s, p.Sires, p.Dams)
	t, ok := r.c.Target(p.Target)
	switch {
	case p.Target == "":
	case ok:
		p.ReadyBy, p.CertaintyPct = t.On, t.CertaintyPct
	default:
		cure := r.nearest(p.Target, r.targetNames)
		if cure == "" {
			cure = "add it under targets:"
		}
		r.errorAt(r.at(s, "target", ""), fmt.Sprintf("target %q is not in the file", p.Target), cure)
	}
}

func (r *reader) targetNames() []string {
	names := make([]string, len(r.c.Targets))
	for i := range r.c.Targets {
		names[i] = r.c.Targets[i].Name
	}
	return names
}

func (r *reader) linkClutch(i int) {
	k, s := &r.c.Clutches[i], subject{clutchKind, i}
	r.linkParents(s, k.Sires, k.Dams)
	if k.Pairing == "" {
		return
	}
	if p, ok := r.find(k.Pairing, pairingKind); ok {
		r.fromPairing(i, p)
	} else {
		r.missing(k.Pairing, pairingKind, "pairing", r.at(s, "pairing", ""))
	}
}

// fromPairing gives clutch i the parents that it does not name itself, and
// warns about one that it does name and the pairing does not.
func (r *reader) fromPairing(i, pairing int) {
	k, s := &r.c.Clutches[i], subject{clutchKind, i}
	p := &r.c.Pairings[pairing]
	at := r.c.number(s)
	theirs := r.links.parents[r.c.number(subject{pairingKind, pairing})]
	named := map[string]bool{"dam": len(k.Dams) > 0, "sire": len(k.Sires) > 0}
	for _, l := range r.links.parents[at] {
		if !hasLink(theirs, l) {
			id := r.c.Animals[l.index].ID
			r.warnAt(r.at(s, l.role, id), fmt.Sprintf("%s %q of %s is not in its pairing %q", l.role, id, r.called(s), p.ID),
				"correct the one or the other")
		}
	}
	for _, l := range theirs {
		if !named[l.role] {
			l.own = false
			r.links.parents[at] = append(r.links.parents[at], l)
		}
	}
	if !named["dam"] {
		k.Dams = p.Dams
	}
	if !named["sire"] {
		k.Sires = p.Sires
	}
}

func hasLink(list []link, l link) bool {
	for _, m := range list {
		if m.role == l.role && m.index == l.index {
			return true
		}
	}
	return false
}

func (r *reader) linkAnimal(i int) {
	a, s := &r.c.Animals[i], subject{animalKind, i}
	r.linkParents(s, a.Sires, a.Dams)
	r.links.clutchOf[i] = -1
	if a.Clutch == "" {
		return
	}
	if k, ok := r.find(a.Clutch, clutchKind); ok {
		r.links.clutchOf[i] = k
	} else {
		r.missing(a.Clutch, clutchKind, "clutch", r.at(s, "clutch", ""))
	}
}

func (r *reader) linkParents(s subject, sires, dams []string) {
	list := make([]link, 0, len(sires)+len(dams))
	for _, side := range [...]struct {
		role string
		ids  []string
	}{{"dam", dams}, {"sire", sires}} {
		for _, id := range side.ids {
			if i, ok := r.find(id, animalKind); ok {
				list = append(list, link{side.role, i, true})
			} else {
				r.missingParent(s, id, side.role)
			}
		}
	}
	r.links.parents[r.c.number(s)] = list
}

func (r *reader) linkEntry(i int) {
	e := &r.c.Diary[i]
	for _, ref := range [...]struct {
		key, id string
		want    kind
	}{{"clutch", e.Clutch, clutchKind}, {"animal", e.Animal, animalKind}, {"pairing", e.Pairing, pairingKind}} {
		if ref.id != "" {
			if _, ok := r.find(ref.id, ref.want); !ok {
				r.missing(ref.id, ref.want, ref.key, r.in(e, ref.key))
			}
		}
	}
}
