package occupancy

import "slices"

// sum is the distribution of a sum of independent numbers.
type sum struct {
	chances []float64
	spare   []float64 // for the next one
}

func newSum() *sum { return &sum{chances: []float64{1}} }

// clear makes it nothing for certain.
func (s *sum) clear() { s.chances = append(s.chances[:0], 1) }

// negligible chances are dropped: a thousand clutches of a thousand tubs lose
// less than the rounding of one addition. Without this the far tails would cost
// most of the time.
const negligible = 1e-22

// add adds a number with these chances, by convolution.
func (s *sum) add(chances []float64) {
	if len(chances) == 1 {
		return // it is nothing for certain
	}
	n := len(s.chances) + len(chances) - 1
	next := slices.Grow(s.spare[:0], n)[:n]
	clear(next)
	for i, p := range s.chances {
		if p < negligible {
			continue
		}
		for j, q := range chances {
			next[i+j] += p * q
		}
	}
	for len(next) > 1 && next[len(next)-1] < negligible {
		next = next[:len(next)-1]
	}
	s.chances, s.spare = next, s.chances
}
