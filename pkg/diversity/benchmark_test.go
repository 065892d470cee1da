package diversity_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/diversity"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// cohorts is a population of 10 cohorts of 1,000 animals, from 20 sires and 100
// dams of the cohort before.
func cohorts(tb testing.TB) (p *pedigree.Pedigree, living []int) {
	var records []pedigree.Record
	const size = 1000
	for c := range 10 {
		for i := range size {
			r := pedigree.Record{ID: fmt.Sprint(c, "/", i)}
			if c > 0 {
				r.Sire = fmt.Sprint(c-1, "/", (i*7+i/20)%20)
				r.Dam = fmt.Sprint(c-1, "/", 20+(i*13+i/100)%100)
			}
			records = append(records, r)
		}
	}
	p, err := pedigree.New(records)
	require.NoError(tb, err)
	for i := p.Len() - size; i < p.Len(); i++ {
		living = append(living, i)
	}
	return p, living
}

func BenchmarkDiversity(b *testing.B) {
	p, living := cohorts(b)
	b.Run("founder contributions", func(b *testing.B) {
		for b.Loop() {
			diversity.FounderContributions(p, living)
		}
	})
	b.Run("ancestor contributions", func(b *testing.B) {
		for b.Loop() {
			diversity.AncestorContributions(p, living)
		}
	})
	b.Run("partial inbreeding", func(b *testing.B) {
		for b.Loop() {
			diversity.PartialInbreeding(p, living)
		}
	})
	b.Run("gene drop, 1000", func(b *testing.B) {
		for b.Loop() {
			diversity.Drop(p, living, diversity.Drops{Count: 1000})
		}
	})
	b.Run("what if", func(b *testing.B) {
		change := diversity.Change{Born: []diversity.Brood{{Sire: living[0], Dam: living[1], Count: 5}}}
		for b.Loop() {
			diversity.WhatIf(p, living, change)
		}
	})
}
