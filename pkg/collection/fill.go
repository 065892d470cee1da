package collection

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// fill gives every record what it has from others: parents first.
func (r *reader) fill() {
	for _, v := range r.order {
		if s := r.subject(v); s.kind == clutchKind {
			r.fillClutch(s)
		} else {
			r.fillAnimal(s)
		}
	}
	for i := range r.c.Pairings {
		r.fillPairing(subject{pairingKind, i})
	}
	r.c.sortDiary()
	for i := range r.c.Animals {
		r.fillFate(i)
	}
	for i := range r.c.Animals {
		r.fillBirth(i)
	}
	r.fillSeen()
}

func (r *reader) fillClutch(s subject) {
	k := &r.c.Clutches[s.index]
	k.Species = r.speciesOf(s, k.Species)
	if k.Species == "" && !r.hasAny(s, "species", "sire", "dam", "pairing") {
		r.errorAt(k.At, r.called(s)+" needs a species, for it has no parents", "add species:, or the parents that are known")
	}
	if k.Line == "" {
		k.Line = r.shared(s, "dam", func(a *Animal) string { return a.Line })
	}
	if len(k.Sires) > 0 && len(k.Dams) > 0 {
		k.Locality = r.shared(s, "", func(a *Animal) string { return a.Locality })
	}
}

func (r *reader) hasAny(s subject, keys ...string) bool {
	return slices.ContainsFunc(keys, func(key string) bool { return r.value(s, key) != nil })
}

// shared gives the text that all parents of a role have in common, or all
// parents for no role. It is empty when they differ.
func (r *reader) shared(s subject, role string, text func(*Animal) string) string {
	common, any := "", false
	for _, l := range r.links.parents[r.c.number(s)] {
		if role != "" && l.role != role {
			continue
		}
		t := text(&r.c.Animals[l.index])
		if any && t != common {
			return ""
		}
		common, any = t, true
	}
	return common
}

func (r *reader) fillAnimal(s subject) {
	a := &r.c.Animals[s.index]
	a.Species = r.speciesOf(s, a.Species)
	if i := r.links.clutchOf[s.index]; i >= 0 {
		k := &r.c.Clutches[i]
		r.agree(s, "sire", a.Sires, k.Sires)
		r.agree(s, "dam", a.Dams, k.Dams)
		a.Sires, a.Dams = k.Sires, k.Dams
		switch {
		case a.Species == "":
			a.Species = k.Species
		case k.Species != "" && k.Species != a.Species:
			r.errorAt(r.at(s, "species", ""),
				fmt.Sprintf("%s is recorded as %s, but its clutch %q is %s (line %s)", r.called(s), a.Species, k.ID, k.Species, line(k.At)),
				"correct the species or the clutch")
		}
		if a.Line == "" {
			a.Line = k.Line
		}
		if a.Locality == "" {
			a.Locality = k.Locality
		}
	} else if a.Locality == "" && len(a.Sires) > 0 && len(a.Dams) > 0 {
		a.Locality = r.shared(s, "", func(p *Animal) string { return p.Locality })
	}
}

// agree reports parents of an animal's own that are not those of its clutch.
func (r *reader) agree(s subject, role string, own, clutch []string) {
	if len(own) == 0 || sameSet(own, clutch) {
		return
	}
	r.errorAt(r.at(s, role, ""), fmt.Sprintf("the %s of %s is not that of its clutch", role, r.called(s)),
		"remove "+role+": here; parents come from the clutch")
}

func sameSet(a, b []string) bool {
	if len(a) != len(b) {
		return false
	}
	a, b = slices.Sorted(slices.Values(a)), slices.Sorted(slices.Values(b))
	return slices.Equal(a, b)
}

func (r *reader) fillPairing(s subject) {
	p := &r.c.Pairings[s.index]
	// That the others are of the same species is a rule of pairing, and not of
	// the file.
	for _, l := range r.links.parents[r.c.number(s)] {
		if l.role == "dam" && p.Species == "" {
			p.Species = r.c.Animals[l.index].Species
		}
	}
	if t, ok := r.c.Target(p.Target); ok && p.Species != "" && t.Species != "" && t.Species != p.Species {
		r.errorAt(r.at(s, "target", ""),
			fmt.Sprintf("target %q wants %s, but %s is %s", t.Name, t.Species, r.called(s), p.Species),
			"name another target, or pair other animals")
	}
}

// speciesOf gives the species of an animal or a clutch: the one it states, or
// else that of its parents. It reports parents of another species.
func (r *reader) speciesOf(s subject, stated string) string {
	found, first := stated, link{}
	for _, l := range r.links.parents[r.c.number(s)] {
		a := &r.c.Animals[l.index]
		switch {
		case a.Species == "" || a.Species == found:
		case found == "":
			found, first = a.Species, l
		case stated != "":
			at := r.at(s, l.role, a.ID)
			if !l.own {
				at = r.at(s, "species", "")
			}
			r.errorAt(at,
				fmt.Sprintf("%s %q is %s (line %s), but %s is recorded as %s", l.role, a.ID, a.Species, line(a.At), r.called(s), stated),
				"correct the species or the parent")
		default:
			at := r.at(s, l.role, a.ID)
			if !l.own {
				at = r.at(s, "pairing", "")
			}
			r.errorAt(at,
				fmt.Sprintf("%s %q of %s is %s (line %s), but its %s %q is %s", l.role, a.ID, r.called(s), a.Species, line(a.At),
					first.role, r.c.Animals[first.index].ID, found),
				"young of two species are not bred; correct the species or the parent")
		}
	}
	return found
}

// fillFate sets when an animal died or left from its list or the diary, which
// may not contradict each other.
func (r *reader) fillFate(i int) {
	a := &r.c.Animals[i]
	for _, e := range r.c.DiaryOf(a.ID) {
		if e.Status == "" || !e.On.Known() {
			continue
		}
		date := &a.Left
		if e.Status == Died {
			date = &a.Died
		}
		if !date.Known() {
			*date = e.On
		} else if *date != e.On {
			r.errorAt(e.At, fmt.Sprintf("animal %q %s on %s, but elsewhere it %s on %s", a.ID, e.Status, e.On, e.Status, *date),
				"keep the right date")
		}
	}
}

// fillBirth sets dates that an animal has from its clutch, as far as they do
// not come after its own: a tadpole that died did not leave the water with the
// others.
func (r *reader) fillBirth(i int) {
	a := &r.c.Animals[i]
	if r.links.clutchOf[i] < 0 {
		return
	}
	for _, e := range r.c.lived(a.Clutch) {
		gone := before(a.Died, e.On) || before(a.Left, e.On)
		switch {
		case e.Some || gone:
		case e.Saw == stages[0] && !a.Hatched.Known() && !before(a.OutOfWater, e.On):
			a.Hatched = e.On
		case (e.Saw == "out-of-water" || e.Gosner == 46) && !a.OutOfWater.Known():
			a.OutOfWater = e.On
		}
	}
}

// before reports whether both dates are known and a is the earlier one.
func before(a, b civil.Date) bool { return a.Known() && a < b }
