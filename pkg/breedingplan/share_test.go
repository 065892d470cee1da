package breedingplan

import (
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// drawStock draws a few animals of two species, founders and their young.
func drawStock(t *rapid.T) *Stock {
	s := &Stock{Species: []string{"hyla-cinerea", "theloderma-corticale"}}
	var records []pedigree.Record
	for _, species := range s.Species {
		var sires, dams []string
		for i := range rapid.IntRange(2, 8).Draw(t, species) {
			r := pedigree.Record{ID: fmt.Sprint(species, i)}
			if i >= 4 {
				r.Sire, r.Dam = rapid.SampledFrom(sires).Draw(t, "sire"), rapid.SampledFrom(dams).Draw(t, "dam")
			}
			a := Animal{Animal: pairing.Animal{ID: r.ID, Node: len(records), Species: species, Sex: pairing.Male, Hatched: civil.Of(2020, time.May, 1)}, Here: i != 0 || rapid.Bool().Draw(t, "first stays")}
			if i%2 == 1 {
				a.Sex = pairing.Female
				dams = append(dams, r.ID)
			} else {
				sires = append(sires, r.ID)
			}
			records, s.Animals = append(records, r), append(s.Animals, a)
		}
	}
	p, err := pedigree.New(records)
	require.NoError(t, err)
	s.Terms = pairing.Terms{Pedigree: p, Rules: pairing.DefaultRules(), On: civil.Of(2027, time.February, 1)}
	return s
}

// TestShareAgainstAllNumbers holds the shared number of pairings against a search of every
// number of every species.
func TestShareAgainstAllNumbers(t *testing.T) {
	skipped := 0
	rapid.Check(t, func(t *rapid.T) {
		s := drawStock(t)
		w, err := s.whole(Wish{Weight: 0.1})
		require.NoError(t, err)
		season := rapid.IntRange(1, 8).Draw(t, "season")
		lines := func() (out []*line) {
			for _, species := range s.Species {
				l := s.line(species, w)
				require.NoError(t, l.judge())
				out = append(out, l)
			}
			return out
		}
		some := lines()
		counts, proven, err := share(some, season)
		require.NoError(t, err)
		require.True(t, proven)
		every := lines()
		for i, l := range every {
			require.NoError(t, l.sweepCounts(season))
			require.Len(t, some[i].sweep, len(l.sweep))
			for count := range l.sweep {
				if !l.sweep[count].Proven && !some[i].searched[count] {
					skipped++
				}
				l.search(count)
				require.True(t, l.sweep[count].Proven)
			}
		}
		want := cheapest(every, season, found)
		sum := 0.0
		for i, count := range counts {
			sum += every[i].sweep[count].Plans[0].Score
		}
		require.InDelta(t, want.sum, sum, 1e-9)
		for i, count := range counts {
			o := some[i].sweep[count]
			require.InDelta(t, every[i].sweep[count].Plans[0].Score, o.Plans[0].Score, 1e-9)
			require.GreaterOrEqual(t, o.Bound, o.Plans[0].Score-1e-9, "what is chosen has been searched")
		}
	})
	assert.Positive(t, skipped, "some numbers need no search")
}
