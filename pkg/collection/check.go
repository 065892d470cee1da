package collection

// check compares what the records say with each other. It goes on after errors,
// and passes over what is not known.
func (r *reader) check() {
	roles := newRoles(len(r.c.Animals))
	for i := range r.c.Animals {
		s := subject{animalKind, i}
		r.checkSexes(s, roles)
		r.checkLife(s)
		r.checkParentsOfAnimal(s)
		r.checkDiaryOfAnimal(s)
		r.checkHolds(s)
		r.checkPromised(s)
	}
	for i := range r.c.Clutches {
		s := subject{clutchKind, i}
		r.checkSexes(s, roles)
		r.checkParentsOfClutch(s)
		r.checkDiaryOfClutch(s)
		r.checkStages(s)
		r.checkCounts(s)
		r.checkPromises(s)
		r.checkGaps(s)
	}
	for i := range r.c.Pairings {
		r.checkSexes(subject{pairingKind, i}, roles)
		r.checkNotBefore(subject{pairingKind, i})
	}
	r.checkYoung()
	r.checkCapacities()
}
