package pairing

import "math"

// ownParts gives a diagonal that can be taken from a table of kinships so that it
// stays positive semidefinite: what each parent has that the others do not tell, scaled
// down as far as all together need. It is 0 for a table that has no such part.
func ownParts(kin [][]float64) []float64 {
	own := make([]float64, len(kin))
	low, ok := cholesky(kin, own, 0)
	if !ok {
		return own
	}
	for a := range own {
		own[a] = 1 / inverseAt(low, a)
	}
	least, most := 0.0, 1.0
	for range 12 {
		half := (least + most) / 2
		if _, ok := cholesky(kin, own, half); ok {
			least = half
		} else {
			most = half
		}
	}
	for a := range own {
		own[a] *= least
	}
	return own
}

// cholesky gives the lower triangle L with LL' = kin less scale times own, if
// there is one.
func cholesky(kin [][]float64, own []float64, scale float64) (low [][]float64, ok bool) {
	low = make([][]float64, len(kin))
	for i := range kin {
		low[i] = make([]float64, i+1)
		for j := range i + 1 {
			x := kin[i][j]
			if i == j {
				x -= scale * own[i]
			}
			for k := range j {
				x -= low[i][k] * low[j][k]
			}
			switch {
			case i > j:
				low[i][j] = x / low[j][j]
			case x <= rounding*kin[i][i]:
				return nil, false
			default:
				low[i][i] = math.Sqrt(x)
			}
		}
	}
	return low, true
}

// inverseAt gives the a-th number on the diagonal of the inverse of LL'.
func inverseAt(low [][]float64, a int) float64 {
	x := make([]float64, len(low)) // solves Lx = the a-th unit vector
	sum := 0.0
	for i := a; i < len(low); i++ {
		if i == a {
			x[i] = 1
		}
		for k := a; k < i; k++ {
			x[i] -= low[i][k] * x[k]
		}
		x[i] /= low[i][i]
		sum += x[i] * x[i]
	}
	return sum
}
