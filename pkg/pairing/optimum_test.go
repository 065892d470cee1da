package pairing

import (
	"encoding/json"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

var update = flag.Bool("update", false, "write the stored choices anew")

// stored is a choice with the score of its best plan. Another program finds the same
// score by a mixed-integer model of its own: testdata/optimum/run.
type stored struct {
	Records  []pedigree.Record `json:"records"`
	Pool     []string          `json:"pool"`
	Pairs    []storedPair      `json:"pairs"`
	Limits   []storedLimit     `json:"limits"`
	Young    int               `json:"young"`
	Weight   float64           `json:"weight"`
	Feasible bool              `json:"feasible"`
	Score    float64           `json:"score"` // 0 when there is no plan
}

type storedPair struct {
	Sire  string `json:"sire"`
	Dam   string `json:"dam"`
	Least int    `json:"least"`
	Most  int    `json:"most"`
}

type storedLimit struct {
	Pairs   []int `json:"pairs"`
	AtLeast int   `json:"at_least"`
	AtMost  int   `json:"at_most"`
}

var storedFile = filepath.Join("testdata", "optimum.json")

// TestStoredOptima holds plans against the stored scores.
func TestStoredOptima(t *testing.T) {
	if *update {
		writeStored(t)
	}
	data, err := os.ReadFile(storedFile)
	require.NoError(t, err)
	var all []stored
	require.NoError(t, json.Unmarshal(data, &all))
	require.GreaterOrEqual(t, len(all), 30)
	for i, s := range all {
		o := s.choice(t).Best(Effort{})
		require.True(t, o.Proven)
		assert.Equal(t, s.Feasible, len(o.Plans) > 0, "choice %d", i)
		if s.Feasible {
			assert.InDelta(t, s.Score, o.Plans[0].Score, 1e-9, "choice %d", i)
		}
	}
}

func (s stored) choice(t *testing.T) Choice {
	p, err := pedigree.New(s.Records)
	require.NoError(t, err)
	at := func(id string) int {
		i, ok := p.Index(id)
		require.True(t, ok)
		return i
	}
	var pool []int
	for _, id := range s.Pool {
		pool = append(pool, at(id))
	}
	c := Choice{Pool: NewBreedingSet(p, pool), Young: s.Young, Weight: s.Weight}
	for _, x := range s.Pairs {
		c.Options = append(c.Options, Option{Sires: []int{at(x.Sire)}, Dams: []int{at(x.Dam)}, MinYoung: x.Least, MaxYoung: x.Most})
	}
	for _, l := range s.Limits {
		c.Limits = append(c.Limits, Limit{Options: l.Pairs, AtLeast: l.AtLeast, AtMost: l.AtMost})
	}
	return c
}

// writeStored makes random choices with tight limits, and stores what is found here.
func writeStored(t *testing.T) {
	var all []stored
	for seed := range uint64(36) {
		s := randomStored(rand.New(rand.NewPCG(seed, 99)))
		if o := s.choice(t).Best(Effort{}); len(o.Plans) > 0 {
			s.Feasible, s.Score = true, o.Plans[0].Score
		}
		all = append(all, s)
	}
	text := []byte("[\n")
	for i, s := range all {
		line, err := json.Marshal(s)
		require.NoError(t, err)
		if i > 0 {
			text = append(text, ",\n"...)
		}
		text = append(text, line...)
	}
	require.NoError(t, os.MkdirAll("testdata", 0o755))
	require.NoError(t, os.WriteFile(storedFile, append(text, "\n]\n"...), 0o644))
}

func randomStored(rng *rand.Rand) stored {
	s := stored{Weight: []float64{0, 0.1, 0.5, -0.02}[rng.IntN(4)]}
	males, females := 3+rng.IntN(3), 3+rng.IntN(2)
	var sires, dams []string
	for g := range 3 {
		var m, f []string
		for i := range males + females {
			r := pedigree.Record{ID: fmt.Sprintf("%d.%d", g, i)}
			if g > 0 {
				r.Sire, r.Dam = sires[rng.IntN(len(sires))], dams[rng.IntN(len(dams))]
			}
			s.Records = append(s.Records, r)
			if i < males {
				m = append(m, r.ID)
			} else {
				f = append(f, r.ID)
			}
		}
		sires, dams = m, f
	}
	for _, r := range s.Records[(males + females):] {
		if rng.IntN(3) > 0 {
			s.Pool = append(s.Pool, r.ID)
		}
	}
	uses := map[string][]int{}
	var every []int
	for _, m := range sires {
		for _, f := range dams {
			at := len(s.Pairs)
			uses[m], uses[f], every = append(uses[m], at), append(uses[f], at), append(every, at)
			least := 1 + rng.IntN(2)
			s.Pairs = append(s.Pairs, storedPair{m, f, least, least + rng.IntN(2)})
		}
	}
	for _, id := range sires {
		s.Limits = append(s.Limits, storedLimit{uses[id], 0, 1 + rng.IntN(2)})
	}
	for _, id := range dams {
		s.Limits = append(s.Limits, storedLimit{uses[id], 0, 1})
	}
	pairings := 2 + rng.IntN(2)
	s.Limits = append(s.Limits, storedLimit{every, rng.IntN(3), pairings})
	wanted := rng.IntN(len(s.Pairs))
	s.Limits = append(s.Limits, storedLimit{[]int{wanted}, rng.IntN(2), 1})
	s.Limits = append(s.Limits, storedLimit{rng.Perm(len(s.Pairs))[:4], 0, 1}) // do not go together
	s.Young = pairings + rng.IntN(pairings+2)
	return s
}
