package pedigree_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Slow, obvious twins of what the package computes.

// tabular fills the whole table of kinships of animals with certain parents,
// parents before children (Emik and Terrill 1949, Journal of Heredity 40:51). It
// is by row of records; parents go by place, -1 when unknown.
func tabular(parents [][2]int) [][]float64 { return tabularFrom(parents, nil) }

// tabularFrom is tabular with sources, of which the base kinships are given. A
// parent from the first source has the place after the last animal, and so on.
func tabularFrom(parents [][2]int, base []float64) [][]float64 {
	n := len(parents)
	k := make([][]float64, n+len(base))
	for i := range k {
		k[i] = make([]float64, len(k))
	}
	value := func(a, b int) float64 {
		if a < 0 || b < 0 {
			return 0
		}
		return k[a][b]
	}
	var done []int
	for s, kinship := range base {
		k[n+s][n+s] = kinship
		done = append(done, n+s)
	}
	for len(done) < len(k) {
		for i, couple := range parents {
			if slices.Contains(done, i) || !known(done, couple[0]) || !known(done, couple[1]) {
				continue
			}
			for _, j := range done {
				k[i][j] = (value(couple[0], j) + value(couple[1], j)) / 2
				k[j][i] = k[i][j]
			}
			k[i][i] = (1 + value(couple[0], couple[1])) / 2
			done = append(done, i)
		}
	}
	return k
}

func known(done []int, parent int) bool { return parent < 0 || slices.Contains(done, parent) }

// paths gives all ways up from an animal, each as the animals on it.
func paths(parents [][2]int, from int) [][]int {
	ways := [][]int{{from}}
	for _, parent := range parents[from] {
		if parent < 0 {
			continue
		}
		for _, way := range paths(parents, parent) {
			ways = append(ways, append([]int{from}, way...))
		}
	}
	return ways
}

// byPaths gives the share of the kinship of two animals that goes through each
// animal, from all ways up from both: for each pair of ways that have only their
// ends in common.
func byPaths(from, other [][]int, k [][]float64) []float64 {
	shares := make([]float64, len(k))
	for _, a := range from {
		for _, b := range other {
			end := a[len(a)-1]
			if end == b[len(b)-1] && apart(a[:len(a)-1], b[:len(b)-1]) {
				shares[end] += math.Pow(0.5, float64(len(a)+len(b)-2)) * k[end][end]
			}
		}
	}
	return shares
}

func apart(a, b []int) bool {
	return !slices.ContainsFunc(a, func(x int) bool { return slices.Contains(b, x) })
}

// draw is one choice that a group leaves open: which candidate stands in which
// places of the table of parents.
type draw struct {
	group  pedigree.Group
	places [][2]int // row and side
}

// draws lists the choices: one for a group that is one animal, one for each of
// the young when each has its own.
func draws(records []pedigree.Record, groups []pedigree.Group) []draw {
	var all []draw
	for _, g := range groups {
		if g.Kind == pedigree.Source {
			continue
		}
		var places [][2]int
		for i, r := range records {
			for side, parent := range [2]string{r.Sire, r.Dam} {
				if parent == g.ID {
					places = append(places, [2]int{i, side})
				}
			}
		}
		if g.Kind == pedigree.OneUnknown {
			all = append(all, draw{g, places})
			continue
		}
		for _, place := range places {
			all = append(all, draw{g, [][2]int{place}})
		}
	}
	return all
}

// assignments calls f with every way in which the parents may have been, and its
// probability.
func assignments(records []pedigree.Record, groups []pedigree.Group, f func(parents [][2]int, p float64)) {
	place := map[string]int{}
	for i, r := range records {
		place[r.ID] = i
	}
	for i, s := range sources(groups) {
		place[s.ID] = len(records) + i
	}
	parents := make([][2]int, len(records))
	for i, r := range records {
		for side, parent := range [2]string{r.Sire, r.Dam} {
			parents[i][side] = -1
			if at, ok := place[parent]; ok {
				parents[i][side] = at
			}
		}
	}
	open := draws(records, groups)
	var next func(d int, p float64)
	next = func(d int, p float64) {
		if d == len(open) {
			f(parents, p)
			return
		}
		total := 0.0
		for _, c := range open[d].group.Candidates {
			total += c.Weight
		}
		for _, c := range open[d].group.Candidates {
			chance := 1 / float64(len(open[d].group.Candidates))
			if total > 0 {
				chance = c.Weight / total
			}
			for _, at := range open[d].places {
				parents[at[0]][at[1]] = place[c.ID]
			}
			next(d+1, p*chance)
		}
	}
	next(0, 1)
}

// sources gives the groups that are sources.
func sources(groups []pedigree.Group) (found []pedigree.Group) {
	for _, g := range groups {
		if g.Kind == pedigree.Source {
			found = append(found, g)
		}
	}
	return found
}

// expected gives the mean table of kinships over all assignments.
func expected(records []pedigree.Record, groups []pedigree.Group) [][]float64 {
	var mean [][]float64
	var base []float64
	for _, s := range sources(groups) {
		base = append(base, s.Kinship)
	}
	assignments(records, groups, func(parents [][2]int, p float64) {
		k := tabularFrom(parents, base)[:len(records)]
		if mean == nil {
			mean = make([][]float64, len(k))
			for i := range mean {
				mean[i] = make([]float64, len(k))
			}
		}
		for i := range k {
			for j := range records {
				mean[i][j] += p * k[i][j]
			}
		}
	})
	return mean
}

// uncertainPedigree draws a few animals in shuffled order, and groups of which
// some are shared by several clutches.
func uncertainPedigree(t *rapid.T) ([]pedigree.Record, []pedigree.Group) {
	n := rapid.IntRange(3, 9).Draw(t, "animals")
	name := func(i int) string { return fmt.Sprintf("a%d", i) }
	var groups []pedigree.Group
	choices := map[string][]string{"": nil}
	open := 0 // draws so far, kept few: the twin goes through all of them
	parent := func(child int, label string) string {
		if child == 0 {
			return ""
		}
		switch kind := rapid.IntRange(0, 9).Draw(t, label); {
		case kind == 0:
			return ""
		case kind < 6 || open >= 5:
			id := name(rapid.IntRange(0, child-1).Draw(t, label+" animal"))
			choices[id] = []string{id}
			return id
		case kind < 8 && len(groups) > 0:
			g := rapid.SampledFrom(groups).Draw(t, label+" group again")
			open++
			return g.ID
		default:
			g := newGroup(t, fmt.Sprintf("g%d", len(groups)), child, name)
			groups = append(groups, g)
			for _, c := range g.Candidates {
				choices[g.ID] = append(choices[g.ID], c.ID)
			}
			open++
			return g.ID
		}
	}
	var records []pedigree.Record
	for i := range n {
		r := pedigree.Record{ID: name(i), Sire: parent(i, "sire"), Dam: parent(i, "dam")}
		uncertain := strings.HasPrefix(r.Sire, "g") || strings.HasPrefix(r.Dam, "g")
		for _, c := range choices[r.Sire] {
			if uncertain && slices.Contains(choices[r.Dam], c) {
				r.Dam = "" // may be both parents: refused, and tested elsewhere
			}
		}
		records = append(records, r)
	}
	return rapid.Permutation(records).Draw(t, "order"), groups
}

func newGroup(t *rapid.T, id string, child int, name func(int) string) pedigree.Group {
	g := pedigree.Group{ID: id, Kind: pedigree.GroupKind(rapid.IntRange(0, 1).Draw(t, "kind"))}
	weighted := rapid.Bool().Draw(t, "weighted")
	from := rapid.Permutation(make0to(child)).Draw(t, "candidates")
	for _, c := range from[:rapid.IntRange(1, min(3, child)).Draw(t, "how many")] {
		candidate := pedigree.Candidate{ID: name(c)}
		if weighted {
			candidate.Weight = rapid.Float64Range(0.1, 10).Draw(t, "weight")
		}
		g.Candidates = append(g.Candidates, candidate)
	}
	return g
}

func make0to(n int) []int {
	all := make([]int, n)
	for i := range all {
		all[i] = i
	}
	return all
}

// agrees compares everything that a pedigree says about kinship with a table.
func agrees(t require.TestingT, p *pedigree.Pedigree, want [][]float64) {
	const tiny = 1e-12
	living := make0to(p.Len())[p.Len()/3:]
	means := p.MeanKinship(living)
	mean := 0.0
	for i := range p.Len() {
		require.InDelta(t, 2*want[i][i]-1, p.Inbreeding(i), tiny, "F of %s", p.ID(i))
		sum := 0.0
		for j, k := range p.KinshipTo(i) {
			require.InDelta(t, want[i][j], k, tiny, "%s to %s, in one sweep", p.ID(j), p.ID(i))
			require.InDelta(t, want[i][j], p.Kinship(i, j), tiny, "%s to %s", p.ID(i), p.ID(j))
			require.Equal(t, p.Kinship(i, j), p.Kinship(j, i), "both directions of %s and %s", p.ID(i), p.ID(j))
			require.Equal(t, want[i][j] == 0, p.Kinship(i, j) == 0, "%s and %s: 0 means unrelated", p.ID(i), p.ID(j))
		}
		for _, j := range living {
			sum += want[i][j]
		}
		require.InDelta(t, sum/float64(len(living)), means[i], tiny, "mean kinship of %s", p.ID(i))
		if slices.Contains(living, i) {
			mean += sum / float64(len(living)*len(living))
		}
	}
	require.InDelta(t, 1-mean, p.GeneDiversity(living), tiny, "gene diversity")
}

// Every assignment of parents, each computed by the table, is what a group means.
func TestMeanOverEveryAssignment(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		records, groups := uncertainPedigree(t)
		p, err := pedigree.New(records, groups...)
		require.NoError(t, err)
		agrees(t, p, expected(records, groups))
	})
}

// Shares by the path rule, with the paths written out, over every assignment.
func TestSharedAncestorsByWrittenOutPaths(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		records, groups := uncertainPedigree(t)
		p, err := pedigree.New(records, groups...)
		require.NoError(t, err)
		n := p.Len()
		want := make([][]float64, n*n) // by pair of animals
		for pair := range want {
			want[pair] = make([]float64, n)
		}
		assignments(records, groups, func(parents [][2]int, chance float64) {
			k := tabular(parents)
			ways := make([][][]int, n)
			for i := range ways {
				ways[i] = paths(parents, i)
			}
			for pair, shares := range want {
				for a, share := range byPaths(ways[pair/n], ways[pair%n], k) {
					shares[a] += chance * share
				}
			}
		})
		for pair := range want {
			i, j := pair/n, pair%n
			got := make([]float64, n)
			sum := 0.0
			for _, s := range p.SharedAncestors(i, j) {
				require.Positive(t, s.Share)
				got[s.Animal] = s.Share
				sum += s.Share
			}
			require.InDeltaSlice(t, want[pair], got, 1e-12, "%s and %s", p.ID(i), p.ID(j))
			require.InDelta(t, p.Kinship(i, j), sum, 1e-12, "shares of %s and %s add up", p.ID(i), p.ID(j))
		}
	})
}

// Larger pedigrees without groups against the plain table.
func TestTabularTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 60).Draw(t, "animals")
		var born []pedigree.Record
		for i := range n {
			r := pedigree.Record{ID: fmt.Sprint("a", i)}
			for _, side := range []*string{&r.Sire, &r.Dam} {
				if from := rapid.IntRange(max(-1, i-12), i).Draw(t, "parent"); from >= 0 && from < i {
					*side = fmt.Sprint("a", from)
				}
			}
			born = append(born, r)
		}
		records := rapid.Permutation(born).Draw(t, "order")
		p, err := pedigree.New(records)
		require.NoError(t, err)
		agrees(t, p, expected(records, nil))
	})
}

// Depth, certainty and lines of descent against recursion on the means.
func TestAncestryTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		records, groups := uncertainPedigree(t)
		p, err := pedigree.New(records, groups...)
		require.NoError(t, err)
		ancestors := make([]map[int]bool, p.Len())
		for i := range p.Len() {
			generation, complete, uncertain := climb(p, i)
			require.Equal(t, generation, p.Generation(i))
			require.InDelta(t, complete, p.CompleteGenerations(i), 1e-12)
			require.Equal(t, uncertain, p.Uncertain(i))
			ancestors[i] = map[int]bool{}
			for _, a := range p.Ancestors(i) {
				ancestors[i][a] = true
			}
			require.Len(t, ancestors[i], len(p.Ancestors(i)))
			require.True(t, slices.IsSorted(p.Ancestors(i)))
		}
		for i := range p.Len() {
			var descendants []int
			for j := range p.Len() {
				if ancestors[j][i] {
					descendants = append(descendants, j)
				}
			}
			require.Equal(t, descendants, p.Descendants(i))
			want := map[int]bool{}
			collect(p, i, want)
			require.Equal(t, want, ancestors[i])
		}
	})
}

func climb(p *pedigree.Pedigree, i int) (generation int, complete float64, uncertain bool) {
	sire, dam := p.Parents(i)
	for _, parent := range []pedigree.Parent{sire, dam} {
		uncertain = uncertain || parent.Group != ""
		for _, c := range parent.Candidates {
			g, e, u := climb(p, c.Animal)
			generation = max(generation, g+1)
			complete += c.Probability * (e + 1) / 2
			uncertain = uncertain || u
		}
	}
	return generation, complete, uncertain
}

func collect(p *pedigree.Pedigree, i int, into map[int]bool) {
	sire, dam := p.Parents(i)
	for _, c := range append(sire.Candidates, dam.Candidates...) {
		into[c.Animal] = true
		collect(p, c.Animal, into)
	}
}

func TestExpectedInbreedingIsTheMeanOverCouples(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		records, groups := uncertainPedigree(t)
		p, err := pedigree.New(records, groups...)
		require.NoError(t, err)
		some := rapid.SliceOfN(rapid.IntRange(0, p.Len()-1), 1, 4)
		sires, dams := some.Draw(t, "sires"), some.Draw(t, "dams")
		mean := 0.0
		for _, s := range sires {
			for _, d := range dams {
				mean += p.Kinship(s, d) / float64(len(sires)*len(dams))
			}
		}
		require.InDelta(t, mean, p.ExpectedInbreeding(sires, dams), 1e-12)
	})
}
