package development

// A kernel gives the chances of the day of the end of a step for each day of
// its begin.
type kernel struct {
	even       bool
	firstBegin int
	rows       []masses
}

func (k kernel) row(begin int) masses {
	if k.even {
		return masses{k.rows[0].first + begin, k.rows[0].p}
	}
	return k.rows[begin-k.firstBegin]
}

// forward gives the chances of the ends from those of the begins; ends are the
// first and the last that are allowed.
func (k kernel) forward(begins masses, ends [2]int) masses {
	out := masses{ends[0], make([]float64, max(ends[1]-ends[0]+1, 0))}
	for i, x := range begins.p {
		if x < negligible/1000 {
			continue
		}
		row := k.row(begins.first+i).within(ends[0], ends[1])
		if len(row.p) == 0 {
			continue
		}
		to := out.p[row.first-out.first:]
		for j, y := range row.p {
			to[j] += x * y
		}
	}
	return out
}

// backward gives, for each of the begins, the chance of what was seen later,
// from that of each end; first is the day of later[0].
func (k kernel) backward(begins masses, first int, later []float64) []float64 {
	chances := make([]float64, len(begins.p))
	for i := range chances {
		if begins.p[i] < negligible/1000 {
			continue
		}
		row := k.row(begins.first+i).within(first, first+len(later)-1)
		if len(row.p) == 0 {
			continue
		}
		from := later[row.first-first:]
		for j, y := range row.p {
			chances[i] += y * from[j]
		}
	}
	return chances
}
