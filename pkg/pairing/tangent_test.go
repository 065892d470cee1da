package pairing

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// TestTangentIsBelowEveryPlan holds tangents with random points, prices and shares
// against the score of every plan of small choices, and where they are lowest
// against every plan without limits.
func TestTangentIsBelowEveryPlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, c := drawChoice(t)
		s := newSearch(&c, Effort{})
		rng := newSource(rapid.Uint64().Draw(t, "seed"))
		z := newPoint(len(c.Options))
		for p := range c.Options {
			z.young[p] = 3 * rng.Float64()
		}
		price := make([]float64, len(c.Limits))
		for l, limit := range c.Limits {
			switch {
			case rng.IntN(3) == 0:
			case limit.AtMost < NoLimit:
				price[l] = 0.1 * rng.Float64()
			default:
				price[l] = -0.1 * rng.Float64()
			}
		}
		moved := make([]float64, len(s.squares.own))
		for a, x := range s.squares.own {
			moved[a] = rng.Float64() * x
		}
		tangent := s.tangentAt(z, price, moved)
		of := func(y []int) float64 {
			sum := tangent.constant
			for p, n := range y {
				sum += tangent.of(int32(p), int32(n))
			}
			return sum
		}
		enumerate(c, func(y []int) float64 {
			require.LessOrEqual(t, of(y), s.scoring.plan(y).Score+1e-12)
			return 0
		})
		root := s.root()
		low := s.lowest(tangent, root)
		free := c
		free.Limits = nil
		lowest := math.Inf(1)
		enumerate(free, func(y []int) float64 {
			lowest = min(lowest, of(y))
			return 0
		})
		require.LessOrEqual(t, low.value, lowest+1e-12)
	})
}

// TestOwnPartsLeaveNoNegativeSquare holds that what is left of a table of kinships is
// still positive semidefinite, and that not nothing is taken.
func TestOwnPartsLeaveNoNegativeSquare(t *testing.T) {
	for seed := range uint64(20) {
		rng := rand.New(rand.NewPCG(seed, 3))
		p, m, f := herd(rng, 1+rng.IntN(6), 1+rng.IntN(6), 1+rng.IntN(4))
		parents := append(append([]int{}, m...), f...)
		kin := p.Block(parents, parents)
		own := ownParts(kin)
		for a := range own {
			require.Greater(t, own[a], 0.0)
			require.LessOrEqual(t, own[a], kin[a][a])
		}
		for range 200 {
			x := make([]float64, len(own))
			for a := range x {
				x[a] = rng.NormFloat64()
			}
			sum := 0.0
			for a := range x {
				sum += x[a]*dot(kin[a], x) - own[a]*x[a]*x[a]
			}
			require.GreaterOrEqual(t, sum, -1e-9)
		}
	}
	require.Equal(t, []float64{0, 0}, ownParts([][]float64{{1, 1}, {1, 1}}), "twins tell all of each other")
}
