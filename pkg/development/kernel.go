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

// faint is a chance that is passed over.
const faint = negligible / 1000

// forward gives the chances of the ends from those of the begins; ends are the
// first and the last that are allowed.
func (k kernel) forward(begins masses, ends [2]int) masses {
	out := masses{ends[0], make([]float64, max(ends[1]-ends[0]+1, 0))}
	for i, x := range begins.p {
		if x < faint {
			continue
		}
		row := k.row(begins.first+i).within(ends[0], ends[1])
		if len(row.p) == 0 {
			continue
		}
		to := out.p[row.first-out.first:][:len(row.p)]
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
		if begins.p[i] < faint {
			continue
		}
		row := k.row(begins.first+i).within(first, first+len(later)-1)
		if len(row.p) == 0 {
			continue
		}
		from := later[row.first-first:][:len(row.p)]
		sum := 0.0
		for j, y := range row.p {
			sum += y * from[j]
		}
		chances[i] = sum
	}
	return chances
}

// weighed gives the kernel for begins with the chance of what was seen within the
// step.
func (k kernel) weighed(begins masses, w *weights) kernel {
	out := kernel{firstBegin: begins.first, rows: make([]masses, len(begins.p))}
	for i, x := range begins.p {
		if x < faint {
			continue
		}
		row := k.row(begins.first+i).within(w.ends[0], w.ends[1])
		p := make([]float64, len(row.p))
		by := w.of(begins.first + i)
		for j, y := range row.p {
			p[j] = y * by[row.first-w.ends[0]+j]
		}
		out.rows[i] = masses{row.first, p}
	}
	return out
}
