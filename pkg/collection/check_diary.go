package collection

import "fmt"

// checkDiaryOfAnimal reports facts about an animal before it hatched, or
// before its clutch was laid, and warns about facts after its death.
func (r *reader) checkDiaryOfAnimal(s subject) {
	a := &r.c.Animals[s.index]
	youth := r.youth(s.index)
	for _, e := range r.c.DiaryOf(a.ID) {
		for _, m := range youth[:2] {
			if e.On.Known() && before(e.On, m.on) {
				r.errorAt(r.in(e, "on"), fmt.Sprintf("%s is about %s, which %s on %s", e.On, r.called(s), m.what, m.on), "check both dates")
				break
			}
		}
		if before(a.Died, e.On) && e.Status == "" {
			r.warnAt(r.in(e, "on"), fmt.Sprintf("%s is about %s, which died on %s", e.On, r.called(s), a.Died), "check both dates")
		}
	}
}

// checkDiaryOfClutch warns about facts about a clutch before it was laid, or
// after its end.
func (r *reader) checkDiaryOfClutch(s subject) {
	k := &r.c.Clutches[s.index]
	for _, e := range r.c.DiaryOf(k.ID) {
		switch {
		case before(e.On, k.Laid):
			r.warnAt(r.in(e, "on"), fmt.Sprintf("%s is about %s, which was laid on %s: the entry is left out", e.On, r.called(s), k.Laid), "check both dates")
		case before(k.Ended, e.On):
			r.warnAt(r.in(e, "on"), fmt.Sprintf("%s is about %s, which ended on %s", e.On, r.called(s), k.Ended), "check both dates")
		}
	}
}
