package pairing

// point is a mixture of plans: of each option the young, how far it is chosen,
// and the square of its young, each on average.
type point struct{ young, chosen, square []float64 }

func newPoint(options int) point {
	all := make([]float64, 3*options)
	return point{all[:options:options], all[options : 2*options : 2*options], all[2*options:]}
}

// set lets an option have so many young with some part of the plans, and none with the others.
func (z point) set(option int, young, part float64) {
	z.young[option], z.chosen[option], z.square[option] = part*young, part, part*young*young
}

// towards gives the mixture with a part of another.
func (z point) towards(y point, part float64) point {
	out := newPoint(len(z.young))
	for p := range z.young {
		out.young[p] = z.young[p] + part*(y.young[p]-z.young[p])
		out.chosen[p] = z.chosen[p] + part*(y.chosen[p]-z.chosen[p])
		out.square[p] = z.square[p] + part*(y.square[p]-z.square[p])
	}
	return out
}
