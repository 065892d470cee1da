package development

// pairs are the chances of the days on which a step begins and ends, together.
// Of a step whose length does not matter beyond a limit all longer ones count as
// of that.
type pairs struct {
	first int // the day of the first begin
	least int // the days of the first length
	most  int // the days of the last
	p     []float64
}

// room makes way for begins and ends from the first to the last of each.
func (s *pairs) room(begins, ends [2]int, limit int) {
	s.first = begins[0]
	s.least = min(max(ends[0]-begins[1], 0), limit)
	s.most = min(max(ends[1]-begins[0], s.least), limit)
	s.p = make([]float64, (begins[1]-begins[0]+1)*s.width())
}

func (s *pairs) width() int { return s.most - s.least + 1 }

// of gives the chances of the lengths from least on, for a begin.
func (s *pairs) of(begin int) []float64 {
	return s.p[(begin-s.first)*s.width():][:s.width()]
}

// add adds the chances of the ends of a begin, each times what is known of what came
// later, and all times x and a weight.
func (s *pairs) add(begin int, weight, x float64, row, later masses) {
	row = row.within(later.first, later.first+len(later.p)-1)
	if len(row.p) == 0 {
		return
	}
	to, from := s.of(begin), later.p[row.first-later.first:][:len(row.p)]
	start := row.first - begin
	single := max(min(s.most-start, len(row.p)), 0) // so many have a length of their own
	for j, y := range row.p[:single] {
		to[start-s.least+j] += weight * (x * y * from[j])
	}
	longer := 0.0
	for j := single; j < len(row.p); j++ {
		longer += x * row.p[j] * from[j]
	}
	to[s.most-s.least] += weight * longer
}

// weights are the chances of what was seen within a step, by its begin and end.
type weights struct {
	begins, ends [2]int // the first and the last day
	p            []float64
}

func (w *weights) of(begin int) []float64 {
	width := w.ends[1] - w.ends[0] + 1
	return w.p[(begin-w.begins[0])*width:][:width]
}

// newWeights gives those of what was seen within a step; of gives the chance of it
// when the step begins on one day and ends on another.
func newWeights(begins, ends [2]int, of func(begin, end int) float64) *weights {
	w := &weights{begins, ends, make([]float64, (begins[1]-begins[0]+1)*(ends[1]-ends[0]+1))}
	for begin := begins[0]; begin <= begins[1]; begin++ {
		row := w.of(begin)
		for j := range row {
			if end := ends[0] + j; end >= begin {
				row[j] = of(begin, end)
			}
		}
	}
	return w
}
