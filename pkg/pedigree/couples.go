package pedigree

// couples are the different couples of parents, and the inbreeding coefficients
// of their young: full sibs are computed once.
//
// Each couple is settled from one of its two, its pivot, as soon as it is known
// what is new in the pivot and its ancestors. That is enough for mates of any
// age, since kinship comes from common ancestors only.
type couples struct {
	of    []int32   // couple by node of the young; none when a parent is unknown
	f     []float64 // by couple
	mates [][]mate  // of each node, in the couples of which it is the pivot
	swept []float64 // by node; clear between sweeps
}

// mate is the other of a couple, and the couple.
type mate struct{ node, couple int32 }

// couples finds the couples. The pivot is the one with more mates.
func (g *graph) couples() *couples {
	n := g.len()
	c := &couples{of: make([]int32, n), mates: make([][]mate, n), swept: make([]float64, n)}
	number := map[[2]int32]int32{}
	var pairs [][2]int32
	mates := make([]int32, n)
	for k := range n {
		sire, dam := g.sire[k], g.dam[k]
		c.of[k] = none
		if sire == none || dam == none {
			continue
		}
		pair := [2]int32{sire, dam}
		i, known := number[pair]
		if !known {
			i = int32(len(pairs))
			number[pair] = i
			pairs = append(pairs, pair)
			mates[sire]++
			mates[dam]++
		}
		c.of[k] = i
	}
	for i, pair := range pairs {
		pivot, other := pair[0], pair[1]
		if mates[other] > mates[pivot] {
			pivot, other = other, pivot
		}
		c.mates[pivot] = append(c.mates[pivot], mate{other, int32(i)})
	}
	c.f = make([]float64, len(pairs))
	return c
}

// inbreeding gives the coefficient of an animal whose parents are settled.
func (c *couples) inbreeding(k int32) float64 {
	if c.of[k] == none {
		return 0
	}
	return c.f[c.of[k]]
}

// stepCost is how many nodes a sweep passes in the time in which a walk visits
// one, roughly, as measured.
const stepCost = 4

// settle computes the couples of which node k is the pivot: by a walk for each
// until the walks have cost as much as one sweep for all of them would, which is
// then done for the rest. That is at most twice as slow as the better of the two.
func (c *couples) settle(g *graph, w *walker, k int32) {
	mates := c.mates[k]
	last := k
	for _, m := range mates {
		last = max(last, m.node)
	}
	start := w.steps
	for i, m := range mates {
		switch {
		case m.node == k:
			c.f[m.couple] = g.self[k]
		case (w.steps-start)*stepCost <= int(k)+int(last):
			c.f[m.couple] = w.cross(g, []term{{k, 1}}, []term{{m.node, 1}})
		default:
			c.sweep(g, k, last, mates[i:])
			return
		}
	}
}

// sweep computes the kinship of node k to all nodes up to the last, and takes
// that to its mates from there.
func (c *couples) sweep(g *graph, k, last int32, mates []mate) {
	c.swept[k] = 1
	g.sweep(c.swept, int(k), int(last))
	for _, m := range mates {
		c.f[m.couple] = c.swept[m.node]
	}
	clear(c.swept[:last+1])
}
