package development

// limits gives the steps between first and last whose begin and end are wanted
// together, because an event lies within, counted from first.
func (s *solver) limits(first, last int) map[int]int {
	all := make(map[int]int)
	for i, w := range midways {
		if w.step >= first && w.step < last && s.model.known[w.step] {
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
	dated := len(done.chain.begin.p) == 1
	day := done.chain.begin.first
	for i, w := range midways {
		v := s.ev.within[i]
		if !v.bounded() || w.step < done.first || w.step >= done.first+done.steps {
			continue
		}
		step := w.step - done.first
		if dated {
			expected := s.days(done, i, s.posterior(done), interval{lo: ever, hi: never})
			if odd := v.odd(w.stage, day, expected.Plus(Point(-day))); odd.chance < doubtful {
				done.dropped[i] = odd.chance < impossible
				s.out.warn(odd.looks, "%s", odd.doubt(from, s.who(), odd.chance, ", and the dates that follow do not go by it"))
			}
		}
		if !done.dropped[i] {
			c := done.chain
			begins, ends := c.begins(step), c.ends[step]
			t := s.timing(i, begins, ends)
			by[step] = newWeights(begins, ends, &t, v.lo, v.hi, by[step])
		}
	}
	if len(by) == 0 {
		return done
	}
	again := &solved{first: done.first, steps: done.steps, dropped: done.dropped}
	c := *done.chain
	c.weights, again.chain = by, &c
	if _, possible := s.outcomes(&c, again, limit); !possible {
		for i, w := range midways {
			again.dropped[i] = w.step >= done.first && w.step < done.first+done.steps
		}
		done.dropped = again.dropped
		return done
	}
	return again
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
	return newTiming(s.model.courses[which], s.tempos[midways[which].step].clock, begins[0], max(ends[1], begins[1]))
}

// days gives the distribution of the day of an event within a step of a stretch,
// when it is known to lie in v; where that is not possible it is the day of v that
// is nearest.
func (s *solver) days(done *solved, which int, of [len(paces)]float64, v interval) Distribution {
	step := midways[which].step - done.first
	c := done.chain
	begins, ends := c.begins(step), c.ends[step]
	t := s.timing(which, begins, ends)
	sum := make([]float64, max(ends[1], begins[1])-begins[0]+1)
	together := blendedPairs(done, of, step)
	if together == nil {
		return Distribution{}
	}
	if t.even && !v.bounded() {
		together.spreadAlike(&t, sum)
		return FromMasses(begins[0], sum)
	}
	for begin := begins[0]; begin <= begins[1]; begin++ {
		for k, x := range together.of(begin) {
			if x >= rarePair {
				t.spread(sum, x, begin, begin+together.least+k, v)
			}
		}
	}
	return FromMasses(begins[0], sum)
}

// rarePair is the chance of a begin and end of a step that are passed over.
const rarePair = 1e-9

// spreadAlike does what spread does for all pairs, when all days are alike and
// nothing is known of the event: the days from the begin are the same for all steps
// of a length.
func (s *pairs) spreadAlike(t *timing, sum []float64) {
	begins := len(s.p) / s.width()
	var days []float64
	for k := range s.width() {
		length := s.least + k
		days = days[:0]
		for i := range begins {
			x := s.p[i*s.width()+k]
			if x < rarePair {
				continue
			}
			begin := s.first + i
			if len(days) == 0 {
				days = append(days, make([]float64, length+1)...)
				alike := *t
				alike.first = begin
				alike.at, alike.end = t.at[begin-t.first:], t.end[begin-t.first:]
				alike.spread(days, 1, begin, begin+length, interval{lo: ever, hi: never})
			}
			to := sum[i : i+length+1]
			for j, y := range days {
				to[j] += x * y
			}
		}
	}
}

// blendedPairs gives the pairs of a step over all paces; nil where there are none.
func blendedPairs(done *solved, of [len(paces)]float64, step int) *pairs {
	var sum *pairs
	for i := range done.outcomes {
		one := done.outcomes[i].pairs[step]
		if one == nil {
			continue
		}
		if sum == nil {
			sum = &pairs{first: one.first, least: one.least, most: one.most, p: make([]float64, len(one.p))}
		}
		for j, x := range one.p {
			sum.p[j] += of[i] * x
		}
	}
	return sum
}

// mixWithin gives the events within the steps of a stretch their days.
func (s *solver) mixWithin(done *solved) {
	for i, w := range midways {
		e := &s.out.Within[i]
		if e.Recorded || w.step < done.first || w.step >= done.first+done.steps {
			continue
		}
		v := s.ev.within[i]
		if d := s.days(done, i, s.weights, v); d.Known() {
			e.set(s.out.From, d)
		}
	}
}
