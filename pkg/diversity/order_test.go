package diversity_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/diversity"
)

func TestOrder(t *testing.T) {
	for _, row := range []struct {
		name    string
		kinship [][]float64
		want    []int
	}{
		{"nobody", nil, nil},
		{"one", [][]float64{{0.5}}, []int{0}},
		{"strangers stay as they are", [][]float64{{0.5, 0, 0}, {0, 0.5, 0}, {0, 0, 0.5}}, []int{0, 1, 2}},
		{
			"two families that are mixed", [][]float64{
				{0.5, 0, 0.25, 0},
				{0, 0.5, 0, 0.25},
				{0.25, 0, 0.5, 0},
				{0, 0.25, 0, 0.5},
			}, []int{0, 2, 1, 3},
		},
		{
			"a cousin goes to the nearer family, by the mean of its members", [][]float64{
				{0.5, 0.25, 0, 0, 0.1},
				{0.25, 0.5, 0, 0, 0},
				{0, 0, 0.5, 0.25, 0.06},
				{0, 0, 0.25, 0.5, 0.06},
				{0.1, 0, 0.06, 0.06, 0.5},
			}, []int{0, 1, 2, 3, 4},
		},
	} {
		t.Run(row.name, func(t *testing.T) { assert.Equal(t, row.want, diversity.Order(row.kinship)) })
	}
	assert.Panics(t, func() { diversity.Order([][]float64{{0.5, 0}, {0}}) })
}

// The slow twin takes the mean over members anew each time.
func TestOrderTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 9).Draw(t, "animals")
		kinship := make([][]float64, n)
		for i := range kinship {
			kinship[i] = make([]float64, n)
			for j := range i {
				kinship[i][j] = float64(rapid.IntRange(0, 32).Draw(t, "kinship")) / 64
				kinship[j][i] = kinship[i][j]
			}
		}
		if got, want := diversity.Order(kinship), slowOrder(kinship); !slices.Equal(got, want) {
			t.Fatalf("%v, the twin has %v", got, want)
		}
	})
}

func slowOrder(kinship [][]float64) []int {
	var groups [][]int
	for i := range kinship {
		groups = append(groups, []int{i})
	}
	for len(groups) > 1 {
		best, a, b := -1.0, 0, 0
		for i := range groups {
			for j := i + 1; j < len(groups); j++ {
				sum := 0.0
				for _, x := range groups[i] {
					for _, y := range groups[j] {
						sum += kinship[x][y]
					}
				}
				if mean := sum / float64(len(groups[i])*len(groups[j])); mean > best+1e-12 {
					best, a, b = mean, i, j
				}
			}
		}
		groups[a] = append(slices.Clone(groups[a]), groups[b]...)
		groups = slices.Delete(groups, b, b+1)
	}
	return groups[0]
}
