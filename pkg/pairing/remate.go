package pairing

import "slices"

// change is so many young more of an option, or fewer.
type change struct {
	option int32
	young  int32
}

// remate exchanges the mates of two pairs of a plan, in the way that saves most, and reports
// whether there was one.
func (s *search) remate(y []int32) bool {
	if s.pairs == nil {
		return false
	}
	z := make([]float64, len(y))
	var chosen []int32
	for p, n := range y {
		z[p] = float64(n)
		if n > 0 {
			chosen = append(chosen, int32(p))
		}
	}
	_, kc := s.scoring.carried(z)
	var best []change
	most := slack
	for i, p := range chosen {
		for _, q := range chosen[:i] {
			to, other := s.pairs.at[s.pairs.sire[p]][s.pairs.dam[q]], s.pairs.at[s.pairs.sire[q]][s.pairs.dam[p]]
			if to < 0 || other < 0 || y[to] > 0 || y[other] > 0 {
				continue
			}
			for _, young := range [2][2]int32{{y[p], y[q]}, {y[q], y[p]}} {
				changes := []change{{p, -y[p]}, {q, -y[q]}, {to, young[0]}, {other, young[1]}}
				if saved := s.saved(z, kc, changes); saved > most && s.keeps(changed(y, changes)) {
					best, most = changes, saved
				}
			}
		}
	}
	copy(y, changed(y, best))
	return best != nil
}

// saved gives by how much changes of the young z lower the score; kc is from carried.
func (s *search) saved(z, kc []float64, changes []change) float64 {
	sum := 0.0
	for _, a := range changes {
		sum -= float64(a.young) * s.scoring.slope(int(a.option), z[a.option], kc)
		for _, b := range changes {
			sum -= float64(a.young) * float64(b.young) * s.scoring.bend(int(a.option), int(b.option))
		}
	}
	return sum
}

func changed(y []int32, changes []change) []int32 {
	out := slices.Clone(y)
	for _, c := range changes {
		out[c.option] += c.young
	}
	return out
}
