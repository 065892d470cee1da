package development

// A chain is a run of steps of one clutch that begins on a day, for certain or
// with the chances of begin, and what was seen of it. Days are counted from
// laying.
type chain struct {
	begin  masses
	tempos []tempo
	bounds
	lattices []*lattice  // of all steps but the last one of a closed chain
	ends     [][2]int    // first and last day on which each of those may end
	passed   [][]float64 // room for the chances of these days, good for one pace
	limits   map[int]int // the steps of which begin and end are wanted together, and the longest that matters
	weights  map[int]*weights
}

// outcome is what comes of a chain under one pace.
type outcome struct {
	chance      float64        // of what was seen; of a closed chain, of its very day
	early, late float64        // of a closed chain: of its day or before, and of its day or later, give or take offByOne
	reached     []float64      // chance that each step begins, and that all seen up to then is so
	days        []masses       // chance of each day of the begin and of each end that is open, given all that was seen
	joints      map[int]*joint // of the steps of which begin and end are wanted together
}

// prepare fills in what does not depend on the pace. It reports whether there
// is any way at all.
func (c *chain) prepare(limit int) bool {
	open := len(c.tempos)
	if c.closed {
		open--
	}
	first, last := c.begin.first, c.begin.first+len(c.begin.p)-1
	for i := range open {
		if first > last {
			return false
		}
		l := c.tempos[i].lattice(first, last, limit)
		first, last = l.ends(first, last)
		first, last = max(first, c.lo[i]), min(last, c.hi[i])
		if c.closed {
			last = min(last, c.end)
		}
		c.lattices = append(c.lattices, &l)
		c.ends = append(c.ends, [2]int{first, last})
		c.passed = append(c.passed, make([]float64, max(last-first+1, 0)))
	}
	if c.closed {
		c.ends = append(c.ends, [2]int{c.end, c.end})
	}
	return first <= last
}

// begins gives the first and the last day on which a step may begin.
func (c *chain) begins(step int) [2]int {
	if step == 0 {
		return [2]int{c.begin.first, c.begin.first + len(c.begin.p) - 1}
	}
	return c.ends[step-1]
}

// under works c out for one pace, by a pass forward and a pass backward over
// the days.
func (c *chain) under(p float64) outcome {
	kernels := make([]kernel, len(c.lattices))
	forward := make([]masses, len(c.lattices)+1)
	forward[0] = c.begin
	out := outcome{reached: []float64{c.begin.sum()}}
	for i, l := range c.lattices {
		kernels[i] = l.under(c.tempos[i].at(p))
		if w := c.weights[i]; w != nil {
			kernels[i] = kernels[i].weighed(forward[i], w)
		}
		forward[i+1] = kernels[i].forward(forward[i], masses{c.ends[i][0], c.passed[i]})
		if i+1 < len(c.tempos) {
			out.reached = append(out.reached, forward[i+1].sum())
		}
	}
	open := len(c.lattices)
	last := forward[open]
	chances := make([]float64, len(last.p)) // of what was seen later, for each day
	if c.closed {
		c.close(&out, last, chances, c.tempos[open].at(p))
	} else {
		out.chance = last.sum()
		for i := range chances {
			chances[i] = 1
		}
	}
	if out.chance == 0 {
		return out
	}
	if c.closed {
		c.pairClosed(&out, open, last, chances)
	}
	out.days = make([]masses, open+1)
	for i := open; ; i-- {
		out.days[i] = masses{forward[i].first, make([]float64, len(chances))}
		for j, x := range chances {
			out.days[i].p[j] = x * forward[i].p[j] / out.chance
		}
		if i == 0 {
			return out
		}
		var earlier []float64
		if i == open && !c.closed {
			earlier = kernels[i-1].sums(forward[i-1], c.ends[i-1])
		} else {
			earlier = kernels[i-1].backward(forward[i-1], masses{forward[i].first, chances})
		}
		c.pair(&out, i-1, kernels[i-1], forward[i-1], chances, earlier)
		chances = earlier
	}
}

// close works out the last step, which ended on a known day. begins are the
// chances of its begin.
func (c *chain) close(out *outcome, begins masses, chances []float64, b blend) {
	step := len(c.tempos) - 1
	t := c.tempos[step]
	for i, x := range begins.p {
		if x == 0 {
			continue
		}
		begin := begins.first + i
		chances[i] = max(b.cdf(t.z(begin, c.end))-b.cdf(t.z(begin, c.end-1)), 0)
		if w := c.weights[step]; w != nil {
			chances[i] *= w.of(begin)[0]
		}
		out.chance += x * chances[i]
		out.early += x * b.cdf(t.z(begin, c.end+offByOne))
		out.late += x * (1 - b.cdf(t.z(begin, c.end-offByOne-1)))
	}
}

// pair notes how begin and end of a step hang together, where that is wanted;
// later is of the ends, and sums the same of all ends of each begin.
func (c *chain) pair(out *outcome, step int, k kernel, begins masses, later, sums []float64) {
	if _, wanted := c.limits[step]; !wanted {
		return
	}
	followed := masses{begins.first, make([]float64, len(begins.p))}
	for i, x := range begins.p {
		if x >= faint {
			followed.p[i] = x / out.chance
		}
	}
	if c.weights[step] == nil { // those with weights are made for each pace
		k = k.kept(followed)
	}
	out.note(step, &joint{followed, k, masses{c.ends[step][0], later}, sums})
}

// pairClosed does the same for a last step that ended on a known day; chances are
// of that day, for each begin.
func (c *chain) pairClosed(out *outcome, step int, begins masses, chances []float64) {
	if _, wanted := c.limits[step]; !wanted {
		return
	}
	ended := masses{c.end, []float64{1}}
	followed := masses{begins.first, make([]float64, len(begins.p))}
	k := kernel{firstBegin: begins.first, rows: make([]masses, len(begins.p))}
	sums := make([]float64, len(begins.p))
	for i, x := range begins.p {
		followed.p[i] = x * chances[i] / out.chance
		k.rows[i], sums[i] = ended, 1
	}
	out.note(step, &joint{followed, k, ended, sums})
}

func (o *outcome) note(step int, j *joint) {
	if o.joints == nil {
		o.joints = make(map[int]*joint)
	}
	o.joints[step] = j
}
