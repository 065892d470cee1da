package pairing

// scoring is the score of a plan as a function of the young y held back from
// each option:
//
//	score = base + Σ lin·y + Σ square·y² + c'Kc
//
// where c, what each parent gives to the young, is Σ y·share. The score is convex
// in y, for K is a table of kinships. All terms are already divided by the square
// of the size of the pool.
//
// The sum of kinships in the pool grows by 2y times the kinship of a young with
// the members, by (1+F)/2 for each young with itself, and by the kinship of its
// parents' genes for each two young. That two young of one option have the
// kinship of sibs is a correction to what c'Kc says of them.
type scoring struct {
	base        float64
	lin, square []float64
	inbreeding  []float64 // of the young of each option
	shares      [][]share // of the parents in a young of each option; they sum to 1
	parents     []int     // places in the pedigree, by row of kin
	kin         [][]float64
	young       int
	weight      float64
}

// share is the part of a parent in the genes of a young.
type share struct {
	parent int // row of scoring.kin
	part   float64
}

func newScoring(c *Choice) *scoring {
	p := c.Pool.pedigree
	s := &scoring{young: c.Young, weight: c.Weight}
	parents, row := parentsOf(c.Options)
	s.parents = parents
	size := float64(c.Pool.Len() + c.Young)
	s.kin = p.Block(parents, parents)
	members := float64(c.Pool.Len())
	s.base = c.Pool.mean * members * members / (size * size)
	for _, o := range c.Options {
		shares := sharesOf(o, row)
		s.shares = append(s.shares, shares)
		toPool, drawn := 0.0, 0.0
		for _, a := range shares {
			toPool += a.part * members * c.Pool.meanKinship[parents[a.parent]]
			for _, b := range shares {
				drawn += a.part * b.part * s.kin[a.parent][b.parent]
			}
		}
		inbreeding := meanBetween(s.kin, row, o)
		sibling := c.Pool.siblingKinship(o.Sires, o.Dams, inbreeding, o.Mix)
		s.inbreeding = append(s.inbreeding, inbreeding)
		s.lin = append(s.lin, (2*toPool+(1+inbreeding)/2-sibling)/(size*size)+c.Weight*inbreeding/float64(c.Young))
		s.square = append(s.square, max(0, sibling-drawn)/(size*size))
	}
	for _, line := range s.kin {
		for j := range line {
			line[j] /= size * size
		}
	}
	return s
}

// parentsOf gives every animal of the options once, and its row.
func parentsOf(options []Option) (parents []int, row map[int]int) {
	row = make(map[int]int)
	for _, o := range options {
		for _, side := range [][]int{o.Sires, o.Dams} {
			for _, node := range side {
				if _, known := row[node]; !known {
					row[node] = len(parents)
					parents = append(parents, node)
				}
			}
		}
	}
	return parents, row
}

func sharesOf(o Option, row map[int]int) []share {
	var out []share
	for _, side := range [][]int{o.Sires, o.Dams} {
		for _, node := range side {
			out = append(out, share{row[node], 0.5 / float64(len(side))})
		}
	}
	return out
}

func meanBetween(kin [][]float64, row map[int]int, o Option) float64 {
	sum := 0.0
	for _, s := range o.Sires {
		for _, d := range o.Dams {
			sum += kin[row[s]][row[d]]
		}
	}
	return sum / float64(len(o.Sires)*len(o.Dams))
}

// carried gives what the parents give to the young y, times K.
func (s *scoring) carried(y []float64) (c, kc []float64) {
	c = make([]float64, len(s.kin))
	for p, n := range y {
		if n != 0 {
			for _, a := range s.shares[p] {
				c[a.parent] += n * a.part
			}
		}
	}
	kc = make([]float64, len(s.kin))
	for a, part := range c {
		if part != 0 {
			for b, k := range s.kin[a] {
				kc[b] += part * k
			}
		}
	}
	return c, kc
}

// of gives the score of a plan.
func (s *scoring) of(y []float64) float64 {
	c, kc := s.carried(y)
	sum := s.base
	for p, n := range y {
		sum += (s.lin[p] + s.square[p]*n) * n
	}
	for a := range c {
		sum += c[a] * kc[a]
	}
	return sum
}

// slope gives how the score grows with the young of option p, where kc is from
// carried and n are its young.
func (s *scoring) slope(p int, n float64, kc []float64) float64 {
	sum := s.lin[p] + 2*s.square[p]*n
	for _, a := range s.shares[p] {
		sum += 2 * a.part * kc[a.parent]
	}
	return sum
}

// plan gives a plan with its figures.
func (s *scoring) plan(young []int) Plan {
	var p Plan
	y := make([]float64, len(young))
	for i, n := range young {
		if n > 0 {
			y[i] = float64(n)
			p.Picks = append(p.Picks, Pick{i, n})
			p.YoungInbreeding += s.inbreeding[i] * float64(n) / float64(s.young)
		}
	}
	p.Score = s.of(y)
	p.MeanKinship = p.Score - s.weight*p.YoungInbreeding
	return p
}
