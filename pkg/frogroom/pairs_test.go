package frogroom_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/breedingplan"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/pairing"
)

// TestPairsOfRandomRooms holds plans against what has to be true of any: each pair
// is allowed, nobody is used too often, every animal of the species is either in the
// plan or left out with a reason, and the same question has the same answer.
func TestPairsOfRandomRooms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := randomFile(t)
		r, _ := frogroom.Read("room.yaml", []byte(f.text(f.diary)))
		on := civil.Date(rapid.IntRange(int(day("2023-06-01")), int(day("2028-12-31"))).Draw(t, "on"))
		w := breedingplan.Wish{Weight: 0.1, Pairings: rapid.IntRange(1, 4).Draw(t, "pairings"), MaleUses: rapid.IntRange(1, 2).Draw(t, "uses")}
		if rapid.Bool().Draw(t, "relax") {
			w.Relax = pairing.Relaxable()
		}
		got, err := r.Pairs(on, w)
		again, errAgain := r.Pairs(on, w)
		require.Empty(t, cmp.Diff(got, again))
		if err != nil {
			var none *breedingplan.NoPlanError
			require.True(t, errors.As(err, &none), "%v", err)
			require.NotEmpty(t, none.Blocking)
			require.EqualError(t, errAgain, err.Error())
			return
		}
		require.True(t, got.Proven)
		total := 0
		for _, s := range got.Species {
			total += len(s.Pairs)
			uses := map[string]int{}
			young := 0
			for _, p := range s.Pairs {
				why, err := r.WhyPair(on, p.Male, p.Female, w)
				require.NoError(t, err)
				require.True(t, why.Allowed, "%s × %s", p.Male, p.Female)
				require.InDelta(t, why.Inbreeding, p.Inbreeding, 1e-9)
				uses[p.Male]++
				uses[p.Female]++
				require.LessOrEqual(t, uses[p.Male], w.MaleUses)
				require.LessOrEqual(t, uses[p.Female], 1)
				young += p.Young
			}
			require.Equal(t, 2*len(s.Pairs), young)
			for _, l := range s.LeftOut {
				require.Zero(t, uses[l.ID], l.ID)
				require.NotEmpty(t, l.Reason)
			}
			here := 0
			for _, a := range r.Kin(on).Animals {
				if a.Species == s.Species && a.Status == "here" {
					here++
				}
			}
			require.Equal(t, here, len(uses)+len(s.LeftOut))
			for _, o := range s.Others {
				require.GreaterOrEqual(t, score(1-o.WithYoung, o.YoungInbreeding), score(1-s.WithYoung, s.YoungInbreeding)-1e-9)
			}
		}
		require.LessOrEqual(t, total, w.Pairings)
		require.Positive(t, total)
	})
}

func score(meanKinship, inbreeding float64) float64 { return meanKinship + 0.1*inbreeding }

// TestPairsShareTheSeason holds the pairings that two species get against all
// ways to share them out.
func TestPairsShareTheSeason(t *testing.T) {
	r := room(t, basic+`
  - {id: F, species: clockwork, sire: A, dam: D, sex: male, out_of_water: 2024-01-01}
  - {id: G, species: clockwork, sire: A, dam: D, sex: female, out_of_water: 2024-01-01}
  - {id: H, species: clockwork, sire: A, dam: D, sex: female, out_of_water: 2024-01-01}
  - {id: P, species: clockwork, sire: A, dam: D, sex: female, out_of_water: 2024-01-01}
  - {id: I, species: hyla-cinerea, sex: male, acquired: 2020-01-01}
  - {id: S, species: hyla-cinerea, sex: male, acquired: 2020-01-01}
  - {id: M, species: hyla-cinerea, sire: I, dam: K, sex: male, acquired: 2024-01-01}
  - {id: N, species: hyla-cinerea, sire: I, dam: K, sex: male, acquired: 2024-01-01}
  - {id: J, species: hyla-cinerea, sex: female, acquired: 2020-01-01}
  - {id: K, species: hyla-cinerea, sex: female, acquired: 2020-01-01}
  - {id: L, species: hyla-cinerea, sire: I, dam: K, sex: female, acquired: 2024-01-01}
`)
	on := day("2027-03-01")
	sum := func(p breedingplan.Plan) (total float64) {
		for _, s := range p.Species {
			total += score(1-s.WithYoung, s.YoungInbreeding)
		}
		return total
	}
	alone := map[string][]float64{}
	for _, species := range []string{"clockwork", "hyla-cinerea"} {
		whole, err := r.Pairs(on, breedingplan.Wish{Species: species, Weight: 0.1, Pairings: 1})
		require.NoError(t, err)
		alone[species] = append(alone[species], 1-whole.Species[0].GeneDiversity)
		for n := 1; n <= 3; n++ {
			p, err := r.Pairs(on, breedingplan.Wish{
				Species: species, Weight: 0.1, Pairings: n,
				Goals: []breedingplan.Goal{{Of: species, Pairings: n}},
			})
			if err != nil {
				break
			}
			alone[species] = append(alone[species], sum(p))
		}
	}
	for most := 1; most <= 3; most++ {
		best := math.Inf(1)
		for i, x := range alone["clockwork"] {
			for j, y := range alone["hyla-cinerea"] {
				if i+j >= 1 && i+j <= most {
					best = min(best, x+y)
				}
			}
		}
		got, err := r.Pairs(on, breedingplan.Wish{Weight: 0.1, Pairings: most})
		require.NoError(t, err)
		assert.InDelta(t, best, sum(got), 1e-9, "at most %d", most)
		assert.True(t, got.Proven)
		assert.LessOrEqual(t, len(got.Species[0].Pairs)+len(got.Species[1].Pairs), most)
	}
}

func TestPairsWishesThatMakeNoSense(t *testing.T) {
	r := room(t, basic)
	on := day("2027-03-01")
	for _, w := range []breedingplan.Wish{
		{Pairings: -1},
		{Weight: -1},
		{Weight: math.NaN()},
		{Young: 1001},
		{Relax: []pairing.Rule{pairing.RuleSex}},
		{Goals: []breedingplan.Goal{{Of: "nobody", Pairings: 1}}},
	} {
		_, err := r.Pairs(on, w)
		var wrong *breedingplan.WishError
		require.True(t, errors.As(err, &wrong), "%+v: %v", w, err)
	}
	_, err := r.Pairs(on, breedingplan.Wish{Want: [][2]string{{"A", "Z"}}})
	var unknown *collection.UnknownError
	require.True(t, errors.As(err, &unknown))
	assert.Panics(t, func() { _, _ = r.Pairs(0, breedingplan.Wish{}) })
}

// TestPairsEndedWithinTheSweep: with many animals there are many numbers of pairings to look
// at, and whoever ends the search does not wait for all of them.
func TestPairsEndedWithinTheSweep(t *testing.T) {
	var b strings.Builder
	b.WriteString(basic)
	for i := range 30 {
		fmt.Fprintf(&b, "  - {id: M%d, species: clockwork, sex: male, out_of_water: 2024-01-01}\n", i)
		fmt.Fprintf(&b, "  - {id: F%d, species: clockwork, sex: female, out_of_water: 2024-01-01}\n", i)
	}
	r := room(t, b.String())
	asked := 0
	p, err := r.Pairs(day("2027-03-01"), breedingplan.Wish{Stop: func() bool { asked++; return true }})
	require.NoError(t, err)
	assert.False(t, p.Proven)
	assert.NotEmpty(t, p.Species[0].Pairs)
	assert.Less(t, asked, 25, "searches that asked whether to go on")
}

// TestPairsEndedEarly: a search that is ended says so.
func TestPairsEndedEarly(t *testing.T) {
	r := room(t, `
animals:
  - {id: H-01, species: hyla-cinerea, sex: male, acquired: 2022-05-01}
  - {id: H-11, species: hyla-cinerea, sex: female, acquired: 2022-05-01, died: 2025-01-01}
  - {id: H-20, species: hyla-cinerea, sex: male, acquired: 2022-05-01, died: 2025-01-01}
  - {id: H-12, species: hyla-cinerea, sex: female, acquired: 2023-05-01}
  - {id: H-05, species: hyla-cinerea, sex: male, sire: H-20, dam: H-11, acquired: 2024-05-01}
  - {id: H-06, species: hyla-cinerea, sex: female, sire: H-20, dam: H-11, acquired: 2024-05-01}
  - {id: H-31, species: hyla-cinerea, sire: H-01, dam: H-12, acquired: 2025-05-01}
`)
	p, err := r.Pairs(day("2027-03-01"), breedingplan.Wish{Pairings: 1, Stop: func() bool { return true }})
	require.NoError(t, err)
	assert.False(t, p.Proven)
	assert.NotEmpty(t, p.Species[0].Pairs)
}
