package development

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// chancesOf gives chances of days, some of which are not possible.
func chancesOf(t *rapid.T, least, most int, name string) []float64 {
	all := rapid.SliceOfN(rapid.Float64Range(0.1, 1), least, most).Draw(t, name)
	for range rapid.IntRange(0, 2).Draw(t, "impossible "+name) {
		if len(all) > 0 {
			all[rapid.IntRange(0, len(all)-1).Draw(t, "at")] = 0
		}
	}
	return all
}

// Four begins at once, and a sum that is taken once for all begins, are those of each
// begin by itself to the last bit.
func TestKernelIsThatOfEachBeginByItself(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		row := masses{rapid.IntRange(0, 9).Draw(t, "first end"), chancesOf(t, 1, 20, "row")}
		k := kernel{even: true, rows: []masses{row}}
		begins := masses{rapid.IntRange(0, 9).Draw(t, "first begin"), chancesOf(t, 1, 40, "begins")}
		later := masses{rapid.IntRange(0, 20).Draw(t, "first later"), chancesOf(t, 0, 60, "later")}
		ones := masses{later.first, make([]float64, len(later.p))}
		for i := range ones.p {
			ones.p[i] = 1
		}
		plain := func(later masses) []float64 {
			all := make([]float64, len(begins.p))
			for i, x := range begins.p {
				for j, y := range row.p {
					if at := begins.first + i + row.first + j - later.first; x >= faint && at >= 0 && at < len(later.p) {
						all[i] += y * later.p[at]
					}
				}
			}
			return all
		}
		if diff := cmp.Diff(plain(later), k.backward(begins, later)); diff != "" {
			t.Fatalf("backward: %s", diff)
		}
		forward := masses{later.first, make([]float64, len(later.p))}
		for i, x := range begins.p {
			for j, y := range row.p {
				if at := begins.first + i + row.first + j - later.first; x >= faint && at >= 0 && at < len(later.p) {
					forward.p[at] += x * y
				}
			}
		}
		if diff := cmp.Diff(forward, k.forward(begins, masses{later.first, slices.Clone(later.p)}), cmp.AllowUnexported(masses{})); diff != "" {
			t.Fatalf("forward: %s", diff)
		}
		if diff := cmp.Diff(plain(ones), k.sums(begins, [2]int{later.first, later.first + len(later.p) - 1})); diff != "" {
			t.Fatalf("sums: %s", diff)
		}
	})
}
