package collection

import "fmt"

// roles remembers where an animal of unknown sex is certainly a parent.
type roles struct{ sire, dam []subject }

func newRoles(animals int) *roles {
	return &roles{sire: make([]subject, animals), dam: make([]subject, animals)}
}

// checkSexes reports parents of the wrong sex: recorded as the other one, or
// of unknown sex and both sire and dam.
func (r *reader) checkSexes(s subject, seen *roles) {
	list := r.links.parents[r.c.number(s)]
	for _, l := range list {
		if !l.own {
			continue
		}
		a := &r.c.Animals[l.index]
		want := Male
		if l.role == "dam" {
			want = Female
		}
		switch a.Sex {
		case want:
		case UnknownSex:
			r.checkRoles(s, l, list, seen)
		default:
			cure := r.nearest(a.ID, func() []string { return r.ids(animalKind, want) })
			if cure == "" {
				cure = "check the id, or the sex"
			}
			r.errorAt(r.at(s, l.role, a.ID),
				fmt.Sprintf("%s %q of %s is recorded as %s (line %s)", l.role, a.ID, r.called(s), a.Sex, line(a.At)), cure)
		}
	}
}

// checkRoles reports an animal of unknown sex that is sire and dam: of the same
// young, or certainly of others. A pairing is a wish and proves nothing.
func (r *reader) checkRoles(s subject, l link, list []link, seen *roles) {
	a := &r.c.Animals[l.index]
	mine, other, otherRole := seen.sire, seen.dam, "dam"
	if l.role == "dam" {
		mine, other, otherRole = seen.dam, seen.sire, "sire"
	}
	const cure = "record its sex and correct the other"
	if l.role == "sire" && hasLink(list, link{role: "dam", index: l.index}) {
		r.errorAt(r.at(s, l.role, a.ID), fmt.Sprintf("%q is sire and dam of %s", a.ID, r.called(s)), cure)
		return
	}
	if s.kind == pairingKind || !alone(list, l.role) {
		return
	}
	if first := other[l.index]; first.kind != 0 {
		r.errorAt(r.at(s, l.role, a.ID),
			fmt.Sprintf("%q is the %s of %s, but the %s of %s (line %s)", a.ID, l.role, r.called(s), otherRole, r.called(first), line(r.place(first))), cure)
		return
	}
	mine[l.index] = s
}

// alone reports whether there is only one parent of that role.
func alone(list []link, role string) bool {
	n := 0
	for _, l := range list {
		if l.role == role {
			n++
		}
	}
	return n == 1
}
