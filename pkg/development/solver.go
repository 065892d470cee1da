package development

import (
	"math"
)

// A solver works through the stretches of a clutch, from one recorded event to
// the next, and keeps how likely each pace is by all that it has been through.
// Given the pace, stretches tell nothing of each other.
type solver struct {
	model   *Model
	ev      *evidence
	room    *Room
	tempos  [len(links)]tempo
	out     *Outlook
	begin   masses   // of laying
	wanted  []midway // the events within steps whose days are wanted
	weights [len(paces)]float64
	solved  []*solved
	stalled float64 // chance of all that was seen, and a stall
	goingOn float64 // chance that no step so far was one to stall in
}

// solved is a stretch that is worked out.
type solved struct {
	first, steps int // the first step, and how many
	chain        *chain
	outcomes     [len(paces)]outcome

	// The pairs that were asked for last, and by which weights and of which step.
	blended     *pairs
	blendedOf   [len(paces)]float64
	blendedStep int
}

func (s *solver) run() {
	s.goingOn = 1
	begin, from := s.begin, Laid
	for i := 0; i < len(links); {
		last := i
		for last < len(links) && s.model.known[last] && (last == i || !s.ev.recorded[last-1]) {
			last++
		}
		closed := last > i && s.ev.recorded[last-1]
		if last > i {
			s.stretch(i, last, begin, from)
		}
		if !closed {
			next, ok := s.ev.nextRecorded(last)
			if !ok {
				break
			}
			last = next + 1
		}
		i, from = last, links[last-1].end
		begin = masses{s.ev.day[last-1], []float64{1}}
	}
	s.mix()
}

// stretch works out the steps from first to before last. What it cannot say
// anything about it leaves out.
func (s *solver) stretch(first, last int, begin masses, from Stage) {
	day := begin.first
	b := s.ev.bounds(first, last)
	if b.hi[len(b.hi)-1] < day || b.closed && b.end < day {
		return // recorded dates run backward, and sift has said so
	}
	if b.reach()-day > longest {
		s.out.warn(nil, "what was seen after %v reaches over more than ten years: no dates are given for it", from)
		return
	}
	c := &chain{begin: begin, tempos: s.tempos[first:last], bounds: b, limits: s.limits(first, last)}
	done := &solved{first: first, steps: last - first, chain: c}
	chance, possible := s.outcomes(c, done, day+farAhead)
	dated := len(begin.p) == 1 // otherwise the chance of what was seen says nothing
	if dated && chance < doubtful {
		s.doubt(first, last, day, from, chance)
	}
	switch {
	case !possible || dated && chance < impossible:
		if !s.wide(done, b) {
			return
		}
	default:
		done = s.within(done, from, day+farAhead)
	}
	s.stalls(first, last, b, done)
	total := 0.0
	for i := range s.weights {
		s.weights[i] *= done.outcomes[i].chance
		total += s.weights[i]
	}
	for i := range s.weights {
		s.weights[i] /= total
	}
	s.stalled /= total
	s.solved = append(s.solved, done)
}

// wide works a stretch out with steps of almost any length. It reports whether
// there is a way even so.
func (s *solver) wide(done *solved, b bounds) bool {
	day := done.chain.begin.first
	for _, stall := range stalls {
		c := &chain{begin: done.chain.begin, bounds: b, limits: done.chain.limits}
		for _, t := range s.tempos[done.first:][:done.steps] {
			c.tempos = append(c.tempos, t.widened(stall, day, b.reach()))
		}
		if !c.prepare(day + (b.reach()-day)*5/4 + longest/10) {
			continue
		}
		// What the model does not understand tells nothing of the pace.
		middle := c.under(0)
		if middle.chance == 0 {
			continue
		}
		for i := range done.outcomes {
			done.outcomes[i] = middle
		}
		done.chain = c
		return true
	}
	return false
}

// farAhead is how many days after the begin of a stretch are looked at, if nothing
// seen reaches beyond: four years.
const farAhead = 1461

// outcomes works a chain out under every pace. chance is that of what was seen
// or what is farther out; possible is false when there is no way at all.
func (s *solver) outcomes(c *chain, done *solved, limit int) (chance float64, possible bool) {
	if c.ends == nil && !c.prepare(limit) {
		return 0, false
	}
	early, late, total := 0.0, 0.0, 0.0
	for i, p := range paces {
		o := &done.outcomes[i]
		*o = outcome{}
		if s.weights[i] < rarePace {
			continue
		}
		*o = c.under(p.at)
		total += s.weights[i] * o.chance
		early += s.weights[i] * o.early
		late += s.weights[i] * o.late
	}
	if c.closed {
		return min(1, 2*min(early, late)), total > 0
	}
	return total, total > 0
}

// rarePace is how unlikely a pace is that is followed no farther.
const rarePace = 1e-7

// doubt says what is unlikely about a stretch.
func (s *solver) doubt(first, last, day int, from Stage, chance float64) {
	free := &chain{begin: masses{day, []float64{1}}, tempos: s.tempos[first:last]}
	for range free.tempos {
		free.lo, free.hi = append(free.lo, ever), append(free.hi, never)
	}
	done := &solved{chain: free}
	s.outcomes(free, done, day+farAhead)
	sums := make([]Distribution, last-first)
	for i := range sums {
		sums[i] = blended(done, s.weights, i+1).Plus(Point(-day))
	}
	b := s.ev.bounds(first, last)
	odd := s.ev.oddest(first, day, b, sums)
	then := ""
	switch {
	case !b.closed:
		then = ", and the dates that follow are rough"
	case len(b.lo) > 1:
		then = ", and the dates between are rough"
	}
	s.out.warn(odd.looks, "%s", odd.doubt(from, s.who(), chance, then))
}

// who says who expected something else.
func (s *solver) who() string {
	if s.room != nil {
		return "the profile and your records expect"
	}
	return "the profile expects"
}

// stalls counts the ways in which the clutch may have stalled in one of the
// steps: nothing was seen of the end of it, nor of anything later.
func (s *solver) stalls(first, last int, b bounds, done *solved) {
	for i := first; i < last; i++ {
		_, later := s.ev.nextRecorded(i)
		if !later && b.hi[i-first] == never {
			for j, w := range s.weights {
				if reached := done.outcomes[j].reached; len(reached) > i-first {
					s.stalled += s.goingOn * s.model.stalls[i] * w * reached[i-first]
				}
			}
		}
		s.goingOn *= 1 - s.model.stalls[i]
	}
}

// blended gives the distribution of the day of the begin (0) or of an end
// (from 1) of a stretch, over all paces.
func blended(done *solved, weights [len(paces)]float64, which int) Distribution {
	lo, hi := math.MaxInt, math.MinInt
	for _, o := range done.outcomes {
		if len(o.days) > which && len(o.days[which].p) > 0 {
			lo = min(lo, o.days[which].first)
			hi = max(hi, o.days[which].first+len(o.days[which].p)-1)
		}
	}
	if lo > hi {
		return Distribution{}
	}
	sum := make([]float64, hi-lo+1)
	for i, o := range done.outcomes {
		if len(o.days) > which {
			for j, x := range o.days[which].p {
				sum[o.days[which].first-lo+j] += weights[i] * x
			}
		}
	}
	return FromMasses(lo, sum)
}

// mix gives the events what all stretches together say.
func (s *solver) mix() {
	o := s.out
	for _, done := range s.solved {
		for j := range done.steps {
			e := &o.Events[done.first+j]
			if !e.Recorded {
				if d := blended(done, s.weights, j+1); d.Known() {
					e.set(o.From, d)
				}
			}
		}
		if done.first == 0 && !o.Laid.Known() {
			if d := blended(done, s.weights, 0); d.Known() {
				o.Laid = d.window(o.From)
			}
		}
		s.mixWithin(done)
	}
	for i, p := range paces {
		o.Pace += s.weights[i] * p.at
	}
	for i, p := range paces {
		o.PaceSD += s.weights[i] * (p.at - o.Pace) * (p.at - o.Pace)
	}
	o.PaceSD = math.Sqrt(o.PaceSD)
	if s.stalled > 0 {
		o.Stall = s.stalled / (s.stalled + s.goingOn)
	}
	if o.Stall > stallTold {
		o.warn(nil, "the chance that the clutch has stalled, or will, is %.0f %%: look at temperature, food and water, and ask a veterinarian when animals look unwell", min(100*o.Stall, 99)) // never certain
	}
	s.bases()
}

// stallTold is the chance of a stall from which it is said aloud.
const stallTold = 0.1

// bases says what each date rests on.
func (s *solver) bases() {
	begin := 0 // the first step that is not behind a recorded event
	for i := range links {
		for w, m := range midways {
			if m.step == i {
				last := i
				if s.model.courses[w].share == nil {
					last-- // how long the step takes does not matter
				}
				s.out.Within[w].Basis = s.basis(&s.out.Within[w], begin, last)
			}
		}
		e := &s.out.Events[i]
		e.Basis = s.basis(e, begin, i)
		if e.Recorded {
			begin = i + 1
		}
	}
}

// basis says what a date rests on that is counted over the steps from begin to
// last.
func (s *solver) basis(e *Event, begin, last int) Basis {
	switch {
	case e.Recorded:
		return Basis{Seen: true}
	case !e.Dist.Known():
		return Basis{}
	}
	long := begin
	for j := begin; j <= last; j++ {
		if s.model.shapes[j].mu > s.model.shapes[long].mu {
			long = j
		}
	}
	b := Basis{Looks: s.ev.looks, Book: bookClutches}
	if s.room != nil && begin <= last {
		b.Finished, b.Running = s.room.steps[long].finished, s.room.steps[long].running
	}
	return b
}
