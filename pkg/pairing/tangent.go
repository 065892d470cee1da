package pairing

import "slices"

// tangent is a function of a plan that is a sum over the options, and that no plan
// within the limits scores above. It touches, at the point z, the part of the
// score that is no such sum, which is convex; each limit stands in it with a
// price per pairing over it, which a plan within it never pays (Lagrange; Geoffrion
// 1974, Mathematical Programming Study 2:82). Any z, any shares of the squares from 0
// to the whole and any prices give a valid bound, if the price of an AtMost is not
// below 0 and that of an AtLeast not above; climb looks for good ones.
type tangent struct {
	z        point
	price    []float64 // of each limit; of its AtLeast when negative
	moved    []float64 // of each parent: the share of its square that is counted by option
	constant float64
	slope    []float64 // of each option: what a young counts,
	entry    []float64 // that it is chosen,
	bend     []float64 // and the square of its young
}

func (s *search) tangentAt(z point, price, moved []float64) *tangent {
	t := &tangent{
		z: z, price: price, moved: moved, constant: s.scoring.base,
		slope: make([]float64, len(z.young)), entry: make([]float64, len(z.young)), bend: slices.Clone(s.scoring.square),
	}
	c, kc := s.scoring.carried(z.young)
	for a := range c {
		kc[a] -= moved[a] * c[a]
		t.constant += (s.squares.own[a]-moved[a])*s.squares.chord(a, c[a]) - c[a]*kc[a]
	}
	for p := range t.slope {
		t.slope[p] = s.scoring.slope(p, 0, kc)
		for _, a := range s.scoring.shares[p] {
			t.bend[p] += moved[a.parent] * a.part * a.part
		}
	}
	for l, x := range price {
		if x == 0 {
			continue
		}
		bound := s.limits[l].most
		if x < 0 {
			bound = s.limits[l].least
		}
		t.constant -= x * float64(bound)
		for _, p := range s.limits[l].options {
			t.entry[p] += x
		}
	}
	return t
}

// of gives what the young of an option add.
func (t *tangent) of(p, young int32) float64 {
	if young == 0 {
		return 0
	}
	n := float64(young)
	return t.entry[p] + (t.slope[p]+t.bend[p]*n)*n
}
