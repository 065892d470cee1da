package development

// legs is hind legs and toes together. Each has a share of its own of the tadpole
// step, and toes are not free before there are legs: they come with the later of
// the two shares.
type legs struct {
	hind, toes     timing
	atHind, atToes interval // what was seen of each
}

// by gives the chance of hind legs as they were seen, and toes by the end of day.
func (l *legs) by(day, begin, end int) float64 {
	hind := l.hind.alone(min(l.atHind.hi, day), begin, end) - l.hind.alone(l.atHind.lo-1, begin, end)
	return max(hind, 0) * l.toes.alone(day, begin, end)
}

// chance gives that of all that was seen, within a step that begins on one day and ends
// on another.
func (l *legs) chance(begin, end int) float64 {
	return max(l.by(l.atToes.hi, begin, end)-l.by(l.atToes.lo-1, begin, end), 0)
}

// spread adds x to the days on which hind legs, or toes, come.
func (l *legs) spread(sum []float64, x float64, begin, end int, stage Stage) {
	v := l.atHind
	if stage == Toes {
		v = l.atToes
	}
	whole := l.chance(begin, end)
	lo, hi := max(v.lo, begin), min(v.hi, end)
	if whole < negligible || lo > hi {
		sum[v.nearest(begin, end)-l.hind.first] += x
		return
	}
	for day := lo; day <= hi; day++ {
		p := 0.0
		switch {
		case stage == Toes:
			p = l.by(day, begin, end) - l.by(day-1, begin, end)
		case day <= l.atToes.hi:
			p = l.toes.alone(l.atToes.hi, begin, end)
			if day < l.atToes.lo {
				p -= l.toes.alone(l.atToes.lo-1, begin, end)
			}
			p *= l.hind.alone(day, begin, end) - l.hind.alone(day-1, begin, end)
		}
		sum[day-l.hind.first] += x * max(p, 0) / whole
	}
}

// nearest gives the day of v that is nearest to a step from begin to end, within the
// step.
func (v interval) nearest(begin, end int) int {
	if v.hi < begin {
		return begin
	}
	return min(max(v.lo, begin), end)
}
