package development

import "slices"

// limits gives the steps between first and last whose begin and end are wanted
// together, because an event lies within, counted from first.
func (s *solver) limits(first, last int) map[int]int {
	all := make(map[int]int)
	for i, w := range midways {
		if w.step >= first && w.step < last && s.model.known[w.step] && (slices.Contains(s.wanted, w) || s.bounded(w.step)) {
			limit := longest
			if c := s.model.courses[i]; c.share == nil {
				limit = int(c.days.days(tails)) + 1 // it has come by then
			}
			all[w.step-first] = max(all[w.step-first], limit)
		}
	}
	return all
}

// within follows what was seen within the steps of a stretch that is worked out.
// What is next to impossible is not followed.
func (s *solver) within(done *solved, from Stage, limit int) *solved {
	by := make(map[int]*weights)
	for _, step := range [...]int{tadpole, growOut} {
		if at := step - done.first; at >= 0 && at < done.steps && s.bounded(step) && s.likely(done, step, from) {
			begins, ends := done.chain.begins(at), done.chain.ends[at]
			by[at] = newWeights(begins, ends, s.seenWithin(step, begins, ends))
		}
	}
	if len(by) == 0 {
		return done
	}
	again := &solved{first: done.first, steps: done.steps}
	c := *done.chain
	c.weights, again.chain = by, &c
	if _, possible := s.outcomes(&c, again, limit); possible {
		return again
	}
	return done
}

// bounded reports whether anything was seen within a step.
func (s *solver) bounded(step int) bool {
	for i, w := range midways {
		if w.step == step && s.ev.within[i].bounded() {
			return true
		}
	}
	return false
}

// likely reports whether what was seen within a step is not next to impossible, and
// says so where it is doubtful.
func (s *solver) likely(done *solved, step int, from Stage) bool {
	if len(done.chain.begin.p) > 1 {
		return true // the chance of what was seen says nothing when nobody knows how old they are
	}
	all, day := true, done.chain.begin.first
	for i, w := range midways {
		v := s.ev.within[i]
		if w.step != step || !v.bounded() {
			continue
		}
		expected := s.unseen(done, i, s.posterior(done))
		if odd := v.odd(w.stage, day, expected.Plus(Point(-day))); odd.chance < doubtful {
			s.out.warn(odd.looks, "%s", odd.doubt(from, s.who(), odd.chance, ", and the dates that follow do not go by it"))
			all = all && odd.chance >= impossible
		}
	}
	return all
}

// seenWithin gives the chance of what was seen within a step, by its begin and end.
func (s *solver) seenWithin(step int, begins, ends [2]int) func(begin, end int) float64 {
	if step == tadpole {
		l := s.legs(begins, ends)
		return l.chance
	}
	t, v := s.timing(eating, begins, ends), s.ev.within[eating]
	return func(begin, end int) float64 { return t.between(v.lo, v.hi, begin, end) }
}

// posterior gives how likely the paces are after a stretch.
func (s *solver) posterior(done *solved) [len(paces)]float64 {
	var all [len(paces)]float64
	total := 0.0
	for i, w := range s.weights {
		all[i] = w * done.outcomes[i].chance
		total += all[i]
	}
	for i := range all {
		all[i] /= total
	}
	return all
}

// timing gives that of an event within a step.
func (s *solver) timing(which int, begins, ends [2]int) timing {
	t := newTiming(s.model.courses[which], s.tempos[midways[which].step].clock, begins[0], max(ends[1], begins[1]))
	if which == toes {
		before := s.timing(hindLegs, begins, ends)
		t.after = &before
	}
	return t
}

func (s *solver) legs(begins, ends [2]int) *legs {
	return &legs{s.timing(hindLegs, begins, ends), s.timing(toes, begins, ends), s.ev.within[hindLegs], s.ev.within[toes]}
}

// unseen gives the distribution of the day of an event within a step of a stretch, for
// all that is known but looks within the step.
func (s *solver) unseen(done *solved, which int, of [len(paces)]float64) Distribution {
	step := midways[which].step - done.first
	begins, ends := done.chain.begins(step), done.chain.ends[step]
	together := done.together(of, step)
	if together == nil {
		return Distribution{}
	}
	t := s.timing(which, begins, ends)
	sum := make([]float64, max(ends[1], begins[1])-begins[0]+1)
	if t.even {
		together.spreadAlike(&t, sum)
	} else {
		together.each(func(begin, end int, x float64) { t.spread(sum, x, begin, end, interval{lo: ever, hi: never}) })
	}
	return FromMasses(begins[0], sum)
}

// days gives the same in the light of these looks too; where they are not possible it
// is the day that is nearest to them.
func (s *solver) days(done *solved, which int) Distribution {
	w := midways[which]
	if !s.bounded(w.step) {
		return s.unseen(done, which, s.weights)
	}
	step := w.step - done.first
	begins, ends := done.chain.begins(step), done.chain.ends[step]
	together := done.together(s.weights, step)
	if together == nil {
		return Distribution{}
	}
	sum := make([]float64, max(ends[1], begins[1])-begins[0]+1)
	if w.step == tadpole {
		l := s.legs(begins, ends)
		together.each(func(begin, end int, x float64) { l.spread(sum, x, begin, end, w.stage) })
	} else {
		t := s.timing(which, begins, ends)
		together.each(func(begin, end int, x float64) { t.spread(sum, x, begin, end, s.ev.within[which]) })
	}
	return FromMasses(begins[0], sum)
}

// rarePair is the chance of a begin and end of a step that are passed over.
const rarePair = 1e-9

// each calls do with all begins and ends that are not rare.
func (s *pairs) each(do func(begin, end int, x float64)) {
	for i, x := range s.p {
		if x >= rarePair {
			begin := s.first + i/s.width()
			do(begin, begin+s.least+i%s.width(), x)
		}
	}
}

// spreadAlike does what spread does for all pairs, when all days are alike and
// nothing is known of the event: the days from the begin are the same for all steps
// of a length.
func (s *pairs) spreadAlike(t *timing, sum []float64) {
	begins := len(s.p) / s.width()
	room := make([]float64, s.most+1)
	for k := range s.width() {
		length := s.least + k
		var days masses // counted from the begin
		for i := range begins {
			x := s.p[i*s.width()+k]
			if x < rarePair {
				continue
			}
			if days.p == nil {
				days = t.alike(s.first+i, length, room)
			}
			to := sum[i+days.first:][:len(days.p)]
			for j, y := range days.p {
				to[j] += x * y
			}
		}
	}
}

// alike gives the days from the begin of a step of a length, when all days are alike
// and nothing is known of the event. They are good until room is used again.
func (t *timing) alike(begin, length int, room []float64) masses {
	days := room[:length+1]
	clear(days)
	from := *t
	from.first = begin
	from.at, from.end = t.at[begin-t.first:], t.end[begin-t.first:]
	from.spread(days, 1, begin, begin+length, interval{lo: ever, hi: never})
	first := 0
	for days[first] == 0 {
		first++
	}
	last := length
	for days[last] == 0 {
		last--
	}
	return masses{first, days[first : last+1]}
}

// together gives the pairs of a step over all paces; nil where there are none.
func (d *solved) together(of [len(paces)]float64, step int) *pairs {
	if d.blended != nil && d.blendedOf == of && d.blendedStep == step {
		return d.blended
	}
	var sum *pairs
	for i := range d.outcomes {
		one := d.outcomes[i].joints[step]
		if one == nil {
			continue
		}
		if sum == nil {
			sum = &pairs{}
			sum.room(d.chain.begins(step), d.chain.ends[step], d.chain.limits[step])
		}
		one.addTo(sum, of[i])
	}
	d.blended, d.blendedOf, d.blendedStep = sum, of, step
	return sum
}

// mixWithin gives the events within the steps of a stretch their days.
func (s *solver) mixWithin(done *solved) {
	for i, w := range midways {
		e := &s.out.Within[i]
		if e.Recorded || !slices.Contains(s.wanted, w) || w.step < done.first || w.step >= done.first+done.steps {
			continue
		}
		if d := s.days(done, i); d.Known() {
			e.set(s.out.From, d)
		}
	}
}
