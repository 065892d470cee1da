package horizon_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/horizon"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// TestPlanAgainstTheProvenBest holds a year of the plan, which is played without proof, against
// the best plan that pairing proves, with inbreeding weighed and with lines kept apart.
func TestPlanAgainstTheProvenBest(t *testing.T) {
	worst, sum, count := 0.0, 0.0, 0
	for seed := range uint64(20) {
		rng := rand.New(rand.NewPCG(seed, 11))
		p, last, line := room(t, rng, 6)
		for _, apart := range []bool{false, true} {
			weight := 0.1
			future := horizon.Future{Years: 1, Runs: 1, Seed: seed, Weight: weight, Size: 6, Matures: 1, Lives: 1}
			if apart {
				weight = pairing.Ahead(6, 6)
				future.CrossEvery = 2
			}
			year := horizon.Simulate(line, future).Years[1]
			got := 1 - year.GeneDiversity.Mean + weight*year.Young.Mean
			choice := pairing.Choice{Pool: pairing.NewBreedingSet(p, nil), Young: 6, Weight: weight}
			for i, sire := range last {
				for j, dam := range last {
					if line.Male[i] && !line.Male[j] {
						choice.Options = append(choice.Options, pairing.Option{Sires: []int{sire}, Dams: []int{dam}, MinYoung: 1, MaxYoung: 6})
					}
				}
			}
			best := choice.Best(pairing.Effort{})
			require.True(t, best.Proven)
			require.GreaterOrEqual(t, got, best.Plans[0].Score-1e-9)
			over := got/best.Plans[0].Score - 1
			worst, sum, count = max(worst, over), sum+over, count+1
		}
	}
	t.Logf("above the best: %.4f on average, %.4f at most", sum/float64(count), worst)
	assert.Less(t, worst, 0.01)
	assert.Less(t, sum/float64(count), 0.002)
}

// room is the last of some generations of chance matings, male and female by turns.
func room(t *testing.T, rng *rand.Rand, size int) (p *pedigree.Pedigree, last []int, line horizon.Line) {
	var records []pedigree.Record
	for g := range 4 {
		for i := range size {
			r := pedigree.Record{ID: fmt.Sprintf("%d.%d", g, i)}
			if g > 0 {
				r.Sire = fmt.Sprintf("%d.%d", g-1, 2*rng.IntN(size/2))
				r.Dam = fmt.Sprintf("%d.%d", g-1, 2*rng.IntN(size/2)+1)
			}
			records = append(records, r)
		}
	}
	p, err := pedigree.New(records)
	require.NoError(t, err)
	for i := range size {
		last = append(last, len(records)-size+i)
		line.Male = append(line.Male, i%2 == 0)
		line.Age = append(line.Age, 1)
	}
	line.Kinship = p.Block(last, last)
	return p, last, line
}
