package pairing

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// rebuilt gives the score of a plan by adding the young to the records and
// computing the pedigree anew.
func rebuilt(t require.TestingT, records []pedigree.Record, groups []pedigree.Group, c Choice, picks []Pick) (score, meanKinship, inbreeding float64) {
	records, groups = slices.Clone(records), slices.Clone(groups)
	pool := slices.Clone(c.Pool.members)
	side := func(pick int, what string, nodes []int, mix pedigree.GroupKind) string {
		if len(nodes) == 1 {
			return c.Pool.pedigree.ID(nodes[0])
		}
		g := pedigree.Group{ID: fmt.Sprintf("%s of pick %d", what, pick), Kind: mix}
		for _, n := range nodes {
			g.Candidates = append(g.Candidates, pedigree.Candidate{ID: c.Pool.pedigree.ID(n)})
		}
		groups = append(groups, g)
		return g.ID
	}
	for i, pick := range picks {
		o := c.Options[pick.Option]
		sire, dam := side(i, "sire", o.Sires, o.Mix), side(i, "dam", o.Dams, o.Mix)
		for k := range pick.Young {
			pool = append(pool, len(records))
			records = append(records, pedigree.Record{ID: fmt.Sprintf("young %d of pick %d", k, i), Sire: sire, Dam: dam})
		}
	}
	p, err := pedigree.New(records, groups...)
	require.NoError(t, err)
	for _, node := range pool[len(c.Pool.members):] {
		inbreeding += p.Inbreeding(node) / float64(c.Young)
	}
	meanKinship = 1 - p.GeneDiversity(pool)
	return meanKinship + c.Weight*inbreeding, meanKinship, inbreeding
}

// enumerate gives the best score for every set of pairings that keeps the
// limits, by the numbers of its options with a blank after each, by trying every
// number of young for every option.
func enumerate(c Choice, score func([]int) float64) map[string]float64 {
	best := map[string]float64{}
	y := make([]int, len(c.Options))
	var try func(p, left int)
	try = func(p, left int) {
		if p < len(y) {
			for n := 0; n <= min(left, c.Options[p].MaxYoung); n++ {
				if n == 0 || n >= c.Options[p].MinYoung {
					y[p] = n
					try(p+1, left-n)
				}
			}
			y[p] = 0
			return
		}
		if left > 0 {
			return
		}
		for _, l := range c.Limits {
			chosen := 0
			for _, o := range l.Options {
				if y[o] > 0 {
					chosen++
				}
			}
			if chosen < l.AtLeast || chosen > l.AtMost {
				return
			}
		}
		set := ""
		for o, n := range y {
			if n > 0 {
				set += fmt.Sprint(o, " ")
			}
		}
		if old, ok := best[set]; !ok || score(y) < old {
			best[set] = score(y)
		}
	}
	try(0, c.Young)
	return best
}

// drawChoice draws a small choice in a colony.
func drawChoice(t *rapid.T) (colony, Choice) {
	col := drawColony(t)
	p, err := pedigree.New(col.records, col.groups...)
	require.NoError(t, err)
	var all, males, females []int
	for i := range p.Len() {
		all = append(all, i)
		if i%2 == 0 {
			males = append(males, i)
		} else {
			females = append(females, i)
		}
	}
	var pool []int
	if rapid.Bool().Draw(t, "with a pool") {
		pool = drawSome(t, all, "pool")
	}
	c := Choice{
		Pool:   NewBreedingSet(p, pool),
		Young:  rapid.IntRange(1, 5).Draw(t, "young"),
		Weight: rapid.SampledFrom([]float64{0, 0.1, 1, -0.05}).Draw(t, "weight"),
	}
	for range rapid.IntRange(1, 7).Draw(t, "options") {
		o := Option{
			Sires: drawSome(t, males, "sires"), Dams: drawSome(t, females, "dams"), Mix: drawMix(t),
			MinYoung: rapid.IntRange(1, 2).Draw(t, "least"),
		}
		if rapid.IntRange(0, 3).Draw(t, "pair") > 0 {
			o.Sires, o.Dams = o.Sires[:1], o.Dams[:1]
		}
		o.MaxYoung = o.MinYoung + rapid.IntRange(0, 2).Draw(t, "more")
		c.Options = append(c.Options, o)
	}
	options := make([]int, len(c.Options))
	for i := range options {
		options[i] = i
	}
	for i := range rapid.IntRange(0, 4).Draw(t, "limits") {
		l := Limit{Name: fmt.Sprint("limit ", i), Options: drawSome(t, options, "of"), AtMost: NoLimit}
		if rapid.IntRange(0, 2).Draw(t, "kind of limit") == 0 {
			l.AtLeast = rapid.IntRange(1, 2).Draw(t, "at least")
		} else {
			l.AtMost = rapid.IntRange(0, 3).Draw(t, "at most")
		}
		c.Limits = append(c.Limits, l)
	}
	return col, c
}

// TestBestAgainstEnumeration tries all plans of small choices.
func TestBestAgainstEnumeration(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		col, c := drawChoice(t)
		s := newSearch(&c, Effort{})
		want := s.distinct(t, enumerate(c, func(y []int) float64 { return s.scoring.plan(y).Score }))
		got := c.Best(Effort{Plans: 3})
		require.True(t, got.Proven)
		require.Len(t, got.Plans, min(3, len(want)))
		if len(want) == 0 {
			require.True(t, math.IsInf(got.Bound, 1))
			return
		}
		for i, plan := range got.Plans {
			require.InDelta(t, want[i], plan.Score, 2*slack, "plan %d", i)
			score, mk, f := rebuilt(t, col.records, col.groups, c, plan.Picks)
			require.InDelta(t, score, plan.Score, 1e-9)
			require.InDelta(t, mk, plan.MeanKinship, 1e-9)
			require.InDelta(t, f, plan.YoungInbreeding, 1e-9)
		}
		require.Zero(t, got.Gap())
		require.LessOrEqual(t, got.Bound, want[0]+slack)

		cut := c.Best(Effort{Plans: 3, Nodes: 1})
		require.LessOrEqual(t, cut.Bound, want[0]+slack, "the bound of a search that was ended")
		if len(cut.Plans) > 0 {
			require.GreaterOrEqual(t, cut.Plans[0].Score, want[0]-slack)
		}
	})
}

// herd is a random pedigree of so many males and females at the end of some
// generations.
func herd(rng *rand.Rand, males, females, generations int) (p *pedigree.Pedigree, m, f []int) {
	var records []pedigree.Record
	born := func(sires, dams []int) int {
		r := pedigree.Record{ID: fmt.Sprint(len(records))}
		if sires != nil {
			r.Sire, r.Dam = fmt.Sprint(sires[rng.IntN(len(sires))]), fmt.Sprint(dams[rng.IntN(len(dams))])
		}
		records = append(records, r)
		return len(records) - 1
	}
	for range generations {
		var nextM, nextF []int
		for range males {
			nextM = append(nextM, born(m, f))
		}
		for range females {
			nextF = append(nextF, born(m, f))
		}
		m, f = nextM, nextF
	}
	p, err := pedigree.New(records)
	if err != nil {
		panic(err)
	}
	return p, m, f
}

// tight is a choice among all pairs of a herd: each male twice, each female
// once, with conflicts and a target.
func tight(seed uint64, males, females, pairings, young, most int) Choice {
	rng := rand.New(rand.NewPCG(seed, 7))
	p, m, f := herd(rng, males, females, 4)
	c := Choice{Pool: NewBreedingSet(p, slices.Concat(m, f)), Young: young, Weight: 0.1}
	uses := map[int][]int{}
	var all []int
	for _, sire := range m {
		for _, dam := range f {
			uses[sire] = append(uses[sire], len(c.Options))
			uses[dam] = append(uses[dam], len(c.Options))
			all = append(all, len(c.Options))
			c.Options = append(c.Options, Option{Sires: []int{sire}, Dams: []int{dam}, MinYoung: 1, MaxYoung: most})
		}
	}
	for _, x := range m {
		c.Limits = append(c.Limits, Limit{Name: p.ID(x), Options: uses[x], AtMost: 2})
	}
	for _, x := range f {
		c.Limits = append(c.Limits, Limit{Name: p.ID(x), Options: uses[x], AtMost: 1})
	}
	c.Limits = append(c.Limits, Limit{Name: "season", Options: all, AtMost: pairings})
	return c
}

// TestBestOfMany holds that among 10,000 pairs the plan is within 1 % of the proven
// bound.
func TestBestOfMany(t *testing.T) {
	o := tight(1, 100, 100, 20, 40, 2).Best(Effort{Nodes: 1})
	require.NotEmpty(t, o.Plans)
	assert.Less(t, o.Gap(), 0.01)
	assert.False(t, o.Proven)
}

// TestAheadIsTheMeanKinshipOneGenerationOn holds that two plans compare with the weight of [Ahead]
// as they do when all their young have bred alike, in pairs of a male and a female.
func TestAheadIsTheMeanKinshipOneGenerationOn(t *testing.T) {
	records := []pedigree.Record{
		{ID: "A"},
		{ID: "B"},
		{ID: "C"},
		{ID: "D"},
		{ID: "m1", Sire: "A", Dam: "B"},
		{ID: "f1", Sire: "A", Dam: "B"},
		{ID: "m2", Sire: "C", Dam: "D"},
		{ID: "f2", Sire: "C", Dam: "D"},
	}
	p, err := pedigree.New(records)
	require.NoError(t, err)
	pair := func(sire, dam int) Option {
		return Option{Sires: []int{sire}, Dams: []int{dam}, MinYoung: 2, MaxYoung: 2}
	}
	const m1, f1, m2, f2 = 4, 5, 6, 7
	score := func(options ...Option) float64 {
		c := Choice{Pool: NewBreedingSet(p, nil), Options: options, Young: 4, Weight: Ahead(4, 4)}
		o := c.Best(Effort{})
		require.True(t, o.Proven)
		return o.Plans[0].Score
	}
	// The mean kinship of four grandchildren, two of each pair of the young.
	after := func(pairs ...[2]string) float64 {
		next := slices.Clone(records)
		var young []string
		for i, xy := range pairs {
			for _, sex := range []string{"m", "f"} {
				id := fmt.Sprint("young ", i, sex)
				young = append(young, id)
				next = append(next, pedigree.Record{ID: id, Sire: xy[0], Dam: xy[1]})
			}
		}
		var last []int
		for _, xy := range [][2]string{{young[0], young[3]}, {young[2], young[1]}} {
			for range 2 {
				last = append(last, len(next))
				next = append(next, pedigree.Record{ID: fmt.Sprint("last ", len(next)), Sire: xy[0], Dam: xy[1]})
			}
		}
		q, err := pedigree.New(next)
		require.NoError(t, err)
		return 1 - q.GeneDiversity(last)
	}
	apart := after([2]string{"m1", "f1"}, [2]string{"m2", "f2"}) - after([2]string{"m1", "f2"}, [2]string{"m2", "f1"})
	assert.Negative(t, apart, "young of sibs lose less")
	assert.InDelta(t, apart, score(pair(m1, f1), pair(m2, f2))-score(pair(m1, f2), pair(m2, f1)), 1e-12)
}
