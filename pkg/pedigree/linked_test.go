package pedigree

import (
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Whatever is asked first, the answer is that of a pedigree that was computed at
// once.
func TestLinkedAnswersAsNew(t *testing.T) {
	records := []Record{
		{"a", "", ""},
		{"b", "", ""},
		{"c", "", ""},
		{"d", "a", "b"},
		{"e", "a", "b"},
		{"f", "two", "d"},
		{"g", "two", "e"},
		{"h", "f", "g"},
	}
	groups := []Group{{ID: "two", Candidates: []Candidate{{ID: "c"}, {ID: "a"}}}}
	last := len(records) - 1
	ask := map[string]func(p *Pedigree) any{
		"Inbreeding":          func(p *Pedigree) any { return p.Inbreeding(last) },
		"ExpectedInbreeding":  func(p *Pedigree) any { return p.ExpectedInbreeding([]int{5}, []int{6, 4}) },
		"Kinship":             func(p *Pedigree) any { return p.Kinship(5, 6) },
		"Kinship with itself": func(p *Pedigree) any { return p.Kinship(last, last) },
		"KinshipTo":           func(p *Pedigree) any { return p.KinshipTo(last) },
		"MeanKinship":         func(p *Pedigree) any { return p.MeanKinship([]int{5, 6, 7}) },
		"Block":               func(p *Pedigree) any { return p.Block([]int{5, 7}, []int{6}) },
		"Times":               func(p *Pedigree) any { return p.Times([]float64{0, 0, 0, 0, 0, 1, 1, 1}) },
		"Contributions":       func(p *Pedigree) any { return p.Contributions([]float64{0, 0, 0, 0, 0, 1, 1, 1}) },
		"SharedAncestors":     func(p *Pedigree) any { return p.SharedAncestors(5, 6) },
		"Ancestors":           func(p *Pedigree) any { return p.Ancestors(last) },
		"Generation":          func(p *Pedigree) any { return p.Generation(last) },
		"KnownAncestry":       func(p *Pedigree) any { return p.KnownAncestry(last) },
		"CompleteGenerations": func(p *Pedigree) any { return p.CompleteGenerations(last) },
		"Uncertain":           func(p *Pedigree) any { return p.Uncertain(last) },
		"growing": func(p *Pedigree) any {
			more, err := p.Grow([]Record{{"i", "h", "d"}})
			require.NoError(t, err)
			return more.Inbreeding(last + 1)
		},
	}
	for name, question := range ask {
		t.Run(name, func(t *testing.T) {
			whole, err := New(records, groups...)
			require.NoError(t, err)
			later, err := Linked(records, groups...)
			require.NoError(t, err)
			want, got := question(whole), make([]any, 4)
			var all sync.WaitGroup
			for i := range got {
				all.Go(func() { got[i] = question(later) })
			}
			all.Wait()
			assert.Equal(t, []any{want, want, want, want}, got)
		})
	}
}

func TestLinkedRefusesAsNew(t *testing.T) {
	for _, records := range [][]Record{
		{{"a", "b", ""}, {"b", "a", ""}},
		{{"a", "x", ""}},
		{{"a", "", ""}, {"a", "", ""}},
	} {
		_, want := New(records)
		_, got := Linked(records)
		require.Error(t, want)
		assert.Equal(t, want, got)
	}
}
