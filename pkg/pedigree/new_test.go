package pedigree_test

import (
	"fmt"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

func TestNewReportsEverything(t *testing.T) {
	_, err := pedigree.New([]pedigree.Record{
		{ID: "A"}, {ID: "B", Sire: "X"}, {ID: "A"}, {ID: "C", Sire: "A", Dam: "Y"}, {},
	}, pedigree.Group{ID: "B", Candidates: []pedigree.Candidate{{ID: "Z"}}})
	want := strings.Join([]string{
		`pedigree: entries 1 and 3 are both called "A"; ids must differ`,
		`pedigree: entry 5 has no id; give it one`,
		`pedigree: entries 2 and 6 are both called "B"; ids must differ`,
		`pedigree: candidate "Z" of "B" has no record; add one, or leave the parent empty`,
		`pedigree: sire "X" of "B" has no record; add one, or leave the parent empty`,
		`pedigree: dam "Y" of "C" has no record; add one, or leave the parent empty`,
	}, "\n")
	require.EqualError(t, err, want)

	var duplicate *pedigree.DuplicateError
	require.ErrorAs(t, err, &duplicate)
	assert.Equal(t, pedigree.DuplicateError{ID: "A", First: 0, Second: 2}, *duplicate)
	var missing *pedigree.UnknownParentError
	require.ErrorAs(t, err, &missing)
	assert.Equal(t, pedigree.UnknownParentError{Child: "B", Role: "candidate", Parent: "Z"}, *missing)
	var blank *pedigree.BlankIDError
	require.ErrorAs(t, err, &blank)
	assert.Equal(t, 4, blank.Place)
}

func TestLoops(t *testing.T) {
	for _, test := range []struct {
		name   string
		text   string
		groups []pedigree.Group
		want   []string
		reason string
	}{
		{"own parent", "A,0,0 B,A,B", nil, []string{"B"}, "a loop of one"},
		{"two", "A,B,0 B,0,A", nil, []string{"A", "B"}, "each is a parent of the other"},
		{"three, met from outside", "Z,C,0 A,B,0 B,0,C C,A,0", nil, []string{"A", "B", "C"}, "Z is no member; A comes first and B is its parent"},
		{"the other way round", "C,A,0 B,C,0 A,B,0", nil, []string{"C", "A", "B"}, "begins with the first record and goes up"},
		{
			"through a group", "A,0,0 x,m,0 y,0,x",
			[]pedigree.Group{{ID: "m", Candidates: []pedigree.Candidate{{ID: "A"}, {ID: "y"}}}},
			[]string{"x", "m", "y"},
			"a candidate that descends from the young cannot be the parent",
		},
	} {
		t.Run(test.name, func(t *testing.T) {
			var records []pedigree.Record
			for word := range strings.FieldsSeq(strings.ReplaceAll(test.text, "0", "")) {
				part := strings.Split(word, ",")
				records = append(records, pedigree.Record{ID: part[0], Sire: part[1], Dam: part[2]})
			}
			_, err := pedigree.New(records, test.groups...)
			var loop *pedigree.LoopError
			require.ErrorAs(t, err, &loop)
			if diff := cmp.Diff(test.want, loop.Members); diff != "" {
				t.Errorf("%s (-want +got):\n%s", test.reason, diff)
			}
		})
	}
}

// Whatever loop is reported is one: every member has the next among its parents.
func TestLoopsAreRealLoops(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 12).Draw(t, "animals")
		records := make([]pedigree.Record, n)
		for i := range records {
			records[i].ID = fmt.Sprint(i)
			for _, side := range []*string{&records[i].Sire, &records[i].Dam} {
				if parent := rapid.IntRange(-2*n, n-1).Draw(t, "parent"); parent >= 0 {
					*side = fmt.Sprint(parent)
				}
			}
		}
		p, err := pedigree.New(records)
		var loop *pedigree.LoopError
		if err == nil {
			require.Equal(t, n, p.Len())
			return
		}
		require.ErrorAs(t, err, &loop)
		for i, id := range loop.Members {
			next := loop.Members[(i+1)%len(loop.Members)]
			var of int
			_, err := fmt.Sscan(id, &of)
			require.NoError(t, err)
			require.Contains(t, []string{records[of].Sire, records[of].Dam}, next)
		}
	})
}

func TestLoopText(t *testing.T) {
	short := &pedigree.LoopError{Members: []string{"A", "B"}}
	assert.EqualError(t, short, `pedigree: "A" descends from itself: "A" is from "B" is from "A"; one of these parents must be wrong`)
	long := &pedigree.LoopError{}
	for i := range 1000 {
		long.Members = append(long.Members, fmt.Sprint(i))
	}
	assert.Contains(t, long.Error(), `"9" is from ... 990 more ..., "0"; one`)
}

// A line of one hundred thousand generations, youngest first and closed to a loop
// or not, is no danger to the stack.
func TestDeepPedigree(t *testing.T) {
	const depth = 100_000
	records := make([]pedigree.Record, depth)
	for i := range records {
		records[i] = pedigree.Record{ID: fmt.Sprint(i), Sire: fmt.Sprint(i + 1)}
	}
	records[depth-1].Sire = ""
	p, err := pedigree.New(records)
	require.NoError(t, err)
	assert.Equal(t, depth-1, p.Generation(0))
	assert.InDelta(t, 1, p.CompleteGenerations(0), 1e-12, "1/2 + 1/4 + ...")
	assert.Len(t, p.Ancestors(0), depth-1)
	assert.Len(t, p.Descendants(depth-1), depth-1)
	assert.Equal(t, 1./16, p.Kinship(0, 3))
	assert.Equal(t, []pedigree.SharedAncestor{{Animal: 3, Share: 1. / 16}}, p.SharedAncestors(0, 3))

	records[depth-1].Sire = "0"
	_, err = pedigree.New(records)
	var loop *pedigree.LoopError
	require.ErrorAs(t, err, &loop)
	assert.Len(t, loop.Members, depth)
}

func TestEmptyPedigree(t *testing.T) {
	p, err := pedigree.New(nil)
	require.NoError(t, err)
	assert.Zero(t, p.Len())
	assert.Empty(t, p.MeanKinship(nil))
}

func TestCallersBugs(t *testing.T) {
	p := build(t, mrode)
	assert.PanicsWithValue(t, "pedigree: no animal 6 among 6", func() { p.Inbreeding(6) })
	assert.PanicsWithValue(t, "pedigree: no animal -1 among 6", func() { p.ID(-1) })
	assert.PanicsWithValue(t, "pedigree: no animal 9 among 6", func() { p.MeanKinship([]int{9}) })
	assert.PanicsWithValue(t, "pedigree: no sires or no dams", func() { p.ExpectedInbreeding([]int{0}, nil) })
}

// One pedigree may be asked from several goroutines.
func TestConcurrentQuestions(t *testing.T) {
	p := build(t, fullSibs(40))
	want := p.KinshipTo(p.Len() - 1)
	var wait sync.WaitGroup
	for range 4 {
		wait.Go(func() {
			for i := range p.Len() {
				if got := p.Kinship(i, p.Len()-1); !assert.InDelta(t, want[i], got, 1e-12) {
					return
				}
			}
		})
	}
	wait.Wait()
}
