package strictyaml

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func TestNearest(t *testing.T) {
	for _, row := range []struct {
		name       string
		candidates []string
		want       string
		reason     string
	}{
		{"Brama", []string{"Bram", "Brom"}, "Bram", "one letter too many"},
		{"wieght", []string{"weight", "height"}, "weight", "two letters changed places"},
		{"sier", []string{"dam", "sire"}, "sire", "and in a short word"},
		{"SIRE", []string{"sire"}, "sire", "case does not count"},
		{"dam", []string{"sire", "line"}, "", "too far"},
		{"ab", []string{"ac"}, "", "half of the letters"},
		{"abc", []string{"abd"}, "abd", "a third of them"},
		{"abcdef", []string{"abcxyz"}, "", "three edits"},
		{"abcdef", []string{"abcdyz"}, "abcdyz", "two edits"},
		{"line", []string{"lime", "lane"}, "lime", "of equals the first one"},
		{"lane", []string{"lime", "lane"}, "lane", "the nearer one, though it is not the first"},
		{"größe", []string{"grösse", "grose"}, "grösse", "letters, not bytes"},
		{"", []string{"a"}, "", "nothing is like nothing"},
		{"a", nil, "", "no candidates"},
	} {
		assert.Equal(t, row.want, Nearest(row.name, row.candidates), "%s: %s", row.name, row.reason)
	}
	assert.Equal(t, `did you mean "Bram"?`, DidYouMean("Brama", []string{"Bram"}))
	assert.Empty(t, DidYouMean("x", []string{"Bram"}))
}

// TestDistanceAgainstRecursion compares with the definition, written down.
func TestDistanceAgainstRecursion(t *testing.T) {
	letters := rapid.SliceOfN(rapid.RuneFrom([]rune("abc")), 0, 6)
	rapid.Check(t, func(t *rapid.T) {
		a, b := letters.Draw(t, "a"), letters.Draw(t, "b")
		limit := rapid.IntRange(1, 8).Draw(t, "limit")
		if got, want := distance(a, b, limit), min(slowDistance(a, b), limit); got != want {
			t.Fatalf("%q and %q, limit %d: %d, want %d", string(a), string(b), limit, got, want)
		}
	})
}

func slowDistance(a, b []rune) int {
	if len(a) == 0 || len(b) == 0 {
		return len(a) + len(b)
	}
	restA, restB := a[1:], b[1:]
	best := min(slowDistance(restA, b), slowDistance(a, restB), slowDistance(restA, restB)) + 1
	if a[0] == b[0] {
		best = min(best, slowDistance(restA, restB))
	}
	if len(a) > 1 && len(b) > 1 && a[0] == b[1] && a[1] == b[0] {
		best = min(best, 1+slowDistance(a[2:], b[2:]))
	}
	return best
}
