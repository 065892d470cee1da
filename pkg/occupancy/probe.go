package occupancy

// probe tries the moves of a trial on one season after another. Only the days on
// which the moved clutch holds something, before or after, can change; on all
// others it is enough to know the first and the last day with too few.
type probe struct {
	trial  *trial
	game   *game
	levels [][]int32 // [resource][day]: what is needed before a move
	over   []stretch // of each resource: from the first day with too few to the last
	before []bool    // of each resource: whether it runs out
	change [][]int32 // [resource][day]: what a move adds, as rises; all 0 between moves
}

// stretch is days from, and without, to; empty when they are not in order.
type stretch struct{ from, to int }

func newProbe(t *trial) *probe {
	p := &probe{trial: t, game: newGame(t.season, t.deck), over: make([]stretch, len(t.season.Resources)), before: make([]bool, len(t.season.Resources))}
	for range t.season.Resources {
		p.levels = append(p.levels, make([]int32, t.season.Days))
		p.change = append(p.change, make([]int32, t.season.Days+1))
	}
	return p
}

// look notes what the moves do in the season that was dealt.
func (p *probe) look(out []Moved) {
	anyBefore := p.settle()
	for i, m := range p.trial.moves {
		var was, is []rise
		if course := p.game.course[m.Clutch]; course >= 0 && m.Days != 0 {
			was, is = p.trial.deck.rises[m.Clutch][course], p.trial.rises[i][course]
		}
		anyAfter := false
		for r := range p.levels {
			after := p.after(r, was, is)
			anyAfter = anyAfter || after
			out[i].Resources[r].note(p.before[r], after)
		}
		out[i].Any.note(anyBefore, anyAfter)
	}
}

// settle finds what is needed before a move, and whether anything runs out.
func (p *probe) settle() bool {
	anyShort := false
	for r, levels := range p.levels {
		count, load := int32(p.trial.season.Resources[r].Count), int32(0)
		over := stretch{from: len(levels)}
		for d := range levels {
			load += p.game.load[r][d]
			levels[d] = load
			if load > count {
				over = stretch{min(over.from, d), d + 1}
			}
		}
		p.over[r] = over
		p.before[r] = over.from < over.to
		anyShort = anyShort || p.before[r]
	}
	return anyShort
}

// after reports whether a resource runs out when a clutch does one thing instead
// of another.
func (p *probe) after(resource int, was, is []rise) bool {
	touched := stretch{from: len(p.levels[resource])}
	change := p.change[resource]
	put := func(rises []rise, sign int32) {
		for _, r := range rises {
			if r.resource == resource {
				change[r.day] += sign * r.by
				touched = stretch{min(touched.from, r.day), max(touched.to, r.day)}
			}
		}
	}
	put(was, -1)
	put(is, 1)
	if touched.from >= touched.to {
		return p.before[resource]
	}
	defer clear(change[touched.from : touched.to+1])
	if over := p.over[resource]; over.from < over.to && (over.from < touched.from || over.to > touched.to) {
		return true
	}
	count, more := int32(p.trial.season.Resources[resource].Count), int32(0)
	for d := touched.from; d < touched.to; d++ {
		more += change[d]
		if p.levels[resource][d]+more > count {
			return true
		}
	}
	return false
}
