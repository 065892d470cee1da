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

// even makes z the mean of the points that exchanges make of it.
func (z point) even(orbit []int32) point {
	if orbit == nil {
		return z
	}
	size := make([]float64, len(orbit))
	for p, first := range orbit { // the first of an orbit comes before its others
		size[first]++
		if int32(p) != first {
			z.young[first] += z.young[p]
			z.chosen[first] += z.chosen[p]
			z.square[first] += z.square[p]
		}
	}
	for p, first := range orbit {
		if int32(p) == first {
			z.young[p], z.chosen[p], z.square[p] = z.young[p]/size[p], z.chosen[p]/size[p], z.square[p]/size[p]
		} else {
			z.young[p], z.chosen[p], z.square[p] = z.young[first], z.chosen[first], z.square[first]
		}
	}
	return z
}
