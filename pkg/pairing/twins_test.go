package pairing

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// drawAlike draws a choice among the pairs of a few animals of which many are alike: founders,
// and young of the same parents. Now and then a wish tells two of them apart.
func drawAlike(t *rapid.T) Choice {
	records := []pedigree.Record{{ID: "S"}, {ID: "D"}, {ID: "E"}}
	var males, females []int
	draw := func(kind string, most int, side *[]int, sire, dam string) {
		for i := range rapid.IntRange(0, most).Draw(t, kind) {
			*side = append(*side, len(records))
			records = append(records, pedigree.Record{ID: fmt.Sprint(kind, i), Sire: sire, Dam: dam})
		}
	}
	draw("founder males ", 3, &males, "", "")
	draw("founder females ", 3, &females, "", "")
	draw("sons of S and D ", 2, &males, "S", "D")
	draw("daughters of S and D ", 2, &females, "S", "D")
	draw("daughters of S and E ", 1, &females, "S", "E")
	p, err := pedigree.New(records)
	require.NoError(t, err)
	c := Choice{Pool: NewBreedingSet(p, slices.Concat(males, females)), Weight: rapid.SampledFrom([]float64{0, 0.1, -0.05}).Draw(t, "weight")}
	uses := make(map[int][]int)
	var all []int
	for _, f := range females {
		for _, m := range males {
			if rapid.IntRange(0, 19).Draw(t, "refused") == 0 {
				continue
			}
			at := len(all)
			all, uses[m], uses[f] = append(all, at), append(uses[m], at), append(uses[f], at)
			most := 2
			if rapid.IntRange(0, 29).Draw(t, "few young") == 0 {
				most = 1
			}
			c.Options = append(c.Options, Option{Sires: []int{m}, Dams: []int{f}, MinYoung: 1, MaxYoung: most})
		}
	}
	for _, m := range males {
		c.Limits = append(c.Limits, Limit{Options: uses[m], AtMost: 2})
	}
	for _, f := range females {
		c.Limits = append(c.Limits, Limit{Options: uses[f], AtMost: 1})
	}
	count := rapid.IntRange(1, 3).Draw(t, "pairings")
	c.Limits = append(c.Limits, Limit{Options: all, AtLeast: count, AtMost: count})
	if len(all) > 0 && rapid.Bool().Draw(t, "wish") {
		c.Limits = append(c.Limits, Limit{Options: drawSome(t, all, "wanted"), AtLeast: 1, AtMost: NoLimit})
	}
	c.Young = count + rapid.IntRange(0, 2).Draw(t, "more young")
	return c
}

// TestTwinsAgainstEnumeration holds the three best plans of stock with many ties against
// all plans, of which those that exchanging twins makes of each other are one. It also holds
// that such plans are as good and as much allowed, and that scores are whole units apart.
func TestTwinsAgainstEnumeration(t *testing.T) {
	twins, merged, units := 0, 0, 0
	rapid.Check(t, func(t *rapid.T) {
		c := drawAlike(t)
		s := newSearch(&c, Effort{Plans: 3})
		all := enumerate(c, func(y []int) float64 { return s.scoring.plan(y).Score })
		want := s.distinct(t, all)
		got := c.Best(Effort{Plans: 3})
		require.True(t, got.Proven)
		require.True(t, got.OthersProven)
		require.Len(t, got.Plans, min(3, len(want)))
		for i, plan := range got.Plans {
			require.InDelta(t, want[i], plan.Score, 2*slack, "plan %d", i)
		}
		if s.twins != nil {
			twins++
		}
		if len(want) < len(all) {
			merged++
		}
		if s.unit > 0 && len(want) > 1 {
			units++
			for _, score := range want {
				apart := (score - want[0]) / s.unit
				require.InDelta(t, math.Round(apart), apart, 1e-3)
			}
		}
	})
	if !testing.Short() { // which draws too few choices to count by
		assert.Greater(t, twins, 15, "of 100 choices")
		assert.Greater(t, merged, 15)
		assert.Greater(t, units, 15)
	}
}

// distinct gives the scores of plans, each with all that exchanges of twins make of it
// as one, and holds that these are plans too, and as good.
func (s *search) distinct(t require.TestingT, all map[string]float64) []float64 {
	first := make(map[string]float64) // of each set of plans that are the same but for twins
	for set, score := range all {
		least := set
		for _, other := range s.images(set) {
			require.Contains(t, all, other)
			require.InDelta(t, score, all[other], slack, "%s and %s", set, other)
			least = min(least, other)
		}
		first[least] = score
	}
	return slices.Sorted(maps.Values(first))
}

// images gives all plans that exchanges of twins make of one, by the numbers of its
// options, with a blank after each: step by step, until no new ones come.
func (s *search) images(set string) []string {
	if s.twins == nil {
		return []string{set}
	}
	found := []string{set}
	for k := 0; k < len(found); k++ {
		for _, class := range s.twins.classes {
			for i, a := range class {
				for _, b := range class[:i] {
					var image []int
					for _, word := range strings.Fields(found[k]) {
						p, _ := strconv.Atoi(word)
						image = append(image, int(s.twins.image(exchange{{a, b}}, int32(p))))
					}
					slices.Sort(image)
					text := ""
					for _, p := range image {
						text += fmt.Sprint(p, " ")
					}
					if !slices.Contains(found, text) {
						found = append(found, text)
					}
				}
			}
		}
	}
	return found
}

// TestSameButForTwins holds the matching of two plans point by point against all
// exchanges of twins.
func TestSameButForTwins(t *testing.T) {
	same, other := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		c := alike(rapid.IntRange(2, 4).Draw(t, "males"), rapid.IntRange(2, 4).Draw(t, "females"), 1)
		if len(c.Options) > 4 && rapid.Bool().Draw(t, "wish") {
			c.Limits = append(c.Limits, Limit{Options: []int{0}, AtMost: 1})
		}
		s := newSearch(&c, Effort{})
		every := make([]int32, len(c.Options))
		for p := range every {
			every[p] = int32(p)
		}
		count := rapid.IntRange(1, 5).Draw(t, "pairings")
		draw := func(label string) (options []int32, set string) {
			options = rapid.Permutation(every).Draw(t, label)[:min(count, len(every))]
			for _, p := range slices.Sorted(slices.Values(options)) {
				set += fmt.Sprint(p, " ")
			}
			return options, set
		}
		a, setA := draw("one")
		b, setB := draw("other")
		want := slices.Contains(s.images(setA), setB)
		if want {
			same++
		} else {
			other++
		}
		if got := s.twins.same(a, b); got != want {
			t.Fatalf("%s and %s: same %v, by all exchanges %v", setA, setB, got, want)
		}
	})
	if !testing.Short() {
		assert.Greater(t, same, 15)
		assert.Greater(t, other, 15)
	}
}

// TestSamePartIsExact tells apart plans whose parents all look the same: each has two mates, or
// three, of which two males share two, or one (the wheel 0, 1, 3 is the plane of seven points).
func TestSamePartIsExact(t *testing.T) {
	c := alike(6, 6, 12)
	s := newSearch(&c, Effort{})
	rings := func(sizes ...int) (options []int32) {
		from := 0
		for _, n := range sizes {
			for i := range n {
				options = append(options, int32(6*(from+i)+from+i), int32(6*(from+i)+from+(i+1)%n))
			}
			from += n
		}
		return options
	}
	assert.True(t, s.twins.same(rings(2, 4), rings(4, 2)))
	assert.False(t, s.twins.same(rings(2, 4), rings(3, 3)))
	assert.False(t, s.twins.same(rings(6), rings(3, 3)))

	c = alike(7, 7, 21)
	s = newSearch(&c, Effort{})
	// wheel gives each male the females at these steps from him, under other names.
	wheel := func(males, females []int, steps ...int) (options []int32) {
		for i := range 7 {
			for _, step := range steps {
				options = append(options, int32(7*males[i]+females[(i+step)%7]))
			}
		}
		return options
	}
	inOrder := []int{0, 1, 2, 3, 4, 5, 6}
	rapid.Check(t, func(t *rapid.T) {
		males, females := rapid.Permutation(inOrder).Draw(t, "males"), rapid.Permutation(inOrder).Draw(t, "females")
		for _, last := range []int{2, 3} {
			other := rapid.Permutation(wheel(males, females, 0, 1, last)).Draw(t, "other")
			if got := s.twins.same(wheel(inOrder, inOrder, 0, 1, 3), other); got != (last == 3) {
				t.Fatalf("0, 1, 3 and 0, 1, %d: same %v", last, got)
			}
		}
	})
}

// TestOrbitsAgainstEnumeration holds that in any part of the plans the best with an option is as
// good as the best with another that twins make of it.
func TestOrbitsAgainstEnumeration(t *testing.T) {
	orbits := 0
	rapid.Check(t, func(t *rapid.T) {
		c := drawAlike(t)
		s := newSearch(&c, Effort{})
		n := s.root()
		for p := range n.lo {
			if rapid.IntRange(0, 5).Draw(t, "not taken") == 0 {
				n.hi[p] = 0
			}
		}
		for range rapid.IntRange(0, 2).Draw(t, "taken") {
			if p := rapid.IntRange(0, len(n.lo)).Draw(t, "one"); p < len(n.lo) {
				n.lo[p], n.hi[p] = s.least[p], s.most[p]
			}
		}
		orbit := s.orbits(n)
		if orbit == nil {
			return
		}
		orbits++
		best := make([]float64, len(orbit))
		for p := range best {
			best[p] = math.Inf(1)
		}
		enumerate(c, func(y []int) float64 {
			for p, young := range y {
				if int32(young) < n.lo[p] || int32(young) > n.hi[p] {
					return 0
				}
			}
			score := s.scoring.plan(y).Score
			for p, young := range y {
				if young > 0 {
					best[p] = min(best[p], score)
				}
			}
			return 0
		})
		for p, o := range orbit {
			if best[p] != best[o] { // neither with any plan
				require.InDelta(t, best[o], best[p], slack, "options %d and %d", o, p)
			}
		}
	})
	if !testing.Short() { // which draws too few choices to count by
		assert.Greater(t, orbits, 5, "of 100 choices")
	}
}

// TestOrbitsOfChosenPairs exchanges both parents of two chosen pairs at once.
func TestOrbitsOfChosenPairs(t *testing.T) {
	c := alike(3, 3, 2)
	s := newSearch(&c, Effort{})
	const first, second, across, back = 0, 4, 1, 3 // 0×0, 1×1, 0×1 and 1×0
	n := s.root()
	n.lo[first], n.lo[second] = 1, 1
	orbit := s.orbits(n)
	assert.Equal(t, orbit[first], orbit[second])
	assert.Equal(t, orbit[across], orbit[back])
	n.hi[across] = 0
	assert.Nil(t, s.orbits(n), "0×1 is ruled out and 1×0 is not")
}

// TestTwins tells which animals are interchangeable.
func TestTwins(t *testing.T) {
	p, err := pedigree.New([]pedigree.Record{
		{ID: "Bram"},
		{ID: "Falk"},
		{ID: "Ivo"},
		{ID: "Gerda"},
		{ID: "Hilde"},
		{ID: "Moss", Sire: "Bram", Dam: "Gerda"},
		{ID: "Quill", Sire: "Bram", Dam: "Gerda"},
		{ID: "Uwe"},
		{ID: "Vera", Sire: "Uwe"},
		{ID: "Wim", Sire: "Uwe", Dam: "Vera"},
	})
	require.NoError(t, err)
	const falk, ivo, hilde, moss, quill, wim = 1, 2, 4, 5, 6, 9
	males := []int{falk, ivo, moss, quill, wim} // Wim is inbred, and as little related to the others as Falk
	choice := func(pool []int, limits ...Limit) Choice {
		c := Choice{Pool: NewBreedingSet(p, pool), Young: 2, Limits: limits}
		for _, f := range []int{3, hilde} {
			for _, m := range males {
				c.Options = append(c.Options, Option{Sires: []int{m}, Dams: []int{f}, MinYoung: 1, MaxYoung: 2})
			}
		}
		return c
	}
	once := func(male int) Limit { return Limit{Options: []int{male, 5 + male}, AtMost: 1} }
	all := []int{0, 1, 2, 3, 4, 5, 6, 7, 8, 9}
	for _, row := range []struct {
		why    string
		choice Choice
		want   [][]string
	}{
		{"founders, and sibs; but not two dams of which one has sons here", choice(nil), [][]string{{"Falk", "Ivo"}, {"Moss", "Quill"}}},
		{"each used once", choice(nil, once(0), once(1), once(2), once(3)), [][]string{{"Falk", "Ivo"}, {"Moss", "Quill"}}},
		{"one used once", choice(nil, once(0)), [][]string{{"Moss", "Quill"}}},
		{"a limit on all of them", choice(nil, Limit{Options: all, AtMost: 2}), [][]string{{"Falk", "Ivo"}, {"Moss", "Quill"}}},
		{"one pair wanted", choice(nil, Limit{Options: []int{2}, AtLeast: 1, AtMost: 1}), [][]string{{"Falk", "Ivo"}}},
		{"one of them stays, the other leaves", choice([]int{moss, falk, ivo}), [][]string{{"Falk", "Ivo"}}},
	} {
		t.Run(row.why, func(t *testing.T) {
			s := newSearch(&row.choice, Effort{})
			require.NotNil(t, s.twins)
			var got [][]string
			for _, animals := range row.choice.Best(Effort{Plans: 2}).Alike {
				var ids []string
				for _, i := range animals {
					ids = append(ids, p.ID(i))
				}
				slices.Sort(ids)
				got = append(got, ids)
			}
			slices.SortFunc(got, slices.Compare)
			assert.Equal(t, row.want, got)
		})
	}
	mixed := choice(nil, Limit{Options: []int{0, 7}, AtMost: 1}, Limit{Options: []int{1, 2}, AtMost: 1})
	assert.Nil(t, newSearch(&mixed, Effort{}).twins, "two limits alike for Falk and Ivo, but each with another pair beside")
	few := choice(nil)
	few.Options[0].MaxYoung, few.Options[2].MinYoung = 1, 2
	assert.Nil(t, newSearch(&few, Effort{}).twins, "fewer young of a pair")
	double := choice(nil)
	double.Options = append(double.Options, double.Options[0])
	assert.Nil(t, newSearch(&double, Effort{}).twins, "the same pair twice is not gone into")
}

// TestAlikeIsQuick holds that stock of which all animals are alike is proven for every number of
// pairings with few partial plans.
func TestAlikeIsQuick(t *testing.T) {
	for count := range 20 {
		c := alike(20, 20, count+1)
		s := newSearch(&c, Effort{Nodes: 500, Plans: 3})
		o := s.bestThenOthers()
		assert.True(t, o.Proven, "%d pairings", count+1)
		for i, plan := range o.Plans {
			for _, other := range o.Plans[:i] {
				assert.False(t, s.same(plan, other), "two plans are the same but for twins")
			}
		}
	}
}

// alike is a choice of so many pairings among unrelated males and females.
func alike(males, females, count int) Choice {
	var records []pedigree.Record
	var all []int
	for i := range males + females {
		records = append(records, pedigree.Record{ID: fmt.Sprint(i)})
		all = append(all, i)
	}
	p, err := pedigree.New(records)
	if err != nil {
		panic(err)
	}
	c := Choice{Pool: NewBreedingSet(p, all), Young: 2 * count, Weight: 0.1, Limits: make([]Limit, males+females)}
	var every []int
	for m := range males {
		for f := range females {
			at := len(c.Options)
			c.Options = append(c.Options, Option{Sires: []int{m}, Dams: []int{males + f}, MinYoung: 1, MaxYoung: 3})
			for i, most := range map[int]int{m: 2, males + f: 1} {
				c.Limits[i].Options, c.Limits[i].AtMost = append(c.Limits[i].Options, at), most
			}
			every = append(every, at)
		}
	}
	c.Limits = append(c.Limits, Limit{Options: every, AtLeast: count, AtMost: count})
	return c
}

// TestCheapestStretches holds the choice of the cheapest against sorting all.
func TestCheapestStretches(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var all []stretch
		for i := range rapid.IntRange(0, 40).Draw(t, "stretches") {
			all = append(all, stretch{option: int32(i), cost: float64(rapid.IntRange(0, 9).Draw(t, "cost"))})
		}
		most := rapid.IntRange(0, 45).Draw(t, "most")
		order := func(a, b stretch) int {
			if a.before(b) {
				return -1
			}
			return 1
		}
		want := slices.SortedFunc(slices.Values(all), order)[:min(most, len(all))]
		got := slices.SortedFunc(slices.Values(cheapest(slices.Clone(all), most)), order)
		require.Equal(t, len(want), len(got))
		for i := range want {
			require.Equal(t, want[i], got[i])
		}
	})
}
