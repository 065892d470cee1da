package diversity

import "slices"

// Order gives the animals of a square of kinships in an order in which families
// stand together: groups are joined by the highest mean kinship of their members
// (average linkage: Sokal and Michener 1958, University of Kansas Science
// Bulletin 38:1409), the one with the animal that comes first before the other.
// Where kinships are equal the first in order are joined. Time grows with the cube of
// the animals, and it is meant for a picture of some hundred.
//
// It panics when the rows are not as long as there are rows.
func Order(kinship [][]float64) []int {
	n := len(kinship)
	groups := make([][]int, n)
	mean := make([][]float64, n)
	for i, row := range kinship {
		if len(row) != n {
			panic("diversity: kinships that are no square")
		}
		groups[i] = []int{i}
		mean[i] = slices.Clone(row)
	}
	for len(groups) > 1 {
		a, b := nearest(mean)
		joinMeans(mean, a, b, float64(len(groups[a])), float64(len(groups[b])))
		groups[a] = slices.Concat(groups[a], groups[b])
		groups = slices.Delete(groups, b, b+1)
		mean = slices.Delete(mean, b, b+1)
		for i := range mean {
			mean[i] = slices.Delete(mean[i], b, b+1)
		}
	}
	return slices.Concat(groups...)
}

// sameMean is how far apart means may be that differ by rounding alone.
const sameMean = 1e-12

// nearest gives the two groups with the highest mean, the lower number first.
func nearest(mean [][]float64) (a, b int) {
	b = 1
	for i := range mean {
		for j := i + 1; j < len(mean); j++ {
			if mean[i][j] > mean[a][b]+sameMean {
				a, b = i, j
			}
		}
	}
	return a, b
}

// joinMeans makes the means of group a those of both.
func joinMeans(mean [][]float64, a, b int, sizeA, sizeB float64) {
	for i := range mean {
		if i == a || i == b {
			continue
		}
		m := (sizeA*mean[a][i] + sizeB*mean[b][i]) / (sizeA + sizeB)
		mean[a][i], mean[i][a] = m, m
	}
}
