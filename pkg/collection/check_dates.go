package collection

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// milestone is a day in a life, with the words for it.
type milestone struct {
	on   civil.Date
	key  string // of the record that holds it
	what string // such as "hatched"
}

// youth gives the milestones of an animal until it is a froglet, in order.
func (r *reader) youth(i int) [3]milestone {
	a := &r.c.Animals[i]
	var laid civil.Date
	if k := r.links.clutchOf[i]; k >= 0 {
		laid = r.c.Clutches[k].Laid
	}
	return [3]milestone{{laid, "clutch", "was laid"}, {a.Hatched, "hatched", "hatched"}, {a.OutOfWater, "out_of_water", "left the water"}}
}

// origin gives the first day that is known of clutch i.
func (r *reader) origin(i int) milestone {
	if k := &r.c.Clutches[i]; k.Laid.Known() {
		return milestone{k.Laid, "laid", "was laid"}
	}
	return milestone{r.c.seen[i].On, "", "was first seen"}
}

// grown gives the last milestone of an animal's youth. It has young only after it.
func (r *reader) grown(i int) milestone {
	var last milestone
	for _, m := range r.youth(i) {
		if m.on.Known() {
			last = m
		}
	}
	return last
}

// checkLife reports milestones of an animal in the wrong order.
func (r *reader) checkLife(s subject) {
	a := &r.c.Animals[s.index]
	last := milestone{}
	for _, m := range r.youth(s.index) {
		r.inOrder(s, last, m)
		if m.on.Known() {
			last = m
		}
	}
	last = r.grown(s.index)
	came := milestone{a.Acquired, "acquired", "came to the room"}
	for _, end := range [...]milestone{{a.Died, "died", "died"}, {a.Left, "left", "left the room"}} {
		r.inOrder(s, last, end)
		r.inOrder(s, came, end)
	}
	if before(a.Died, a.Left) {
		r.warnAt(r.at(s, "left", ""), fmt.Sprintf("animal %q left the room on %s, after it died on %s", a.ID, a.Left, a.Died), "check both dates")
	}
}

func (r *reader) inOrder(s subject, first, second milestone) {
	if before(second.on, first.on) {
		r.errorAt(r.at(s, second.key, ""),
			fmt.Sprintf("%s %s on %s, before it %s on %s", r.called(s), second.what, second.on, first.what, first.on),
			"check both dates")
	}
}

// checkParentsOfAnimal reports parents that an animal names itself and that
// are not older than it.
func (r *reader) checkParentsOfAnimal(s subject) {
	if r.links.clutchOf[s.index] >= 0 || r.loop[s.index] {
		return
	}
	a := &r.c.Animals[s.index]
	var birth milestone // the first day on which it was alive for certain
	for _, m := range [...]milestone{
		{a.Hatched, "", "hatched"}, {a.OutOfWater, "", "left the water"}, {a.Acquired, "", "came to the room"}, {a.Died, "", "died"}, {a.Left, "", "left the room"},
	} {
		if m.on.Known() && (!birth.on.Known() || m.on < birth.on) {
			birth = m
		}
	}
	for _, l := range r.links.parents[s.index] {
		r.olderThan(s, l, birth)
	}
}

func (r *reader) olderThan(s subject, l link, birth milestone) {
	p := &r.c.Animals[l.index]
	if g := r.grown(l.index); g.on.Known() && birth.on.Known() && g.on >= birth.on {
		r.errorAt(r.at(s, l.role, p.ID),
			fmt.Sprintf("%s %q %s on %s (line %s), too late for %s, which %s on %s", l.role, p.ID, g.what, g.on, line(p.At), r.called(s), birth.what, birth.on),
			"check the parent and the dates")
	}
}

// checkParentsOfClutch reports parents that were not there when the clutch was
// laid.
func (r *reader) checkParentsOfClutch(s subject) {
	k := &r.c.Clutches[s.index]
	if before(k.Ended, k.Laid) {
		r.errorAt(r.at(s, "ended", ""), fmt.Sprintf("%s ended on %s, before it was laid on %s", r.called(s), k.Ended, k.Laid), "check both dates")
	}
	number := r.c.number(s)
	if r.loop[number] {
		return
	}
	for _, l := range r.links.parents[number] {
		p := &r.c.Animals[l.index]
		r.olderThan(s, l, r.origin(s.index))
		switch {
		case before(p.Died, k.Laid):
			r.errorAt(r.at(s, l.role, p.ID),
				fmt.Sprintf("%s %q died on %s (line %s), before %s was laid on %s", l.role, p.ID, p.Died, line(p.At), r.called(s), k.Laid),
				"check the parent and both dates")
		case before(p.Left, k.Laid):
			r.warnAt(r.at(s, l.role, p.ID),
				fmt.Sprintf("%s %q left the room on %s (line %s), before %s was laid on %s", l.role, p.ID, p.Left, line(p.At), r.called(s), k.Laid),
				"check the parent and both dates")
		}
	}
}
