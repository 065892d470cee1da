package parentage

import "fmt"

// roles are what an animal is a parent as: bits.
const (
	asSire = 1 << iota
	asDam
)

// checkRoles notes each animal that is sire in one row and dam in another, once,
// at the row where that comes out.
func (r *reader) checkRoles() {
	if r.options.AnySex {
		return
	}
	roles := make([]byte, r.names.len())
	add := func(row int, number uint32, role byte) {
		if number == nobody || roles[number]&role > 0 {
			return
		}
		if roles[number] |= role; roles[number] == asSire|asDam {
			r.tellRoles(row, number, role)
		}
	}
	for row, a := range r.animals {
		add(row, a.sire, asSire)
		add(row, a.dam, asDam)
	}
}

// tellRoles notes that a parent in a row had the other role before.
func (r *reader) tellRoles(row int, number uint32, role byte) {
	if r.roleErrs.total >= Most {
		r.roleErrs.total++ // without the search for the row before
		return
	}
	here, there := "sire", "dam"
	if role == asDam {
		here, there = there, here
	}
	a := r.animals[row]
	before := "its " + there
	for _, b := range r.animals[:row] {
		if role == asSire && b.dam == number || role == asDam && b.sire == number {
			before = fmt.Sprintf("a %s on line %d", there, b.line)
			break
		}
	}
	cure := "correct one of them, unless an animal can be both here"
	if r.rows[number] == 0 {
		cure = "correct one of them, or leave the parent empty if this stands for an unknown one"
	}
	r.roleErrs.addLine(a.line, cure, "%s is the %s of %s and also %s", quoted(r.names.id(number)), here, quoted(r.names.id(a.id)), before)
	r.roleErrs.option("any-sex")
}
