package season

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// daySet is the slow twin of days.
type daySet map[int]bool

func drawDays(t *rapid.T, label string) (days, daySet) {
	var spans []civil.Span
	set := daySet{}
	for range rapid.IntRange(0, 6).Draw(t, label) {
		first := rapid.IntRange(1, 40).Draw(t, "first")
		last := first + rapid.IntRange(-2, 6).Draw(t, "more")
		spans = append(spans, civil.Span{First: civil.Date(first), Last: civil.Date(last)})
		for d := first; d <= last; d++ {
			set[d] = true
		}
	}
	return mergedDays(spans), set
}

// same fails unless s has the days of set, in runs that neither overlap nor
// touch.
func same(t *rapid.T, set daySet, s days) {
	n := 0
	for i, r := range s {
		require.LessOrEqual(t, r.first, r.last)
		require.True(t, i == 0 || s[i-1].last+1 < r.first, "%v", s)
		each(days{r}, func(d int) { n++; require.True(t, set[d], "%d in %v", d, s) })
	}
	require.Len(t, set, n)
}

func TestDaysAreSets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, setA := drawDays(t, "a")
		b, setB := drawDays(t, "b")
		least := rapid.IntRange(-5, 5).Draw(t, "least")
		most := least + rapid.IntRange(0, 5).Draw(t, "most")
		both, only, moved := daySet{}, daySet{}, daySet{}
		for d := range setA {
			if setB[d] {
				both[d] = true
			} else {
				only[d] = true
			}
			for n := least; n <= most; n++ {
				moved[d+n] = true
			}
		}
		same(t, setA, a)
		same(t, both, a.and(b))
		same(t, only, a.without(b))
		same(t, moved, a.moved(least, most))
		for d := range 60 {
			r, ok := a.holding(d)
			require.Equal(t, setA[d], ok)
			require.Equal(t, ok, r.first <= d && d <= r.last && ok)
		}
	})
}
