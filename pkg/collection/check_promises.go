package collection

import (
	"fmt"
	"strings"
)

// checkPromised warns about an animal that left to somebody else than it was promised to.
func (r *reader) checkPromised(s subject) {
	a := &r.c.Animals[s.index]
	if a.Promised == "" {
		return
	}
	for _, e := range r.c.DiaryOf(a.ID) {
		if e.Status == Left && e.To != "" && !strings.EqualFold(e.To, a.Promised) {
			r.warnAt(e.At, fmt.Sprintf("animal %q left to %q, and is promised to %q (line %s)", a.ID, e.To, a.Promised, line(a.At)), "check to whom it went, or take the promise out")
		}
	}
}

// checkPromises warns when more young of a clutch are promised than are left of
// it.
func (r *reader) checkPromises(s subject) {
	k := &r.c.Clutches[s.index]
	open := r.c.Owed(k.ID, 0)
	if len(open) == 0 {
		return
	}
	var t tally
	for _, e := range r.c.lived(k.ID) {
		t.take(e, k.Eggs)
	}
	most, known := t.most(k.Eggs)
	if !known {
		return
	}
	of := fmt.Sprintf("its %d eggs (line %s)", k.Eggs, line(k.At))
	if t.last != nil {
		of = fmt.Sprintf("the count of %s (line %s)", t.last.On, line(t.last.At))
	}
	sum := 0
	for _, p := range open {
		if sum += p.Count; sum > most {
			r.warnAt(p.At, fmt.Sprintf("%d young of %s are promised, and at most %d are left by %s", sum, r.called(s), max(most, 0), of), "count again, or promise fewer")
			return
		}
	}
}
